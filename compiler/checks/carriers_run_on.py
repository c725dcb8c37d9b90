"""Does a man in motion take the ball while he runs, and not turn back for it?

He gets it as he comes by the quarterback. Where the motion ends past him, the ball is snapped when
the man has gone by, and he would have to turn round, which no fly or jet sweep means. Let the
motion end a step before the ball: he is there at a run when it is snapped, and goes on from there.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Kind

_BACK = 1.5
"""Yards back to the ball that are told: less is the step in which he slows to take it. Common
practice, no published source."""
_AT_HIM = 1.0
"""Yards aside from the quarterback within which a corner of the carrier's way is the hand-off."""


class W697(Mistake):
    title = "a carrier whose motion has gone past the hand-off"
    message = (
        "{call}: {man} is {yards} yards past {passer} when the ball is snapped, and turns back "
        "for it"
    )
    label = "past the ball"
    help = (
        "let the motion end before the ball, on the side from which he comes, as in "
        "`moves to {side}, 1 outside ball, 3 deep`"
    )
    varies = ("man", "yards")

    call: str
    man: str
    passer: str
    side: str
    yards: str


WHEN = When.PROVED


def check_carriers_run_on(call: ProvedCall) -> Iterator[Diagnostic]:
    play = call.play
    if play.kind is not Kind.RUN or play.passer is None or play.carrier in ("", play.passer.label):
        return
    task = play.assignment(play.carrier)
    motion, path = task.motion, task.path
    if motion is None or not motion.running or path is None or len(path.legs) < 2:
        return
    before, snap = motion.path.corners[-2:]
    ran, turn = snap.x - before.x, path.corners[1].x
    past = (snap.x - turn) * (1 if ran > 0 else -1)
    goes_on = (path.corners[-1].x - turn) * ran > 0
    if past > _BACK and goes_on and abs(turn - play.passer.snap.x) <= _AT_HIM:
        side = "call" if ran * play.call.side.value < 0 else "away"
        yield W697(
            call=play.call.spoken, man=play.carrier, passer=play.passer.label,
            yards=f"{past:.0f}", side=side,
        ).at(task.span)  # fmt: skip


SAMPLES = """
### W697

At the snap the slot is outside the far tackle, four yards past the quarterback who is to hand him
the ball. End the motion on the near side of the ball.

```play fail W697
motion Fly
    S moves to away, 2 outside tackle, 2 deep
    snap running

run Sweep
    toward away
    carrier is S
    carrier aims outside the end
    line blocks reach or climb
    back blocks lead
    everyone else blocks stalk

dress Sweep
    in Three Two motion Fly
```

```play
like W697
-    S moves to away, 2 outside tackle, 2 deep
+    S moves to call, 1 outside ball, 3 deep
```
"""

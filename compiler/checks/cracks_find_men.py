"""Is the man there whom a receiver is told to crack?

A crack is a block on somebody inside. Against a front that has nobody within reach there the
receiver comes off it and stalks the man over him, or blocks nobody, and who was to be cracked runs
to the ball. So the look is named in which that is so, of those that a run is called against.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.blocking.block_names import BLOCKS
from stemline.football.blocking.run_rules import BlockWay


class W684(Mistake):
    title = "a crack that finds nobody"
    message = "{call} from the {spot}: {man} has nobody inside him to crack in {look}, and {does}"
    help = (
        "bring him in to within twelve yards of the man he shall crack, give the crack to the next "
        "man inside, or say that he blocks `stalk`"
    )

    varies = ("man", "does", "spot")

    call: str
    spot: str
    man: str
    look: str
    does: str


WHEN = When.PROVED


def check_cracks_find_men(call: ProvedCall) -> Iterator[Diagnostic]:
    play = call.against_a_front
    if play is None or play.defence is None:
        return
    for a in play.assignments:
        if not a.job.startswith(BLOCKS["crack"].words):
            continue
        if a.hits and a.hits[0].how == BlockWay.CRACK.value:
            continue
        does = f"stalks [{a.hits[0].defender}]" if a.hits else "blocks nobody"
        yield W684(
            call=play.call.spoken, spot=play.ball.value, man=a.man, look=play.defence.name,
            does=does,
        ).at(a.span)  # fmt: skip


SAMPLES = """
### W684

The widest man is too far out to come back to anybody inside: he stalks the corner instead, and the
overhang is free. Let the next man inside crack.

```play fail W684
run Toss
    carrier is back
    carrier aims outside the end
    line blocks reach or climb
    strong #1 blocks crack
    everyone else blocks stalk

dress Toss
    in Three Two
```

```play
like W684
-    strong #1 blocks crack
+    strong #3 blocks crack
```
"""

"""Does a run block the box it is called against?

A back makes one man miss; he does not make two. Against the look that the playbook draws runs
against, and against those that a dress-up names, more than one man of the box whom nobody blocks
and nobody reads is said, by name: bring a blocker, make one of them a `key`, or leave the call at
home. From the goal line a man who stands well behind it is too late, and not counted.

Against the other looks of the book it is no mistake: a run is not called into every front, and who
is free stands on its page. Common practice, no published source: the extra man is the back's.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.diagnostics.in_words import theirs
from stemline.football.defence.fronts import BOX_DEPTH, HEAD_UP, INSIDE_BOX
from stemline.football.defenders import Defence, Defender, Level
from stemline.football.exchanges import BallMoves
from stemline.football.play import Kind, Play
from stemline.geometry.paths import crossing
from stemline.resolve.blocking.handing_off import FAKES


class W670(Mistake):
    title = "more men free than one"
    message = "{call}: nobody blocks {free} of {look}"
    help = (
        "a back runs by one man, not by more: add a blocker, read one as a `key`, or do not call "
        "it against this look"
    )

    call: str
    free: tuple[str, ...]
    look: str


class W698(Mistake):
    title = "free where the run goes"
    message = "{call}: nobody blocks [{man}] of {look}, {place} where the run goes"
    help = "block him, read him as a `key`,{or_fake} or do not call it against this look: {comes}"

    call: str
    man: str
    look: str
    place: str
    or_fake: str
    comes: str


MOST_FREE = 1
"""Men of the box whom the carrier is asked to run by."""

AT_HOLE = 2.0
"""Yards to each side of the hole up to which a man stands where the ball comes. From memory."""


PAST_GOAL = 3.0
"""Yards past the goal line: who stands deeper meets the carrier where he has scored. From
memory."""

WHEN = When.PROVED


def check_blocks_find_men(call: ProvedCall) -> Iterator[Diagnostic]:
    """More men of the box free than the carrier can run by."""
    play = call.against_a_front
    if play is not None:
        yield from too_many_free(play)


def too_many_free(play: Play) -> Iterator[Diagnostic]:
    if play.defence is None:
        return
    goal = play.field.goal
    late = {d.label for d in play.defence.defenders if goal is not None
            and d.at.y > goal + PAST_GOAL}  # fmt: skip
    free = [label for label in play.unblocked if label not in late]
    if len(free) > MOST_FREE:
        yield W670(call=play.call.spoken, free=tuple(map(theirs, free)), look=play.defence.name).at(
            play.span
        )
    elif free:
        yield from _free_at_hole(play, play.defence, free[0])


def _free_at_hole(play: Play, defence: Defence, label: str) -> Iterator[Diagnostic]:
    """The one man free, where he stands on the line and the ball comes to him."""
    task = next((a for a in play.assignments if a.man == play.carrier), None)
    hole = crossing(task.path, 0.0) if task is not None and task.path is not None else None
    man = defence.defender(label)
    if play.kind is not Kind.RUN or play.toward is None or hole is None:
        return
    out, side = (man.at.x - hole) * play.toward.value, man.at.x * play.toward.value
    if side <= HEAD_UP or abs(out) > AT_HOLE:
        return
    if man.level is Level.LINE:
        place, fake, comes = "on the line", "", "he is there before the carrier is"
    elif _is_linebacker(play, man) and not _is_faked(play):
        place, comes = "the linebacker", "he fills the gap that the carrier runs to"
        fake = " hold him with a fake,"
    else:
        return
    yield W698(
        call=play.call.spoken, man=label, look=defence.name, place=place, or_fake=fake, comes=comes
    ).at(play.span)


def _is_linebacker(play: Play, man: Defender) -> bool:
    """Whether he stands behind the line and within the tackles: who hangs over an end is the
    carrier's on many a run inside."""
    last = max((abs(m.snap.x) for m in play.men if m.interior), default=0.0)
    return (
        man.level is Level.SECOND and man.at.y <= BOX_DEPTH and abs(man.at.x) <= last + INSIDE_BOX
    )


def _is_faked(play: Play) -> bool:
    """Whether somebody is shown to have the ball who has not, and a linebacker waits for him."""
    said = any(x.kind is BallMoves.FAKE for x in play.exchanges)
    return said or any(a.man != play.carrier and FAKES in a.job for a in play.assignments)


SAMPLES = """
### W670

A back makes one man miss. Against the look that runs are drawn against two are free here, so bring
another blocker or read one of them.

```play fail W670
run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    playside tackle, backside tackle blocks climb
    backside guard blocks hinge
    outside, second, third is strong outside
    outside, second, third blocks stalk
    far, other is weak outside
    far, other blocks stalk

dress Dive
    in Three Two
```

```play
like W670
-    playside tackle, backside tackle blocks climb
-    backside guard blocks hinge
+    backside tackle blocks climb
     far, other blocks stalk
+    key backside end man on line
+    give if he stays
+    pull if he chases
```

### W698

The end whom nobody blocks stands where the toss goes, and meets it. The next man inside cracks him.

```play fail W698
run Toss
    carrier is back
    carrier aims outside the end
    line blocks on or climb
    playside tackle blocks climb
    everyone else blocks stalk

dress Toss
    in Three Two
```

```play
like W698
-    everyone else blocks stalk
+    strong #3 blocks crack
+    everyone else blocks stalk
```
"""

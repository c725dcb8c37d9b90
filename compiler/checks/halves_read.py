"""Are both halves of a call read, where the quarterback picks one of them?

`pick side by soft corner` says that he goes to one half or the other. A mirrored concept has one
order for both, since the same men run the same routes on either side. Where the halves are two
patterns and every look is in one of them, he picks the other and has nobody to read there.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.field import Side
from stemline.football.play import Man, Play


class W652(Mistake):
    title = "a half that is picked and not read"
    message = "{call}: he picks a side by {pick}, and no look is at {man} on the other one"
    label = "all on one side"
    help = (
        "give that half its order: one `read` that goes on to it, `> {first} on reset`, or a tag "
        "with its own `read`, to which he goes by a `kill to`; a mirrored concept runs the same "
        "on both sides"
    )
    varies = ("man", "first")
    listed = "man"

    call: str
    first: str
    man: tuple[str, ...]
    pick: str


WHEN = When.CALLED


def check_halves_read(play: Play) -> Iterator[Diagnostic]:
    men = [play.man(label) for read in play.reads for label in read.men]
    sides = {side for man in men if (side := _half(play, man)) is not None}
    if not play.pick or len(sides) != 1 or len(play.reads) < 2 or play.call.tags:
        return  # one throw alone, as a bubble, is there or is not; a tag says what it changes
    (here,) = sides
    there = [m for m in play.men if _half(play, m) is here.other and _runs(play, m)]
    theirs = {_route(play, man) for man in there}
    if there and not any(_route(play, man) in theirs for man in men):
        yield W652(
            call=play.call.spoken, pick=play.pick, man=tuple(m.label for m in there),
            first=play.assignment(there[0].label).role_said or there[0].label,
        ).at(play.reads[0].span)  # fmt: skip


def _half(play: Play, man: Man) -> Side | None:
    """The side of a receiver who is counted; None for a man behind the ball."""
    return Side.at(man.snap.x) if man.rank is not None else None


def _runs(play: Play, man: Man) -> bool:
    path = play.assignment(man.label).path
    return path is not None and bool(path.legs)


def _route(play: Play, man: Man) -> str:
    """What he runs, without its depth and way: ``Slant``."""
    return play.assignment(man.label).job.partition(" at ")[0].rstrip(".")


SAMPLES = """
### W652

The quarterback picks one half of the call by what he sees, and all his looks are in the other. Two
patterns want two orders; one order is enough where both sides run the same.

```play fail W652
concept Halves
    wide is strong #1
    wide runs slant
    slot is strong #2
    slot runs slant
    inner is strong #3
    inner runs flat
    lone is weak #1
    lone runs fade
    quick is weak #2
    quick runs quick out
    check is back or nobody
    check runs check
    feet quick, reset
    read slot on quick > wide on reset
    pick side by soft corner

dress Halves
    in Three Two
```

```play
like W652
-    read slot on quick > wide on reset
+    read slot on quick > wide on reset > lone on reset
```
"""

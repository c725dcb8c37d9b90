"""Does a receiver block past the line before a pass that crosses it is touched?

On a pass that is caught behind the line a stalk or a crack is a block like any other. On one that
crosses the line the same block, made before the ball is touched, is interference by the offence.
It is the foul of the bubble with a slant behind it, and of the run-pass option whose receivers
block for the run. The block counts from when he has come to his man; who meets a man of the line at
the line is left out, for an immediate charge there is allowed or no receiver's business.

The times are planning figures, so what is found is always a warning.

Example: ``point blocks stalk`` beside ``read bubble on catch > lone on reset``, where the lone man
runs a slant. Take the slant out of the order, or let the point run his man off with a route.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import against
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Assignment, Play
from stemline.football.timing.levels import GAP, PlayingLevel
from stemline.football.timing.release import Release, meets_at, past_line, releases


class W871(Mistake):
    title = "a block past the line before the catch"
    message = (
        "{man} meets his man {yards} yards past the line at {seconds} seconds in {call}{look}, and "
        "the ball to {target} is there at {arrives}: that is interference ({rules}; {source}; the "
        "moment is the clock's, a planning figure)"
    )
    label = "a block is past the line"
    help = "let him run a route, or throw only to a man behind the line"
    varies = ("arrives", "look", "man", "seconds", "yards")

    arrives: str
    call: str
    look: str
    man: str
    rules: str
    seconds: str
    source: str
    target: str
    yards: str


WHEN = When.THROWN


def check_block_past(play: Play, level: PlayingLevel) -> Iterator[Diagnostic]:
    """The first such block for each throw."""
    code = play.field.code
    known = code.block_past
    blocks = [
        (meets_at(play, task, level), task, yards)
        for task in play.assignments
        if (yards := past_line(play, task))
    ]
    if not blocks:
        return
    for throw in releases(play, level):
        found = [b for b in blocks if _before(b, throw)]
        if throw.crosses and found:
            seconds, task, yards = min(found, key=lambda b: (b[0], b[1].man))
            yield W871(
                rules=code.title, source=known.cited, man=task.man, call=play.call.spoken,
                look=against(play), yards=f"{yards:.1f}", target=throw.target,
                seconds=f"{seconds:.1f}", arrives=f"{throw.arrives:.1f}",
            ).at(throw.span)  # fmt: skip


def _before(block: tuple[float, Assignment, float], throw: Release) -> bool:
    seconds, task, _ = block
    return task.man not in throw.men and seconds < throw.arrives - GAP


SAMPLES = """
### W871

On a pass that crosses the line a receiver who blocks past it before the ball is touched interferes.
On one that is caught behind the line he may. When he comes to his man, and when the ball is there,
is the clock's, so it is never an error.

```play fail W871
tag Wheel for Crossers
    flat runs wheel away from settle
    clear blocks stalk
    keeps read, feet
```

```play
tag Wheel for Crossers
    flat runs wheel away from settle
    clear runs go
    keeps read, feet
```
"""

"""Is a man of the line told to stalk?

A stalk block is one in the open, on a defender who comes up. A tight end who stands beside his
tackle has a man on him, or in his gap, at the snap: told to stalk he lets that one go. Common
practice, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.blocking.block_names import BLOCKS
from stemline.football.offence.counting import tight_ends
from stemline.football.play import Kind, Play


class W689(Mistake):
    title = "a tight end who stalks"
    message = (
        "{call}: {man} stands beside his tackle and is told to stalk, and who is on him is free"
    )
    label = "a block in the open"
    help = "write `{who} blocks on or down or climb`, or leave him to the `line`"

    call: str
    man: str
    who: str


WHEN = When.CALLED


def check_stalks_in_line(play: Play) -> Iterator[Diagnostic]:
    """Tight ends of a run who have a receiver's block."""
    if play.kind is not Kind.RUN:
        return
    ends = tight_ends(play.men)
    for task in play.assignments:
        told = task.role_said.endswith(("tight end", "wing")) or task.role == task.man
        if told and task.man in ends and task.job.startswith((BLOCKS["stalk"].words, "Stalk")):
            yield W689(call=play.call.spoken, man=task.man, who=play.as_said(task.man)).at(
                task.span
            )


SAMPLES = """
### W689

A stalk is a block in the open. The tight end has a man on him when the ball is snapped: a rule of
the line gives him that one, or lets him go on to the next.

```play fail W689
formation Tight extends Three Two
    H at call, end, on line
    Z at call, numbers, off line

run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    tight end blocks stalk
    everyone else blocks stalk

dress Dive
    in Tight
```

```play
like W689
-    tight end blocks stalk
+    tight end blocks on or down or climb
```
"""

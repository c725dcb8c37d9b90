"""Does every man who may catch a pass have a job?

A concept written for four receivers and called from a set of five leaves one man standing. Nobody
notices on the board, everybody does on Friday. Give him a role that may be nobody
(``dig is weak #1 or nobody``), or leave him out on purpose and keep the warning in mind.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.offence.counting import tight_ends
from stemline.football.play import Man, Play
from stemline.football.players import Position


class W650(Mistake):
    title = "a man without a job"
    message = "without a job in {call}{from_spot}: {man}"
    label = "{concept} has no role here for {man}"
    help = (
        "give each a role; one that only some formations have ends with `or nobody`: `clear is "
        "weak #1 or nobody`"
    )
    varies = ("from_spot", "man")
    listed = "man"
    only_commas = True

    call: str
    concept: str
    from_spot: str
    man: tuple[str, ...]


WHEN = When.CALLED


def check_men_without_jobs(play: Play) -> Iterator[Diagnostic]:
    """One line for all who stand idle in a play."""
    whole = not play.protection or play.protection_words
    idle = [
        man.label
        for man in play.men
        if not man.interior
        and man.position is not Position.QUARTERBACK
        and not play.assignment(man.label).job
        # Of a protection that was not read nobody knows whom it keeps in.
        and (whole or not _may_stay_in(man, play))
    ]
    if idle:
        yield W650(
            man=tuple(idle), call=play.call.spoken, concept=play.call.concept,
            from_spot=f" from the {play.ball.value}",
        ).at(play.span)  # fmt: skip


def _may_stay_in(man: Man, play: Play) -> bool:
    return man.rank is None or man.label in tight_ends(play.men)


SAMPLES = """
### W650

He may catch a pass and has no role in this call. All such men of a concept stand in one line. On
the board nobody notices; on Friday everybody does.

```play fail W650
concept Verticals
    wide is strong #1
    slot is strong #2
    inner is strong #3
    lone is weak #1
    seam is weak #2
    wide, slot, inner, lone, seam runs go

dress Verticals
    in Three Two
```

```play
like W650
     seam is weak #2
+    check is back or nobody
     wide, slot, inner, lone, seam runs go
+    check runs check
```
"""

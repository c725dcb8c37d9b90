"""Does every man who may catch a pass have a job?

A concept written for four receivers and called from a set of five leaves one man standing. Nobody
notices on the board, everybody does on Friday. Give him a role that may be nobody
(``dig is weak #1 or nobody``), or leave him out on purpose and keep the warning in mind.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Play
from stemline.football.players import Position


class E631(Mistake):
    title = "a foot that never comes"
    message = "{target} is thrown on {foot} in {call}, and the feet there are {feet}"
    label = "not in the feet"
    help = "add {foot} to the `feet` line, or throw it on a foot that is there"

    call: str
    feet: str
    foot: str
    target: str


class W650(Mistake):
    title = "a man without a job"
    message = "without a job in {call}: {man}"
    label = "{concept} has no role here for {man}"
    help = (
        "give each a role; one that only some formations have ends with `or nobody`: `clear is "
        "weak #1 or nobody`"
    )
    varies = ("man",)
    listed = "man"

    call: str
    concept: str
    man: str


def check_jobs(play: Play) -> Iterator[Diagnostic]:
    """One line for all who stand idle in a play."""
    idle = [
        man.label
        for man in play.men
        if not man.interior
        and man.position is not Position.QUARTERBACK
        and not play.assignment(man.label).job
    ]
    if idle:
        yield W650(man=", ".join(idle), call=play.call.spoken, concept=play.call.concept).at(
            play.span
        )


def check_feet(play: Play) -> Iterator[Diagnostic]:
    """A read thrown on a foot that the feet never come to."""
    steps = {step.name for step in play.feet}
    for read in (*play.reads, *play.pressure):
        if read.foot and steps and read.foot not in steps:
            yield E631(
                target=read.target, foot=read.foot,
                feet=", ".join(step.name for step in play.feet), call=play.call.spoken,
            ).at(read.span)  # fmt: skip


SAMPLES = """
### E631

The ball is thrown on a step that he never takes.

```play fail E631
tag Slow for Crossers
    read flat on quick > near on 5 > top on reset > far on reset
```

```play
tag Slow for Crossers
    read flat on quick > near on 5 > top on reset > far on reset
    feet quick, 5, reset
```

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
concept Verticals
    wide is strong #1
    slot is strong #2
    inner is strong #3
    lone is weak #1
    seam is weak #2
    check is back or nobody
    wide, slot, inner, lone, seam runs go
    check runs check

dress Verticals
    in Three Two
```
"""

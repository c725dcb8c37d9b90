"""Is every read thrown on a foot that the quarterback puts down?

The feet are the clock of a pass: a receiver who is to have the ball on the third step of a man who
takes five waits for a ball that was never thrown, or turns his head too late for one that was.

Example: ``feet quick, 3`` and ``read clear on hitch``. Add the hitch to the feet, or throw it on a
step that is there.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Play


class E631(Mistake):
    title = "a foot that never comes"
    message = "{target} is thrown on {foot} in {call}, and the feet there are {feet}"
    label = "not in the feet"
    help = "add {foot} to the `feet` line, or throw it on a foot that is there"

    call: str
    feet: str
    foot: str
    target: str


WHEN = When.CALLED


def check_foot_that_comes(play: Play) -> Iterator[Diagnostic]:
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
"""

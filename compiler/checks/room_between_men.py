"""Is there room between two men, where they cross and where the ball comes down?

Two men who cross on paper run into each other on grass, and a blow that neither sees is how men are
hurt. Two in one window let one defender stand between them and have both. The places come from the
clock, whose figures are planning estimates: warnings both.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.timing.levels import GAP
from stemline.football.timing.space import CROWD, Crowd, Meeting, crossings, crowds


class W803(Mistake):
    title = "two men run into each other"
    message = "{call}: {over} and {under} are {apart} yards apart at {time} s"
    label = "they collide"
    help = (
        "run {over} a yard deeper or {under} a yard lower, or give one of them another stem; a "
        "yard between them is a brush"
    )
    varies = ("apart", "over", "time", "under")

    apart: str
    call: str
    over: str
    time: str
    under: str


class W804(Mistake):
    title = "two men in one window"
    message = "{call}: when the ball comes to {target}, {other} is {apart} yards away"
    label = "one defender has both"
    help = "run {other} {more} {way}, or look at both in one glance: `{target} with {role}`"
    varies = ("apart", "more", "other", "role", "way")

    apart: str
    call: str
    more: str
    other: str
    role: str
    target: str
    way: str


WHEN = When.PROVED


def check_room_between_men(call: ProvedCall) -> Iterator[Diagnostic]:
    """Men who run into each other or stand in one window."""
    play, clock = call.play, call.clock
    if clock is None:
        return
    over = max((look.arrives for look in clock.reads), default=0.0)
    for crossing in crossings(clock.men):
        if crossing.meeting is Meeting.COLLIDE and crossing.time <= over + GAP:
            task = play.assignment(crossing.under)
            yield W803(
                over=play.as_told(crossing.over), under=play.as_told(crossing.under),
                time=f"{crossing.time:.1f}", apart=f"{crossing.apart:.1f}", call=play.call.spoken,
            ).at(task.span)  # fmt: skip
    for crowd in crowds(clock):
        yield W804(
            target=crowd.read.read.target, other=play.as_told(crowd.other),
            apart=f"{crowd.apart:.1f}", call=play.call.spoken, role=play.as_said(crowd.other),
            more=_yards(max(math.ceil(2 * (CROWD - crowd.apart)) / 2, 0.5)), way=_away(crowd),
        ).at(crowd.read.read.span)  # fmt: skip


def _yards(more: float) -> str:
    return "a yard" if more == 1 else f"{more:g} yards"


def _away(crowd: Crowd) -> str:
    """Which way the other man is nearest to being alone: on, as he stands from the man thrown
    to."""
    at, there = crowd.read.at, crowd.at
    x, y = there.x - at.x, there.y - at.y
    if abs(y) >= abs(x):
        return "deeper" if y > 0 else "lower"
    return "farther out" if x * at.x > 0 else "farther in"


SAMPLES = """
### W803

On paper two lines cross. On the grass two men want the same half yard at the same moment.

```play fail W803 clock
tag Wheel for Crossers
    over runs cross 5
```

```play clock
tag Wheel for Crossers
    over runs cross 6
```

### W804

Two men within two yards of each other are one man for the defender between them.

```play fail W804 clock
tag Wheel for Crossers
    dig runs sit 9 over ball
    feet 5, reset, reset
    read near on 5 > far on reset > top on reset
```

```play clock
tag Wheel for Crossers
    dig runs dig 14
    feet 5, reset, reset
    read near on 5 > far on reset > top on reset
```
"""

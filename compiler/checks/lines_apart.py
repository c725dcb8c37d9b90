"""Does each receiver have grass of his own?

A flat, an arrow or a wheel is as wide as it is taught. From beside a man who stands close it ends
on him, and one defender has both; two men who run up one line are one man to throw to. Common
practice, no published source: warnings both.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import combinations, groupby, pairwise

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Assignment, Kind
from stemline.football.timing.clock import ReadClock
from stemline.football.timing.running import Timeline
from stemline.geometry.paths import Ending, Point, along, length, polyline
from stemline.playbook.concepts import RouteJob
from stemline.resolve.blocking.protectors import CHECKS
from stemline.source import Span


class W806(Mistake):
    title = "two men on one line"
    message = "{call}: {man} and {other} run {yards} yards on one line"
    label = "one on the other"
    help = "give one of them a line of his own{line}"
    varies = ("yards",)

    call: str
    line: str
    man: str
    other: str
    yards: str


class W807(Mistake):
    title = "a route that ends on the next man"
    message = "{call}: {man} ends {yards} {where} {other}"
    label = "no room there"
    help = "send him on outside{line}"
    varies = ("yards", "where")

    call: str
    line: str
    man: str
    other: str
    where: str
    yards: str


ON_ONE_LINE = 2.2
"""Yards apart up to which one defender has two men who run up the field side by side. Common
practice."""
ONE_LANE = 1.8
"""Yards apart up to which two drawn ways are one lane."""
ONE_WAY = 0.3
"""How far two ways may turn from each other and go one way, about seventeen degrees."""
TOGETHER = 5.0
"""Yards for which they may: stems cross, and men pass."""
STEMS = 4.0
"""Yards past the line up to which men who line up close get apart."""
BESIDE = 2.5
"""Yards from another man up to which a route ends on him. Common practice."""
GOES_OUT = 3.0
"""Yards to the side from which a route goes out to a place."""
LOW = 6.0
"""Yards past the line up to which a man who stands there is met."""
_STEP, _PACE = 0.05, 0.5
"""Seconds, and yards, between places that are looked at."""

_STACKED = 1.5
"""Yards to the side within which men line up one behind the other: their stems are one."""

WHEN = When.PROVED


def check_lines_apart(call: ProvedCall) -> Iterator[Diagnostic]:
    """Two men on one line, and a short route out that ends on the next man."""
    play, clock = call.play, call.clock
    if play.kind is not Kind.PASS or clock is None:
        return
    out = [a for a in play.assignments if _goes(a) and a.man in clock.men]
    for one, two in combinations(out, 2):
        if abs(play.man(one.man).snap.x - play.man(two.man).snap.x) <= _STACKED:
            continue
        yards = max(_side_by_side(clock.men[one.man], clock.men[two.man]), _one_lane(one, two))
        if yards >= TOGETHER:
            inner, outer = sorted((one, two), key=lambda a: abs(play.man(a.man).snap.x))
            yield W806(
                call=play.call.spoken, man=play.as_told(inner.man), other=play.as_told(outer.man),
                yards=f"{yards:.0f}", line=_line(call, outer, "up 2 outside numbers", ", as "),
            ).at(_told_at(call, inner))  # fmt: skip
    for a in out:
        yield from _on_the_next(call, a, out, clock)


def _goes(a: Assignment) -> bool:
    return a.path is not None and bool(a.path.legs) and a.path.ending in (
        Ending.RUN, Ending.SETTLE
    )  # fmt: skip


def _side_by_side(one: Timeline, two: Timeline) -> float:
    """Yards that two men run up the field beside each other, at the same moments."""
    first, last = max(one.start, two.start), min(one.arrives, two.arrives)
    times = [first + n * _STEP for n in range(math.ceil((last - first) / _STEP))]
    beside = [(one.at(t), two.at(t)) for t in times]
    return sum(
        now.y - before.y
        for (before, _), (now, other) in pairwise(beside)
        if now.distance(other) <= ON_ONE_LINE and min(now.y, other.y) > STEMS
    )


def _one_lane(one: Assignment, two: Assignment) -> float:
    """Yards of their drawn ways that lie upfield on each other, whoever is there first."""
    ways = [list(pairwise(p for p in _places(a) if p.y > STEMS)) for a in (one, two)]
    near = groupby(ways[0], lambda pace: any(_is_one(pace[0], pace[1], q, to) for q, to in ways[1]))
    stretches = ([p.y for p, _ in paces] for lies, paces in near if lies)
    return max((max(ys) - min(ys) for ys in stretches), default=0.0)


def _is_one(p: Point, on: Point, q: Point, to: Point) -> bool:
    """Whether two paces lie on each other and go one way: a post that crosses a wheel does not."""
    ways = math.atan2(on.x - p.x, on.y - p.y), math.atan2(to.x - q.x, to.y - q.y)
    return p.distance(q) <= ONE_LANE and abs(math.remainder(ways[0] - ways[1], math.tau)) <= ONE_WAY


def _places(a: Assignment) -> list[Point]:
    assert a.path is not None
    way = polyline(a.path)
    return [along(way, n * _PACE) for n in range(int(length(way) / _PACE) + 1)]


def _on_the_next(
    call: ProvedCall, a: Assignment, out: list[Assignment], clock: ReadClock
) -> Iterator[Diagnostic]:
    """Who comes to the end of a short way out where another receiver is by then."""
    assert a.path is not None
    play = call.play
    start, end = a.path.start, a.path.end
    side = math.copysign(1.0, end.x - start.x)
    own = play.man(a.man).snap.x * side >= 0  # who crosses is another matter
    short = own and abs(end.x - start.x) >= GOES_OUT and end.x * side > 0 and -2 < end.y <= LOW
    for other in out if short else ():
        there = clock.men[other.man].at(clock.men[a.man].arrives)
        outside = (play.man(other.man).snap.x - play.man(a.man).snap.x) * side > 0
        if other is not a and outside and there.distance(end) <= BESIDE:
            inside = (there.x - end.x) * side
            yield W807(
                call=play.call.spoken, man=play.as_told(a.man), other=play.as_told(other.man),
                yards=f"{there.distance(end):.1f} yards",
                where="inside" if inside >= 0 else "outside",
                line=_line(call, a, "to 4 outside numbers", ": "),
            ).at(_told_at(call, a))  # fmt: skip


def _route(call: ProvedCall, a: Assignment) -> RouteJob | None:
    """What the concept sends him to run; None where the protection does."""
    body = call.body
    said = (s for jobs in (*body.jobs.values(), *body.others.values()) for s in jobs)
    return next((s.value for s in said if s.span == a.span and isinstance(s.value, RouteJob)), None)


def _line(call: ProvedCall, a: Assignment, end: str, before: str) -> str:
    """A line to type behind ``before``: his route with an ``end`` of its own, or the end alone
    where he blocks or looks for a rusher first; nothing where the protection says his route."""
    job = _route(call, a)
    if job is None:
        return ""
    if job.route.name in CHECKS or " then " in job.words:
        return f"{before}`{end}` at the end of his line"
    return f"{before}`{call.play.as_said(a.man)} runs {job.route.name} {end}`"


def _told_at(call: ProvedCall, a: Assignment) -> Span:
    """Where the text says what he runs: for the protection's route, where it is named."""
    named = call.body.protect
    return named[0].span if named and _route(call, a) is None else a.span


SAMPLES = """
### W806

A fade outside and a go inside of it end on one line where two men stand close: one defender runs
with both.

```play fail W806 clock
formation Close extends Three Two
    S at call, 2.5 inside numbers, off line

concept Verticals
    a is strong #1
    a runs go
    b is strong #2
    b runs fade
    c is strong #3
    c runs stick
    everyone else runs hitch
    back runs swing weak
    feet 3
    read c on 3

dress Verticals
    in Close
```

```play clock
like W806
-    b runs fade
+    b runs seam to hash at 18
```

### W807

A flat is some six yards wide. From beside a man who stands close it ends on him, and one defender
has both: send him on outside.

```play fail W807 clock
formation Near extends Three Two
    S at call, 5 inside numbers, off line

concept Hitch Flat
    a is strong #1
    a runs hitch
    b is strong #2
    b runs flat
    everyone else runs go
    back runs swing weak
    feet 3, hitch
    read b on 3 > a on hitch

dress Hitch Flat
    in Near
```

```play clock
like W807
-    b runs flat
+    b runs flat to 4 outside numbers
```
"""

"""Do two men who are both read end their ways in one place?

When the ball comes to one of them the other may be elsewhere, and yet the routes as they are
taught bring both to one spot: the defender who waits there has both, and a passer's second look
finds what his first has found. Measured on what is drawn, not on the clock.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from stemline.checks.asked import ProvedCall, When
from stemline.checks.lines_apart import W806, W807, check_lines_apart
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.offence.tracing import called_depth
from stemline.football.play import Play, Read
from stemline.football.timing.space import CROWD, crowds
from stemline.geometry.paths import Ending, Point
from stemline.playbook.concepts import Body, RouteJob
from stemline.playbook.guards import narrowest
from stemline.playbook.said import SideWord

LOWER = 3.0
"""Yards by which another depth is offered: a yard more than one defender has. Common practice."""
SHORTEST = 2.0
"""Yards past the line of the shortest depth that is offered."""


class W808(Mistake):
    title = "two reads that end in one place"
    message = "{call}: the ways of {target} and {other} end {apart} yards apart"
    label = "one defender waits for both"
    help = "{instead}look at both in one glance: `{other} with {target}`"
    varies = ("apart",)

    apart: str
    call: str
    instead: str
    other: str
    target: str


WHEN = When.PROVED


def check_ends_apart(call: ProvedCall) -> Iterator[Diagnostic]:
    """Men of two reads whose routes end side by side; told once, of whom the clock
    finds so or whose lines are one."""
    play, clock = call.play, call.clock
    if clock is None:
        return
    told = {frozenset((*crowd.read.read.men, crowd.other)) for crowd in crowds(clock)}
    lines = [d.said for d in check_lines_apart(call) if isinstance(d.said, W806 | W807)]
    beside = {frozenset((said.man, said.other)) for said in lines}
    spots = {spot.name for spot in play.spots}
    alone = [read for read in play.reads if read.target not in spots and len(read.men) == 1]
    for first, then in combinations(alone, 2):
        men = (first.men[0], then.men[0])
        ends = [end for man in men if (end := _end(play, man)) is not None]
        glance = first.partner_man == men[1] or then.partner_man == men[0]
        if len(ends) < 2 or men[0] == men[1] or glance or frozenset(men) in told:
            continue
        if frozenset(play.as_told(man) for man in men) in beside:
            continue
        apart = ends[0].distance(ends[1])
        if apart < CROWD:
            yield W808(
                target=then.target, other=first.target, apart=f"{apart:.1f}",
                call=play.call.spoken, instead=_instead(call.body, (first, then), play),
            ).at(then.span)  # fmt: skip


def _end(play: Play, man: str) -> Point | None:
    """Where the way ends of a man who goes out for a pass."""
    path = play.assignment(man).path
    if path is None or not path.legs or path.ending not in (Ending.RUN, Ending.SETTLE):
        return None
    return path.end


def _instead(body: Body, reads: tuple[Read, Read], play: Play) -> str:
    """The line that takes one of the two to another depth; none of a man who is sent to a place or
    by another man."""
    for read in reads:
        worlds = {n for said in body.jobs.get(read.target, ()) for n in said.guard.worlds}
        said = narrowest([s for s in body.jobs.get(read.target, ()) if worlds <= s.guard.worlds])
        job = said.value if said is not None else None
        if not isinstance(job, RouteJob) or job.target or job.rail or job.then:
            continue
        if job.way is not None and not isinstance(job.way, SideWord):
            continue
        depth = called_depth(job.route, job.depth)
        other = depth - LOWER if depth - LOWER >= SHORTEST else depth + LOWER
        way = f" {job.way.value}" if job.way is not None else ""
        named = play.as_said(read.men[0])
        return f"say another depth: `{named} runs {job.route.name} {other:g}{way}`, or "
    return ""


SAMPLES = """
### W808

The one comes from the backfield, the other across from the far side, and both end in the same
place: there is one defender, and he is there for both.

```play fail W808 clock
tag Wheel for Crossers
    flat runs leak strong
    feet 3, reset, reset
    read flat on 3 > under on reset > settle on reset
```

```play clock
tag Wheel for Crossers
    flat runs leak 2 strong
    feet 3, reset, reset
    read flat on 3 > under on reset > settle on reset
```
"""

"""Whom a rule about the line asks for: surely, and if need be.

x is where the blocker stands, in yards right of the ball.
"""

from __future__ import annotations

from collections.abc import Iterable

from stemline.football.blocking.run_rules import BlockWay
from stemline.football.defence.fronts import HEAD_UP, Front
from stemline.football.defenders import Defender

_BACK_REACH = 2.5
"""Yards to the backside that a man without two neighbours there blocks back."""


def strong(
    front: Front, x: float, way: BlockWay, partner: float | None = None
) -> tuple[Defender, ...]:
    """The men who make a rule true, best first; ``partner`` is x of the second man of a double."""
    out, play = front.out(x), front.toward
    match way:
        case BlockWay.ON:
            return front.over(x)
        case BlockWay.REACH:
            there = [d for d in front.over(x) if (d.at.x - x) * play.value >= -HEAD_UP]
            beside = front.in_gap(x, play)
            if front.over(x) and front.neighbour(x, play) is None:
                # Covered at the end of the line: whoever is outside of all is the receiver's.
                beside = ()
            return once(there, beside)
        case BlockWay.DOWN | BlockWay.PIN:
            return front.in_gap(x, out.other)
        case BlockWay.BACK:
            return _back(front, x, 0.5)[:1]
        case BlockWay.OUT:
            there = [d for d in front.over(x) if (d.at.x - x) * out.value > -HEAD_UP]
            return once(there, front.in_gap(x, out))
        case BlockWay.DOUBLE:
            return () if partner is None else front.between(x, partner)
        case BlockWay.SCOOP:
            there = [d for d in front.over(x) if (d.at.x - x) * play.value > -HEAD_UP]
            return once(front.in_gap(x, play), there)
        case BlockWay.CUT_OFF:
            return once(front.in_gap(x, out.other), front.over(x))
        case BlockWay.HINGE:
            return once(front.in_gap(x, out.other), front.over(x), front.in_gap(x, out))
    return ()


def weak(front: Front, x: float, way: BlockWay) -> tuple[Defender, ...]:
    """Whom the rule would not ask for first, but who is near enough to be passed to him."""
    out = front.out(x)
    match way:
        case BlockWay.ON:
            # In his playside gap too: covered by the zone rule. The centre has both gaps.
            beside = front.in_gap(x, out.other) if x == 0 else front.in_gap(x, front.toward)
            return once(front.in_gap(x, out), beside)
        case BlockWay.REACH:
            return once(front.over(x), front.in_gap(x, front.toward, heads=True))
        case BlockWay.DOWN | BlockWay.PIN:
            return once(front.over(x), front.in_gap(x, out.other, heads=True))
        case BlockWay.BACK:
            return _back(front, x, 1.0)[1:]
    return ()


def _back(front: Front, x: float, share: float) -> tuple[Defender, ...]:
    """From his nose to the backside; past his neighbour up to that share of the way to the next
    man's nose. A 4i is nearer to the tackle, who is inside of nobody else."""
    side = front.toward.other
    first = front.neighbour(x, side)
    second = front.neighbour(first.snap.x, side) if first else None
    stop = _BACK_REACH
    if first is not None and second is not None:
        stop = abs(first.snap.x - x) + share * abs(second.snap.x - first.snap.x)
        stop -= HEAD_UP if share == 1.0 else 0.0
    there = [d for d in front.first_level if -HEAD_UP <= (d.at.x - x) * side.value <= stop]
    return tuple(sorted(there, key=lambda d: (d.at.x - x) * side.value))


def once(*groups: Iterable[Defender]) -> tuple[Defender, ...]:
    """The groups one after the other, each defender at his first place."""
    return tuple(dict.fromkeys(d for group in groups for d in group))

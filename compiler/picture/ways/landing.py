"""Where a path ends on paper, when men as large as symbols stand where it would end.

A symbol takes more of the field than a man. A path that ends beside one would run its arrow into
him, or wind round him to get there. Such a path ends at the nearest place, to any side, to which
it comes clear of everybody: rather past a man than short of him, and with as few turns as may be.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from stemline.geometry.curves import (
    dot,
    far_from,
    heading,
    left_of,
    nearest,
    turn_angle,
    turned,
    unit,
)
from stemline.geometry.paths import Ending, Leg, Path, Point, polyline, segments
from stemline.picture.ways.detours import Round, detour

_WAYS = 16
_RINGS = (0.3, 0.6, 0.9, 1.2, 1.6, 2.0)
"""Other ends are tried in this many directions, this many radii of the man away from the path's
own end."""
_ASTRAY, _SHORT = 1.0, 2.0
"""What a yard between the path's own end and the one on paper costs, and what a yard by which it
falls short costs besides: an arrow may show a man past another, never not yet past him."""
_TURNING = 0.05
"""Yards astray that a degree of turning is worth."""
_HOOK = 70.0
"""Degrees of turning that a bend round the man beside the end may cost: more looks like a hook."""
_CHANGED = 2.0
"""What it costs to leave out a turn of the path's own."""
_MIDDLE = 0.15
"""Part of a man's radius within which a path is planned through his middle."""
_HEADING = 1.0
"""Yards over which a path's last direction is taken."""
_BESIDE = 1.0
"""Radii of a man beyond his white within which a turn behind the line is left out for a bend."""
_WHITE = 0.35
"""Part of the white around a man that a path keeps at an end found for it."""
_ABOUT = 2.0
"""Yards beyond a man's white within which an end is beside him."""


@dataclass(frozen=True)
class Tip:
    """What is drawn on a path's end: an arrowhead ``long`` from its tip and ``half`` to each side,
    or a dot or a bar of that half. ``line`` is half the weight of the path itself. Yards."""

    long: float
    half: float
    line: float


def land(path: Path, obstacles: Sequence[Round], tip: Tip, turn: float) -> Path:
    """The path bent round ``obstacles``; ended elsewhere where it would run into the one beside
    its end or wind round him. A bend takes ``turn`` yards at most."""
    bent = detour(path, obstacles, turn)
    beside = [o for o in obstacles if _about(path.end, o, tip)]
    near = list(_touched(bent, beside, tip, 0.0))
    best, least = bent, math.inf
    if not near:
        planned = polyline(path) if beside else ()
        near = [o for o in beside if far_from(planned, o.at) < o.radius]
        if not near or turned(bent) < turned(path) + _HOOK:
            return bent
        least = _TURNING * turned(bent)
    wide = max(o.hard for o in near)
    ways = tuple(dict.fromkeys((path, _without_turns(path, near, wide))))
    for cost, way, end in _tries(path, ways, wide):
        if cost >= least - 1e-6:
            break
        if any(o.at.distance(end) < o.hard + tip.line for o in obstacles):
            continue
        tried = detour(way.by((*way.legs[:-1], Leg(end, way.legs[-1].reach))), obstacles, turn)
        cost += _TURNING * (turned(tried) + _aside(path, tried))
        if cost >= least - 1e-6 or any(_touched(tried, obstacles, tip, _WHITE)):
            continue
        if all(side_of(path, o) * side_of(tried, o) >= 0 for o in near):
            best, least = tried, cost
    return best


def _tries(path: Path, ways: Sequence[Path], radius: float) -> Iterator[tuple[float, Path, Point]]:
    """Each way to each place round the path's own end, and what that costs: the cheapest first."""
    ahead = heading(segments(path), _HEADING)
    ends = [(_astray(path.end, end, ahead), end) for end in _ends(path.end, radius)]
    tries = [
        (_CHANGED * number + astray, way, end)
        for number, way in enumerate(ways)
        for astray, end in ends
    ]
    yield from sorted(tries, key=lambda tried: round(tried[0], 6))


def side_of(path: Path, o: Round) -> float:
    """On which side of the path a man is, by the sign; 0 where it is planned through his middle."""
    best, side = math.inf, 0.0
    for a, b in pairwise(path.corners):
        at, _ = nearest(a, b, o.at)
        far = at.distance(o.at)
        if far < best - 1e-9:
            best, side = far, dot(left_of(unit(a, b)), o.at - a)
    return side if abs(side) > _MIDDLE * o.hard else 0.0


def _without_turns(path: Path, near: Sequence[Round], wide: float) -> Path:
    """The path without its turns behind the line near the men in the way: no depth is taught
    there, and a bend round a man has its own."""
    legs = tuple(
        leg
        for leg in path.legs[:-1]
        if leg.to.y >= 0 or all(leg.to.distance(o.at) > o.radius + _BESIDE * wide for o in near)
    )
    return path.by((*legs, path.legs[-1]))


def _astray(own: Point, end: Point, ahead: Point) -> float:
    """What it is worth to end at ``end``: more where it falls short of the path's ``own`` end, to
    which the path comes by ``ahead``."""
    short = max(0.0, dot(own - end, ahead))
    return _ASTRAY * end.distance(own) + _SHORT * short


def _about(end: Point, o: Round, tip: Tip) -> bool:
    return o.at.distance(end) < o.radius + tip.long + _ABOUT


def _touched(path: Path, obstacles: Sequence[Round], tip: Tip, white: float) -> Iterator[Round]:
    """Those into whom the path as drawn comes, or into ``white`` of the white around them."""
    if not obstacles:
        return
    drawn, head = polyline(path), _tip(path, tip)
    xs, ys = [p.x for p in (*drawn, *head)], [p.y for p in (*drawn, *head)]
    left, right, low, high = min(xs), max(xs), min(ys), max(ys)
    for o in obstacles:
        keep = o.hard + white * (o.radius - o.hard)
        far, at = keep + tip.line, o.at
        if not (left - far < at.x < right + far and low - far < at.y < high + far):
            continue
        if far_from(drawn, o.at) < keep + tip.line or far_from(head, o.at) < keep:
            yield o


def _tip(path: Path, tip: Tip) -> tuple[Point, ...]:
    """The outline of what is drawn on the end."""
    end, ahead = path.end, heading(segments(path), max(tip.long, tip.half))
    across = left_of(ahead).scaled(tip.half)
    match path.ending:
        case Ending.RUN:
            back = end - ahead.scaled(tip.long)
            return back + across, end, back - across, back + across
        case Ending.BLOCK:
            return end + across, end - across
        case Ending.SETTLE:
            along = ahead.scaled(tip.half)
            return end + across, end + along, end - across, end - along, end + across
        case Ending.STAND:
            return end, end


def _ends(end: Point, radius: float) -> Iterator[Point]:
    """Places round an end, the nearest first, and of equal ones those away from the ball."""
    outward = 1.0 if end.x >= 0 else -1.0
    for ring in _RINGS:
        for way in range(_WAYS):
            angle = 2 * math.pi * way / _WAYS
            by = Point(outward * math.cos(angle), math.sin(angle))
            yield end + by.scaled(ring * radius)


def _aside(path: Path, tried: Path) -> float:
    """Degrees between the directions in which two paths end."""
    ahead, other = (heading(segments(p), _HEADING) for p in (path, tried))
    return turn_angle(Point(0.0, 0.0), ahead, ahead + other)

"""Paths that would lie on one another are drawn side by side, like lanes of a road.

Four rules, all of them the same when left and right are changed over:

* a man who turns straight back comes back in the next lane, nearer the line of scrimmage (or,
  when he runs up and down the field, farther from the ball);
* a path that would run along one already laid is moved a lane away, to the side it is on;
* two paths that would cross at a very small angle cross in one short step;
* a path never moves where it starts, at its man.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from stemline.geometry.curves import dot, left_of, turn_angle, unit
from stemline.geometry.paths import Leg, Path, Point

_BACK = 158.0
"""Degrees: a turn sharper than this would hide the way in under the way back."""
_PARALLEL = 0.985
"""Cosine of the angle (10 degrees) under which two lines look like one."""
_SHARED = 1.2
"""Yards that two lines must share before they are told apart."""
_NEAR = 0.8
"""Two lines nearer than this part of a lane look like one."""
_SHALLOW = 0.9925
"""Cosine of the angle (7 degrees) under which two lines that cross look like one."""
_ROOM = 1.8
"""Lanes from a crossing to the nearer end of a line that is to cross in one step."""
_LEAD = 1.5
"""Yards a path takes from its man to its lane."""
_TRIES = 6
_LONGER = 2.5
"""A way back this much longer than the way in may slant to its true end."""


def turn_back(path: Path, lane: float) -> Path:
    """The path with each turn straight back opened into a narrow loop, ``lane`` yards wide."""
    points = list(path.corners)
    reaches = [0.0, *(leg.reach for leg in path.legs)]
    index = 1
    while index < len(points) - 1:
        a, b, c = points[index - 1 : index + 2]
        if a.distance(b) < lane or turn_angle(a, b, c) < _BACK:
            index += 1
            continue
        side = _side(a, b, c)
        have = dot(c - b, side)
        if b.distance(c) < _LONGER * a.distance(b):
            points[index + 1] = c + side.scaled(max(0.0, lane - have))
        points.insert(index + 1, b + side.scaled(lane))
        reaches[index] = lane / 2
        reaches.insert(index + 1, lane / 2)
        index += 2
    return _path(points, reaches, path)


def spread(paths: Sequence[Path], lane: float) -> tuple[Path, ...]:
    """The paths, each later one moved off the earlier ones that it would run along."""
    laid: list[Path] = []
    for path in paths:
        laid.append(_steeper(_off(path, laid, lane), laid, lane))
    return tuple(laid)


def _steeper(path: Path, laid: Sequence[Path], lane: float) -> Path:
    """The path with each crossing of an earlier one at a very small angle, where it could not be
    seen who goes where, made in one short step from the one side to the other."""
    points = list(path.corners)
    reaches = [0.0, *(leg.reach for leg in path.legs)]
    others = [piece for other in laid for piece in pairwise(other.corners)]
    index = 0
    while index < len(points) - 1:
        step = _step(points[index], points[index + 1], others, lane)
        points[index + 1 : index + 1] = step
        reaches[index + 1 : index + 1] = [lane / 2] * len(step)
        index += len(step) or 1
    return path if len(points) == len(path.corners) else _path(points, reaches, path)


def _step(a: Point, b: Point, others: Sequence[tuple[Point, Point]], lane: float) -> list[Point]:
    """Where the line from a to b begins and ends to cross the first of ``others`` that it meets at
    a very small angle; nothing where it meets none, or too near to an end of its own."""
    ahead = unit(a, b)
    for c, d in others:
        if abs(dot(ahead, unit(c, d))) < _SHALLOW:
            continue
        across = left_of(unit(c, d))
        before, after = dot(a - c, across), dot(b - c, across)
        if before * after >= 0:
            continue
        at = a + (b - a).scaled(before / (before - after))
        if dot(at - c, at - d) > 0 or min(at.distance(a), at.distance(b)) < _ROOM * lane:
            continue
        aside = across.scaled(math.copysign(lane / 2, before))
        return [at - ahead.scaled(lane) + aside, at + ahead.scaled(lane) - aside]
    return []


def _off(path: Path, laid: Sequence[Path], lane: float) -> Path:
    points = list(path.corners)
    reaches = [0.0, *(leg.reach for leg in path.legs)]
    others = [piece for other in laid for piece in pairwise(other.corners)]
    index = 0
    while index < len(points) - 1:
        own = list(pairwise(points[:index]))
        for _ in range(_TRIES):
            by = _clash(points[index], points[index + 1], [*others, *own], lane)
            if by is None:
                break
            if index == 0:
                lead = min(_LEAD, points[0].distance(points[1]) / 2)
                points.insert(1, points[0] + unit(points[0], points[1]).scaled(lead))
                reaches.insert(1, lead / 2)
                index = 1
            points[index] += by
            points[index + 1] += by
        index += 1
    return _path(points, reaches, path)


def _clash(a: Point, b: Point, others: Sequence[tuple[Point, Point]], lane: float) -> Point | None:
    """How far to move the line from a to b off the first line that it runs along, if any."""
    if a.distance(b) < _SHARED:
        return None
    ahead = unit(a, b)
    for c, d in others:
        if c.distance(d) < _SHARED or abs(dot(ahead, unit(c, d))) < _PARALLEL:
            continue
        ends = sorted((dot(c - a, ahead), dot(d - a, ahead)))
        low, high = max(0.0, ends[0]), min(a.distance(b), ends[1])
        if high - low < _SHARED:
            continue
        middle = a + ahead.scaled((low + high) / 2)
        across = left_of(unit(c, d))
        off = dot(middle - c, across)
        if abs(off) >= _NEAR * lane:
            continue
        side = across if abs(off) > 1e-3 and off > 0 else across.scaled(-1)
        if abs(off) <= 1e-3:
            side = _quiet(across, middle)
        return side.scaled(lane - abs(off))
    return None


def _side(a: Point, b: Point, c: Point) -> Point:
    """To which side of the line from a to b the way back to c goes."""
    across = left_of(unit(a, b))
    off = dot(c - b, across)
    if abs(off) > 1e-3:
        return across if off > 0 else across.scaled(-1)
    return _quiet(across, b)


def _quiet(across: Point, at: Point) -> Point:
    """Of two sides with nothing to choose between: toward the line, else away from the ball."""
    if abs(across.y) > 0.5:
        return across if across.y < 0 else across.scaled(-1)
    outward = 1.0 if at.x >= 0 else -1.0
    return across if across.x * outward > 0 else across.scaled(-1)


def _path(points: Sequence[Point], reaches: Sequence[float], like: Path) -> Path:
    legs = tuple(Leg(to, reach) for to, reach in zip(points[1:], reaches[1:], strict=True))
    return Path(points[0], legs, like.ending)

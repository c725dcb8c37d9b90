"""A path through the line of scrimmage goes through the middle of a gap, not over a lineman.

Symbols are larger than men, so the gap on paper is narrower than the one on the field. A path that
comes through it at a slant is brought straight through its middle, and back to its own way after.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from stemline.football.players import Position
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Leg, Path, Point, polyline
from stemline.picture.paper.symbol import Symbol

_LEVEL = 0.9
"""Yards from the line of scrimmage within which a symbol stands in the line."""
_TURN = 0.25
_WIDE = 3.0
"""A gap with room for this many times the white beside a path is wide."""
_NEAR = 0.9
"""Yards from the way through a gap within which the path's own turns are left out."""
_CORNER = 1.3
"""A corner of the centre's square is this many times as far from its middle as its sides."""
_TALLER = 1.25
"""A way through a gap is straight this many radii of a symbol before and after the line."""


def through_gaps(path: Path, symbols: Iterable[Symbol], white: float, aside: float = 0.0) -> Path:
    """The path with each place where it comes nearer than ``white`` to a symbol of the line, on
    its way between two of them, moved to the middle between the two, or ``aside`` from it."""
    line = sorted((s for s in symbols if abs(s.at.y) < _LEVEL), key=lambda s: s.at.x)
    for a, b in pairwise(path.corners):
        gap = _between(a, b, line)
        if gap is not None and _tight(path, gap, white):
            path = _straightened(path, gap, white, aside)
    return path


def gap_of(path: Path, symbols: Iterable[Symbol]) -> tuple[Symbol, Symbol] | None:
    """The two men of the line between whom a path last goes through it."""
    line = sorted((s for s in symbols if abs(s.at.y) < _LEVEL), key=lambda s: s.at.x)
    gaps = [_between(a, b, line) for a, b in pairwise(path.corners)]
    return next((gap for gap in reversed(gaps) if gap is not None), None)


def _straightened(path: Path, gap: tuple[Symbol, Symbol], white: float, aside: float) -> Path:
    """The path straight through a gap, its own turns there left out."""
    left, right = gap
    tall = _TALLER * max(left.edge, right.edge)
    low, high = min(left.at.y, right.at.y) - tall, max(left.at.y, right.at.y) + tall
    corners = path.corners
    index = next(i for i, (a, b) in enumerate(pairwise(corners)) if _between(a, b, gap))
    a, b = corners[index], corners[index + 1]
    x = _place(_at(a, b), gap, white, aside)
    first, second = (low, high) if b.y > a.y else (high, low)
    before = [leg for leg in path.legs[:index] if not _beside(leg.to, Point(x, first), tall)]
    after = [leg for leg in path.legs[index:-1] if not _beside(leg.to, Point(x, second), tall)]
    way = (Leg(Point(x, first), _TURN), Leg(Point(x, second), _TURN))
    return replace(path, legs=(*before, *way, *after, path.legs[-1]))


def _place(x: float, gap: tuple[Symbol, Symbol], white: float, aside: float) -> float:
    """Where to go through: in the middle of a narrow gap, as near as may be to the path's own
    place in a wide one."""
    left, right = gap
    low, high = left.at.x + left.edge + white, right.at.x - right.edge - white
    middle = (left.at.x + left.edge + right.at.x - right.edge) / 2
    if high - low < _WIDE * white:
        return middle + aside
    return min(max(x, low + white / 2), high - white / 2)


def _beside(corner: Point, to: Point, tall: float) -> bool:
    """Whether a turn is so near the way through that it would only bend it."""
    return corner.distance(to) < _NEAR or (abs(corner.y) < tall and abs(corner.x - to.x) < _NEAR)


def gap_at(x: float, symbols: Iterable[Symbol], white: float) -> float:
    """The middle of the gap in the line where ``x`` is; outside the line ``x`` itself, moved off
    the outermost symbol by ``white``."""
    line = sorted((s for s in symbols if abs(s.at.y) < _LEVEL), key=lambda s: s.at.x)
    for left, right in pairwise(line):
        if left.at.x <= x <= right.at.x:
            low, high = left.at.x + left.edge + white, right.at.x - right.edge - white
            return min(max(x, low), high) if low < high else (low + high) / 2
    if line and x < line[0].at.x:
        return min(x, line[0].at.x - line[0].edge - white)
    if line:
        return max(x, line[-1].at.x + line[-1].edge + white)
    return x


def clear(points: Sequence[Point], symbols: Iterable[Symbol], white: float) -> bool:
    """Whether a line stays ``white`` away from every symbol."""
    return all(
        far_from(points, s.at) >= s.edge + white
        and all(far_from(points, corner) >= white for corner in _corners(s))
        for s in symbols
    )


def _corners(symbol: Symbol) -> tuple[Point, ...]:
    """The corners of the centre's square; other men are round."""
    if symbol.man.position is not Position.CENTRE:
        return ()
    by = symbol.edge
    return tuple(symbol.at + Point(x, y) for x in (-by, by) for y in (-by, by))


def _over(a: Point, b: Point) -> bool:
    """Whether a piece comes over the line of scrimmage; a man of the line starts on it."""
    return a.y < 0 <= b.y or b.y <= 0 < a.y


def _at(a: Point, b: Point) -> float:
    return a.x + (b.x - a.x) * a.y / (a.y - b.y)


def _between(a: Point, b: Point, line: Sequence[Symbol]) -> tuple[Symbol, Symbol] | None:
    """The two neighbours between whom a piece crosses the line, where there is room for it."""
    if not _over(a, b):
        return None
    x = _at(a, b)
    for left, right in pairwise(line):
        if left.at.x <= x <= right.at.x:
            room = right.at.x - right.edge - left.at.x - left.edge
            return (left, right) if room > 0 else None
    return None


def _tight(path: Path, gap: tuple[Symbol, Symbol], white: float) -> bool:
    drawn = polyline(path)
    return any(far_from(drawn, s.at) < _farthest(s) + white for s in gap)


def _farthest(symbol: Symbol) -> float:
    """How far from his middle a symbol reaches: the centre's has corners."""
    square = symbol.man.position is Position.CENTRE
    return symbol.edge * (_CORNER if square else 1.0)

"""A path through the line of scrimmage goes through the middle of a gap, not over a lineman.

Symbols are larger than men, so the gap on paper is narrower than the one on the field. A path that
comes through it at a slant is brought straight through its middle, and back to its own way after.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from stemline.draw.curves import far_from
from stemline.draw.symbols import Symbol
from stemline.paths import Leg, Path, Point, polyline

_LEVEL = 0.9
"""Yards from the line of scrimmage within which a symbol stands in the line."""
_TURN = 0.25
_TALLER = 1.25
"""A way through a gap is straight this many radii of a symbol before and after the line."""


def through_gaps(path: Path, symbols: Iterable[Symbol], white: float, aside: float = 0.0) -> Path:
    """The path with each place where it comes nearer than ``white`` to a symbol of the line, on
    its way between two of them, moved to the middle between the two, or ``aside`` from it."""
    line = sorted((s for s in symbols if abs(s.at.y) < _LEVEL), key=lambda s: s.at.x)
    legs: list[Leg] = []
    for (a, b), leg in zip(pairwise(path.corners), path.legs, strict=True):
        gap = _between(a, b, line)
        if gap is not None and _tight(path, gap, white):
            legs += _straight(a, b, gap, aside)
        legs.append(leg)
    return replace(path, legs=tuple(legs))


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
    return all(far_from(points, s.at) >= s.edge + white for s in symbols)


def _at(a: Point, b: Point) -> float:
    return a.x + (b.x - a.x) * a.y / (a.y - b.y)


def _between(a: Point, b: Point, line: Sequence[Symbol]) -> tuple[Symbol, Symbol] | None:
    """The two neighbours between whom a piece crosses the line, where there is room for it."""
    if a.y * b.y >= 0:
        return None
    x = _at(a, b)
    for left, right in pairwise(line):
        if left.at.x <= x <= right.at.x:
            room = right.at.x - right.edge - left.at.x - left.edge
            return (left, right) if room > 0 else None
    return None


def _tight(path: Path, gap: tuple[Symbol, Symbol], white: float) -> bool:
    drawn = polyline(path)
    return any(far_from(drawn, s.at) < s.edge + white for s in gap)


def _straight(a: Point, b: Point, gap: tuple[Symbol, Symbol], aside: float) -> tuple[Leg, Leg]:
    """The two corners of the way straight through the middle of a gap."""
    left, right = gap
    x = (left.at.x + left.edge + right.at.x - right.edge) / 2 + aside
    up = 1.0 if b.y > a.y else -1.0
    tall = _TALLER * max(left.edge, right.edge)
    low, high = min(left.at.y, right.at.y) - tall, max(left.at.y, right.at.y) + tall
    first, second = (low, high) if up > 0 else (high, low)
    first = max(first, a.y) if up > 0 else min(first, a.y)
    second = min(second, b.y) if up > 0 else max(second, b.y)
    return Leg(Point(x, first), _TURN), Leg(Point(x, second), _TURN)

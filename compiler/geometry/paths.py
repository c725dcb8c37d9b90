"""Paths over the field: points in yards (x right of the ball, y downfield) and how turns round.

A path is a start and its legs. Each leg names the point where the next turn is planned; the
turn there is rounded by a radius-like reach, so that the runner leaves the straight line
``reach`` yards before the point and is back on the next line ``reach`` yards after it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import Enum
from functools import cache, cached_property
from itertools import pairwise

_CURVE_STEPS = 12
"""Pieces a rounded turn is cut into where a polyline is asked for."""


@dataclass(frozen=True)
class Point:
    """x yards to the offence's right of the ball, y yards past the line of scrimmage."""

    x: float
    y: float

    def __add__(self, other: Point) -> Point:
        return Point(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Point) -> Point:
        return Point(self.x - other.x, self.y - other.y)

    def scaled(self, factor: float) -> Point:
        return Point(self.x * factor, self.y * factor)

    def toward(self, other: Point, share: float) -> Point:
        """The point at ``share`` of the way to another (0 to 1)."""
        return Point(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)

    def distance(self, other: Point) -> float:
        return math.hypot(self.x - other.x, self.y - other.y)

    def mirrored(self) -> Point:
        """The same point with left and right changed over."""
        return Point(-self.x if self.x else 0.0, self.y)


class Ending(Enum):
    """How a path ends on paper: he runs on, settles facing the ball, blocks, or just stands."""

    RUN = "run"
    SETTLE = "settle"
    BLOCK = "block"
    STAND = "stand"


@dataclass(frozen=True)
class Leg:
    """A straight piece to ``to``; ``reach`` yards of it, before and after the turn, are rounded."""

    to: Point
    reach: float = 0.0


@dataclass(frozen=True)
class Path:
    """Where a man runs after the snap (or before it, for a motion)."""

    start: Point
    legs: tuple[Leg, ...]
    ending: Ending = Ending.RUN

    @property
    def end(self) -> Point:
        return self.legs[-1].to if self.legs else self.start

    @cached_property
    def corners(self) -> tuple[Point, ...]:
        return (self.start, *(leg.to for leg in self.legs))

    def by(self, legs: Iterable[Leg]) -> Path:
        """From the same start to the same kind of end by other legs."""
        return Path(self.start, tuple(legs), self.ending)

    def mirrored(self) -> Path:
        legs = tuple(replace(leg, to=leg.to.mirrored()) for leg in self.legs)
        return Path(self.start.mirrored(), legs, self.ending)


@dataclass(frozen=True)
class Line:
    """A straight segment."""

    start: Point
    end: Point


@dataclass(frozen=True)
class Curve:
    """A quadratic Bezier segment: a turn at ``corner`` rounded off."""

    start: Point
    corner: Point
    end: Point

    def at(self, t: float) -> Point:
        u = 1 - t
        return Point(
            u * u * self.start.x + 2 * u * t * self.corner.x + t * t * self.end.x,
            u * u * self.start.y + 2 * u * t * self.corner.y + t * t * self.end.y,
        )

    def between(self, count: int) -> list[Point]:
        """The places `at` which ``count`` even steps meet, without both ends."""
        ax, ay, bx, by = self.start.x, self.start.y, self.corner.x, self.corner.y
        cx, cy = self.end.x, self.end.y
        return [
            Point(i * ax + j * bx + k * cx, i * ay + j * by + k * cy) for i, j, k in _shares(count)
        ]


@cache
def _shares(count: int) -> tuple[tuple[float, float, float], ...]:
    """What start, corner and end of a turn weigh at each place between its ``count`` steps."""
    ways = [(1 - i / count, i / count) for i in range(1, count)]
    return tuple((u * u, 2 * u * t, t * t) for u, t in ways)


Segment = Line | Curve


def segments(path: Path) -> tuple[Segment, ...]:
    """The path as drawn: lines and rounded turns, end to end. A turn takes at most half a leg."""
    points = path.corners
    made: list[Segment] = []
    at = points[0]
    for (a, b), c, leg in zip(pairwise(points), points[2:], path.legs, strict=False):
        before, after = a.distance(b), b.distance(c)
        reach = min(leg.reach, before / 2, after / 2)
        if reach < 1e-9:
            made += _line(at, b)
            at = b
            continue
        into, out = b.toward(a, reach / before), b.toward(c, reach / after)
        made += _line(at, into)
        made.append(Curve(into, b, out))
        at = out
    made += _line(at, points[-1])
    return tuple(made)


def crossing(path: Path, y: float) -> float | None:
    """Where a path last crosses a depth, going up the field."""
    found = None
    for a, b in pairwise(path.corners):
        if a.y <= y < b.y:
            found = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y)
    return found


def polyline(path: Path) -> tuple[Point, ...]:
    """The drawn path as points close together on its turns, from start to end."""
    points = [path.start]
    for piece in segments(path):
        if isinstance(piece, Curve):
            points += piece.between(_CURVE_STEPS)
        points.append(piece.end)
    return tuple(points)


def length(points: Iterable[Point]) -> float:
    """Length in yards of a polyline."""
    return sum(a.distance(b) for a, b in pairwise(points))


def along(points: tuple[Point, ...], distance: float) -> Point:
    """The point ``distance`` yards along a polyline; its last point beyond the end."""
    left = distance
    for a, b in pairwise(points):
        step = a.distance(b)
        if left <= step and step > 0:
            return a + (b - a).scaled(left / step)
        left -= step
    return points[-1]


def _line(a: Point, b: Point) -> list[Segment]:
    return [Line(a, b)] if a.distance(b) > 1e-9 else []

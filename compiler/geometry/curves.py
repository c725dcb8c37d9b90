"""Plane geometry of drawn paths: cutting, measuring and turning lines and rounded turns. Yards."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from stemline.geometry.paths import Curve, Line, Path, Point, Segment

Pieces = tuple[Segment, ...]

_NONE = 1e-9
_STEPS = 10
_HALVINGS = 18


def unit(a: Point, b: Point) -> Point:
    """The direction from a to b, one yard long; straight downfield when they are one point."""
    return Point(*_way(a, b))


def _way(a: Point, b: Point) -> tuple[float, float]:
    dx, dy = b.x - a.x, b.y - a.y
    far = math.hypot(dx, dy)
    return (dx * (1 / far), dy * (1 / far)) if far > _NONE else (0.0, 1.0)


def left_of(direction: Point) -> Point:
    """A quarter turn to the left."""
    return Point(-direction.y, direction.x)


def dot(a: Point, b: Point) -> float:
    return a.x * b.x + a.y * b.y


def nearest(a: Point, b: Point, p: Point) -> tuple[Point, float]:
    """The point of the line from a to b nearest to p, and how far along it is (0 to 1)."""
    dx, dy = b.x - a.x, b.y - a.y
    size = dx * dx + dy * dy
    t = ((p.x - a.x) * dx + (p.y - a.y) * dy) / size if size >= _NONE else 0.0
    t = min(1.0, max(0.0, t))
    return Point(a.x + t * dx, a.y + t * dy), t


def passed(a: Point, b: Point, p: Point) -> tuple[float, float]:
    """How many yards the line from a to b passes p at, and how far along that is (0 to 1)."""
    ax, ay, px, py = a.x, a.y, p.x, p.y
    dx, dy = b.x - ax, b.y - ay
    size = dx * dx + dy * dy
    t = ((px - ax) * dx + (py - ay) * dy) / size if size >= _NONE else 0.0
    t = min(1.0, max(0.0, t))
    return math.hypot(ax + t * dx - px, ay + t * dy - py), t


def points_of(pieces: Pieces) -> tuple[Point, ...]:
    """The pieces as points close together."""
    if not pieces:
        return ()
    points = [pieces[0].start]
    for piece in pieces:
        if isinstance(piece, Curve):
            points += piece.between(_STEPS)
        points.append(piece.end)
    return tuple(points)


def split(piece: Segment, t: float) -> tuple[Segment, Segment]:
    """The piece in two, cut at ``t`` of its way (0 to 1)."""
    if isinstance(piece, Line):
        at = piece.start.toward(piece.end, t)
        return Line(piece.start, at), Line(at, piece.end)
    into, out = piece.start.toward(piece.corner, t), piece.corner.toward(piece.end, t)
    at = into.toward(out, t)
    return Curve(piece.start, into, at), Curve(at, out, piece.end)


def leave(pieces: Pieces, centre: Point, radius: float) -> Pieces:
    """The pieces from where they first leave the circle; () when they never do."""
    for index, piece in enumerate(pieces):
        if piece.end.distance(centre) > radius:
            if piece.start.distance(centre) >= radius:
                return pieces[index:]
            return (split(piece, _out_at(piece, centre, radius))[1], *pieces[index + 1 :])
    return ()


def _out_at(piece: Segment, centre: Point, radius: float) -> float:
    """How far along a piece that starts inside the circle and ends outside it crosses the edge."""
    if isinstance(piece, Line):
        step, gap = piece.end - piece.start, piece.start - centre
        a, b, c = dot(step, step), dot(step, gap), dot(gap, gap) - radius * radius
        return (math.sqrt(b * b - a * c) - b) / a
    ax, ay, bx, by = piece.start.x, piece.start.y, piece.corner.x, piece.corner.y
    cx, cy = piece.end.x, piece.end.y
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        t = (low + high) / 2
        u = 1 - t
        i, j, k = u * u, 2 * u * t, t * t
        x, y = i * ax + j * bx + k * cx, i * ay + j * by + k * cy
        if math.hypot(x - centre.x, y - centre.y) > radius:
            high = t
        else:
            low = t
    return high


def reverse(pieces: Pieces) -> Pieces:
    return tuple(_reversed(piece) for piece in reversed(pieces))


def _reversed(piece: Segment) -> Segment:
    if isinstance(piece, Line):
        return Line(piece.end, piece.start)
    return Curve(piece.end, piece.corner, piece.start)


def stop_short(pieces: Pieces, by: float) -> Pieces:
    """The pieces up to ``by`` yards, as the crow flies, before their end."""
    if not pieces or by <= 0:
        return pieces
    end = pieces[-1].end
    for index in range(len(pieces) - 1, -1, -1):
        piece = pieces[index]
        if piece.start.distance(end) > by:
            if piece.end.distance(end) >= by:
                return pieces[: index + 1]
            back = _reversed(piece)
            rest = split(back, _out_at(back, end, by))[1]
            return (*pieces[:index], _reversed(rest))
    return ()


def heading(pieces: Pieces, over: float) -> Point:
    """The direction in which the pieces end, taken over their last ``over`` yards."""
    end = pieces[-1].end
    before = stop_short(pieces, over)
    return unit(before[-1].end if before else pieces[0].start, end)


def turn_angle(a: Point, b: Point, c: Point) -> float:
    """Degrees turned at b on the way from a to c: 0 straight on, 180 straight back."""
    return _between(_way(a, b), _way(b, c))


def _between(one: tuple[float, float], other: tuple[float, float]) -> float:
    cosine = one[0] * other[0] + one[1] * other[1]
    return math.degrees(math.acos(min(1.0, max(-1.0, cosine))))


def turned(path: Path) -> float:
    """Degrees that a path turns in all."""
    ways = [_way(a, b) for a, b in pairwise(path.corners)]
    return sum(_between(one, other) for one, other in pairwise(ways))


def length_and_turn(path: Path) -> tuple[float, float]:
    """The length of a path by its corners, and the degrees that it turns in all."""
    far = degrees = 0.0
    before: tuple[float, float] | None = None
    for a, b in pairwise(path.corners):
        dx, dy = b.x - a.x, b.y - a.y
        step = math.hypot(dx, dy)
        way = (dx * (1 / step), dy * (1 / step)) if step > _NONE else (0.0, 1.0)
        if before is not None:
            degrees += _between(before, way)
        far, before = far + step, way
    return far, degrees


def far_from(points: Sequence[Point], p: Point) -> float:
    """Yards from p to the nearest place of a polyline."""
    px, py, best = p.x, p.y, math.inf
    for a, b in pairwise(points):
        ax, ay = a.x, a.y
        dx, dy = b.x - ax, b.y - ay
        size = dx * dx + dy * dy
        t = ((px - ax) * dx + (py - ay) * dy) / size if size > _NONE else 0.0
        if t >= 1.0:
            t = 1.0
        elif not t > 0.0:
            t = 0.0
        far = (ax + t * dx - px) ** 2 + (ay + t * dy - py) ** 2
        if far < best:
            best = far
    return math.sqrt(best)

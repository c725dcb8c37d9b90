"""Do two men's paths cross close to the line? Then the concept's page carries a caution."""

from __future__ import annotations

from itertools import combinations, pairwise

from stemline.football.paths import Point, polyline
from stemline.football.play import Play

CLOSE = 8.0
"""Yards past the line within which crossing paths bring men into each other's way.
Common practice, no published source: shallow crossers and the settle above them lie inside it."""


def paths_cross(play: Play) -> bool:
    """Whether the paths of two different men cross from the line to `CLOSE` yards past it."""
    paths = [
        polyline(assignment.path)
        for assignment in play.assignments
        if assignment.path is not None and not play.man(assignment.man).interior
    ]
    return any(_cross(a, b) for a, b in combinations(paths, 2))


def _cross(a: tuple[Point, ...], b: tuple[Point, ...]) -> bool:
    return any(
        _meet(p, q, r, s) for p, q in pairwise(a) for r, s in pairwise(b)
    )


def _meet(p: Point, q: Point, r: Point, s: Point) -> bool:
    """Whether two segments properly cross at a point that is close to the line."""
    across, along = _turn(r, s, p), _turn(r, s, q)
    if across * along >= 0 or _turn(p, q, r) * _turn(p, q, s) >= 0:
        return False
    y = p.y + (q.y - p.y) * across / (across - along)
    return 0 <= y <= CLOSE


def _turn(a: Point, b: Point, c: Point) -> float:
    """Twice the signed area of the triangle: its sign says on which side of a-b lies c."""
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)

"""Do two men's paths cross close to the line? Then the concept's page carries a caution."""

from __future__ import annotations

from itertools import combinations, pairwise

from stemline.football.play import Play
from stemline.paths import Point, polyline

CLOSE = 8.0
"""Yards past the line within which crossing paths bring men into each other's way.
Common practice, no published source: shallow crossers and the settle above them lie inside it."""


TOGETHER = 6.0
"""Two men who have run about as far when their paths cross meet there: yards of difference.
Common practice, no published source."""


def paths_cross(play: Play) -> bool:
    """Whether two men's paths cross from the line to `CLOSE` yards past it at about one time."""
    paths = [
        polyline(assignment.path)
        for assignment in play.assignments
        if assignment.path is not None and not play.man(assignment.man).interior
    ]
    return any(_cross(a, b) for a, b in combinations(paths, 2))


def _cross(a: tuple[Point, ...], b: tuple[Point, ...]) -> bool:
    run_a = 0.0
    for p, q in pairwise(a):
        run_b = 0.0
        for r, s in pairwise(b):
            meet = _meet(p, q, r, s)
            if meet is not None and 0 <= meet.y <= CLOSE:
                apart = run_a + p.distance(meet) - run_b - r.distance(meet)
                if abs(apart) <= TOGETHER:
                    return True
            run_b += r.distance(s)
        run_a += p.distance(q)
    return False


def _meet(p: Point, q: Point, r: Point, s: Point) -> Point | None:
    """Where two segments properly cross; None where they do not."""
    across, along = _turn(r, s, p), _turn(r, s, q)
    if across * along >= 0 or _turn(p, q, r) * _turn(p, q, s) >= 0:
        return None
    return p + (q - p).scaled(across / (across - along))


def _turn(a: Point, b: Point, c: Point) -> float:
    """Twice the signed area of the triangle: its sign says on which side of a-b lies c."""
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)

"""What a concept claims to be, pale under the lines with an edge that a copier keeps: a triangle,
a high-low, a stretch."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from stemline.football.play import Play
from stemline.geometry.curves import dot, left_of, unit
from stemline.geometry.paths import Point
from stemline.picture.scene.scene import Item, Polygon

_SHARPEST = 0.5
"""A corner of a band sticks out by half its width over this at most."""


def claim_items(play: Play, half: float) -> tuple[Item, ...]:
    """A polygon between three points or more; a band, ``half`` its width in yards, along two."""
    items: list[Item] = []
    for claim in play.claims:
        if len(claim.points) >= 3 and claim.kind == "triangle":
            items.append(Polygon(claim.points, "claim", claim.span))
        elif len(points := _apart(claim.points)) >= 2:
            items.append(Polygon(band(points, half), "claim", claim.span))
    return tuple(items)


def band(points: Sequence[Point], half: float) -> tuple[Point, ...]:
    """The outline of a band along ``points``, no two neighbours of which are one place."""
    sides = [left_of(unit(a, b)) for a, b in pairwise(points)]
    outs = [sides[0], *(_corner(a, b) for a, b in pairwise(sides)), sides[-1]]
    left = [p + out.scaled(half) for p, out in zip(points, outs, strict=True)]
    right = [p - out.scaled(half) for p, out in zip(points, outs, strict=True)]
    return (*left, *reversed(right))


def _corner(a: Point, b: Point) -> Point:
    """Where the sides of two pieces meet, in halves of the band's width from its middle."""
    out = unit(Point(0.0, 0.0), a + b)
    return out.scaled(1 / max(dot(out, a), _SHARPEST))


def _apart(points: Sequence[Point]) -> list[Point]:
    """The points without those that lie on the one before."""
    kept = list(points[:1])
    for point in points[1:]:
        if point.distance(kept[-1]) > 1e-6:
            kept.append(point)
    return kept

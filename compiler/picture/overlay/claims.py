"""What a concept claims to be, pale under the lines: a triangle, a high-low, a stretch."""

from __future__ import annotations

from itertools import pairwise

from stemline.football.play import Play
from stemline.geometry.paths import Line
from stemline.picture.scene.scene import Item, Polygon, Stroke


def claim_items(play: Play) -> tuple[Item, ...]:
    """A filled polygon between three points or more, a broad pale line between two."""
    items: list[Item] = []
    for claim in play.claims:
        if len(claim.points) >= 3 and claim.kind == "triangle":
            items.append(Polygon(claim.points, "claim", claim.span))
        elif len(claim.points) >= 2:
            pieces = tuple(Line(a, b) for a, b in pairwise(claim.points))
            items.append(Stroke(pieces, "claim", (), claim.span))
    return tuple(items)

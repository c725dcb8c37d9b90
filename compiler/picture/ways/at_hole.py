"""The carrier's way through his hole, and what is near it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from stemline.geometry.paths import Path, Point, crossing
from stemline.picture.paper.symbol import Symbol

HOLE = 1.6
"""Yards to each side of the line of scrimmage where the carrier's way is set by his hole."""
SHALLOW = 20.0
"""Degrees: two lines that cross at less cannot be told apart."""


@dataclass(frozen=True)
class DrawnHole:
    """The carrier's path, and how far to the right of it each man leads him through the line.

    ``aim`` is his path as it was before it was fitted to the paper: by it is known who leads.
    ``wing`` is a man outside whom they all go.
    """

    path: Path
    lanes: Mapping[str, float]
    aim: Path
    wing: Symbol | None = None


def near(at: Point, path: Path, lane: float) -> bool:
    """Whether a corner in the hole is no farther than ``lane`` aside from the carrier there, or
    right below the hole: who leads is there before a carrier who comes from the side."""
    xs = [crossing(path, y) for y in {at.y, max(at.y, 0.0)}] if abs(at.y) < HOLE else []
    return any(x is not None and abs(at.x - x) <= lane for x in xs)

"""A rectangle along the axes."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from stemline.geometry.paths import Point


@dataclass(frozen=True)
class Box:
    """An upright box in yards."""

    left: float
    bottom: float
    right: float
    top: float

    @classmethod
    def around(cls, points: Collection[Point]) -> Box:
        """The least box that holds all of one point or more."""
        xs, ys = [p.x for p in points], [p.y for p in points]
        return cls(min(xs), min(ys), max(xs), max(ys))

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def height(self) -> float:
        return self.top - self.bottom

    @property
    def centre(self) -> Point:
        return Point((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    def grown(self, by: float) -> Box:
        return Box(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def union(self, other: Box) -> Box:
        return Box(
            min(self.left, other.left),
            min(self.bottom, other.bottom),
            max(self.right, other.right),
            max(self.top, other.top),
        )

    def overlap(self, other: Box) -> float:
        """Shared area in square yards."""
        if self.right <= other.left or other.right <= self.left:
            return 0.0
        if self.top <= other.bottom or other.top <= self.bottom:
            return 0.0
        wide = min(self.right, other.right) - max(self.left, other.left)
        tall = min(self.top, other.top) - max(self.bottom, other.bottom)
        return wide * tall if wide > 0 and tall > 0 else 0.0

    def holds(self, other: Box) -> bool:
        return (
            self.left <= other.left
            and self.bottom <= other.bottom
            and self.right >= other.right
            and self.top >= other.top
        )


def square(at: Point, half: float) -> Box:
    """The box around a point, ``half`` yards to each side."""
    return Box(at.x - half, at.y - half, at.x + half, at.y + half)

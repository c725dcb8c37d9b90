"""Field that a close picture closes up: where a true place is drawn."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from stemline.geometry.paths import Point


@dataclass(frozen=True)
class ClosedUp:
    """Field from ``start`` to ``end`` yards off the ball on one side, drawn ``kept`` yards wide."""

    side: int
    start: float
    end: float
    kept: float

    @property
    def saved(self) -> float:
        return self.end - self.start - self.kept


@dataclass(frozen=True)
class Fold:
    """Which stretches of field are closed up; none, in most pictures."""

    gaps: tuple[ClosedUp, ...] = ()

    def x(self, x: float) -> float:
        """Where a true x is drawn."""
        out, saved = abs(x), 0.0
        for gap in self._on(x):
            if out >= gap.end:
                saved += gap.saved
            elif out > gap.start:
                part = (out - gap.start) / (gap.end - gap.start)
                saved += (out - gap.start) - part * gap.kept
        return x - saved if x > 0 else x + saved

    def _on(self, x: float) -> Iterable[ClosedUp]:
        return (gap for gap in self.gaps if gap.side * x > 0)

    @property
    def breaks(self) -> tuple[float, ...]:
        """Where the breaks are drawn, from left to right."""
        return tuple(sorted(self.x(gap.side * (gap.start + gap.end) / 2) for gap in self.gaps))

    def hides(self, x: float) -> bool:
        """Whether a true x lies in a stretch that is closed up."""
        return any(gap.start < gap.side * x < gap.end for gap in self.gaps)

    def point(self, at: Point) -> Point:
        return Point(self.x(at.x), at.y)


NO_FOLD = Fold()

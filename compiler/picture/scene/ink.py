"""What is already on the paper, so that words and dashed lines can keep off it.

Lines are kept as weighted dots a small step apart, in square cells; symbols and tiles as boxes.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable
from itertools import pairwise

from stemline.geometry.box import Box, square
from stemline.geometry.curves import points_of
from stemline.geometry.paths import Point
from stemline.picture.scene.scene import Disc, Item, Stroke

_CELL = 8
"""A cell is this many steps wide."""


class Ink:
    """Ink on paper; ``step`` is the yards between two dots of a line."""

    def __init__(self, step: float) -> None:
        self._step = step
        self._cell = step * _CELL
        self._dots: dict[tuple[int, int], list[tuple[float, float, float]]] = defaultdict(list)
        self._solids: list[Box] = []

    def copy(self) -> Ink:
        """The same on another sheet: what is laid there is not on this one."""
        made = Ink(self._step)
        made._dots.update({cell: dots[:] for cell, dots in self._dots.items()})
        made._solids = list(self._solids)
        return made

    def line(self, points: Iterable[Point], weight: float = 1.0, apart: float = 1.0) -> None:
        """Lay a line, given by points end to end, as a dot every ``apart`` steps."""
        cell, step, dots, floor = self._cell, self._step * apart, self._dots, math.floor
        for a, b in pairwise(points):
            ax, ay = a.x, a.y
            dx, dy = b.x - ax, b.y - ay
            count = max(1, round(math.hypot(dx, dy) / step))
            dx, dy = dx / count, dy / count
            for i in range(count):
                x, y = ax + i * dx, ay + i * dy
                dots[floor(x / cell), floor(y / cell)].append((x, y, weight))

    def lay(self, items: Iterable[Item]) -> None:
        """Lines, their arrowheads and the dots on their ends."""
        for item in items:
            if isinstance(item, Stroke):
                self.line(points_of(item.segments))
                if item.head:
                    self.line((*item.head, item.head[0]))
            elif isinstance(item, Disc):
                self.solid(square(item.centre, item.radius))

    def solid(self, box: Box) -> None:
        """Lay something that nothing may cover at all."""
        self._solids.append(box)

    def under(self, box: Box, around: float = 0.0) -> tuple[float, float]:
        """The weight of line under a box, about one for each step of a plain line, and that under
        the box grown by ``around``."""
        if not around:
            inner = self.within(box.left, box.bottom, box.right, box.top)
            return inner, inner
        cell, inner, outer = self._cell, 0.0, 0.0
        left, right, bottom, top = box.left, box.right, box.bottom, box.top
        low_x, high_x, low_y, high_y = left - around, right + around, bottom - around, top + around
        rows = range(math.floor(low_y / cell), math.floor(high_y / cell) + 1)
        for i in range(math.floor(low_x / cell), math.floor(high_x / cell) + 1):
            for j in rows:
                for x, y, weight in self._dots.get((i, j), ()):
                    if low_x <= x <= high_x and low_y <= y <= high_y:
                        outer += weight
                        if left <= x <= right and bottom <= y <= top:
                            inner += weight
        return inner, outer

    def within(self, left: float, bottom: float, right: float, top: float) -> float:
        """The weight of line in a place, as `under` has it for a box."""
        cell, dots, total = self._cell, self._dots, 0.0
        rows = range(math.floor(bottom / cell), math.floor(top / cell) + 1)
        for i in range(math.floor(left / cell), math.floor(right / cell) + 1):
            for j in rows:
                if (i, j) in dots:
                    for x, y, weight in dots[i, j]:
                        if left <= x <= right and bottom <= y <= top:
                            total += weight
        return total

    def covers(self, box: Box, around: float = 0.0) -> bool:
        """Whether a box, grown by ``around``, would lie on a symbol."""
        left, right = box.left - around, box.right + around
        bottom, top = box.bottom - around, box.top + around
        for s in self._solids:
            if s.left < right and s.right > left and s.bottom < top and s.top > bottom:
                return True
        return False

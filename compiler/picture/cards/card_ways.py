"""A way over a card that meets no letter: the shortest over a grid, pulled straight."""

from __future__ import annotations

import heapq
import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from stemline.geometry.box import Box
from stemline.geometry.paths import Point

_CELL = 5.0
"""Points of a cell of the grid."""
_CROSSED = 5.0
"""What a cell with another line or a ground in it costs more than an empty one."""
_AROUND = 90.0
"""Points to each side of a way's ends within which it is looked for."""

Cell = tuple[int, int]
_STEPS = tuple((i, j) for i in (-1, 0, 1) for j in (-1, 0, 1) if i or j)


@dataclass
class CardGround:
    """What a line may not meet, ``walls``, and what it had better not, ``soft``."""

    frame: Box
    walls: Sequence[Box]
    soft: list[Box] = field(default_factory=list)
    _used: dict[Cell, float] = field(default_factory=dict)

    def way(self, start: Point, end: Point, own: Sequence[Box] = ()) -> list[Point]:
        """Corners from ``start`` to ``end``, past all walls but ``own``; none where none leads
        there."""
        room = Box(
            min(start.x, end.x), min(start.y, end.y), max(start.x, end.x), max(start.y, end.y)
        ).grown(_AROUND)
        walls = [w for w in self.walls if w not in own and w.overlap(room) > 0]
        soft = [s for s in self.soft if s not in own and s.overlap(room) > 0]
        cells = self._found(start, end, room, walls, soft)
        if not cells:
            return []
        points = [start, *(Point(i * _CELL, j * _CELL) for i, j in cells[1:-1]), end]
        return self._pulled(points, walls, soft)

    def use(self, points: Sequence[Point]) -> None:
        """A line is drawn there: the next had better keep off it."""
        for a, b in pairwise(points):
            for at in _along(a, b):
                self._used[_cell(at)] = _CROSSED

    def _found(
        self, start: Point, end: Point, room: Box, walls: Sequence[Box], soft: Sequence[Box]
    ) -> list[Cell]:
        first, last = _cell(start), _cell(end)
        costs: dict[Cell, float] = {}

        def cost(cell: Cell) -> float:
            if cell not in costs:
                costs[cell] = self._cost(Point(cell[0] * _CELL, cell[1] * _CELL), room, walls, soft)
            return costs[cell]

        done: dict[Cell, Cell] = {}
        least = {first: 0.0}
        heap = [(math.dist(first, last), 0.0, first, first)]
        while heap:
            _, spent, at, before = heapq.heappop(heap)
            if at in done:
                continue
            done[at] = before
            if at == last:
                break
            for i, j in _STEPS:
                to = at[0] + i, at[1] + j
                if to in done or (to != last and cost(to) == math.inf):
                    continue
                more = spent + math.hypot(i, j) * (1.0 if to == last else cost(to))
                if more < least.get(to, math.inf):
                    least[to] = more
                    heapq.heappush(heap, (more + math.dist(to, last), more, to, at))
        if last not in done:
            return []
        way = [last]
        while way[-1] != first:
            way.append(done[way[-1]])
        return way[::-1]

    def _cost(self, at: Point, room: Box, walls: Sequence[Box], soft: Sequence[Box]) -> float:
        inside = self.frame.left < at.x < self.frame.right and self.frame.bottom < at.y
        if not inside or at.y > self.frame.top or not _in(at, room):
            return math.inf
        if any(_in(at, wall) for wall in walls):
            return math.inf
        crossed = _CROSSED if any(_in(at, each) for each in soft) else 0.0
        return 1.0 + crossed + self._used.get(_cell(at), 0.0)

    def _pulled(
        self, points: list[Point], walls: Sequence[Box], soft: Sequence[Box]
    ) -> list[Point]:
        """The points without those that a straight line may pass over at no more cost."""
        made, at = [points[0]], 0
        while at < len(points) - 1:
            to = len(points) - 1
            while to > at + 1 and not self._straight(points, at, to, walls, soft):
                to -= 1
            made.append(points[to])
            at = to
        return made

    def _straight(
        self, points: Sequence[Point], a: int, b: int, walls: Sequence[Box], soft: Sequence[Box]
    ) -> bool:
        line = _along(points[a], points[b])
        if any(_in(at, wall) for at in line for wall in walls):
            return False
        return self._crossings(line, soft) <= 2 * self._crossings(points[a : b + 1], soft) + 2

    def _crossings(self, line: Sequence[Point], soft: Sequence[Box]) -> int:
        return sum(_cell(at) in self._used or any(_in(at, s) for s in soft) for at in line)


def _cell(at: Point) -> Cell:
    return round(at.x / _CELL), round(at.y / _CELL)


def _in(at: Point, box: Box) -> bool:
    return box.left < at.x < box.right and box.bottom < at.y < box.top


def _along(a: Point, b: Point) -> list[Point]:
    steps = max(1, math.ceil(a.distance(b) / _CELL * 2))
    return [a + (b - a).scaled(i / steps) for i in range(steps + 1)]


def left_of_box(points: Sequence[Point], box: Box) -> list[Point]:
    """What of a way lies past the box in which it begins."""
    for index, (a, b) in reversed(list(enumerate(pairwise(points)))):
        if not _inside(box, a):
            continue
        if _inside(box, b):
            return []
        inside, outside = 0.0, 1.0
        for _ in range(20):
            middle = (inside + outside) / 2
            if _inside(box, a + (b - a).scaled(middle)):
                inside = middle
            else:
                outside = middle
        return [a + (b - a).scaled(outside), *points[index + 1 :]]
    return list(points)


def _inside(box: Box, at: Point) -> bool:
    return box.left <= at.x <= box.right and box.bottom <= at.y <= box.top


def short_of(points: Sequence[Point], at: Point, radius: float) -> list[Point]:
    """The way as far as it first comes within ``radius`` of ``at``."""
    made: list[Point] = []
    for a, b in pairwise(points):
        if a.distance(at) <= radius:
            break
        made.append(a)
        if b.distance(at) <= radius:
            outside, inside = 0.0, 1.0
            for _ in range(20):
                middle = (inside + outside) / 2
                if (a + (b - a).scaled(middle)).distance(at) > radius:
                    outside = middle
                else:
                    inside = middle
            made.append(a + (b - a).scaled(outside))
            break
    else:
        made += points[-1:]
    return made

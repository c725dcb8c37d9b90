"""One place for each of several labels, so that all of them together cost least.

Branch and bound: a first arrangement by descent, each label in turn taking its cheapest place while
any becomes cheaper; then every choice that could still beat it, the label with the least choice
first. What a label costs at least is added up over those without a place, and where that is not
under the best so far nothing farther is tried. After A. H. Land and A. G. Doig, "An Automatic
Method of Solving Discrete Programming Problems", Econometrica 28(3), 1960; the descent as in
Christensen, Marks and Shieber, "An Empirical Study of Algorithms for Point-Feature Label
Placement", ACM Transactions on Graphics 14(3), 1995. It draws no lots.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import cache
from heapq import heapify, heappop, heappush
from itertools import takewhile

Together = Callable[[int, int, int, int], float]
"""What label ``i`` at its place ``k`` and label ``j`` at ``l`` cost beyond their own costs."""

_PASSES = 6
_MOST = 10_000
"""Steps after which the best arrangement so far is taken. Diagrams of real calls need a few
hundred; the limit is here so that no text, however crowded, makes the program stand still."""
_ALIKE = 1e-9


Row = list[tuple[float, int]]
"""A label's places by cost: what each costs, and its number."""


class CheapestFirst:
    """A label's places by cost, of equal ones by number, as a `Row` that nobody has to work out
    farther than it is read. ``ranks`` are what each costs at least, and ``cost`` tells what."""

    def __init__(self, ranks: Sequence[float], cost: Callable[[int], float]) -> None:
        # What is only ranked stands before what costs as much: of equal ones the lower number wins.
        self._left = [(rank, False, k) for k, rank in enumerate(ranks)]
        heapify(self._left)
        self.cost = cost
        self._row: Row = []

    def __iter__(self) -> Iterator[tuple[float, int]]:
        at = 0
        while at < len(self._row) or self._worked_out():
            yield self._row[at]
            at += 1

    def _worked_out(self) -> bool:
        """Work out one more; False where there is none."""
        while self._left:
            cost, known, k = heappop(self._left)
            if known:
                self._row.append((cost, k))
                return True
            heappush(self._left, (self.cost(k), True, k))
        return False

    def cheapest(self) -> tuple[float, int]:
        return next(iter(self))

    def at_most(self, cost: float) -> Row:
        """Those that cost no more than that."""
        return list(takewhile(lambda place: place[0] <= cost, self))


def choose(rows: Sequence[CheapestFirst], together: Together) -> tuple[int, ...]:
    """The number of each label's place. ``rows`` are each label's places, none of which costs below
    0; what two cost ``together`` is not below 0 either, and the same from both sides."""
    first = _descent(rows, together)
    search = _Search(rows, together, first)
    search.down([], 0.0, dict(enumerate(search.rows)))
    return tuple(search.best)


def _descent(rows: Sequence[CheapestFirst], together: Together) -> list[int]:
    taken: list[int] = []
    for i, row in enumerate(rows):
        taken.append(_cheapest(i, row, taken, together))
    for _ in range(_PASSES):
        before = list(taken)
        for i, row in enumerate(rows):
            taken[i] = _cheapest(i, row, taken, together)
        if taken == before:
            break
    return taken


def _cheapest(i: int, row: CheapestFirst, taken: Sequence[int], together: Together) -> int:
    best, best_cost = row.cheapest()[1], float("inf")
    for cost, k in row:
        if cost >= best_cost - _ALIKE:
            break
        whole = cost + sum(together(i, k, j, at) for j, at in enumerate(taken) if j != i)
        if whole < best_cost - _ALIKE:
            best, best_cost = k, whole
    return best


class _Search:
    """The search below a first arrangement, which it keeps unless it finds a cheaper one."""

    def __init__(
        self, rows: Sequence[CheapestFirst], together: Together, first: Sequence[int]
    ) -> None:
        self._together = together
        self._added = cache(self._costs_with)
        self._least = [row.cheapest()[0] for row in rows]
        self.best = list(first)
        self._cost = sum(row.cost(at) for row, at in zip(rows, first, strict=True))
        for i, at in enumerate(first):
            self._cost += sum(self._together(i, at, j, first[j]) for j in range(i))
        slack = self._cost - sum(self._least)
        self.rows = [
            row.at_most(least + slack) for row, least in zip(rows, self._least, strict=True)
        ]
        self._left = _MOST

    def down(self, taken: list[tuple[int, int]], cost: float, rows: dict[int, Row]) -> None:
        """Try every place of one more label; ``rows`` are those still without one, their costs
        with what they cost together with the places ``taken``."""
        self._left -= 1
        if not rows:
            if cost < self._cost - _ALIKE:
                self._cost = cost
                for i, k in taken:
                    self.best[i] = k
            return
        least = {i: row[0][0] for i, row in rows.items()}
        at_least = cost + sum(least.values())
        if at_least >= self._cost - _ALIKE:
            return
        # the label that the others have cost most already; of several the one with least choice
        i = max(rows, key=lambda i: (least[i] - self._least[i], -len(rows[i]), -i))
        for own, k in rows[i]:
            if self._left <= 0 or at_least - least[i] + own >= self._cost - _ALIKE:
                return
            left = {j: _with(row, self._added(j, i, k)) for j, row in rows.items() if j != i}
            self.down([*taken, (i, k)], cost + own, left)

    def _costs_with(self, j: int, i: int, k: int) -> dict[int, float]:
        """What each place of label ``j`` that costs something with place ``k`` of ``i`` costs
        then, by number."""
        both = {at: self._together(i, k, j, at) for _, at in self.rows[j]}
        return {at: cost for at, cost in both.items() if cost}


def _with(row: Row, added: dict[int, float]) -> Row:
    """The row with what its places cost besides: most pairs of places cost nothing together."""
    if not added:
        return row
    return sorted((cost + added.get(at, 0.0), at) for cost, at in row)

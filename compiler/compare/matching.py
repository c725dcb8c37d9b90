"""Which old thing is which new one: the pairing whose likenesses together are the greatest."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

ALIKE = 0.5
"""Likeness from which two things of different names are one, renamed. Half of what it says is
kept: common practice of version control (git finds a moved file at 50 %), no published source for
playbooks."""


def likeness(one: Iterable[object], other: Iterable[object]) -> float:
    """What two bags share of all that is in either, from 0 to 1; of two empty ones nothing."""
    a, b = Counter(one), Counter(other)
    whole = (a | b).total()
    return (a & b).total() / whole if whole else 0.0


def best_pairs(scores: Sequence[Sequence[float]], least: float = ALIKE) -> list[tuple[int, int]]:
    """Pairs (row, column), each of either once, of the greatest sum of scores of ``least`` or
    more: the assignment problem, by augmenting paths (Kuhn 1955, in Jonker and Volgenant's form).
    """
    rows, columns = len(scores), len(scores[0]) if scores else 0
    if not rows or not columns:
        return []
    size = max(rows, columns)

    def cost(row: int, column: int) -> float:
        if row >= rows or column >= columns or scores[row][column] < least:
            return 0.0
        return -scores[row][column]

    taken = _assigned(size, [[cost(r, c) for c in range(size)] for r in range(size)])
    return [(r, c) for r, c in enumerate(taken) if cost(r, c) < 0]


def _assigned(size: int, cost: Sequence[Sequence[float]]) -> list[int]:
    """The column of each row in a square assignment of the least cost."""
    over, under = [0.0] * (size + 1), [0.0] * (size + 1)
    holder, way = [0] * (size + 1), [0] * (size + 1)
    for row in range(1, size + 1):
        holder[0], at = row, 0
        least, seen = [float("inf")] * (size + 1), [False] * (size + 1)
        while holder[at]:
            seen[at], here, step, then = True, holder[at], float("inf"), 0
            for column in range(1, size + 1):
                if seen[column]:
                    continue
                slack = cost[here - 1][column - 1] - over[here] - under[column]
                if slack < least[column]:
                    least[column], way[column] = slack, at
                if least[column] < step:
                    step, then = least[column], column
            for column in range(size + 1):
                if seen[column]:
                    over[holder[column]] += step
                    under[column] -= step
                else:
                    least[column] -= step
            at = then
        while at:
            holder[at], at = holder[way[at]], way[at]
    found = [0] * size
    for column in range(1, size + 1):
        found[holder[column] - 1] = column - 1
    return found

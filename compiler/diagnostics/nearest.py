"""The nearest right names for a wrong one."""

from __future__ import annotations

from collections.abc import Iterable


def distance(a: str, b: str) -> int:
    """Damerau-Levenshtein distance (neighbours swapped count one), capital letters ignored."""
    a, b = a.casefold(), b.casefold()
    two_back: list[int] = []
    last = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        row = [i]
        for j, y in enumerate(b, 1):
            cost = min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (x != y))
            if i > 1 and j > 1 and x == b[j - 2] and a[i - 2] == y:
                cost = min(cost, two_back[j - 2] + 1)
            row.append(cost)
        two_back, last = last, row
    return last[-1]


def nearest(wrong: str, right: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """Up to ``most`` names within a third of the longer word's length, best first, then by name.

    A name that holds the wrong word whole ("Quads" for "Quads Tight") counts as near.
    """
    word = wrong.casefold()

    def rank(name: str) -> tuple[int, str] | None:
        if not word:
            return None
        gap = distance(wrong, name)
        if gap <= max(1, max(len(wrong), len(name)) // 3):
            return gap, name
        other = name.casefold()
        if len(word) > 2 and (word in other or (len(other) > 2 and other in word)):
            return gap, name
        return None

    ranked = sorted(r for r in (rank(n) for n in set(right)) if r is not None)
    return tuple(name for _, name in ranked[:most])

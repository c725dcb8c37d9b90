"""The nearest right names for a wrong one."""

from __future__ import annotations

from collections.abc import Iterable

_LONGEST = 60
"""Letters of the longest word that is guessed at: what is longer is no name that was misspelt."""


def distance(a: str, b: str, most: int | None = None) -> int:
    """Damerau-Levenshtein distance (neighbours swapped count one), capital letters ignored.

    From ``most`` on the answer may be any number above it: who asks only up to there is answered
    sooner.
    """
    a, b = a.casefold(), b.casefold()
    limit = max(len(a), len(b)) if most is None else most
    if abs(len(a) - len(b)) > limit:
        return limit + 1
    a, b = _unlike(a, b)
    two_back: list[int] = []
    last = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        row = [i]
        for j, y in enumerate(b, 1):
            cost = min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (x != y))
            if i > 1 and j > 1 and x == b[j - 2] and a[i - 2] == y:
                cost = min(cost, two_back[j - 2] + 1)
            row.append(cost)
        if min(row) > limit and min(last) > limit:
            return limit + 1
        two_back, last = last, row
    return last[-1]


def _unlike(a: str, b: str) -> tuple[str, str]:
    """Two words without what they begin and end with alike: it costs no step."""
    shorter = min(len(a), len(b))
    ahead = next((n for n in range(shorter) if a[n] != b[n]), shorter)
    a, b = a[ahead:], b[ahead:]
    shorter = min(len(a), len(b))
    behind = next((n for n in range(shorter) if a[-1 - n] != b[-1 - n]), shorter)
    return a[: len(a) - behind], b[: len(b) - behind]


def nearest(wrong: str, right: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """Up to ``most`` names within a third of the longer word's length, best first, then by name.

    A name that holds the wrong word whole ("Quads" for "Quads Tight") counts as near.
    """
    word = wrong.casefold()
    if not word or len(word) > _LONGEST:
        return ()
    letters = set(word)

    def rank(name: str) -> tuple[int, str] | None:
        if len(name) > _LONGEST:
            return None
        other = name.casefold()
        within = len(word) > 2 and (word in other or (len(other) > 2 and other in word))
        allowed = max(1, max(len(wrong), len(name)) // 3)
        # Each letter that only one of them has is a step at least.
        if not within and len(letters.symmetric_difference(other)) > 2 * allowed:
            return None
        gap = distance(wrong, name, None if within else allowed)
        return (gap, name) if within or gap <= allowed else None

    ranked = sorted(r for r in (rank(n) for n in set(right)) if r is not None)
    return tuple(name for _, name in ranked[:most])

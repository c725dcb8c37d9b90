"""The numbers that are called out: new every week, none that a crowd makes another of.

They follow from the week, its seed and last week's numbers alone. The smallest are given, since a
short number is the quickest to hear and to find.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from itertools import count

from stemline.diagnostics.catalogue.weeks import E995
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.source import Span
from stemline.week.week_values import Plan

_SPARE = 2
"""Numbers more than calls, so that there is always another one than last week's."""


def sounds_like(number: int) -> int:
    """A number as a crowd leaves it: thirteen is thirty, a hundred and fourteen is a hundred and
    forty. Two numbers of one sound are never both given."""
    hundreds, rest = divmod(number, 100)
    return 100 * hundreds + (10 * (rest - 10) if 13 <= rest <= 19 else rest)


def numbers_of(plan: Plan, last: Mapping[str, int]) -> dict[str, int]:
    """A number for each call of the plan's lists; ``last`` are last week's by call.

    No two calls have one number or one sound, and no call the number it had last week, but where
    the coach keeps it; none has a number that is a word of his short names.
    """
    kept = {call: n for call, n in plan.frozen.items() if call in plan.calls}
    free = [call for call in plan.calls if call not in kept]
    pool = _Pool(plan.seed or plan.team, plan.number, {*plan.frozen.values(), *_in_names(plan)})
    if plan.together:
        return {**kept, **_together(plan, free, last, pool)}
    return {**kept, **_given(free, pool.first(len(free) + _SPARE), last, pool)}


def _in_names(plan: Plan) -> Iterator[int]:
    """Numbers that the coach's own short words say: with `Three Two is 32` a call with the number
    32 would be two things on one card, and in one shout."""
    for _, short in plan.shorts:
        yield from (int(word) for word in short.split() if word.isdecimal())


class _Pool:
    """Numbers that may be given, and an order of them that nobody guesses from last week's."""

    def __init__(self, seed: str, week: int, kept: set[int]) -> None:
        self._seed = f"{seed.casefold()} {week}"
        self._taken = {sounds_like(number) for number in kept}
        self._numbers = self._all()

    def _all(self) -> Iterator[int]:
        for number in count(1):
            sound = sounds_like(number)
            if sound in self._taken:
                continue
            # Which of two that sound alike is given changes from week to week.
            teen = 100 * (sound // 100) + sound % 100 // 10 + 10
            twins = sound % 10 == 0 and 30 <= sound % 100 <= 90
            if twins and number != (teen if self.place(sound) % 2 else sound):
                continue
            self._taken.add(sound)
            yield number

    def first(self, many: int) -> list[int]:
        """The next numbers that nobody was given, the smallest first."""
        return [next(self._numbers) for _ in range(many)]

    def place(self, what: object) -> int:
        """A number that anything is sorted by, other every week."""
        digest = hashlib.sha256(f"{self._seed} {what}".encode()).digest()
        return int.from_bytes(digest[:8], "big")


def _given(
    calls: Sequence[str], numbers: Sequence[int], last: Mapping[str, int], pool: _Pool
) -> dict[str, int]:
    """Each call one of ``numbers``, of which there is one more than calls at least, and none the
    one it had last week."""
    left = set(numbers)
    given: dict[str, int] = {}
    # Each call has its own order of the numbers, so that another call changes few of them, and
    # where a call stands changes none.
    for call in sorted(calls, key=pool.place):
        fit = (number for number in left if number != last.get(call))
        given[call] = min(fit, key=lambda n: pool.place(f"{call} {n}"))
        left.remove(given[call])
    return given


def _together(
    plan: Plan, calls: Sequence[str], last: Mapping[str, int], pool: _Pool
) -> dict[str, int]:
    """Numbers that run on within a family; the families change places."""
    families: dict[str, list[str]] = {}
    for call in calls:
        families.setdefault(plan.plays[call].family, []).append(call)
    given: dict[str, int] = {}
    for family in sorted(families, key=pool.place):
        mine = families[family]
        given |= _given(mine, pool.first(len(mine) + 1), last, pool)
    return given


def check_kept(plan: Plan, at: Mapping[str, Span]) -> Iterator[Diagnostic]:
    """Kept numbers that are one, or sound like one; told at the later of the two."""
    seen: dict[int, str] = {}
    for call, number in plan.frozen.items():
        first = seen.setdefault(sounds_like(number), call)
        if first != call:
            other = plan.frozen[first]
            why = "both are one" if other == number else "they sound alike over a crowd"
            numbers = f"{other} and {number}"
            yield E995(first=first, second=call, numbers=numbers, why=why).at(at[call])

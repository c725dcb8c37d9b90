"""Situations that every caller meets and a plan leaves empty."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from stemline.diagnostics.catalogue.weeks import W992
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.football.lessons import Lesson
from stemline.football.situations import Situation, needed, serves
from stemline.week.week_values import Plan

_BEGUN = 5
"""Situations from which on a plan is held to be one."""


def left_empty(plan: Plan) -> tuple[str, ...]:
    """The situations that no list of the plan serves, in the order of a sheet."""
    length = plan.code.length.value
    have = [each.situation for each in plan.lists]
    return tuple(
        need.words
        for need in needed(plan.code)
        if not any(serves(each, need, length) for each in have)
    )


def check_left_empty(plan: Plan, taught: Iterable[Lesson] = ()) -> Iterator[Diagnostic]:
    """They are said in one line, each with what the book says suits it; a week that is only begun
    is told nothing."""
    empty, taught = left_empty(plan), tuple(taught)
    if len(plan.lists) >= _BEGUN and empty:
        needs = {need.words: need for need in needed(plan.code)}
        told = (words + _suited(needs[words], plan, taught) for words in empty)
        yield W992(situations=", ".join(told)).at(plan.span)


def _suited(need: Situation, plan: Plan, taught: Iterable[Lesson]) -> str:
    """What suits a situation, in brackets; "" where nothing does."""
    length = plan.code.length.value
    names = [t.name for t in taught if any(serves(s, need, length) for s in t.suits)]
    return f" ({either(names)} would suit it)" if names else ""

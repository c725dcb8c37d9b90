"""Situations that every caller meets and a plan leaves empty."""

from __future__ import annotations

from collections.abc import Iterator

from stemline.diagnostics.catalogue.weeks import W992
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.situations import needed, serves
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


def check_left_empty(plan: Plan) -> Iterator[Diagnostic]:
    """They are said in one line; a week that is only begun is told nothing."""
    empty = left_empty(plan)
    if len(plan.lists) >= _BEGUN and empty:
        yield W992(situations=", ".join(empty)).at(plan.span)

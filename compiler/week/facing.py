"""Looks named in a week, held against every pass planned against them.

By the clock, whose figures are for planning: a call has an answer where a read is open in time or a
hot throw beats the man who comes free; without a free rusher it needs none.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING

from stemline.diagnostics.catalogue.weeks import W990
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot
from stemline.resolve.expand import Order
from stemline.week.week_values import Plan, PlanRow, RowAnswer

if TYPE_CHECKING:
    from stemline.football.timing.answers import Answer

_NAMED = 2
"""Calls that a message names before it counts the others."""


def answers_of(
    plan: Plan, orders: Mapping[str, Order], answer: Callable[[Order, BallSpot, str], Answer | None]
) -> tuple[RowAnswer, ...]:
    """The answer of every pass of the lists to each look that it may meet; nothing of one that
    cannot stand against it. ``answer`` gives that of a call from a spot to a look by its key, as
    the book's reads by look have it."""
    known: dict[tuple[str, BallSpot, str], Answer | None] = {}
    made: list[RowAnswer] = []
    for situation, look, row in _asked(plan):
        key = row.call, row.spot or orders[row.call].timed_from, look.casefold()
        if key not in known:
            known[key] = answer(orders[row.call], key[1], key[2])
        got = known[key]
        if got is not None:
            made.append(RowAnswer(situation, look, row, got))
    return tuple(made)


def pressed(answers: Iterable[RowAnswer]) -> list[Diagnostic]:
    """Passes with a free rusher and no answer, gathered by the look."""
    free: dict[str, dict[str, tuple[PlanRow, float]]] = {}
    for each in answers:
        got = each.answer
        if got.rusher is not None and not got.given:
            free.setdefault(each.look, {}).setdefault(each.row.call, (each.row, got.rusher))
    return [_told(look, rows) for look, rows in free.items()]


def _asked(plan: Plan) -> Iterator[tuple[str, str, PlanRow]]:
    """Each list's title and look with the passes that may meet it: a call kept for one look meets
    no other."""
    names = {name.casefold(): name for name in plan.faces}
    for each in plan.lists:
        for row in each.rows:
            if not plan.plays[row.call].reads:
                continue
            own = names.get(row.look.casefold())
            yield from ((each.title, look, row) for look in ((own,) if own else plan.faces))


def _told(look: str, rows: Mapping[str, tuple[PlanRow, float]]) -> Diagnostic:
    first = min(rows.values(), key=lambda each: each[0].span)[0]
    calls = list(rows)
    named = ", ".join(calls[:_NAMED])
    if len(calls) > _NAMED:
        more = len(calls) - _NAMED
        named += f" and {more} more call{'s' * (more > 1)}"
    soonest = min(seconds for _, seconds in rows.values())
    why = f"a rusher is free after {soonest:.1f} seconds, no read is open and no hot throw in time"
    return W990(calls=named, look=look, why=why).at(first.span)

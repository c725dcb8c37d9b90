"""Looks named in a week, held against every call planned against them.

A pass by the clock, whose figures are for planning: it has an answer where a read is open in time
or a hot throw beats the man who comes free; without a free rusher it needs none. A run where more
come than four and one of those whom nobody blocks or reads is among them. A coach who knows better
names the look in the note of the row.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING

from stemline.diagnostics.catalogue.weeks import W990
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import theirs, together
from stemline.football.call_facts import CallFacts
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.resolve.order import Order
from stemline.week.week_values import Plan, PlanRow, RowAnswer

if TYPE_CHECKING:
    from stemline.football.timing.answers import Answer

_NAMED = 2
"""Calls that a message names before it counts the others."""
PRESSURE = 5
"""Men who come, from which a look is a pressure; common practice, no published source."""


def answers_of(
    plan: Plan, orders: Mapping[str, Order], answer: Callable[[Order, BallSpot, str], Answer | None]
) -> tuple[RowAnswer, ...]:
    """The answer of every pass of the lists to each look that it may meet; nothing of one that
    cannot stand against it. ``answer`` gives that of a call from a spot to a look by its key, as
    the book's reads by look have it."""
    known: dict[tuple[str, BallSpot, str], Answer | None] = {}
    made: list[RowAnswer] = []
    for situation, look, row in _asked(plan, _throws):
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
        if got.rusher is not None and not got.given and not _says_so(each.row, each.look):
            free.setdefault(each.look, {}).setdefault(each.row.call, (each.row, got.rusher))
    return [_told_of_passes(look, rows) for look, rows in free.items()]


def runs_pressed(
    plan: Plan, orders: Mapping[str, Order], free: Callable[[Order, BallSpot, str], tuple[str, ...]]
) -> list[Diagnostic]:
    """Runs that a pressure leaves a free man, gathered by the look and the men. ``free`` gives what
    `free_of_pressure` says of a call from a spot against a look by its key."""
    left: dict[tuple[str, tuple[str, ...]], dict[str, PlanRow]] = {}
    for _, look, row in _asked(plan, _runs):
        if not _says_so(row, look):
            order = orders[row.call]
            men = free(order, row.spot or order.timed_from, look.casefold())
            if men and not _said_of_week(plan, look, men):
                left.setdefault((look, men), {}).setdefault(row.call, row)
    return [_told_of_runs(look, men, rows) for (look, men), rows in left.items()]


def free_of_pressure(play: Play) -> tuple[str, ...]:
    """The labels of those who come at a run and whom nobody blocks or reads; none where no more
    come than a front sends."""
    if play.defence is None or len(play.defence.rushers) < PRESSURE:
        return ()
    coming = {man.label for man in play.defence.rushers}
    return tuple(label for label in play.unblocked if label in coming)


def _throws(call: CallFacts) -> bool:
    """A run with a throw in it is asked as a pass is."""
    return call.reads


def _runs(call: CallFacts) -> bool:
    return call.run and not call.reads


def _asked(plan: Plan, wanted: Callable[[CallFacts], bool]) -> Iterator[tuple[str, str, PlanRow]]:
    """Each list's title and look with the calls that may meet it: a call kept for one look meets
    no other."""
    names = {name.casefold(): name for name in plan.faces}
    for each in plan.lists:
        for row in each.rows:
            if not wanted(plan.facts[row.call]):
                continue
            own = names.get(row.look.casefold())
            yield from ((each.title, look, row) for look in ((own,) if own else plan.faces))


def _says_so(row: PlanRow, look: str) -> bool:
    """Whether the row's note, which the caller reads on the sheet, names the look."""
    return _named_in(row.note, look)


def _said_of_week(plan: Plan, look: str, men: Iterable[str]) -> bool:
    """Whether a sentence of the week names the look and all of the men."""
    return any(all(_named_in(said, name) for name in (look, *men)) for said in plan.says)


def _named_in(said: str, name: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(name)}(?!\w)", said, re.IGNORECASE) is not None


def _told_of_passes(look: str, rows: Mapping[str, tuple[PlanRow, float]]) -> Diagnostic:
    soonest = min(seconds for _, seconds in rows.values())
    why = f"a rusher is free after {soonest:.1f} seconds, no read is open and no hot throw in time"
    return _told(look, {call: row for call, (row, _) in rows.items()}, why)


def _told_of_runs(look: str, men: tuple[str, ...], rows: Mapping[str, PlanRow]) -> Diagnostic:
    named = together([theirs(man) for man in men])
    come = "comes" if len(men) == 1 else "come"
    return _told(look, rows, f"nobody blocks or reads {named}, who {come}")


def _told(look: str, rows: Mapping[str, PlanRow], why: str) -> Diagnostic:
    first = min(row.span for row in rows.values())
    calls = list(rows)
    named = ", ".join(calls[:_NAMED])
    if len(calls) > _NAMED:
        more = len(calls) - _NAMED
        named += f" and {more} more call{'s' * (more > 1)}"
    return W990(calls=named, look=look, why=why).at(first)

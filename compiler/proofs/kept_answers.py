"""Each pass against every look, from what is kept, else put to the clock and kept."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.football.timing.answers import Answer, Faced
from stemline.outside.cache import Cache
from stemline.playbook.playbook import Playbook
from stemline.proofs.call_readings import CallReadings
from stemline.proofs.kept_proofs import KeptAnswers
from stemline.proofs.reading import Reading
from stemline.resolve.expand import Expander
from stemline.resolve.order import Order


def faced(
    book: Playbook,
    orders: Sequence[Order],
    expander: Expander,
    cache: Cache,
    readings: CallReadings,
    kept: KeptAnswers,
    *,
    alone: bool = False,
) -> tuple[Faced, ...]:
    """As `passes_against_looks.face`: ``cache`` is asked about calls that are not kept whole.

    ``alone`` tells that no other process may share the work.
    """
    from stemline.analysis.passes_against_looks import NEVER, POOL, face

    pool = NEVER if alone else POOL
    if not kept.keeps:
        return face(book, orders, cache, pool=pool, expander=expander)
    asked = {order: readings.against(order, book.looks, order.timed_from) for order in orders}
    known = {order: kept.held("faced", reading, _rows) for order, reading in asked.items()}
    missing = [order for order, rows in known.items() if rows is None]
    made = face(book, missing, cache, pool=pool, expander=expander) if missing else ()
    for order in missing:
        rows = [(each.look, each.answer) for each in made if each.call == order.spoken]
        kept.keep("faced", asked[order], rows, _as_data)
        known[order] = rows
    return tuple(
        Faced(book.concepts[order.concept].name, order.spoken, look, answer)
        for order in orders
        for look, answer in known[order] or ()
    )


def kept_rows(
    book: Playbook, order: Order, readings: CallReadings, kept: KeptAnswers
) -> dict[str, Answer] | None:
    """The answers of a call that `faced` has kept, by the names of the looks: one that is not there
    has none. None where nothing is kept."""
    rows = kept.held("faced", readings.against(order, book.looks, order.timed_from), _rows)
    return dict(rows) if rows is not None else None


def are_kept(book: Playbook, order: Order, readings: CallReadings, kept: KeptAnswers) -> bool:
    """Whether the answer of a call to each look is known."""
    return kept_rows(book, order, readings, kept) is not None


def answers_as_data(answers: Sequence[Answer], _: Reading) -> list[object]:
    return [[each.nearly, each.hot, each.rusher] for each in answers]


def answers_from_data(held: object, _: Reading) -> list[Answer]:
    if not isinstance(held, list):
        raise ValueError(held)
    return [_answer(each) for each in held]


def labels_as_data(labels: Sequence[str], _: Reading) -> list[list[str]]:
    return [[*labels]]


def labels_from_data(held: object, _: Reading) -> tuple[str, ...]:
    match held:
        case [list(labels)] if all(isinstance(label, str) for label in labels):
            return tuple(labels)
    raise ValueError(held)


def _answer(held: object) -> Answer:
    match held:
        case [bool(nearly), bool(hot), float() | None as rusher]:
            return Answer(nearly, hot, rusher)
    raise ValueError(held)


def _as_data(rows: Sequence[tuple[str, Answer]], reading: Reading) -> object:
    return [[look, *answers_as_data([answer], reading)] for look, answer in rows]


def _rows(held: object, _: Reading) -> list[tuple[str, Answer]]:
    if not isinstance(held, list):
        raise ValueError(held)
    return [_row(each) for each in held]


def _row(held: object) -> tuple[str, Answer]:
    match held:
        case [str(look), answer]:
            return look, _answer(answer)
    raise ValueError(held)

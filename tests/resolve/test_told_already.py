"""A pass is not proved where looks show that nobody of it asks about: it says nothing new there."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from resolve.shipped_books import PLAYBOOKS, shipped
from stemline.checks.proving import prove_call
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.outside.project import read_files
from stemline.resolve.order import Order
from stemline.resolve.season import Proving
from stemline.session import Session
from stemline.source import Source

BOOK = "cedar-flats-lanterns"


def _proving(session: Session) -> Proving:
    book, maker = session.book, session.expander
    assert book is not None
    return Proving(book, session.calls, maker, lambda *args: prove_call(book, maker, *args))


def _left_out(session: Session, proving: Proving) -> Iterator[tuple[Order, tuple[LookWord, ...]]]:
    named = [(dress, order) for dress, order in session.calls.orders if dress.against]
    for dress, order in named:
        for looks in dress.against:
            if proving._is_told(order, BallSpot.MIDDLE, looks):
                yield order, tuple(looks)


def test_nobody_does_anything_else_where_a_proof_is_left_out() -> None:
    session = shipped(BOOK)
    proving = _proving(session)
    left = list(_left_out(session, proving))
    for order, looks in left:
        for each in (order, proving.bare(order)):
            alone, against = (
                session.play(each, BallSpot.MIDDLE, shown)[0] for shown in ((), looks)
            )
            assert alone is not None and against is not None
            assert replace(against, against=()) == alone, (each.spoken, looks)
    assert left


def test_what_is_left_out_was_told() -> None:
    """Of texts that send nobody short, so that much is wrong."""
    texts = [
        Source(s.name, re.sub(r"(?m)^    \S+ runs (hitch|flat|arrow) .*\n", "", s.text))
        for s in read_files(PLAYBOOKS / BOOK).sources
    ]
    session = Session(texts, BOOK)
    proving = _proving(session)
    wrong = 0
    for order, looks in list(_left_out(session, proving))[::3]:
        again = set(proving.proved(order, BallSpot.MIDDLE, looks))
        assert again <= set(proving.proved(order, BallSpot.MIDDLE, ())), (order.spoken, looks)
        wrong += len(again)
    assert wrong

"""What a week asks of its calls, kept: no play is made for it, and it tells what the play has."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from proofs.proved_texts import Texts, texts
from stemline.football.play import Kind
from stemline.outside.store import Store
from stemline.session import Session
from stemline.source import Source
from stemline.week.week_values import Plan


def session(said: Texts, store: Store | None) -> Session:
    return Session([Source(*each) for each in said.items()], "book", whole=True, store=store)


def plan_of(asked: Session) -> Plan:
    (planned,) = asked.weeks
    assert planned.plan is not None
    asked.pressed(asked.weeks)
    return planned.plan


def test_a_week_that_is_known_makes_no_play(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []
    drawn = Session.drawn

    def counted(asked: Session, order: Any) -> Any:
        made.append(order.spoken)
        return drawn(asked, order)

    monkeypatch.setattr(Session, "drawn", counted)
    with Store(tmp_path) as store:
        first = plan_of(session(texts(), store))
    assert {*made} == {*first.facts}
    made.clear()
    with Store(tmp_path) as store:
        again = plan_of(session(texts(), store))
        assert again.facts == first.facts and not made
        assert dict(again.plays) == dict(plan_of(session(texts(), None)).plays)
    for call, play in first.plays.items():
        known = again.facts[call]
        assert (known.right, known.reads) == (True, bool(play.reads))
        assert (known.run, known.ball) == (play.kind is Kind.RUN, play.ball)
    assert {known.run for known in again.facts.values()} == {True, False}

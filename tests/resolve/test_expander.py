"""An expander that has made many plays makes each as one that has made none."""

from __future__ import annotations

from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from resolve.shipped_books import shipped
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.playbook.playbook import Playbook
from stemline.resolve.expand import Expander, expand
from stemline.resolve.order import Order

BOOK = "saltmarsh-herons"


@cache
def orders() -> tuple[Order, ...]:
    return tuple(order for _, order in shipped(BOOK).calls.orders)


def book() -> Playbook:
    found = shipped(BOOK).book
    assert found is not None
    return found


@st.composite
def asked(draw: st.DrawFn) -> tuple[Order, BallSpot, tuple[LookWord, ...], str]:
    """A call of a few that lie side by side, so that much is shared, and what it stands against."""
    order = draw(st.sampled_from(orders()[:40]))
    looks = draw(st.sampled_from([(), (LookWord.MAN,), (LookWord.ZONE, LookWord.OFF)]))
    return order, draw(st.sampled_from(list(BallSpot))), looks, draw(st.sampled_from(("", *keys())))


def keys() -> list[str]:
    return list(book().looks)[:3]


@settings(deadline=None, max_examples=10)
@given(st.lists(asked(), min_size=2, max_size=12))
def test_what_is_shared_changes_no_play(
    calls: list[tuple[Order, BallSpot, tuple[LookWord, ...], str]],
) -> None:
    expander = Expander(book())
    for call in calls:
        assert expander.expand(*call) == expand(book(), *call)


def test_a_play_is_made_once() -> None:
    expander = Expander(book())
    first, _ = expander.expand(orders()[0], BallSpot.MIDDLE)
    again, _ = expander.expand(orders()[0], BallSpot.MIDDLE)
    assert first is not None and first is again


def test_men_and_their_defence_are_shared_by_calls_of_one_set() -> None:
    expander = Expander(book())
    first = orders()[0]
    same = (first.formation, first.way, first.motion)
    others = [o for o in orders() if (o.formation, o.way, o.motion) == same]
    assert len({o.concept for o in others}) > 1
    plays = [expander.expand(o, BallSpot.MIDDLE, (), keys()[0])[0] for o in others]
    made = [play for play in plays if play is not None]
    assert len({id(play.men) for play in made}) == len({id(play.defence) for play in made}) == 1

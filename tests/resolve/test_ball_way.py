"""How the ball goes: one way that uses every line, from hand to hand without a gap.

The plays are those of both bundled playbooks that say it, from every spot, to both sides.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise, permutations
from pathlib import Path

import pytest

from stemline.football.exchanges import REACH, BallMoves, Exchange, holders
from stemline.football.field import BallSpot
from stemline.football.play import Kind, Play
from stemline.football.timing.ball_clock import BallMoment, ball_moments
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.resolve.ball_way import OneLine, ways
from stemline.session import Session
from stemline.source import Source

BOOKS = Path(__file__).parents[2] / "playbooks"
SAID = ("Reverse", "End Around", "Flea Flicker", "Double Pass", "Shovel")


@cache
def plays(book: str) -> tuple[Play, ...]:
    """Every call of the book whose ball goes as a line says, from all spots."""
    files = sorted((BOOKS / book).glob("*.play"))
    session = Session(tuple(Source(f.name, f.read_text("utf-8")) for f in files), book)
    orders = [o for o in session.read_calls("") if o.concept.title() in SAID]
    made = (session.expander.expand(o, spot)[0] for o in orders for spot in BallSpot)
    return tuple(play for play in made if play is not None)


EVERY = [
    pytest.param(play, id=f"{play.call.spoken} {play.ball.value}")
    for book in ("saltmarsh-herons", "cedar-flats-lanterns")
    for play in plays(book)
]


@pytest.mark.parametrize("play", EVERY)
def test_the_ball_goes_from_hand_to_hand_without_a_gap(play: Play) -> None:
    """Whoever gives it has it, and got it before; it flies no faster than it is thrown."""
    holder, since = (play.passer.label if play.passer else ""), 0.0
    for moment in ball_moments(play, HIGH_SCHOOL):
        x = moment.exchange
        assert x.giver == holder or x.kind in (BallMoves.SNAP, BallMoves.FAKE)
        assert since <= moment.leaves <= moment.there
        if x.kind is not BallMoves.FAKE:
            holder, since = x.taker, moment.there
    if play.kind is Kind.RUN:
        assert holder == play.carrier


@pytest.mark.parametrize("play", EVERY)
def test_giver_and_taker_are_within_a_yard_when_it_is_handed(play: Play) -> None:
    for moment in ball_moments(play, HIGH_SCHOOL):
        if moment.exchange.kind in (BallMoves.HAND, BallMoves.FAKE):
            assert moment.apart <= REACH.value, moment
        if moment.exchange.kind.flies:
            assert _speed(moment) < 25


def _speed(moment: BallMoment) -> float:
    """Yards a second of a ball in the air: an arm of this level throws some 22."""
    return moment.given.distance(moment.taken) / (moment.there - moment.leaves)


@pytest.mark.parametrize("play", EVERY)
def test_nobody_is_read_before_the_quarterback_has_the_ball_again(play: Play) -> None:
    clock = read_clock(play, HIGH_SCHOOL)
    if clock.reads and play.exchanges:
        assert clock.reads[0].thrown >= ball_moments(play, HIGH_SCHOOL)[-1].there


def test_the_order_of_lines_means_nothing() -> None:
    """A chain of four is found from its lines in every order; a second way is told."""
    hands = ("Q", "R", "S", "X", "Q")
    lines: list[OneLine] = [
        (None, Exchange(BallMoves.HAND, giver, taker))
        for giver, taker in pairwise(hands)
    ]
    for order in permutations(lines):
        (way,) = ways("Q", order)
        assert holders([x for _, x in way], "Q") == hands
    round_trip: list[OneLine] = [
        (None, Exchange(BallMoves.HAND, giver, taker))
        for giver, taker in (("Q", "R"), ("R", "Q"), ("Q", "S"), ("S", "Q"))
    ]
    assert len(ways("Q", round_trip)) == 2
    assert ways("Q", [(None, Exchange(BallMoves.HAND, "R", "S"))]) == []

"""How the ball goes: one way that uses every line, from hand to hand without a gap.

The plays are those of both bundled playbooks that say it, from every spot.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise, permutations

from stemline.football.exchanges import BACK_IN_HAND, REACH, BallMoves, Exchange, holders
from stemline.football.field import BallSpot
from stemline.football.play import Kind, Play
from stemline.football.timing.ball_clock import BallMoment, ball_moments
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.resolve.ball_way import OneLine, ways

from .shipped_books import BOOKS, played, shipped


@cache
def plays() -> tuple[Play, ...]:
    """The calls whose ball goes as a line says."""
    made = tuple(
        played(book, order, spot=spot)
        for book in BOOKS
        for dress, order in shipped(book).named("Specials")
        for spot in BallSpot
    )
    assert len({play.call.concept for play in made}) >= 5
    return made


def test_the_ball_goes_from_hand_to_hand_without_a_gap() -> None:
    """Whoever gives it has it, and had it before; on a run the last is the carrier."""
    for play in plays():
        holder, since = (play.passer.label if play.passer else ""), 0.0
        for moment in ball_moments(play, HIGH_SCHOOL):
            x = moment.exchange
            assert x.giver == holder, play.call.spoken
            assert since <= moment.leaves <= moment.there
            if x.kind is not BallMoves.FAKE:
                holder, since = x.taker, moment.there
        assert play.kind is Kind.PASS or holder == play.carrier


def test_giver_and_taker_are_within_a_yard_when_it_is_handed() -> None:
    """And what flies goes no faster than an arm of this level throws, some 22 yards a second."""
    for play in plays():
        for moment in ball_moments(play, HIGH_SCHOOL):
            if moment.exchange.kind in (BallMoves.HAND, BallMoves.FAKE):
                assert moment.apart <= REACH.value, (play.call.spoken, moment)
            else:
                assert _speed(moment) < 22, (play.call.spoken, moment)
                assert (moment.apart, moment.late) == (0.0, 0.0), "nobody waits for what flies"


def _speed(moment: BallMoment) -> float:
    """Yards a second of a ball in the air."""
    return moment.given.distance(moment.taken) / (moment.there - moment.leaves)


def test_nobody_is_thrown_to_before_the_quarterback_has_the_ball_again() -> None:
    for play in plays():
        reads = read_clock(play, HIGH_SCHOOL).reads
        if reads:
            there = ball_moments(play, HIGH_SCHOOL)[-1].there
            assert reads[0].ready >= there + BACK_IN_HAND.value


def test_the_order_of_lines_means_nothing() -> None:
    """A chain of four is found from its lines in every order; a second way is found too."""
    hands = ("Q", "R", "S", "X", "Q")
    lines: list[OneLine] = [
        (None, Exchange(BallMoves.HAND, giver, taker)) for giver, taker in pairwise(hands)
    ]
    for order in permutations(lines):
        (way,) = ways("Q", order)
        assert holders([x for _, x in way], "Q") == hands
    both: list[OneLine] = [
        (None, Exchange(BallMoves.HAND, giver, taker))
        for giver, taker in (("Q", "R"), ("R", "Q"), ("Q", "S"), ("S", "Q"))
    ]
    assert len(ways("Q", both)) == 2
    assert ways("Q", [(None, Exchange(BallMoves.HAND, "R", "S"))]) == []

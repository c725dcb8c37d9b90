"""The field seen from the ball, landmarks on it, and who is in the short side."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemline.football.field import BallSpot, Field, Side
from stemline.football.line import SPLIT
from stemline.football.offence.landmarks import (
    END_SPLIT,
    TACKLE_SPLIT,
    Landmark,
    x_of,
)
from stemline.football.rulebook.codes import CANADIAN_AMATEUR, CODES, HIGH_SCHOOL, Code


def field(code: Code, spot: BallSpot) -> Field:
    return Field(code, spot, code.numbers_from_sideline.value)


codes = st.sampled_from(list(CODES.values()))
spots = st.sampled_from(list(BallSpot))
sides = st.sampled_from(list(Side))


@pytest.mark.parametrize(
    ("code", "spot", "left", "right"),
    [
        (CANADIAN_AMATEUR, BallSpot.MIDDLE, -32.5, 32.5),
        (CANADIAN_AMATEUR, BallSpot.LEFT_HASH, -24, 41),
        (CANADIAN_AMATEUR, BallSpot.RIGHT_HASH, -41, 24),
        (HIGH_SCHOOL, BallSpot.MIDDLE, -80 / 3, 80 / 3),
        (HIGH_SCHOOL, BallSpot.LEFT_HASH, -160 / 9, 320 / 9),
    ],
)
def test_sidelines_from_the_ball(code: Code, spot: BallSpot, left: float, right: float) -> None:
    made = field(code, spot)
    assert made.sideline(Side.LEFT) == pytest.approx(left)
    assert made.sideline(Side.RIGHT) == pytest.approx(right)


@given(codes, spots)
def test_the_field_is_as_wide_as_it_is(code: Code, spot: BallSpot) -> None:
    made = field(code, spot)
    width = made.sideline(Side.RIGHT) - made.sideline(Side.LEFT)
    assert width == pytest.approx(code.width.value)


@given(codes, spots, sides)
def test_from_sideline_to_ball_the_marks_stand_in_order(
    code: Code, spot: BallSpot, side: Side
) -> None:
    made = field(code, spot)
    marks = [
        made.sideline(side),
        made.numbers(side),
        x_of(Landmark.DIVIDE, side, made),
        made.hash_mark(side),
    ]
    assert [round(m * side.value, 9) for m in marks] == sorted(
        (round(m * side.value, 9) for m in marks), reverse=True
    )
    assert marks[2] == pytest.approx((marks[1] + marks[3]) / 2)


def test_from_a_hash_that_hash_is_under_the_ball() -> None:
    for code in CODES.values():
        assert field(code, BallSpot.LEFT_HASH).hash_mark(Side.LEFT) == pytest.approx(0)
        assert field(code, BallSpot.RIGHT_HASH).hash_mark(Side.RIGHT) == pytest.approx(0)


@pytest.mark.parametrize(
    ("spot", "wide"),
    [
        (BallSpot.LEFT_HASH, Side.RIGHT),
        (BallSpot.MIDDLE, None),
        (BallSpot.RIGHT_HASH, Side.LEFT),
    ],
)
def test_the_wide_side(spot: BallSpot, wide: Side | None) -> None:
    made = field(CANADIAN_AMATEUR, spot)
    assert made.wide_side is wide
    if wide is not None:
        assert abs(made.sideline(wide)) > abs(made.sideline(wide.other))


@given(spots, sides)
def test_turning_around_twice_comes_back(spot: BallSpot, side: Side) -> None:
    assert spot.mirrored.mirrored is spot
    assert side.other.other is side
    assert side.other is not side
    assert (spot.mirrored is spot) == (spot is BallSpot.MIDDLE)


@given(codes, spots, sides)
def test_the_men_of_the_line_stand_between_ball_and_end(
    code: Code, spot: BallSpot, side: Side
) -> None:
    """Common practice, no published source: guards 1.0 to 1.3 yards out, tackles 2.2 to 2.6."""
    made = field(code, spot)
    places = [x_of(mark, side, made) for mark in list(Landmark)[:4]]
    tackle = {5: TACKLE_SPLIT, 3: SPLIT, 1: 0}[code.interior]
    end = {5: END_SPLIT, 3: TACKLE_SPLIT, 1: SPLIT}[code.interior]
    assert places == [0, side.value * SPLIT, side.value * tackle, side.value * end]
    assert 1.0 <= SPLIT <= 1.3 and 2.2 <= TACKLE_SPLIT <= 2.6 and 3.4 <= END_SPLIT <= 4

"""A call to the left is the same call, not the same picture in a mirror."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from resolve.compact import mirrored, write
from resolve.texts import (
    CROSSERS,
    ELEVEN,
    EMPTY,
    QUADS,
    THREE_TWO,
    TREY,
    TRIPS,
    TWELVE,
    dress,
    play,
    sound,
)
from stemline.football.field import BallSpot, Side
from stemline.football.play import Play

TAGS = "with plain, Wheel, Return, Wheel + Return"
_STARTS = {
    "three two": (TWELVE, THREE_TWO, "Three Two"),
    "quads": (TWELVE, QUADS, "Quads motion Tuck"),
    "empty": (ELEVEN, EMPTY, "Empty"),
    "trips": (ELEVEN, TRIPS, "Trips"),
    "trey": (ELEVEN, TREY, "Trey"),
}


def other(call: str) -> str:
    return call.replace(" Right ", " Left ")


def same(one: Play, two: Play) -> bool:
    return write(one, names=False) == write(two, names=False)


@pytest.mark.parametrize("start", _STARTS)
def test_from_the_middle_left_is_the_mirror_of_right(start: str) -> None:
    book, formation, called = _STARTS[start]
    result = sound(book, formation, CROSSERS, dress(called, TAGS))
    calls = [c for c in result.calls.by_name if " Right " in c]
    assert len(calls) == 4
    for call in calls:
        right, left = play(result, call), play(result, other(call))
        assert same(left, mirrored(right))
        assert not same(left, right)


@pytest.mark.parametrize("start", _STARTS)
@pytest.mark.parametrize("spot", BallSpot, ids=lambda s: s.value)
def test_a_flip_of_the_call_and_of_the_ball_together_is_a_mirror(
    start: str, spot: BallSpot
) -> None:
    book, formation, called = _STARTS[start]
    result = sound(book, formation, CROSSERS, dress(called, TAGS))
    for call in result.calls.by_name:
        if " Right " in call:
            right = play(result, call, spot)
            left = play(result, other(call), spot.mirrored)
            assert same(left, mirrored(right))


splits = st.integers(min_value=2, max_value=14).map(lambda n: n / 2)


@settings(max_examples=25, deadline=None)
@given(splits, splits, splits, splits, st.integers(min_value=1, max_value=8))
def test_the_mirror_holds_for_every_split(
    wide: float, slot: float, inner: float, lone: float, deep: float
) -> None:
    """Common practice, no published source: from the middle of the field a side is a side."""
    formation = f"""
formation Wide
    X at away, {lone + 3} outside tackle, on line
    W at away, {lone} outside tackle, off line
    H at call, {inner} outside tackle, off line
    S at call, {inner + slot} outside tackle, {deep} deep
    Z at call, {inner + slot + wide} outside tackle, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
"""
    concept = """
concept Mixed
    a is strong #1
    a runs post
    b is strong #2
    b runs over
    c is strong #3
    c runs return
    d is weak #1
    d runs corner
    d runs comeback when press
    e is weak #2
    e runs cross and sit
    f is back
    f runs swing away from c
    spot low is low, weak
    spot top is over ball
    claims triangle a b c
    feet 3, reset
    read a on 3 > b with c on reset > d > e > f
"""
    result = sound(TWELVE, formation, concept, dress("Wide", concept="Mixed"))
    right, left = (play(result, f"Wide {side} Mixed") for side in ("Right", "Left"))
    assert same(left, mirrored(right))
    assert same(mirrored(left), right)


@pytest.mark.parametrize("start", _STARTS)
@pytest.mark.parametrize("spot", BallSpot, ids=lambda s: s.value)
def test_a_flip_twice_is_the_play_itself(start: str, spot: BallSpot) -> None:
    book, formation, called = _STARTS[start]
    result = sound(book, formation, CROSSERS, dress(called, TAGS))
    for call in result.calls.by_name:
        made = play(result, call, spot)
        assert mirrored(mirrored(made)) == made
        assert mirrored(made) != made


BY_FIELD = """
formation Field
    X at away, numbers, on line
    X at away, 1 outside numbers, on line when into boundary
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, 3 inside numbers, on line when into field
    Z at call, numbers, on line when into boundary or ball in middle
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
"""


def test_a_split_follows_the_field_that_the_man_now_has() -> None:
    """Numbers are 10 yards from a sideline; the ball is 24 from the left one on its hash."""
    result = sound(TWELVE, BY_FIELD, CROSSERS, dress("Field"))

    def from_sideline(call: str, spot: BallSpot, letter: str) -> float:
        made = play(result, call, spot)
        x = made.man(letter).snap.x
        side = Side.RIGHT if x > 0 else Side.LEFT
        return round(abs(made.field.sideline(side) - x), 6)

    right, left = "Field Right Crossers", "Field Left Crossers"
    assert from_sideline(right, BallSpot.MIDDLE, "Z") == 10
    assert from_sideline(right, BallSpot.RIGHT_HASH, "Z") == 10
    assert from_sideline(right, BallSpot.LEFT_HASH, "Z") == 13
    assert from_sideline(left, BallSpot.RIGHT_HASH, "Z") == 13
    assert from_sideline(left, BallSpot.LEFT_HASH, "Z") == 10
    assert from_sideline(right, BallSpot.RIGHT_HASH, "X") == 10
    assert from_sideline(left, BallSpot.RIGHT_HASH, "X") == 9
    assert from_sideline(right, BallSpot.LEFT_HASH, "X") == 9


def test_called_left_from_the_same_hash_is_no_mirror() -> None:
    result = sound(TWELVE, BY_FIELD, CROSSERS, dress("Field"))
    right = play(result, "Field Right Crossers", BallSpot.RIGHT_HASH)
    left = play(result, "Field Left Crossers", BallSpot.RIGHT_HASH)
    seen = mirrored(right)
    assert not same(left, seen)
    assert abs(left.man("Z").snap.x) != abs(right.man("Z").snap.x)
    # The mirror would put a man who stands into the field over the sideline.
    assert seen.man("X").snap.x > left.field.sideline(Side.RIGHT)
    assert all(
        left.field.sideline(Side.LEFT) < m.snap.x < left.field.sideline(Side.RIGHT)
        for m in left.men
    )


SPRINT = """
concept Sprint
    point is strong #1
    point runs out 10
    low is strong #2
    low runs flat
    drag is weak #1 or nobody
    drag runs cross 8
    other is weak #2 or nobody
    other runs post
    third is strong #3 or nobody
    third runs corner
    edge is back
    edge blocks edge
    feet sprint
    read point > low > drag
    protect sprint
"""


@pytest.mark.parametrize(
    ("hand", "side", "manner"),
    [
        ("right", "Right", "turn the hips upfield"),
        ("right", "Left", "get depth first"),
        ("left", "Right", "get depth first"),
        ("left", "Left", "turn the hips upfield"),
    ],
)
def test_sprint_feet_follow_the_side_and_the_throwing_hand(
    hand: str, side: str, manner: str
) -> None:
    """Common practice, no published source: to his off side he gets depth before he throws."""
    book = TWELVE.replace("right hand", f"{hand} hand")
    result = sound(book, THREE_TWO, SPRINT, dress("Three Two", concept="Sprint"))
    made = play(result, f"Three Two {side} Sprint")
    assert made.reads[0].at.x * (1 if side == "Right" else -1) > 0
    (step,) = made.feet
    assert (step.name, step.side) == ("sprint", Side[side.upper()])
    assert step.words.startswith(f"sprint out to the {side.lower()}: {manner}")


def test_a_launch_goes_to_the_first_read_and_not_to_the_called_side() -> None:
    text = SPRINT.replace("read point > low > drag", "read drag > other").replace(
        "drag runs cross 8", "drag runs out 10"
    )
    result = sound(TWELVE, THREE_TWO, text, dress("Three Two", concept="Sprint"))
    assert play(result, "Three Two Right Sprint").feet[0].side is Side.LEFT
    assert play(result, "Three Two Left Sprint").feet[0].side is Side.RIGHT


def test_a_drop_has_no_side() -> None:
    result = sound(TWELVE, THREE_TWO, CROSSERS, dress("Three Two"))
    for side in ("Right", "Left"):
        assert {s.side for s in play(result, f"Three Two {side} Crossers").feet} == {None}

"""Sides, edges and movers of a lineup, each just on and just off its limit."""

from __future__ import annotations

from dataclasses import replace

import pytest
from resolve.texts import THREE_TWO, TWELVE, compiled, dress, play

from lineup.look_texts import against, look, man
from stemline.football.conditions import Called, Lie, LookWord
from stemline.football.field import BallSpot, Side
from stemline.football.offence.counting import count, ranked
from stemline.football.play import Motion
from stemline.geometry.paths import Leg, Path, Point
from stemline.lineup.alignment import called_of, lie_of, line_up
from stemline.lineup.lined_up import LinedUp
from stemline.lineup.motion_man import move_of
from stemline.lineup.shows import shown
from stemline.playbook.playbook import Playbook
from stemline.resolve.expand import field_of

LEFT, RIGHT = Side.LEFT, Side.RIGHT


@pytest.fixture(scope="module")
def book() -> Playbook:
    made = compiled(TWELVE, THREE_TWO).book
    assert made is not None
    return made


@pytest.mark.parametrize(
    ("spot", "side", "middle", "lie", "called"),
    [
        (BallSpot.LEFT_HASH, RIGHT, None, Lie.FIELD, Called.FIELD),
        (BallSpot.LEFT_HASH, LEFT, None, Lie.BOUNDARY, Called.BOUNDARY),
        (BallSpot.RIGHT_HASH, LEFT, None, Lie.FIELD, Called.FIELD),
        (BallSpot.MIDDLE, RIGHT, None, Lie.MIDDLE, Called.NEITHER),
        # The house calls one side of the middle the field: a call goes there, no man is wide.
        (BallSpot.MIDDLE, RIGHT, RIGHT, Lie.MIDDLE, Called.FIELD),
        (BallSpot.MIDDLE, LEFT, RIGHT, Lie.MIDDLE, Called.BOUNDARY),
    ],
)
def test_a_side_is_the_wide_one_by_the_spot(
    book: Playbook, spot: BallSpot, side: Side, middle: Side | None, lie: Lie, called: Called
) -> None:
    field = field_of(book, spot, middle)
    assert (lie_of(side, field), called_of(side, field)) == (lie, called)
    assert lie_of(None, field) is Lie.MIDDLE


def test_a_man_over_the_ball_is_on_neither_side(book: Playbook) -> None:
    field = field_of(book, BallSpot.MIDDLE)
    _, men, _ = line_up(book, book.formations["three two"], RIGHT, field)
    counted = count(men, RIGHT)
    picture = LinedUp(ranked(men, counted), counted, field, RIGHT, book.receivers)
    assert [picture.side_of(label) for label in ("LG", "C", "Q", "RG")] == [LEFT, None, None, RIGHT]


@pytest.mark.parametrize(("off", "word"), [(4.0, LookWord.CLOSED), (4.1, LookWord.OPEN)])
def test_the_middle_is_closed_within_four_yards(book: Playbook, off: float, word: LookWord) -> None:
    """Common practice, as the figure itself is."""
    defence, field = against(look()), field_of(book, BallSpot.MIDDLE)
    (free,) = (d for d in defence.defenders if d.label == "F")
    assert free.duty is not None and free.duty.to is not None
    to = replace(free.duty.to, x=off)
    men = [replace(d, duty=replace(free.duty, to=to)) if d is free else d
           for d in defence.defenders]  # fmt: skip
    assert word.value in shown(replace(defence, defenders=tuple(men)), field)


@pytest.mark.parametrize(
    ("mover", "label"),
    [("call #1", "Z"), ("call #2", "S"), ("call #3", "H"), ("away #1", "X"), ("away #2", "W")],
)
def test_a_mover_is_counted_on_his_own_side(mover: str, label: str) -> None:
    motion = f"motion Way\n    {mover} moves from 4 deep\n    snap set"
    go = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, THREE_TWO, motion, go, dress("Three Two motion Way", concept="Go"))
    for call in ("Three Two Right Way Go", "Three Two Left Way Go"):
        assert [a.man for a in play(result, call).assignments if a.motion] == [label]


def test_a_man_behind_the_ball_moves_straight_to_a_place_near_it() -> None:
    back = THREE_TWO.replace("R at away, 2 outside ball, 5 deep", "R at ball, 7 deep")
    motion = "motion Way\n    R moves to call, 1 outside tackle, 6 deep\n    snap set"
    go = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, back, motion, go, dress("Three Two motion Way", concept="Go"))
    shown = play(result, "Three Two Right Way Go").assignment("R").motion
    assert shown is not None and len(shown.path.corners) == 2


def test_a_man_who_runs_a_long_way_is_level_for_the_last_yard_and_a_half() -> None:
    motion = "motion Way\n    call #2 moves to away, 6 outside tackle\n    snap running 5"
    go = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, THREE_TWO, motion, go, dress("Three Two motion Way", concept="Go"))
    shown = play(result, "Three Two Right Way Go").assignment("S").motion
    assert shown is not None
    up, level, end = shown.path.corners[-3:]
    assert abs(end.x - shown.path.start.x) > 10
    assert level.y == end.y and abs(end.x - level.x) == pytest.approx(1.5)
    assert up.y < end.y and abs(end.x - up.x) == pytest.approx(3.5)


def test_a_contain_rusher_aims_outside_the_end_man_of_the_line() -> None:
    """Two yards outside, by common practice: the weak tackle is the end man, at 2.6."""
    duty = man(look("M rushes contain, weak"), "M").duty
    assert duty is not None and duty.to is not None
    assert duty.to.x == pytest.approx(-4.6)


def test_a_man_who_ends_where_his_mirror_stood_has_moved(book: Playbook) -> None:
    field = field_of(book, BallSpot.MIDDLE)
    _, men, _ = line_up(book, book.formations["three two"], RIGHT, field)
    counted = count(men, RIGHT)
    picture = LinedUp(ranked(men, counted), counted, field, RIGHT, book.receivers)
    moves = {
        x: move_of(
            "S",
            {"S": Motion("Way", Path(Point(6, -1), (Leg(Point(x, -1)),)), False, 0, "")},
            picture,
        )
        for x in (-6.0, -5.0, 6.2)
    }
    assert moves[-6.0] == moves[-5.0] != moves[6.2]

"""Where a man stands and what he is then, each just beside what it could be taken for."""

from __future__ import annotations

from functools import cache

import pytest
from resolve.texts import THREE_TWO, TWELVE, compiled, dress, play

from stemline.football.field import BallSpot, Side
from stemline.football.play import Man, Motion, Play
from stemline.football.players import Position
from stemline.geometry.paths import Leg, Path, Point
from stemline.lineup.alignment import line_up
from stemline.lineup.motion_man import motion_man
from stemline.resolve.expand import field_of

LEFT, RIGHT = Side.LEFT, Side.RIGHT


@cache
def men(spot: BallSpot, called: Side, *changes: tuple[str, str], more: str = "") -> dict[str, Man]:
    text = THREE_TWO
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    book = compiled(TWELVE, text + more).book
    assert book is not None
    _, made, found = line_up(book, book.formations["three two"], called, field_of(book, spot))
    assert not found
    return {one.label: one for one in made}


@cache
def in_motion(*lines: str) -> Play:
    """Three Two Right after a motion, with a fullback two yards deep beside the back."""
    two_backs = THREE_TWO.replace("W at away, 5 outside tackle, off line", "F at ball, 2 deep")
    deep = two_backs.replace("R at away, 2 outside ball, 5 deep", "R at ball, 7 deep")
    text = "motion Way\n" + "".join(f"    {line}\n" for line in lines)
    go = "concept Go\n    a is strong #1\n    a runs go"
    made = compiled(TWELVE, deep, text, go, dress("Three Two motion Way", concept="Go"))
    return play(made, "Three Two Right Way Go")


@pytest.mark.parametrize("called", list(Side))
def test_a_man_at_the_field_is_there_whichever_side_is_called(called: Side) -> None:
    wide = ("Z at call, numbers", "Z at field, numbers")
    assert men(BallSpot.LEFT_HASH, called, wide)["Z"].at.x > 0
    assert men(BallSpot.RIGHT_HASH, called, wide)["Z"].at.x < 0
    assert men(BallSpot.MIDDLE, called, wide)["Z"].at.x * called.value > 0


def test_who_leaves_the_snap_to_another_is_a_receiver() -> None:
    split = (("Q at ball, 5 deep", "Q at away, 9 outside ball"), ("R at away, 2 outside ball",
             "R at ball"))  # fmt: skip
    plain = men(BallSpot.MIDDLE, RIGHT, *split)
    direct = men(BallSpot.MIDDLE, RIGHT, *split, more="    snap to R\n")
    assert (plain["Q"].position, plain["R"].position) == (Position.QUARTERBACK, Position.BACK)
    assert (direct["Q"].position, direct["R"].position) == (Position.WIDEOUT, Position.QUARTERBACK)


def test_of_two_backs_the_deepest_moves() -> None:
    made = in_motion("back moves to call, 3 outside tackle, off line", "snap set")
    assert [a.man for a in made.assignments if a.motion] == ["R"]


@pytest.mark.parametrize(
    ("lines", "on_line"),
    [
        (("X moves 2 outside, 2 deep then back", "snap set"), True),
        (("X moves to away, 9 outside tackle, on line", "snap set"), True),
        (("X moves to away, 9 outside tackle, off line", "snap set"), False),
        # Short of his place on the line when the ball moves.
        (("Z moves to call, 5 outside tackle, on line", "Z starts 0.5", "snap running 5"), False),
    ],
)
def test_who_ends_on_the_line_is_a_line_player(lines: tuple[str, ...], on_line: bool) -> None:
    assert in_motion(*lines).man(lines[0][0]).on_line is on_line


def way(*corners: tuple[float, float], running: bool = False) -> Motion:
    first, *rest = (Point(*at) for at in corners)
    return Motion("Way", Path(first, tuple(map(Leg, rest))), running, 6.0 * running, "")


def test_the_defence_goes_by_who_moves_farthest_to_the_side() -> None:
    moves = {"A": way((-8, -1), (-7, -9)), "B": way((8, -1), (4, -1)), "C": way((2, -5), (5, -5))}
    assert motion_man(moves) == "B"
    assert motion_man({}) == ""

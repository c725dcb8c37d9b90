"""Where a man stands and what he is then, each just beside what it could be taken for."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from resolve.texts import THREE_TWO, TWELVE, codes, compiled, dress, play

from lineup.look_texts import against, look, man
from stemline.football.defenders import Defender, DutyKind, Level
from stemline.football.field import BallSpot, Side
from stemline.football.line import SNAPPER
from stemline.football.offence.counting import count, ranked
from stemline.football.play import Man, Motion, Play
from stemline.football.players import Position
from stemline.geometry.paths import Leg, Path, Point
from stemline.lineup.alignment import line_up
from stemline.lineup.defender_duties import DutyMaker
from stemline.lineup.lined_up import LinedUp
from stemline.lineup.motion_man import motion_man, move_of
from stemline.lineup.stands import Offence
from stemline.playbook.look_definitions import Apex, Choices, LookSide, ManMark, Stand
from stemline.playbook.said import SideWord
from stemline.resolve.expand import field_of
from stemline.source import NOWHERE

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


def picture(*changes: tuple[str, str], called: Side = RIGHT) -> LinedUp:
    placed = tuple(men(BallSpot.MIDDLE, called, *changes).values())
    counted = count(placed, called)
    book = compiled(TWELVE, THREE_TWO).book
    assert book is not None
    field = field_of(book, BallSpot.MIDDLE)
    return LinedUp(ranked(placed, counted), counted, field, called, book.receivers)


def test_a_jet_is_run_along_the_line_to_its_end() -> None:
    along, up = ((8, -6), (8, -1), (4, -1)), ((8, -6), (4, -6), (4, -1))
    there = picture()
    moves = [
        move_of("A", {"A": way(*corners, running=running)}, there)
        for corners in (along, up)
        for running in (True, False)
    ]
    assert moves[0] != moves[1] == moves[2] == moves[3]


def test_from_the_middle_the_strong_side_is_the_field_whichever_is_called() -> None:
    there = picture()
    assert there.count.strong is RIGHT
    assert replace(there, called=LEFT).side(SideWord.FIELD) is RIGHT


# The defence.


def test_more_men_than_zones_is_man_whatever_the_corners_do() -> None:
    made = against(look(
        "H covers man, strong #2", "S covers man, strong #3", "M covers man, back",
        "D covers man, weak #2", "F covers man, strong #1",
    ))  # fmt: skip
    corners = [made.defender(label).duty for label in "CB"]
    assert all(duty is not None and duty.kind is DutyKind.THIRD for duty in corners)
    assert "man" in made.shows and "zone" not in made.shows


def test_nobody_lines_up_over_the_sideline() -> None:
    """A yard inside of it, by common practice: 32.5 yards from the middle of 65."""
    assert man(look("C at numbers, strong, 30 outside, 8 deep"), "C").at.x == pytest.approx(31.5)


def test_a_man_of_the_line_who_drops_deep_is_of_the_line() -> None:
    assert man(look("E covers third, strong"), "E").level is Level.LINE
    assert man(look("M covers third, strong"), "M").level is Level.DEEP


def test_two_of_the_line_on_one_spot_are_a_mistake_though_two_places_are_said() -> None:
    result = look("E at B gap, strong", "T at 3, strong")
    assert codes(result) == ["E490"]


def test_of_two_men_off_the_line_the_deeper_one_steps_back() -> None:
    made = against(look("D at weak #2, 6.4 deep", "W at over weak #2, 6 deep"))
    assert made.defender("W").at.y == 6
    assert made.defender("D").at.y == pytest.approx(7.4)


def test_a_man_over_the_ball_rushes_to_the_weak_side() -> None:
    duty = man(look("M at 00, 4 deep", "M rushes A"), "M").duty
    assert duty is not None and duty.words == "rush A gap, weak"


def test_who_goes_round_another_goes_round_his_back() -> None:
    """1.2 yards behind where he stands, by common practice."""
    made = look("E rushes B, strong behind T", "T rushes C, strong")
    duty = man(made, "E").duty
    assert duty is not None and duty.via is not None
    assert duty.via.y - man(made, "T").at.y == pytest.approx(1.2)


@pytest.mark.parametrize(
    ("place", "side"), [("R at ball", True), ("R at away, 2 outside ball", False)]
)
def test_a_back_behind_the_ball_is_a_back_of_either_side(place: str, side: bool) -> None:
    there = picture(("R at away, 2 outside ball", place))
    told = Choices((ManMark(LookSide.STRONG, 0, 1),), ("man",))
    who = Defender("M", Point(0, 4), Level.SECOND, "", None, NOWHERE)
    ((duty, _),) = DutyMaker(Offence(there, RIGHT)).all([(who, told)])
    assert (duty is not None and duty.man == "R") is side


def test_an_apex_is_between_the_end_of_the_line_and_the_nearest_man_split_out() -> None:
    tight = ("H at call, 4 outside tackle, off line", "H at call, end, on line")
    there = picture(tight)
    x = Offence(there, RIGHT).stand((Stand(Apex(), LookSide.STRONG, 0.0, 5.0, "apex"),))[1].x
    assert x == pytest.approx((there.man("S").snap.x + there.man("H").snap.x) / 2)


def test_the_centre_has_one_label_where_any_formation_lines_up_another_c() -> None:
    other = THREE_TWO.replace("Three Two", "Other").replace("H at", "C at")
    there = men(BallSpot.MIDDLE, RIGHT, more="\n" + other.replace("between H", "between C"))
    assert SNAPPER in there and "C" not in there

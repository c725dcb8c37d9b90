"""What a quarterback sees at the line: the box counted, leverage, techniques, a look by its name.

The box is common practice, no published source: off the line to six yards deep, to two outside the
end men of the line.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from resolve.texts import THREE_TWO, TREY, TWELVE, compiled
from together import together

from lineup.look_texts import FRONT
from stemline.football.defenders import Defence, Defender, Level
from stemline.football.field import BallSpot, Side
from stemline.geometry.paths import Point
from stemline.lineup.lined_up import LinedUp
from stemline.lineup.look_placed import line_up_defence
from stemline.lineup.sights import in_box, seen
from stemline.read.read_kills import read_sights
from stemline.resolve.expand import CalledAt, Expander
from stemline.source import NOWHERE, Source
from stemline.syntax.parser import parse
from stemline.syntax.tree import Value

TIGHT = TREY + "    H at call, 1 outside Y, off line\n"
TACKLE, END = 2.6, 3.9
"""Where a tackle and a tight end stand, yards from the ball."""


@cache
def lined(side: Side = Side.RIGHT, formation: str = "three two") -> tuple[LinedUp, Defence]:
    result = compiled(TWELVE, THREE_TWO, TIGHT, FRONT)
    assert result.book is not None
    picture = Expander(result.book).lined(CalledAt(formation, side, "", BallSpot.MIDDLE)).picture
    assert picture is not None
    defence, _ = line_up_defence(result.book.looks["front"], replace(picture, toward=side))
    assert defence is not None
    return replace(picture, toward=side), defence


def guard(when: str) -> Value:
    tree, found = parse(Source("one.play", f"run Dive\n    kill to Stick when {when}\n"))
    value = tree.blocks[0].facts[0].guard
    assert not found and value is not None
    return value


def sees(when: str, side: Side = Side.RIGHT, **moved: Point) -> bool:
    """Whether the front shows it; ``moved`` are defenders who stand elsewhere, the call right."""
    picture, defence = lined(side)
    men = tuple(replace(d, at=moved.get(d.label, d.at)) for d in defence.defenders)
    return seen(
        read_sights(guard(when), ["Front", "Zero"]), replace(defence, defenders=men), picture
    )


def alone(x: float, y: float, formation: str = "three two") -> int:
    picture, defence = lined(formation=formation)
    man = Defender("M", Point(x, y), Level.SECOND, "", None, NOWHERE)
    return len(in_box(replace(defence, defenders=(man,)), picture))


@given(st.floats(-12, 12), st.floats(0.2, 12))
def test_a_man_is_in_the_box_to_six_deep_and_two_outside_the_ends(x: float, y: float) -> None:
    assert alone(x, y) == (abs(x) <= TACKLE + 2 and y <= 6)
    tight = -TACKLE - 2 <= x <= END + 2
    assert alone(x, y, "trey") == (tight and y <= 6)


def test_a_tight_end_widens_the_box_by_his_own_place() -> None:
    assert (alone(5.5, 4), alone(5.5, 4, "trey")) == (0, 1)
    assert (alone(-5.5, 4), alone(-5.5, 4, "trey")) == (0, 0)


@together(
    ("when", "shown"),
    [
        ("6 in box", True), ("7 in box", False), ("5 in box", False),
        ("6 or more in box", True), ("7 or more in box", False), ("6 or more in the box", True),
        ("6 or fewer in box", True), ("5 or fewer in box", False),
        ("7 or more in box or off", True), ("6 in box, press", False), ("6 in box, off", True),
        ("zone", True), ("man", False), ("middle closed", True), ("Front", True), ("Zero", False),
        ("weak corner off", True), ("weak corner press", False), ("strong corner inside", False),
        ("3 technique playside", True), ("3 technique backside", False), ("3 technique", True),
        ("1 technique playside", False), ("1 technique weak", True), ("2i technique", False),
    ],
)  # fmt: skip
@together("side", list(Side))
def test_the_front_shows_what_stands_there_called_to_either_side(
    when: str, shown: bool, side: Side
) -> None:
    assert sees(when, side) is shown


def test_one_man_who_comes_down_is_one_more_in_the_box() -> None:
    assert not sees("7 in box")
    assert sees("7 in box", F=Point(0, 6))
    assert not sees("7 in box", F=Point(0, 6.5))
    assert sees("5 or fewer in box", M=Point(0, 9))


@pytest.mark.parametrize(
    ("across", "how"), [(-1, "inside"), (1, "outside"), (0, ""), (0.2, ""), (-0.2, "")]
)
def test_leverage_is_to_which_side_of_his_man_he_stands(across: float, how: str) -> None:
    picture, _ = lined()
    z = next(m.snap for m in picture.men if m.label == "Z")
    at = Point(z.x + across, 2)
    assert [w for w in ("inside", "outside") if sees(f"strong corner {w}", C=at)] == [how] * bool(
        how
    )
    assert sees("strong corner press", C=at) and sees("weak corner off", C=at)


def test_the_overhang_is_the_inmost_man_off_the_line_beside_the_end() -> None:
    picture, _ = lined()
    h = next(m.snap for m in picture.men if m.label == "H")
    assert sees("strong overhang inside", S=Point(h.x - 1, 5))
    assert sees("strong overhang outside", S=Point(h.x + 1, 5))
    assert not sees("strong overhang inside", S=Point(0, 5))

"""Where men line up: sides, places, depths, by what they are lined up, and who is out of place."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from resolve.texts import ELEVEN, THREE_TWO, TWELVE, codes, compiled, dress, play, said

from stemline.football.field import BallSpot, Field, Side
from stemline.football.offence.landmarks import Landmark, x_of
from stemline.football.rulebook.codes import CANADIAN_AMATEUR
from stemline.geometry.paths import Point
from stemline.session import Session

REST = """    Q at ball, 5 deep
    A at call, 6 outside tackle, off line
    B at call, 8 outside tackle, off line
    C at away, 6 outside tackle, off line
    D at away, 8 outside tackle, off line
    E at away, 10 outside tackle, on line
"""
GO = "concept Go\n    a is back or call #1\n    a runs go"


def lined_up(line: str, book: str = TWELVE) -> Session:
    """A formation whose man X is lined up by one line."""
    rest = "".join(f"{x}\n" for x in REST.splitlines()[: 6 if book is TWELVE else 5])
    return compiled(book, f"formation Test\n    {line}\n{rest}", GO, dress("Test", concept="Go"))


def place(line: str, side: str = "Right", spot: BallSpot = BallSpot.MIDDLE) -> tuple[Point, bool]:
    result = lined_up(line)
    man = play(result, f"Test {side} Go", spot).man("X")
    return Point(round(man.at.x, 6), man.at.y), man.on_line


@pytest.mark.parametrize(
    ("line", "x", "y", "on_line"),
    [
        ("X at call, 12 outside tackle, on line", 14.6, 0, True),
        ("X at call, 12 outside tackle, on the line", 14.6, 0, True),
        ("X at call, 12 outside tackle, off line", 14.6, -1, False),
        ("X at call, 12 outside tackle", 14.6, -1, False),
        ("X at call side, 12 yards outside tackle, 3 yards deep", 14.6, -3, False),
        ("X at away, numbers, on line", -22.5, 0, True),
        ("X at away, 2 inside numbers, on line", -20.5, 0, True),
        ("X at away, 2 outside numbers, on line", -24.5, 0, True),
        ("X at right, hash, on line", 8.5, 0, True),
        ("X at left, hash, on line", -8.5, 0, True),
        ("X at call, divide, on line", 15.5, 0, True),
        ("X at call, 3 inside sideline, on line", 29.5, 0, True),
        ("X at call, end, on line", 3.9, 0, True),
        ("X at call, guard, 4 deep", 1.3, -4, False),
        ("X at ball, 7 deep", 0, -7, False),
        ("X at away, 2 outside ball, 5.5 deep", -2, -5.5, False),
        ("X at 4 outside B, on line", 14.6, 0, True),
        ("X at 1 inside E, off line", -11.6, -1, False),
        ("X at beside Q, 5 deep", 1.8, -5, False),
        ("X at away, beside Q, 5 deep", -1.8, -5, False),
        ("X at between B and numbers", 16.55, -1, False),
        ("X at call, between tackle and numbers", 12.55, -1, False),
        ("X at away, between E and sideline, on line", -22.55, 0, True),
        ("X at 2 outside B", 12.6, -1, False),
        ("X at call, 12-14 outside tackle, on line", 15.6, 0, True),
    ],
)
def test_a_place_called_right(line: str, x: float, y: float, on_line: bool) -> None:
    assert place(line) == (Point(x, y), on_line)


@pytest.mark.parametrize(
    ("line", "right", "left"),
    [
        ("X at call, 12 outside tackle", 14.6, -14.6),
        ("X at away, 12 outside tackle", -14.6, 14.6),
        ("X at right, 12 outside tackle", 14.6, 14.6),
        ("X at left, 12 outside tackle", -14.6, -14.6),
        ("X at field, 12 outside tackle", 14.6, -14.6),
        ("X at boundary, 12 outside tackle", -14.6, 14.6),
        ("X at 4 outside B", 14.6, -14.6),
    ],
)
def test_a_call_turns_sides_and_leaves_right_and_left(line: str, right: float, left: float) -> None:
    assert place(line, "Right")[0].x == right
    assert place(line, "Left")[0].x == left


@pytest.mark.parametrize("side", ["Right", "Left"])
def test_field_and_boundary_follow_the_ball(side: str) -> None:
    for word, left_hash in (("field", 14.6), ("boundary", -14.6)):
        line = f"X at {word}, 12 outside tackle"
        assert place(line, side, BallSpot.LEFT_HASH)[0].x == left_hash
        assert place(line, side, BallSpot.RIGHT_HASH)[0].x == -left_hash


def test_the_house_moves_the_numbers_and_the_gun() -> None:
    book = TWELVE.replace("house numbers is 10", "house numbers is 12\n    house gun is 6")
    formation = "formation Test\n    X at call, numbers, on line\n" + REST.replace(
        "Q at ball, 5 deep", "Q at ball"
    )
    result = compiled(book, formation, GO, dress("Test", concept="Go"))
    made = play(result, "Test Right Go")
    assert made.man("X").at.x == 32.5 - 12
    assert made.man("Q").at == Point(0, -6)


def test_the_quarterback_under_centre() -> None:
    formation = f"formation Test\n    X at call, numbers, on line\n{REST}"
    for words, depth in (("under centre", 1), ("under center", 1), ("4 deep", 4)):
        text = formation.replace("Q at ball, 5 deep", f"Q at ball, {words}")
        result = compiled(TWELVE, text, GO, dress("Test", concept="Go"))
        assert play(result, "Test Right Go").man("Q").at == Point(0, -depth)


def test_the_five_linemen_are_always_there() -> None:
    made = play(lined_up("X at call, numbers, on line"), "Test Left Go")
    assert [(m.label, m.at.x, m.at.y) for m in made.men if m.interior] == [
        ("LT", -2.6, 0),
        ("LG", -1.3, 0),
        ("SN", 0, 0),  # C is a receiver's letter here
        ("RG", 1.3, 0),
        ("RT", 2.6, 0),
    ]


def test_a_formation_takes_over_what_it_extends_and_changes_one_man() -> None:
    base = f"formation Base\n    X at call, numbers, on line\n{REST}"
    wide = "formation Wide extends Base\n    X at call, 3 inside sideline, on line"
    text = f"{base}\n{wide}"
    result = compiled(TWELVE, text, GO, dress("Base", "in Wide", concept="Go"))
    one, two = (play(result, f"{name} Right Go") for name in ("Base", "Wide"))
    assert (one.man("X").at.x, two.man("X").at.x) == (22.5, 29.5)
    assert [m.at for m in one.men if m.label != "X"] == [m.at for m in two.men if m.label != "X"]


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("X at numbers, on line", "E431"),
        ("X at 2 outside tackle", "E431"),
        ("X at strong, numbers", "E432"),
        ("X at weak, numbers", "E432"),
        ("X at call, between tackle", "E433"),
        ("X at call, 2 numbers", "E434"),
        ("X at call, inside numbers", "E435"),
        ("X at call, numbers, deep", "E436"),
        ("X at call, numbers, 5", "E436"),
        ("X at call, numbrs", "E430"),
        ("X at call", "E402"),
        ("X at call, numbers, on line, please", "E401"),
        ("X at call, 2 outside K", "E430"),
        ("X at 2 outside X", "E502"),
        ("Wide at call, numbers", "E325"),
    ],
)
def test_a_place_that_cannot_be_read(line: str, code: str) -> None:
    result = lined_up(line)
    assert codes(result)[0] == code, said(result.diagnostics)


def test_men_who_are_lined_up_by_each_other_are_a_circle() -> None:
    text = f"formation Test\n    X at 2 outside Y\n{REST}".replace(
        "A at call, 6 outside tackle", "Y at 2 inside X"
    )
    result = compiled(TWELVE, text, GO, dress("Test", concept="Go"))
    assert "E502" in codes(result)
    assert result.season is not None and result.season.plays == ()


def test_a_man_lined_up_by_one_who_is_not_there() -> None:
    text = f"formation Test\n    X at 2 outside Z\n{REST}"
    other = f"formation Other\n    Z at call, numbers, on line\n{REST}"
    result = compiled(TWELVE, f"{text}\n{other}", GO, dress("Test", concept="Go"))
    found = [d for d in result.diagnostics if d.code == "E501"]
    assert dict(found[0].values)["man"] == "Z"


def test_a_line_for_one_ball_spot_only_leaves_the_others_open() -> None:
    result = lined_up("X at call, numbers, on line when into field")
    (found, *_) = [d for d in result.diagnostics if d.code == "E503"]
    assert dict(found.values)["man"] == "X"


@pytest.mark.parametrize("book", [TWELVE, ELEVEN], ids=["12", "11"])
def test_one_man_too_many_and_one_too_few(book: str) -> None:
    """Neither raises; the formation is named with what the code plays."""
    line = "X at call, numbers, on line\n    Y at call, 2 inside numbers, off line"
    result = lined_up(line, book)
    found = [dict(d.values) for d in result.diagnostics if d.code == "E510"]
    wanted = 12 if book is TWELVE else 11
    assert [(v["got"], v["wanted"]) for v in found] == [(str(wanted + 1), str(wanted))]
    lines = REST.splitlines()[: 6 if book is TWELVE else 5]
    few = compiled(book, "\n".join(["formation Test", *lines]), GO, dress("Test", concept="Go"))
    assert [dict(d.values)["wanted"] for d in few.diagnostics if d.code == "E510"] == [str(wanted)]


def test_a_formation_without_a_quarterback() -> None:
    text = f"formation Test\n    X at call, numbers, on line\n{REST}".replace("Q at", "K at")
    assert "E513" in codes(compiled(TWELVE, text, GO, dress("Test", concept="Go")))


def test_nobody_stands_over_the_sideline() -> None:
    """A split that fits from the middle, and not from the near hash."""
    result = lined_up("X at call, 22 outside tackle, on line")
    found = [dict(d.values) for d in result.diagnostics if d.code == "E511"]
    assert [(v["man"], v["spot"], v["yards"]) for v in found] == [("X", "left hash", "0.6")]
    assert "E511" not in codes(lined_up("X at call, 21 outside tackle, on line"))


@pytest.mark.parametrize(("outside", "room"), [("8.7", False), ("8.9", True)])
def test_two_men_need_room(outside: str, room: bool) -> None:
    result = lined_up(f"X at call, {outside} outside tackle, off line")
    assert ("E512" not in codes(result)) is room


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(list(BallSpot)),
    st.sampled_from(list(Landmark)),
    st.sampled_from(list(Side)),
    st.floats(0, 12),
)
def test_a_landmark_on_one_side_is_the_mirror_of_the_other(
    spot: BallSpot, landmark: Landmark, side: Side, numbers: float
) -> None:
    here = x_of(landmark, side, Field(CANADIAN_AMATEUR, spot, numbers))
    there = x_of(landmark, side.other, Field(CANADIAN_AMATEUR, spot.mirrored, numbers))
    assert here == pytest.approx(-there)


def test_a_place_may_be_taken_up_by_several_men_in_one_line() -> None:
    text = THREE_TWO.replace(
        "    W at away, 5 outside tackle, off line\n    H at call, 4 outside tackle, off line\n",
        "    W, H at 3 inside X, 3 deep\n",
    )
    assert "E512" in codes(compiled(TWELVE, text, GO, dress("Three Two", concept="Go")))

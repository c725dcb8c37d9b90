"""Formations with motion, judged before it as well as at the snap; beside each the deciding text.

The texts judge the snap. A formation that its motion does not mend is a foul both times and is said
once; one that is mended is no foul, and is said as a warning of its own.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from references.test_legality import (
    CAN,
    CAN_HALF,
    CAN_SIX,
    CAN_TACKLE_END,
    CFL_SEVEN,
    CFL_YARD,
    EIGHT_LINE,
    FC19,
    FIVE_BACK,
    HALF,
    JET,
    NCAA_BETWEEN,
    NCAA_END,
    NCAA_FOUR,
    NFHS,
    NFL_SEVEN,
    NINE,
    SIX,
    SIX_LINE,
    TWO,
    UP,
    Case,
    broken,
)
from stemline.session import Session
from stemline.source import Source

FAR = "S moves to away, 3 outside tackle, off line; snap set"
SMALL = "Z moves to call, 4 outside tackle, off line; snap set"
ON = "X moves to away, 9 outside tackle, on line; snap set"
BACK = "H moves to away, 5 outside tackle, 2 deep; snap set"

CASES = [
    # A foul that the motion does not touch.
    Case("canadian amateur", FC19, CAN_SIX, "E520", motion=FAR),
    Case("canadian amateur", FC19, CAN_SIX, "E520", motion="H, S moves from 6 deep; snap running"),
    Case("canadian amateur", FC19, CAN_TACKLE_END, "E523", line=SIX_LINE,
         motion="H moves from 6 deep; snap running"),
    Case("canadian professional", CFL_SEVEN, CAN_SIX, "E520", motion=FAR),
    Case("canadian professional", CFL_YARD, CAN_HALF, "E525", motion=FAR),
    Case("professional", NFL_SEVEN, FIVE_BACK, "W520", motion=JET),
    Case("college", NCAA_FOUR, FIVE_BACK, "E521", motion=JET),
    Case("college", NCAA_BETWEEN, HALF, "E525", motion=FAR),
    Case("high school", NFHS, FIVE_BACK, "W521", motion=JET),
    Case("high school", "NFHS 7-2-7, from memory: toward the line", FIVE_BACK, "W521 W541",
         motion=UP),
    Case("eight-man", EIGHT_LINE, "X a8 off, Y c1 on, Z c8 off, B b6, Q b4", "E521", motion=SMALL),
    Case("nine-man", NINE, "X a8 off, Y c1 on, Z c8 off, H a4 off, B b6, Q b4", "W520",
         motion=SMALL),
    Case("six-man", SIX, "X a6 off, Y c1 on, Z c8 off, B b6, Q b4", "W520", motion=SMALL),
    # A foul that is none when the ball is snapped.
    Case("canadian amateur", FC19, CAN_SIX, "W870", motion=ON),
    Case("canadian professional", CFL_SEVEN, CAN_SIX, "W870", motion=ON),
    Case("professional", NFL_SEVEN, FIVE_BACK, "W870", motion=ON),
    Case("college", NCAA_FOUR, FIVE_BACK, "W870", motion=ON),
    Case("college", NCAA_BETWEEN, HALF, "W870", motion=BACK),
    Case("high school", NFHS, FIVE_BACK, "W870", motion=ON),
    # Right before the motion and after it, and a man whom it uncovers.
    Case("canadian amateur", FC19, CAN, motion=FAR),
    Case("college", NCAA_FOUR, TWO, motion=JET),
    Case("college", NCAA_END, TWO.replace("H a5 off", "H a5 on"),
         motion="X moves to away, 8 outside tackle, off line; snap set"),
]  # fmt: skip


def said(case: Case) -> list[str]:
    result = case.compiled().diagnostics
    return sorted({*broken(case), *(d.code for d in result if d.code == "W870")})


@pytest.mark.parametrize("case", CASES, ids=lambda c: f"{c.code}-{c.broken or 'legal'}")
def test_a_formation_is_judged_before_its_motion(case: Case) -> None:
    assert said(case) == case.broken.split()


@pytest.mark.parametrize("case", [c for c in CASES if c.broken[1:] in ("520", "521", "523")])
def test_what_no_motion_mends_is_said_once_of_the_formation(case: Case) -> None:
    (one,) = [d for d in case.compiled().diagnostics if d.code == case.broken]
    assert dict(one.values)["formation"] == "Tried Set"


def test_the_warning_says_what_is_wrong_and_which_motion_mends_it() -> None:
    case = next(c for c in CASES if c.broken == "W870")
    (one,) = [d for d in case.compiled().diagnostics if d.code == "W870"]
    assert dict(one.values) == {
        "formation": "Tried Set",
        "motion": "Tried Way",
        "rules": "too few men are on the line",
    }


def test_one_call_that_does_not_move_leaves_the_foul_what_it_is() -> None:
    moved = Case("college", NCAA_FOUR, FIVE_BACK, motion=ON)
    text = moved.text().replace("in Tried Set motion", "in Tried Set\n    in Tried Set motion")
    found = {d.code for d in Session([Source("t.play", text)], "t").diagnostics}
    assert "E521" in found and "W870" not in found


def test_one_man_whom_his_motion_mends_leaves_the_other_to_his_foul() -> None:
    both = HALF.replace("S c5 off", "S c5 0.3")
    found = Case("college", NCAA_BETWEEN, both, motion=BACK).compiled().diagnostics
    said = [(d.code, dict(d.values).get("man")) for d in found if d.code in ("E525", "W870")]
    assert sorted(set(said), key=str) == [("E525", "S"), ("W870", None)]


PLACES = st.sampled_from(["on", "off", "0.4", "2"])


@settings(max_examples=40, deadline=None)
@given(
    code=st.sampled_from(["high school", "college", "professional"]),
    x=PLACES, h=PLACES, s=PLACES, z=PLACES, wide=st.integers(9, 13), inside=st.integers(3, 6),
)  # fmt: skip
def test_judging_before_motion_is_judging_the_standing_formation(
    code: str, x: str, h: str, s: str, z: str, wide: int, inside: int
) -> None:
    """The back moves and nobody of the line: what stands is what it was without a call."""
    men = f"X a{wide} {x}, H a{inside} {h}, S c{inside} {s}, Z c{wide} {z}, B b7, Q b5"
    way = "B moves to call, 2 outside ball, 7 deep; snap set"
    alone, moved = said(Case(code, "", men)), said(Case(code, "", men, motion=way))
    assert moved_apart(moved) == moved_apart(alone)


def moved_apart(found: list[str]) -> list[str]:
    """What is asked of the formation: a covered man is asked about in each call."""
    return [code for code in found if code[1:] != "524"]

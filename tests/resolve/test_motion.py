"""Motion first, then receivers are counted: strength is what it is when the ball moves."""

from __future__ import annotations

import pytest

from resolve.texts import (
    CROSSERS,
    DOUBLES_ELEVEN,
    ELEVEN,
    QUADS,
    THREE_TWO,
    TWELVE,
    compiled,
    dress,
    play,
    sound,
    who,
)
from stemline.football.field import BallSpot, Side
from stemline.paths import Point

ACROSS = """
motion Trade
    call #2 moves to away, 1.5 outside tackle, off line
    snap set
"""


def test_the_right_slot_crosses_and_everything_turns_around() -> None:
    """From a 2x2 called right: strong is now left, the settle comes from there."""
    result = sound(
        ELEVEN, DOUBLES_ELEVEN, ACROSS, CROSSERS, dress("Doubles motion Trade", sides=False)
    )
    for spot in BallSpot:
        made = play(result, "Doubles Right Trade Crossers", spot)
        assert made.call.side is Side.RIGHT
        assert made.strong is Side.LEFT
        assert made.shape == (3, 1)
        settle, flat = made.runs("settle"), made.runs("flat")
        assert settle is not None and settle.path is not None and settle.path.start.x < 0
        assert who(made)["settle"] == "strong #2"
        assert flat is not None and flat.path is not None and flat.path.end.x > 0
        moved = made.man("S")
        assert moved.at.x > 0 > moved.snap.x
        others = [m for m in made.men if m.label != "S"]
        assert all(m.at == m.snap for m in others)
        assert [a.man for a in made.assignments if a.motion] == ["S"]
        assert {s.name: round(s.at.x, 6) for s in made.spots}["near"] > 0


def test_the_others_stand_where_they_stand_without_the_motion() -> None:
    plain = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(
        ELEVEN,
        DOUBLES_ELEVEN,
        ACROSS,
        plain,
        dress("Doubles", "in Doubles motion Trade", concept="Go", sides=False),
    )
    still, moved = (play(result, f"Doubles Right {m}Go") for m in ("", "Trade "))
    assert still.strong is Side.RIGHT and moved.strong is Side.LEFT
    for man in still.men:
        assert moved.man(man.label).at == man.at
        if man.label != "S":
            assert moved.man(man.label).snap == man.snap


def test_without_the_motion_the_crossers_are_not_served() -> None:
    result = compiled(ELEVEN, DOUBLES_ELEVEN, CROSSERS, dress("Doubles"))
    assert "E620" in [d.code for d in result.diagnostics]


def test_the_mover_is_counted_where_he_lines_up() -> None:
    """`call #2` is the second man on the called side before anyone moves."""
    for side in ("right", "left"):
        result = compiled(
            ELEVEN, DOUBLES_ELEVEN, ACROSS, CROSSERS,
            dress("Doubles motion Trade", f"to {side}", sides=False),
        )  # fmt: skip
        made = play(result, f"Doubles {side.capitalize()} Trade Crossers")
        assert [a.man for a in made.assignments if a.motion] == ["S"]


def test_a_need_is_met_by_the_motion_and_by_nothing_else() -> None:
    """The concept says what it needs, the call supplies it; no motion is made up."""
    result = compiled(TWELVE, QUADS, CROSSERS, dress("Quads"))
    (found,) = [d for d in result.diagnostics if d.is_error]
    values = dict(found.values)
    assert found.code == "E651"
    assert (values["role"], values["man"], values["yards"]) == ("under", "X", "6")
    sound(TWELVE, QUADS, CROSSERS, dress("Quads motion Tuck"))


@pytest.mark.parametrize(("outside", "met"), [("6", True), ("6.1", False)])
def test_a_need_is_measured_to_the_yard(outside: str, met: bool) -> None:
    text = QUADS.replace("away, 6 outside tackle", f"away, {outside} outside tackle")
    result = compiled(TWELVE, text, CROSSERS, dress("Quads motion Tuck"))
    assert ("E651" not in [d.code for d in result.diagnostics]) is met


def test_a_motion_that_moves_nobody_is_named() -> None:
    text = QUADS.replace("away #1 moves", "away #2 moves")
    result = compiled(TWELVE, text, CROSSERS, dress("Quads motion Tuck"))
    found = [dict(d.values) for d in result.diagnostics if d.code == "E610"]
    assert [(v["who"], v["formation"]) for v in found] == [("away #2", "Quads")]


def test_a_waggle_starts_deep_and_ends_where_he_lines_up() -> None:
    waggle = """
motion Waggle
    S moves from 7 deep
    call #3 moves from 6 deep
    snap running 7
"""
    both = dress("Three Two motion Waggle, none")
    result = sound(TWELVE, THREE_TWO, waggle, CROSSERS, both)
    made = play(result, "Three Two Right Waggle Crossers")
    for letter, depth in (("S", 7), ("H", 6)):
        man, assignment = made.man(letter), made.assignment(letter)
        assert man.at == Point(man.snap.x, -depth)
        assert man.snap.y == -1
        motion = assignment.motion
        assert motion is not None and motion.running and motion.speed == 7
        assert (motion.path.start, motion.path.end) == (man.at, man.snap)
    still = play(result, "Three Two Right Crossers")
    assert who(made) == who(still)
    assert [a.path for a in made.assignments] == [a.path for a in still.assignments]


@pytest.mark.parametrize(
    ("line", "running", "speed"),
    [
        ("snap set", False, 0),
        ("snap running", True, 6),
        ("snap running 4.5", True, 4.5),
        ("", False, 0),
    ],
)
def test_how_he_is_at_the_snap(line: str, running: bool, speed: float) -> None:
    text = QUADS.replace("snap set", line)
    result = sound(TWELVE, text, CROSSERS, dress("Quads motion Tuck"))
    motion = play(result, "Quads Right Tuck Crossers").assignment("X").motion
    assert motion is not None
    assert (motion.running, motion.speed) == (running, speed)


def test_a_motion_in_pieces_goes_through_each_place() -> None:
    text = QUADS.replace(
        "moves to away, 6 outside tackle, on line",
        "moves to away, 9 outside tackle, 3 deep then away, 6 outside tackle, on line",
    )
    result = sound(TWELVE, text, CROSSERS, dress("Quads motion Tuck"))
    made = play(result, "Quads Right Tuck Crossers")
    motion = made.assignment("X").motion
    assert motion is not None
    assert Point(-(2.6 + 9), -3) in motion.path.corners
    assert motion.path.end == made.man("X").snap == Point(-(2.6 + 6), 0)


def test_a_long_motion_goes_behind_the_men_who_are_set() -> None:
    result = sound(
        ELEVEN, DOUBLES_ELEVEN, ACROSS, CROSSERS, dress("Doubles motion Trade", sides=False)
    )
    made = play(result, "Doubles Right Trade Crossers")
    motion = made.assignment("S").motion
    assert motion is not None
    middle = [c for c in motion.path.corners if abs(c.x) < 4 and c != motion.path.end]
    assert middle and all(c.y < -1 for c in middle)


@pytest.mark.parametrize(("snap", "level"), [("set", False), ("running 5", True)])
def test_a_man_who_runs_at_the_snap_runs_along_the_line(snap: str, level: bool) -> None:
    """NFHS 7-2-7, from memory: a man in motion may not be moving toward the line at the snap."""
    text = ACROSS.replace("snap set", f"snap {snap}")
    result = sound(
        ELEVEN, DOUBLES_ELEVEN, text, CROSSERS, dress("Doubles motion Trade", sides=False)
    )
    motion = play(result, "Doubles Right Trade Crossers").assignment("S").motion
    assert motion is not None
    before, after = motion.path.corners[-2:]
    assert (before.y == after.y) is level
    assert min(c.y for c in motion.path.corners) < -2

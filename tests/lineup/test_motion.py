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
    codes,
    compiled,
    dress,
    play,
    sound,
    who,
)

from stemline.football.field import BallSpot, Side
from stemline.football.play import Man, Motion
from stemline.geometry.paths import Point

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
    result = compiled(TWELVE, text, CROSSERS, dress("Quads motion Tuck"))
    assert codes(result) == (["W543"] if running else [])  # X is on the line and still runs
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


# When he starts, and where that puts him.

SPACED = THREE_TWO.replace("between H and Z", "9 outside tackle")


def started(*lines: str) -> tuple[Man, Motion]:
    """S of the called side, moved as the lines say; he stands 11.6 yards out, one off the line."""
    motion = "motion Way\n" + "".join(f"    {x}\n" for x in lines)
    go = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, SPACED, motion, go, dress("Three Two motion Way", concept="Go"))
    made = play(result, "Three Two Right Way Go")
    shown = made.assignment("S").motion
    assert shown is not None
    return made.man("S"), shown


@pytest.mark.parametrize("deep", [2.5, 3.5])
def test_a_man_who_runs_across_behind_the_slots_runs_flat(deep: float) -> None:
    """A jet man dips no deeper than the place at which the ball is snapped: common practice."""
    _, motion = started(f"S moves to away, 1 outside ball, {deep} deep", "snap running")
    assert min(c.y for c in motion.path.corners) == motion.path.end.y == -deep


def test_without_a_start_he_arrives_as_the_ball_is_snapped() -> None:
    man, motion = started("S moves from 7 deep", "snap running 6")
    assert man.snap == Point(11.6, -1)
    assert motion.starts == pytest.approx(1.0) and motion.set_for is None


@pytest.mark.parametrize(("seconds", "y"), [("0.5", -4), ("1", -1), ("0.95", -1)])
def test_a_late_start_leaves_him_short_of_his_place(seconds: str, y: float) -> None:
    man, motion = started("S moves from 7 deep", f"S starts {seconds}", "snap running 6")
    assert man.at == Point(11.6, -7)
    assert man.snap == motion.path.end == Point(11.6, y)
    assert motion.starts == float(seconds)


def test_he_is_cut_short_in_the_middle_of_a_way_in_pieces() -> None:
    lines = ("S moves 3 outside, 1 deep then 3 inside, 1 deep", "S starts 0.8", "snap running 5")
    man, motion = started(*lines)
    three_out, one_back = (14.6, -1), (13.6, -1)
    turn = motion.path.corners[1]
    assert (turn.x, turn.y) == pytest.approx(three_out)
    assert (man.snap.x, man.snap.y) == pytest.approx(one_back)


def test_back_is_where_he_lined_up() -> None:
    man, motion = started("S moves to call, 3 outside tackle, 3 deep then back", "snap set")
    assert man.snap == man.at == Point(11.6, -1) and not man.on_line
    assert motion.path.end == man.at and len(motion.path.legs) > 1


def test_he_starts_at_a_place_and_comes_to_his_own() -> None:
    man, motion = started("S moves from call, 11 outside tackle, 6 deep", "snap running 7")
    assert man.at == motion.path.start == Point(13.6, -6)
    assert man.snap == Point(11.6, -1)


def test_a_man_of_his_own_pace_and_one_who_is_set_in_one_motion() -> None:
    text = (
        "motion Way\n    S, H moves from 6 deep\n    S starts 0.8, running 6.5\n    H starts 3, set"
    )
    go = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, SPACED, text, go, dress("Three Two motion Way", concept="Go"))
    made = play(result, "Three Two Right Way Go")
    moves = {a.man: a.motion for a in made.assignments if a.motion}
    assert (moves["S"].running, moves["S"].speed) == (True, 6.5)
    assert (moves["H"].running, moves["H"].speed) == (False, 0)
    assert moves["H"].set_for == pytest.approx(3 - 5 / 6)


def test_the_deepest_back_moves_by_no_letter() -> None:
    text = "motion Way\n    back moves to call, 3 outside tackle, off line\n    snap set"
    go = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, SPACED, text, go, dress("Three Two motion Way", concept="Go"))
    made = play(result, "Three Two Left Way Go")
    assert made.man("R").snap == Point(-5.6, -1)
    empty = SPACED.replace("R at away, 2 outside ball, 5 deep", "R at away, 3 outside tackle")
    result = compiled(TWELVE, empty, text, go, dress("Three Two motion Way", concept="Go"))
    (found,) = {d for d in result.diagnostics if d.code == "E610"}
    assert dict(found.values)["who"] == "back"


def test_a_lineman_shifts_by_his_label() -> None:
    text = "motion Over\n    LT moves to call, end, on line\n    snap set"
    go = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, SPACED, text, go, dress("Three Two motion Over", concept="Go"))
    made = play(result, "Three Two Right Over Go")
    assert made.man("LT").snap == Point(3.9, 0) and made.man("LT").on_line


def test_a_motion_into_another_man_or_over_the_sideline_is_said_of_the_motion() -> None:
    go = "concept Go\n    a is strong #1\n    a runs go"
    for way, code in (("9 outside", "E512"), ("30 outside", "E511")):
        text = f"motion Way\n    H moves to call, {way} tackle, off line\n    snap set"
        result = compiled(TWELVE, SPACED, text, go, dress("Three Two motion Way", concept="Go"))
        found = [d for d in result.diagnostics if d.code == code]
        assert [(d.span.source, d.span.line) for d in found] == [("three.play", 2)]

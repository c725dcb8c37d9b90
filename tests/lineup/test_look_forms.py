"""Looks for some sets, stunts, disguises and adjustments to motion: what they come to."""

from __future__ import annotations

from functools import cache

import pytest
from resolve.texts import THREE_TWO, TWELVE, codes, compiled, said

from lineup.look_texts import FRONT, look, man
from stemline.football.defenders import Defence
from stemline.football.field import BallSpot, Side
from stemline.football.play import Play
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.rushing import arrives, starts
from stemline.geometry.paths import Point
from stemline.resolve.expand import CalledAt, Expander
from stemline.session import Session

FOUR_ONE = THREE_TWO.replace("Three Two", "Quads").replace(
    "W at away, 5 outside", "W at call, 2 outside"
)
MOVES = {
    "Across": "away #2 moves to call, 1 outside tackle",
    "In": "call #1 moves to call, 9 outside tackle",
    "Out": "call #3 moves to call, 9 outside tackle",
    "Back": "R moves 2 outside, 7 deep",
}


@cache
def moved(*lines: str) -> Session:
    """The front with lines of a look over it, two formations, and a motion of each kind."""
    motions = [f"motion {name}\n    {line}\n    snap set" for name, line in MOVES.items()]
    motions += [f"motion Jet\n    {MOVES['Across']}\n    snap running 6"]
    child = "".join(
        ["look Test extends Front\n", *(f"    {line}\n" for line in ('say "It."', *lines))]
    )
    return compiled(TWELVE, THREE_TWO, FOUR_ONE, FRONT, child, "\n\n".join(motions))


def lined(result: Session, motion: str = "", formation: str = "three two") -> Defence | None:
    assert result.book is not None
    maker = Expander(result.book)
    return maker.defence(
        "test", CalledAt(formation, Side.RIGHT, motion.casefold(), BallSpot.MIDDLE)
    )[0]


@pytest.mark.parametrize(
    ("line", "met"),
    [
        ("", {"three two", "quads"}),
        ("only for Quads", {"quads"}),
        ("never for Quads", {"three two"}),
        ("only for 3x2", {"three two"}),
        ("only for 4 strong", {"quads"}),
        ("only for one back", {"three two", "quads"}),
        ("only for empty, Three Two", {"three two"}),
        ("never for one back", set()),
    ],
)
def test_a_look_meets_the_sets_it_is_for(line: str, met: set[str]) -> None:
    result = moved(*[line] * bool(line))
    got = {key for key in ("three two", "quads") if lined(result, formation=key) is not None}
    assert got == met
    assert ("W499" in codes(result)) == (not met), said(result.diagnostics)


@pytest.mark.parametrize(
    ("guard", "moves"),
    [
        ("motion", {"Across", "In", "Out", "Back", "Jet"}),
        ("motion across", {"Across", "Jet"}),
        ("motion in", {"In"}),
        ("motion out", {"Out", "Back"}),
        ("motion jet", {"Jet"}),
        ("motion to strong", {"Across", "Out", "Jet"}),
        ("motion in or motion out", {"In", "Out", "Back"}),
        ("motion across, motion jet", {"Jet"}),
    ],
)
def test_a_man_adjusts_to_the_motion_he_is_told_and_to_no_other(
    guard: str, moves: set[str]
) -> None:
    result = moved(f"W covers man, motion man when {guard}")
    adjusted = set()
    for name in ("", *MOVES, "Jet"):
        defence = lined(result, name)
        assert defence is not None
        duty = defence.defender("W").duty
        assert duty is not None
        if duty.man:
            adjusted.add(name)
            assert duty.man == {"In": "Z", "Out": "H", "Back": "R"}.get(name, "W")
        else:
            assert duty.words == "hook, weak"
    assert adjusted == moves


def free(result: Session, label: str) -> tuple[float, float]:
    """When a man of the look starts, and when he is at a passer whom nobody guards."""
    defence = lined(result)
    assert defence is not None and result.book is not None
    called = CalledAt("three two", Side.RIGHT, "", BallSpot.MIDDLE)
    picture = Expander(result.book).lined(called).picture
    assert picture is not None
    play = object.__new__(Play)
    for name, value in {
        "defence": defence,
        "assignments": (),
        "feet": (),
        "protection": "",
    }.items():
        object.__setattr__(play, name, value)
    rusher = defence.defender(label)
    at = Point(0.0, -7.0)
    return starts(rusher, play, HIGH_SCHOOL), arrives(rusher, at, play, HIGH_SCHOOL)


def test_who_comes_behind_a_man_or_late_is_there_later() -> None:
    now = free(moved("M rushes B, strong"), "M")[1]
    behind = free(moved("M rushes B, strong behind T", "T rushes A, strong"), "M")[1]
    waits = free(moved("E rushes B, strong behind T", "T rushes D, strong"), "E")
    assert waits[0] > HIGH_SCHOOL.react.value == free(moved("E rushes B, strong"), "E")[0]
    late = free(moved("M rushes B, strong after 1 second"), "M")
    later = free(moved("M rushes B, strong after 1.5 seconds"), "M")
    assert now < behind
    assert late[0] == 1.0 and later[1] == pytest.approx(late[1] + 0.5)


def test_a_stunt_goes_round_the_place_of_the_man_who_goes_first() -> None:
    result = look("E rushes B, strong behind T", "T rushes C, strong")
    first, second = man(result, "T"), man(result, "E")
    assert second.duty is not None and second.duty.via is not None
    assert second.duty.via.x == first.at.x and second.duty.via.y > first.at.y
    assert second.duty.words == "rush B gap, strong, behind [T]"
    mirrored = man(result, "E", Side.LEFT)
    assert mirrored.duty is not None and mirrored.duty.via is not None
    assert mirrored.duty.via.x == -second.duty.via.x


def test_what_a_look_hides_is_not_what_it_plays() -> None:
    defence = lined(moved("shows middle open, press"))
    assert defence is not None
    assert set(defence.disguise) == {"press", "middle open"}
    assert not set(defence.disguise) & set(defence.shows)


def test_the_number_who_rush_is_counted_by_where_they_come_from() -> None:
    plain, sent = lined(moved()), lined(moved("M rushes A, strong", "J covers hole"))
    assert plain is not None and plain.rush_words == ""
    assert sent is not None and sent.rush_words == "4 rush, 1 from the second level"

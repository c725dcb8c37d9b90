"""Passes as they are coached, by where the men go: a slant that goes on, a back in the flat, a tag
for one look, a role called as a label is, a ball tossed back from a run.

What each is meant to be is common practice; no published source.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from resolve.texts import ELEVEN, THREE_TWO, TWELVE, codes, compiled, play
from stemline.football.play import Play
from stemline.geometry.paths import Point

TIGHT = """
formation Tight
    X at away, numbers, on line
    H at away, 4 outside tackle, off line
    Y at call, end, on line
    Z at call, numbers, off line
    R at ball, 7 deep
    Q at ball, under centre

run Plunge
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk
"""


def drawn(lines: str, *more: str, call: str = "Three Two Right Ways", tags: str = "") -> Play:
    text = f"concept Ways\n{lines}    feet 3\n    read a on 3\n"
    dress = f"dress Ways\n    in {call.partition(' Right')[0]}{tags}\n"
    result = compiled(*(more or (TWELVE, THREE_TWO)), text, dress)
    assert not [d for d in result.diagnostics if d.is_error], codes(result)
    return play(result, call)


def corners(made: Play, man: str) -> tuple[Point, ...]:
    path = made.assignment(man).path
    assert path is not None
    return path.corners


def test_a_slant_that_goes_on_is_no_slant_to_its_end() -> None:
    """In eight from the slant is run where a second move is, two steps after the break."""
    made = drawn("    a is strong #1\n    a runs slant then in 8\n")
    _, stem, slant, end = corners(made, "Z")
    assert stem.y == pytest.approx(4)
    assert slant.y == pytest.approx(end.y) and slant.y < 7
    assert abs(end.x - slant.x) == pytest.approx(8)


def test_a_slant_to_its_end_and_one_who_sits_there_are_whole() -> None:
    for said in ("slant", "slant then settle"):
        made = drawn(f"    a is strong #1\n    a runs {said}\n")
        assert corners(made, "Z")[-1].y > 9


@pytest.mark.parametrize("way", ["weak", "strong"])
@pytest.mark.parametrize("route", ["flat", "check then flat"])
def test_a_back_goes_to_the_flat_around_the_end(route: str, way: str) -> None:
    """He crosses the line outside the tackles, where nobody stands."""
    made = drawn(f"    a is strong #1\n    a runs go\n    b is back\n    b runs {route} {way}\n")
    crossed = [
        a.x + (b.x - a.x) * -a.y / (b.y - a.y)
        for a, b in pairwise(corners(made, "R"))
        if a.y < 0 <= b.y
    ]
    assert crossed and all(abs(x) > 3 for x in crossed)


def test_who_checks_first_comes_out_from_behind_the_line() -> None:
    """The look shows: to the guard, and out behind the line before he climbs."""
    made = drawn("    a is strong #1\n    a runs go\n    b is back\n    b runs check then flat\n")
    _, looks, around, _ = corners(made, "R")
    assert looks.y == -2 and abs(looks.x) < 2
    assert around.y == -1 and abs(around.x) > 4


TAGGED = """    a is strong #1
    a runs go
    b is weak #1
    b runs hitch
"""


@pytest.mark.parametrize("who", ["weak #1", "b"])
def test_a_tag_for_one_look_leaves_him_his_route_against_all_else(who: str) -> None:
    tag = f"tag Fade for Ways\n    {who} runs fade when press\n    keeps read\n"
    call = "Three Two Right Ways"
    made = drawn(TAGGED, TWELVE, THREE_TWO, tag, call=f"{call} Fade", tags=" with Fade")
    plain = drawn(TAGGED)
    his = made.assignment("X")
    assert his.path == plain.assignment("X").path
    assert [branch.looks for branch in his.branches] == ["press"]
    assert made.called_away == ()


@pytest.mark.parametrize("name", ["pick", "pull", "alert"])
def test_a_man_may_be_called_as_a_label_is(name: str) -> None:
    lines = f"    a is strong #1\n    a runs go\n    {name} is strong #2\n    {name} runs slant\n"
    assert drawn(lines).assignment("S").role == name


def test_away_from_a_side_is_the_other() -> None:
    lines = "    a is strong #1\n    a runs go\n    b is back\n    b runs swing {}\n"
    ways = [corners(drawn(lines.format(way)), "R") for way in ("away from call", "away")]
    assert ways[0] == ways[1]


def test_a_ball_tossed_back_under_centre_goes_back() -> None:
    """The quarterback has dropped by then: it is no pass forward."""
    lines = (
        "    join run Plunge\n    quarterback hands to carrier\n"
        "    carrier tosses to quarterback\n    a is weak #1\n    a runs post\n"
        "    tight end blocks edge\n    everyone else runs go\n"
    )
    personnel = ELEVEN + TIGHT
    made = drawn(lines, personnel, call="Tight Right Ways")
    back = made.exchanges[-1]
    assert back.taker == "Q" and back.at is not None and back.at.y == -5


def test_he_may_throw_to_whom_a_comma_names() -> None:
    lines = (
        "    a is strong #1\n    a runs go\n    b is strong #2\n    b runs post\n"
        "    c is strong #3\n    quarterback throws to c at 2 behind\n"
        "    c throws to a, b or run\n"
    )
    last = drawn(lines).exchanges[-1]
    assert (last.taker, last.others, last.runs) == ("Z", ("S",), True)


def test_of_men_whom_a_comma_names_one_who_is_nobody_is_told() -> None:
    lines = (
        "    a is strong #1\n    a runs go\n    post is strong #2\n    post runs post\n"
        "    c is strong #3\n    quarterback throws to c at 2 behind\n"
        "    c throws to a, pots or run\n    feet 3\n    read a on 3\n"
    )
    result = compiled(TWELVE, THREE_TWO, f"concept Ways\n{lines}", "dress Ways\n    in Three Two\n")
    (found,) = [d for d in result.diagnostics if d.is_error]
    assert (found.code, found.nearest[0]) == ("E450", "post")


@pytest.mark.parametrize(
    ("place", "told"),
    [
        ("over ball", "the ball"),
        ("over the playside tackle", "the playside tackle"),
        ("playside tackle", "the playside tackle"),
    ],
)
def test_where_he_is_given_the_ball_is_said_as_a_coach_says_it(place: str, told: str) -> None:
    lines = (
        "    a is strong #1\n    a runs go\n    c is strong #3\n"
        f"    quarterback throws to c at 6 deep, {place}\n    c throws to a or run\n"
    )
    assert f"from Q, 6 deep behind {told}, throw" in drawn(lines).assignment("H").job


def test_a_motion_to_behind_the_quarterback_is_no_deeper_on_its_way() -> None:
    lines = "    a is strong #1\n    a runs go\n"
    motion = (
        "motion Orbit\n    W moves to ball, 7 deep then call, 4 outside tackle, 5 deep\n"
        "    snap running\n"
    )
    call = "Three Two Right Orbit Ways"
    made = drawn(lines, TWELVE, THREE_TWO, motion, call=call, tags=" motion Orbit")
    way = made.assignment("W").motion
    assert way is not None and min(p.y for p in way.path.corners) == -7

"""What is said as on the field is the play that the notation's own words make."""

from __future__ import annotations

import pytest

from resolve.texts import DOUBLES_ELEVEN, ELEVEN, codes, compiled, dress, play
from stemline.football.play import Play

PASS = """
concept Test
    a is strong #1
    a runs curl
    a runs fade when press
    weak #1 runs slant
    weak #2 runs {route}
    strong #2 runs hook 6
    back runs swing
    feet 3
    read {read} on 3
"""
RUN = """
run Test
    carrier is back
    carrier aims playside A
    {half} blocks down or climb
    centre blocks back or on
    backside guard blocks pull kick end man on line
    backside tackle blocks hinge
    everyone else blocks stalk
"""


def made(text: str) -> Play:
    return play(
        compiled(ELEVEN, DOUBLES_ELEVEN, text, dress("Doubles", concept="Test")),
        "Doubles Right Test",
    )


def places(shown: Play) -> list[tuple[object, ...]]:
    return [(a.man, a.path, a.job) for a in shown.assignments]


@pytest.mark.parametrize("route", ["curl", "slant", "hook", "swing"])
def test_a_read_may_name_the_man_by_the_route_that_he_alone_runs(route: str) -> None:
    who = {"curl": "a", "slant": "weak #1", "hook": "strong #2", "swing": "back"}[route]
    by_route, by_man = (made(PASS.format(route="cross", read=x)) for x in (route, who))
    assert by_route.reads[0].men == by_man.reads[0].men != ()


def test_a_route_that_two_men_run_is_no_read() -> None:
    result = compiled(
        ELEVEN,
        DOUBLES_ELEVEN,
        PASS.format(route="slant", read="slant"),
        dress("Doubles", concept="Test"),
    )
    assert codes(result) == ["E464"]
    (told,) = result.diagnostics
    assert dict(told.values)["choices"] == "weak #1 or weak #2"


@pytest.mark.parametrize(
    ("name", "route"), [("drag", "cross"), ("glance", "skinny post"), ("square in", "in")]
)
def test_another_name_of_a_route_is_that_route(name: str, route: str) -> None:
    mine, theirs = (made(PASS.format(route=x, read="a")) for x in (name, route))
    assert places(mine) == places(theirs)


def test_a_half_of_the_line_is_whoever_of_it_has_no_line_of_his_own() -> None:
    both = "playside guard, playside tackle"
    assert places(made(RUN.format(half="playside line"))) == places(made(RUN.format(half=both)))
    own = RUN.format(half="playside line") + "    playside guard blocks double with centre\n"
    theirs = RUN.format(half="playside tackle") + "    playside guard blocks double with centre\n"
    assert places(made(own)) == places(made(theirs))


def test_a_man_behind_another_stands_two_yards_deeper() -> None:
    stacked = """
formation Stacked extends Doubles
    S behind Z
"""
    shown = play(
        compiled(ELEVEN, DOUBLES_ELEVEN, stacked, PASS.format(route="go", read="a"),
                 dress("Stacked", concept="Test")),
        "Stacked Right Test",
    )  # fmt: skip
    ahead, behind = shown.man("Z").snap, shown.man("S").snap
    assert (behind.x, behind.y) == (ahead.x, ahead.y - 2.0)

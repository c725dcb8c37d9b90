"""What is said as on the field is the play that the notation's own words make."""

from __future__ import annotations

import pytest

from resolve.texts import DOUBLES_ELEVEN, ELEVEN, codes, compiled, dress, play
from stemline.football.field import Side
from stemline.football.play import Play
from stemline.playbook.look_definitions import ManMark

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


def drawn(read: str, **lines: str) -> Play:
    """The call of a pass or run whose lines are ``read``; ``lines`` are its other blocks."""
    kind = "run" if "carrier is" in read else "concept"
    block = f"\n{kind} Test\n    " + "\n    ".join(read.split(" / ")) + "\n"
    return play(
        compiled(ELEVEN, DOUBLES_ELEVEN, *lines.values(), block, dress("Doubles", concept="Test")),
        "Doubles Right Test",
    )


LINE = "carrier is back / carrier aims playside A / line blocks on or climb"
OUT = "weak #1 runs go / strong #1 runs go / weak #2 runs out / feet 3 / read weak #2 on 3"


@pytest.mark.parametrize(
    ("said", "notation"),
    [
        (f"{LINE} / everyone else blocks", f"{LINE} / everyone else blocks stalk"),
        (f"{LINE} / weak #2 fakes sweep", f"{LINE} / weak #2 aims outside the end"),
        (f"{OUT} / strong #2 slides to the flat", f"{OUT} / strong #2 runs flat"),
        (f"{OUT} / strong #2 runs bender across the ball", f"{OUT} / strong #2 runs bender"),
        (f"{OUT} / line blocks / back blocks edge", f"{OUT} / back blocks edge"),
        (f"{OUT} / everyone else blocks", f"{OUT} / back blocks inside out"),
        (f"throw is strong #2 / throw runs now / {OUT}", f"a is strong #2 / a runs now / {OUT}"),
        ("carrier is quarterback / carrier aims outside the end / line blocks reach / "
         "key end man on line / pitch to back if he takes the quarterback",
         "carrier is quarterback / carrier aims outside the end / line blocks reach / "
         "key end man on line / back runs swing playside / "
         "pitch to back if he takes the quarterback"),
        ("carrier is back / carrier aims playside A / playside line blocks down / "
         "backside guard, backside tackle block scoop",
         "carrier is back / carrier aims playside A / playside guard, playside tackle, centre "
         "blocks down / backside guard, backside tackle blocks scoop"),
    ],
)  # fmt: skip
def test_a_spoken_line_is_the_play_that_its_words_mean(said: str, notation: str) -> None:
    mine, theirs = drawn(said), drawn(notation)
    assert places(mine) == places(theirs)
    assert mine.reads == theirs.reads


def test_a_back_who_blocks_the_edge_of_a_side_goes_there() -> None:
    ends = {
        side: drawn(f"{OUT} / back blocks {side} edge").assignment("R").path
        for side in ("left", "right")
    }
    left, right = ends["left"], ends["right"]
    assert left is not None and right is not None
    assert left.end.x < 0 < right.end.x


def test_a_fake_of_a_run_joins_it() -> None:
    zone = "\nrun Deep Zone\n    " + LINE.replace(" / ", "\n    ") + "\n"
    spoken = drawn(f"{OUT} / back fakes the zone", zone=zone)
    assert places(spoken) == places(drawn(f"{OUT} / join run Deep Zone", zone=zone))


def test_a_route_that_each_side_runs_is_looked_at_on_the_strong_one() -> None:
    each = "each #1 runs curl / each #2 runs flat / feet 5 / read {} on 5"
    by_route, by_man = (drawn(each.format(who)).reads[0] for who in ("curl", "strong #1"))
    assert by_route.men == by_man.men == ("Z",)


def test_one_case_of_a_child_stands_beside_its_parents_line() -> None:
    parent = PASS.format(route="cross", read="a").replace("Test", "Old")
    child = """
concept Test extends Old
    weak #1 runs skinny post when zone
"""
    by_itself = PASS.format(route="cross", read="a") + "    weak #1 runs skinny post when zone\n"
    assert places(made(parent + child)) == places(made(by_itself))


def test_a_number_is_meant_before_a_place_that_two_men_have() -> None:
    """Of two tight ends the strong one is `strong #1`, and the other is `weak #1`, not `tight
    end`."""
    tight = """
formation Tight extends Doubles
    X at away, end, on line
    Z at call, end, on line
    W at away, 1 outside ball, 3 deep
    S at call, 1 outside ball, 3 deep
"""
    result = compiled(
        ELEVEN,
        DOUBLES_ELEVEN,
        tight,
        "concept Test\n    tight end runs seam\n    each #1 runs out 8\n    back runs swing\n"
        "    fullback runs swing strong\n    feet 3\n    read strong #1 on 3\n",
        dress("Tight", concept="Test"),
    )
    (told,) = (d for d in result.diagnostics if d.code == "W627")
    assert dict(told.values)["first"] == "strong #1"


def test_a_jet_is_carried_by_who_had_the_number_before_he_came() -> None:
    motion = """
motion Fly
    away #2 moves to ball, 3 deep
    snap running
"""
    shown = play(
        compiled(ELEVEN, DOUBLES_ELEVEN, motion,
                 "run Test\n    carrier is away #2\n    carrier aims outside the end\n"
                 "    line blocks reach\n    back blocks lead\n",
                 "dress Test\n    in Doubles motion Fly"),
        "Doubles Right Fly Test",
    )  # fmt: skip
    assert shown.carrier == "W"


def test_a_line_farther_out_is_reached_deeper_where_no_depth_is_said() -> None:
    runs = drawn(f"{OUT} / strong #2 runs go up numbers").assignment("S").path
    assert runs is not None
    line = runs.end.x
    on_it = next(leg.to for leg in runs.legs if abs(leg.to.x - line) < 0.1)
    assert on_it.y >= line - runs.start.x > 8


def test_a_run_goes_to_the_side_of_a_man_by_his_letter() -> None:
    assert drawn(f"toward W / {LINE}").toward is Side.LEFT
    assert drawn(f"toward away from W / {LINE}").toward is Side.RIGHT


def test_a_defender_covers_a_man_by_his_letter() -> None:
    look = """
look Man
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    M in 10, strong
    B in 30, weak
    C at strong #1, 7 deep
    D at weak #1, 7 deep
    S at strong #2, 6 deep
    H at weak #2, 6 deep
    F at middle, 12 deep
    C covers {}
    D covers X
    S, H covers man
    M covers hole
    B covers back
    F is free
"""
    mine, theirs = (
        compiled(ELEVEN, DOUBLES_ELEVEN, look.format(who), PASS.format(route="cross", read="a"),
                 dress("Doubles", concept="Test"))
        for who in ("Z", "man, strong #1")
    )  # fmt: skip
    assert [d.code for d in mine.diagnostics] == [d.code for d in theirs.diagnostics]
    for result in (mine, theirs):
        assert result.book is not None
        (duty,) = result.book.looks["man"].duties["D"]
        assert duty.value.tasks[0] == ManMark(None, 0, 0, letter="X")

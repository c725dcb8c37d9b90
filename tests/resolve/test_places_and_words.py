"""Small things that were said one way and taken another: a technique on an end who is not there, a
defender of a side whom a back looks for, a misspelt one, the drop of a draw, who is free inside of
a wide run. Common practice, no published source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from resolve.test_checks_then_goes import TIGHT
from resolve.test_protected_checks import CHECK, OWN
from resolve.test_protected_checks import LOOKS as RUSHES
from resolve.test_protections import against, taken
from resolve.test_sealed_ends import shown
from resolve.texts import DOUBLES_ELEVEN, ELEVEN, codes, compiled
from stemline.checks.blocks_find_men import too_many_free
from stemline.football.timing.draws import drop_down
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.throwing import clock
from stemline.geometry.paths import Point

FORMATION = TIGHT.partition("run Plunge")[0]


@pytest.mark.parametrize(
    ("place", "with_end", "without"),
    [
        ("9 or 5", 4.35, 3.05),
        ("9", 4.35, 4.35),
        ("over end or 4", 3.9, 2.6),
        ("5 or 9", 3.05, 3.05),
    ],
)
def test_a_technique_on_an_end_who_is_not_there_yields_to_the_next(
    place: str, with_end: float, without: float
) -> None:
    for formation, x in ((FORMATION, with_end), (DOUBLES_ELEVEN, without)):
        name = formation.split("\n")[1].removeprefix("formation ")
        look = RUSHES.replace("E in 9, strong", f"E in {place}, strong")
        go = f"\nconcept Go\n    a is strong #1\n    a runs go\n\ndress Go\n    in {name}\n"
        play, _ = against(compiled(ELEVEN, formation, look, go), "Comes")
        assert play.defence is not None
        assert play.defence.defender("E").at.x == pytest.approx(x)


@pytest.mark.parametrize(
    ("says", "takes"),
    [("back blocks scan backside end man on line", "E"),
     ("back blocks scan the strong end man on line", "E"),
     ("helper is back\n    helper blocks scan strong end man on line > weak linebacker", "E")],
)  # fmt: skip
def test_a_back_looks_first_for_the_man_of_the_side_that_is_said(says: str, takes: str) -> None:
    text = OWN.format(check=says, more="", end="b runs go", read="a")
    text = text.replace("    back blocks scan\n", "").replace(
        "    b runs go\n    b runs go", "    b runs go"
    )
    result = compiled(ELEVEN, FORMATION, RUSHES, text)
    assert not [d for d in result.diagnostics if d.is_error], codes(result)
    assert taken(against(result, "Comes")[0])["R"] == takes


@pytest.mark.parametrize(
    ("line", "word"),
    [("back blocks scan overhan", "overhang"),
     ("back blocks scan linebaker > overhang", "linebacker")],
)  # fmt: skip
def test_a_misspelt_defender_is_told_by_the_nearest_and_not_offered(line: str, word: str) -> None:
    text = OWN.format(check=line, more="", end="feet 3", read="a").replace(CHECK, line)
    result = compiled(ELEVEN, FORMATION, RUSHES, text.replace("    back blocks scan\n", ""))
    (found,) = [d for d in result.diagnostics if d.is_error and d.code in ("E404", "E462")]
    assert found.code == "E462" and found.nearest[:1] == (word,)


DRAW = """
run Draw
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk
    feet 3

dress Draw
    in Tight
"""


@pytest.mark.parametrize("at", [(0.0, -1.0), (0.0, -5.0), (1.5, -1.0), (0.0, -2.0), (0.0, -2.5)])
def test_a_draw_drops_as_a_pass_does_from_the_same_place(at: tuple[float, float]) -> None:
    result = compiled(ELEVEN, FORMATION, RUSHES, DRAW)
    play, _ = against(result, "Comes")
    assert play.passer is not None
    man = replace(play.passer, snap=Point(*at))
    play = replace(play, men=tuple(man if m.label == man.label else m for m in play.men))
    down = clock(play.feet, man.snap, play.strong, HIGH_SCHOOL)[0].time
    assert drop_down(play, HIGH_SCHOOL) == pytest.approx(down)


@pytest.mark.parametrize(("free", "told"), [("T", 0), ("E", 1)])
def test_on_a_run_around_the_end_a_tackle_inside_is_not_where_it_goes(free: str, told: int) -> None:
    play = replace(shown("Zone", "backside guard blocks scoop"), unblocked=(free,))
    assert [d.code for d in too_many_free(play)] == ["W698"] * told

"""A hot that names a man: his own job, and what a free rusher is answered with."""

from __future__ import annotations

import pytest

from resolve.test_edge_protections import MAX, ODD
from resolve.test_protections import against
from resolve.texts import codes, compiled
from stemline.football.play import Play
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import against as put
from stemline.football.timing.levels import HIGH_SCHOOL

SCANS = MAX.replace("tight end blocks edge", "hot {hot}").replace(
    "z is strong #1", "y is tight end\n    y runs hook\n    z is strong #1"
)
FLOOD = """
look Flood extends Odd
    M rushes A, strong
    W rushes A, weak
    A rushes contain, weak
    D rushes contain, strong
"""


def shown(hot: str, look: str = "Odd", more: str = "") -> Play:
    result = compiled(
        SCANS.format(hot=hot).replace("protect Max", f"{more}protect Max"), ODD, FLOOD
    )
    assert not any(code.startswith("E") for code in codes(result))
    return against(result, look)[0]


@pytest.mark.parametrize("said", ["tight end slant", "Y slant", "y slant"])
def test_a_hot_is_in_the_words_of_the_man_who_runs_it(said: str) -> None:
    play = shown(f"{said} if two come")
    assert play.hot[0].men == ("Y",)
    (way,) = play.assignment("Y").branches
    assert (way.looks, way.job) == ("if two come", "Hot: slant at 4.")
    base = play.assignment("Y").path
    assert base is not None and way.path.start == base.start
    assert way.path.end.x < way.path.start.x  # inside
    assert all(not a.branches for a in play.assignments if a.man != "Y")


@pytest.mark.parametrize("said", ["nearest slant", "flat", "the runner", "fullback swing"])
def test_a_hot_of_nobody_who_goes_out_is_in_nobody_s_words(said: str) -> None:
    assert all(not a.branches for a in shown(said).assignments)


@pytest.mark.parametrize(
    ("more", "told"), [("", "tight end slant"), ("pressure z on 7\n    ", None)]
)
def test_a_free_rusher_is_answered_by_the_hot_where_no_order_is_written(
    more: str, told: str | None
) -> None:
    play = shown("tight end slant", "Flood", more)
    assert play.unblocked
    row = put(play, read_clock(play, HIGH_SCHOOL), HIGH_SCHOOL)
    assert row.rusher is not None
    assert row.hot_words == told if told else row.hot_words != "tight end slant"


def test_nobody_free_is_answered_with_nothing() -> None:
    play = shown("tight end slant")
    assert not play.unblocked
    assert put(play, read_clock(play, HIGH_SCHOOL), HIGH_SCHOOL).hot_words == ""


@pytest.mark.parametrize(
    ("said", "near"),
    [("tight end slnt", "slant"), ("nearest hich if two come", "hitch"), ("Y sland", "slant")],
)
def test_a_misspelt_route_of_a_hot_is_answered_with_the_nearest(said: str, near: str) -> None:
    """It was kept as the coach's words, and nobody ran it."""
    result = compiled(SCANS.format(hot=said), ODD, FLOOD)
    (told,) = [d for d in result.diagnostics if d.is_error]
    assert (told.code, told.nearest[0]) == ("E442", near)

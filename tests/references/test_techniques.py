"""Techniques against the numbering as it was published.

The table is Bryant's of 1960 (Building a Championship Football Team), as restated in a college
coaches' clinic note of 2009. Even figures are head-up on centre, guard, tackle and end. 3, 5 and 9
are the outside shoulders of guard, tackle and end, 7 is the inside of the end, 2i and 4i are inside
eyes. The letters of the gaps are common practice without a published source, and so are the
linebackers' tens.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from stemline.football.defence.techniques import (
    LINEBACKERS,
    TECHNIQUES,
    Gap,
    gap_x,
    surface,
    technique_x,
)
from stemline.football.field import Side
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.source import NOWHERE

CENTRE, GUARD, TACKLE, END = 0.0, 1.3, 2.6, 3.9
MEN = {"centre": CENTRE, "guard": GUARD, "tackle": TACKLE, "end": END}
INSIDE, HEAD_UP, OUTSIDE = -1, 0, 1

PUBLISHED = {
    "0": ("centre", HEAD_UP),
    "2i": ("guard", INSIDE),
    "2": ("guard", HEAD_UP),
    "3": ("guard", OUTSIDE),
    "4i": ("tackle", INSIDE),
    "4": ("tackle", HEAD_UP),
    "5": ("tackle", OUTSIDE),
    "6": ("end", HEAD_UP),
    "7": ("end", INSIDE),
    "9": ("end", OUTSIDE),
}

CUSTOMARY_GAPS = {
    Gap.A: (CENTRE, GUARD),
    Gap.B: (GUARD, TACKLE),
    Gap.C: (TACKLE, END),
    Gap.D: (END, END + 2),
}

CUSTOMARY_OWN_GAPS = {
    "1": "A", "2i": "A", "3": "B", "4i": "B", "5": "C", "7": "C", "9": "D",
}  # fmt: skip
"""The gap of each shade; a head-up man has either of two."""

CUSTOMARY_LINEBACKERS = {
    "00": "centre",
    "20": "guard",
    "30": "outside guard",
    "40": "tackle",
    "50": "outside tackle",
}


def men() -> tuple[Man, ...]:
    line = [
        Man(f"{x}", Position.GUARD, Point(x, 0), Point(x, 0), True, None, NOWHERE)
        for x in (-TACKLE, -GUARD, CENTRE, GUARD, TACKLE)
    ]
    ends = [
        Man(f"Y{x}", Position.TIGHT_END, Point(x, 0), Point(x, 0), True, None, NOWHERE)
        for x in (-END, END)
    ]
    return (*line, *ends)


@pytest.mark.parametrize("side", Side, ids=lambda s: s.word)
@pytest.mark.parametrize("name", PUBLISHED)
def test_a_technique_is_where_the_published_numbering_has_it(name: str, side: Side) -> None:
    whom, shoulder = PUBLISHED[name]
    away = technique_x(name, surface(men(), side)) * side.value - MEN[whom]
    assert abs(away) < 0.65, "he touches the man whose number it is"
    assert (away > 0.1) - (away < -0.1) == shoulder


@pytest.mark.parametrize("side", Side, ids=lambda s: s.word)
@pytest.mark.parametrize("name", [n for n, (whom, _) in PUBLISHED.items() if whom == "end"])
def test_the_end_of_a_line_of_three_is_beside_the_guard(name: str, side: Side) -> None:
    three = [m for m in men() if m.interior and abs(m.snap.x) < TACKLE]
    ends = [replace(m, at=at, snap=at) for m in men()[5:] for at in [Point(m.snap.x * 2 / 3, 0)]]
    away = technique_x(name, surface((*three, *ends), side)) * side.value - TACKLE
    shoulder = PUBLISHED[name][1]
    assert abs(away) < 0.65 and (away > 0.1) - (away < -0.1) == shoulder


def test_only_the_disputed_numbers_are_not_in_the_published_numbering() -> None:
    assert set(TECHNIQUES) - set(PUBLISHED) == {"1", "6i", "8"}


@pytest.mark.parametrize("gap", CUSTOMARY_GAPS)
def test_a_gap_is_between_the_men_it_is_named_for(gap: Gap) -> None:
    inside, outside = CUSTOMARY_GAPS[gap]
    assert inside < gap_x(gap, surface(men(), Side.RIGHT)) < outside


@pytest.mark.parametrize("name", CUSTOMARY_OWN_GAPS)
def test_a_shade_has_the_gap_he_is_shaded_to(name: str) -> None:
    assert TECHNIQUES[name].gap.value == CUSTOMARY_OWN_GAPS[name]


@pytest.mark.parametrize("name", CUSTOMARY_LINEBACKERS)
def test_linebackers_go_by_tens(name: str) -> None:
    word = CUSTOMARY_LINEBACKERS[name]
    away = technique_x(name, surface(men(), Side.RIGHT)) - MEN[word.removeprefix("outside ")]
    assert (away > 0.1) == word.startswith("outside")
    assert name in LINEBACKERS

"""The model of a rule code: what its figures say together, and what a younger code takes over."""

from __future__ import annotations

from dataclasses import fields

import pytest

from stemline.football.rulebook.codes import CODES, HIGH_SCHOOL
from stemline.football.rulebook.rules import Certainty, Known, MotionWay, RareFigures, noted


def test_a_doubt_is_said_wherever_the_source_is() -> None:
    assert HIGH_SCHOOL.players.cited == "NFHS Football Rules Book, 1-1-3"
    assert HIGH_SCHOOL.motion_set.cited == "from memory: NFHS Football Rules Book, 7-2-6"
    assert noted(Known("Touch nobody.", Certainty.REPORTED, "a sheet")) == (
        "Touch nobody (published second-hand: a sheet)."
    )


def test_a_published_figure_and_the_leagues_own_carry_no_doubt() -> None:
    for certainty in Certainty:
        cited = Known(1.0, certainty, "a book").cited
        assert (cited == "a book") is certainty.binding


def test_a_code_recalled_keeps_its_values_and_loses_every_source() -> None:
    recalled = HIGH_SCHOOL.recalled("as remembered")
    seen = 0
    for field in fields(HIGH_SCHOOL):
        mine, theirs = getattr(HIGH_SCHOOL, field.name), getattr(recalled, field.name)
        if field in fields(RareFigures):  # a code has those that it says itself
            continue
        if isinstance(mine, Known):
            assert theirs == Known(mine.value, Certainty.MEMORY, "as remembered")
            seen += 1
        else:
            assert theirs == mine
    assert seen > 25


def test_codes_stand_under_their_own_names() -> None:
    assert list(CODES) == [code.key for code in CODES.values()]
    assert list(CODES) == [
        "canadian amateur",
        "canadian professional",
        "canadian professional 2027",
        "canadian nine-man",
        "canadian six-man",
        "high school",
        "college",
        "professional",
        "nine-man",
        "eight-man",
        "six-man",
    ]
    assert len({code.title for code in CODES.values()}) == len(CODES)


# Figures that hang together.


@pytest.mark.parametrize("key", CODES)
def test_the_men_of_a_code_add_up(key: str) -> None:
    code = CODES[key]
    men = code.players.value
    assert len(set(code.line)) == code.interior and "C" in code.line
    assert code.all_eligible or code.ineligible.value == code.interior
    assert code.interior + 2 <= men
    # Some US codes ask only for five of eleven men on the line; none wants more men than play.
    back = code.in_backfield.value
    assert back is not None and code.on_line.value + back <= men
    assert code.on_line.value >= code.interior
    assert code.receivers == men - code.ineligible.value - 1


def test_receivers_besides_the_quarterback() -> None:
    assert {key: code.receivers for key, code in CODES.items()} == {
        "canadian amateur": 6,
        "canadian professional": 6,
        "canadian professional 2027": 6,
        "canadian nine-man": 5,
        "canadian six-man": 5,
        "high school": 5,
        "college": 5,
        "professional": 5,
        "nine-man": 5,
        "eight-man": 4,
        "six-man": 5,
    }


def test_in_six_man_the_centre_is_interior_and_eligible() -> None:
    six = CODES["six-man"]
    assert (six.interior, six.ineligible.value, six.all_eligible) == (1, 0, True)
    assert [key for key, code in CODES.items() if code.all_eligible] == [
        "canadian six-man",
        "six-man",
    ]


def test_canadian_backs_may_run_at_the_line_and_american_backs_may_not() -> None:
    for key, code in CODES.items():
        canadian = key.startswith("canadian")
        assert (code.motion_way.value is MotionWay.ANY) is canadian
        assert (code.motion_most.value is None) is canadian
        assert (code.restraining.value == 1) is canadian


@pytest.mark.parametrize("key", CODES)
def test_jerseys_are_in_order(key: str) -> None:
    jerseys = CODES[key].ineligible_numbers.value
    assert all(0 <= low <= high <= 99 for low, high in jerseys)
    assert list(jerseys) == sorted(jerseys)

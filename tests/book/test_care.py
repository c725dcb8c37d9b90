"""The page on contact: each rule with its source, and the doubt where there is one."""

from __future__ import annotations

from dataclasses import replace

import pytest
from sample_season import sample_season

from stemline.book.care import care
from stemline.football.codes import CODES
from stemline.football.rules import Code, noted

RULES = {
    "Blocks below the waist": "low_block",
    "Blocks from behind": "behind_block",
    "Chop blocks": "chop_block",
    "Blindside blocks": "blindside_block",
    "Crossing routes": "crossing_contact",
}


def page(code: Code, league: str = "") -> dict[str, str]:
    season = replace(
        sample_season(),
        code_title=code.title,
        authority=code.authority,
        low_block=noted(code.low_block),
        behind_block=noted(code.behind_block),
        chop_block=noted(code.chop_block),
        blindside_block=noted(code.blindside_block),
        crossing_contact=noted(code.crossing_contact),
        league=league,
        plays=(),
        concepts=(),
    )
    return {note.label: note.words for note in care(season).notes}


@pytest.mark.parametrize("key", CODES)
def test_every_rule_stands_with_its_source_and_its_doubt(key: str) -> None:
    code = CODES[key]
    notes = page(code)
    for label, name in RULES.items():
        rule = getattr(code, name)
        assert rule.source in notes[label]
        assert (f"({rule.certainty.value}: " in notes[label]) is not rule.binding
        assert notes[label].endswith(").") and ".." not in notes[label]
    assert code.authority in notes["Who decides"]


@pytest.mark.parametrize("key", CODES)
def test_canadian_advice_stands_in_canadian_books_only(key: str) -> None:
    assert ("Start of the season" in page(CODES[key])) is key.startswith("canadian")


def test_the_leagues_own_figures_are_said_where_there_are_any() -> None:
    code = CODES["high school"]
    assert "Figures of this league" not in page(code)
    assert page(code, "width 40 yards")["Figures of this league"] == (
        "Width 40 yards (as the playbook sets them)."
    )

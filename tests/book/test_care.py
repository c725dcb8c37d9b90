"""The page on contact: each rule with its source, and the doubt where there is one."""

from __future__ import annotations

from dataclasses import replace

import pytest
from sample_season import sample_season

from stemline.book.content.care_page import care
from stemline.football.rulebook.care_rules import HEAD, care_rules
from stemline.football.rulebook.codes import CODES
from stemline.football.rulebook.rules import Code, noted

RULES = {
    "Blocks below the waist": "low_block",
    "Blocks from behind": "behind_block",
    "Chop blocks": "chop_block",
    "Blindside blocks": "blindside_block",
    "Crossing routes": "crossing_contact",
}
CARE = (
    "Head and helmet", "Contact in practice", "Heat", "Water", "Ages", "Youth limits",
    "Concussion",
)  # fmt: skip


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
        past_line=noted(care_rules(code.key).past_line),
        care=tuple((rule.label, noted(rule.text)) for rule in care_rules(code.key).notes),
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
def test_every_code_has_what_is_published_on_care_with_source_and_doubt(key: str) -> None:
    rules = care_rules(key)
    labels = tuple(rule.label for rule in rules.notes)
    assert labels[: len(CARE)] == CARE and labels[len(CARE) :] in ((), ("Cleared to play",))
    notes = page(CODES[key])
    for rule in rules.notes:
        text = rule.text
        assert text.source in notes[rule.label]
        assert text.value.endswith(".") and len(text.source) > 10
    assert rules.past_line.source in notes["Blocks past the line on a pass"]
    assert notes["Head and helmet"].startswith(HEAD)
    assert "qualified medical staff" in notes["Who decides"]


def test_a_book_says_what_its_own_country_asks() -> None:
    """Football Canada's notice of 2019; USA Football's guidelines of 2015; NCAA bylaw 17.11.2.4."""
    canada, school = page(CODES["canadian amateur"]), page(CODES["high school"])
    assert "Under 8 there is no contact" in canada["Ages"]
    assert "helmet-only Safe Contact" in canada["Youth limits"]
    assert "30 minutes of a practice" in school["Youth limits"]
    assert "(published second-hand: " in school["Youth limits"]
    assert "seven days" in page(CODES["college"])["Heat"]
    assert page(CODES["six-man"])["Heat"] == school["Heat"]


def test_the_leagues_own_figures_are_said_where_there_are_any() -> None:
    code = CODES["high school"]
    assert "Figures of this league" not in page(code)
    assert page(code, "width 40 yards")["Figures of this league"] == (
        "Width 40 yards (as the playbook sets them)."
    )

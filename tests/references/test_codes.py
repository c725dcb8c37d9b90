"""Every figure of every rule code against the figures copied from the books, and how sure it is."""

from __future__ import annotations

import re
from dataclasses import fields

import pytest
from together import together

from references import figures
from references.figures import (
    ARTICLE,
    NOTHING,
    READING,
    REPORT,
    TABLE,
    TEXTS,
    Printed,
)
from references.test_legality import FORMATIONS, MOTIONS, PRINTED_BESIDE
from stemline.football.rulebook.codes import CODES, HIGH_SCHOOL, NINE_MAN
from stemline.football.rulebook.rules import RARE, Certainty, Code, Known, RareFigures

PRINTED = (*figures.PRINTED, *PRINTED_BESIDE)
SURE = {
    ARTICLE: Certainty.PUBLISHED,
    REPORT: Certainty.REPORTED,
    TABLE: Certainty.TABLE,
    READING: Certainty.CUSTOM,
    NOTHING: Certainty.MEMORY,
}
_RULE = re.compile(r"(?<![\d-])\d{1,2}-\d{1,2}(?:-\d{1,2})?[a-z]?(?![\d])")
"""A rule number such as 7-1-4a; a season such as 2016-17 is none."""


def known(code: Code) -> dict[str, Known[object]]:
    values = {f.name: getattr(code, f.name) for f in fields(code)}
    return {name: value for name, value in values.items() if isinstance(value, Known)}


def surer(code: Code) -> set[str]:
    """What is not from memory, so that there is something to copy; a habit that holds in every code
    is no code's figure, and stands in no book."""
    usual = {f.default for f in fields(Code) if isinstance(f.default, Known)}
    habits = {rule for rule in usual if rule.certainty is Certainty.CUSTOM}
    sure = {n: r for n, r in known(code).items() if r.certainty is not Certainty.MEMORY}
    return {name for name, rule in sure.items() if rule not in habits}


def decided(key: str) -> set[str]:
    """Figures that formations decide: one is legal by it, another a foul."""
    cases = [case for case in (*FORMATIONS, *MOTIONS) if case.code == key]
    legal, foul = ({c.figure for c in cases if bool(c.broken) is x} for x in (False, True))
    return legal & foul


def texts(code: Code) -> set[str]:
    return {name for name, rule in known(code).items() if isinstance(rule.value, str)}


@together("printed", PRINTED, ids=lambda p: f"{p.code} {p.figure}")
def test_a_figure_is_as_printed_and_no_surer(printed: Printed) -> None:
    mine = known(CODES[printed.code])[printed.figure]
    if isinstance(printed.value, float | int) and not isinstance(printed.value, bool):
        assert mine.value == pytest.approx(printed.value)
    else:
        assert mine.value == printed.value
    assert mine.certainty is SURE[printed.seen]


@together(
    "printed", [p for p in PRINTED if p.seen == ARTICLE], ids=lambda p: f"{p.code} {p.figure}"
)
def test_a_published_figure_names_the_rule_it_was_copied_from(printed: Printed) -> None:
    """One book's figure must not stand under another rule's number."""
    wanted = _RULE.findall(printed.source)
    mine = _RULE.findall(known(CODES[printed.code])[printed.figure].source)
    if wanted and mine:
        assert any(m.startswith(w) for m in mine for w in wanted), (mine, wanted)


@together("key", CODES)
def test_every_figure_that_a_source_has_is_copied_once_and_every_text_is_marked(key: str) -> None:
    code = CODES[key]
    copied = [p.figure for p in PRINTED if p.code == key]
    assert len(copied) == len(set(copied))
    assert set(copied) <= known(code).keys() - texts(code)
    assert TEXTS[key].keys() <= texts(code)
    for name in sorted(surer(code) - texts(code) - {*copied, *decided(key)}):
        raise AssertionError(unheld(code, name))


def unheld(code: Code, name: str) -> str:
    """What to write for a figure that no test holds against its source."""
    figure = known(code)[name]
    number = isinstance(figure.value, float | int) and not isinstance(figure.value, bool)
    case = f'Case("{code.key}", "{figure.source}", MEN, '
    about = f'figure="{name}")'
    return (
        f"{name} of {code.key} is {figure.certainty.value}, and nothing holds it against that "
        f"source. In tests/references/test_legality.py write {case}{about} for men who are legal "
        f'by it, and {case}"E…", {about} for men who foul it'
        + (f"; one of the two says also value={figure.value:g}, as the source has it." * number)
    )


def test_a_code_has_of_a_rare_figure_what_it_says_else_what_the_field_says() -> None:
    """Also one that grows out of another."""
    rare = {f.name: f.default for f in fields(RareFigures)}
    for name, usual in rare.items():
        silent = CODES.keys() - RARE.get(name, {})
        assert {known(CODES[key])[name] for key in silent} <= {usual}, name
    for name in RARE:
        assert name in rare, f"{name} of RARE in rules.py wants a field of RareFigures there"
    for name, of in RARE.items():
        for key, figure in of.items():
            assert key in CODES, f"{key!r} of {name} is no code: {', '.join(CODES)}"
            assert known(CODES[key])[name] is figure


def test_a_figure_without_its_case_is_told_with_what_to_write() -> None:
    told = unheld(CODES["college"], "forward_passes")
    assert 'Case("college", "NCAA, as printed by' in told and 'figure="forward_passes"' in told
    assert "value=1," in told and "value" not in unheld(CODES["college"], "hand_past")


@together("key", CODES)
def test_a_text_is_no_surer_than_it_was_seen(key: str) -> None:
    """One that no source gives for the code is as in the code it grew out of, from memory."""
    code = CODES[key]
    for name in texts(code):
        assert known(code)[name].certainty is SURE[TEXTS[key].get(name, NOTHING)], name


@together("key", CODES)
def test_every_figure_says_where_it_is_from(key: str) -> None:
    for name, figure in known(CODES[key]).items():
        assert len(figure.source) > 2 and figure.source.strip() == figure.source, name
        assert not figure.source.endswith("."), name
    assert CODES[key].key == key and CODES[key].authority and CODES[key].title


def test_only_what_was_published_or_the_league_sets_binds() -> None:
    assert {c for c in Certainty if c.binding} == {Certainty.PUBLISHED, Certainty.HOUSE}
    for code in CODES.values():
        for figure in known(code).values():
            assert figure.binding == (figure.certainty is Certainty.PUBLISHED)


# Codes that grow out of another.


def test_what_is_taken_over_is_only_from_memory() -> None:
    """A source that speaks of eleven men vouches for nothing in the nine-man game."""
    inherited = [
        name
        for name, figure in known(NINE_MAN).items()
        if figure.source == "as in the eleven-man game"
    ]
    assert "motion_most" in inherited and "low_block" in inherited
    for name in inherited:
        mine = known(NINE_MAN)[name]
        assert mine.certainty is Certainty.MEMORY
        assert mine.value == known(HIGH_SCHOOL)[name].value


PARENTS = {
    "canadian professional": "canadian amateur",
    "canadian professional 2027": "canadian professional",
    "canadian nine-man": "canadian amateur",
    "canadian six-man": "canadian amateur",
    "college": "high school",
    "professional": "high school",
    "nine-man": "high school",
    "eight-man": "high school",
    "six-man": "high school",
}


@together("key", PARENTS)
def test_no_published_source_is_borrowed_from_another_code(key: str) -> None:
    theirs = known(CODES[PARENTS[key]])
    for name, mine in known(CODES[key]).items():
        if mine.certainty is Certainty.PUBLISHED and key != "canadian professional 2027":
            assert mine.source != theirs[name].source, name


def test_the_2027_field_cites_only_its_announcement() -> None:
    announced = {
        name: figure
        for name, figure in known(CODES["canadian professional 2027"]).items()
        if figure.certainty is not Certainty.MEMORY
    }
    assert announced.keys() == {"length", "width", "end_zone", "downs"}
    assert all("22 September 2025" in figure.source for figure in announced.values())
    assert "details open" in CODES["canadian professional 2027"].title

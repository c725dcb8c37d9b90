"""A run or an option that reads a defender says so on its page: the rule in words, and who he is
against each look."""

from __future__ import annotations

import pytest
from bundled import BUNDLED, book_of, season_of

from stemline.book.content.block_table import KeyRead
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.letters import mark
from stemline.football.play import ConceptSheet


def pages(name: str) -> list[tuple[ConceptSheet, ConceptPage]]:
    made = {page.name: page for page in book_of(name).of(ConceptPage)}
    return [(sheet, made[sheet.name]) for sheet in season_of(name).concepts]


def of(page: ConceptPage, tag: str) -> KeyRead:
    return next(key for key in page.keys if key.calls == tag)


@pytest.mark.parametrize("name", BUNDLED)
def test_the_page_names_whom_each_call_reads_against_each_look(name: str) -> None:
    season = season_of(name)
    looks = {look.name for look in season.looks}
    assert sum(bool(page.keys) for _, page in pages(name)) >= 3
    for sheet, page in pages(name):
        reading = {p.call.tags for p in season.plays if p.call.concept == sheet.name and p.keys}
        assert {key.calls for key in page.keys} == {" + ".join(tags) for tags in reading}
        for key in page.keys:
            told = {look: r.words for r in key.looks for look in r.label.split(", ")}
            assert set(told) == looks
            said = {look: r.words for r in key.told for look in r.label.split(", ")}
            rest = said.get("every other look", said.get("every look"))
            assert all(said.get(look, rest) == man for look, man in told.items()), key.told
            plays = [p for p in sheet.keyed if " + ".join(p.call.tags) == key.calls]
            for play in plays:
                here = [mark(k.man) or "–" for k in play.keys if k.described == key.described]
                assert play.defence is not None and told[play.defence.name] in here


@pytest.mark.parametrize("name", BUNDLED)
def test_who_he_is_names_its_call_where_he_may_be_another_in_one_with_that_tag(name: str) -> None:
    named = 0
    for sheet, page in pages(name):
        reading = [p.call for p in season_of(name).plays if p.call.concept == sheet.name and p.keys]
        for key in page.keys:
            calls = [call for call in reading if " + ".join(call.tags) == key.calls]
            first = calls[0]
            others = [
                c for c in calls if c.formation != first.formation or c.motion != first.motion
            ]
            assert key.of == (first.spoken if others else "")
            told = {p.call.spoken for p in sheet.keyed if " + ".join(p.call.tags) == key.calls}
            assert told == {first.spoken}
            named += bool(key.of)
    assert named


@pytest.mark.parametrize("name", BUNDLED)
def test_a_picture_of_a_call_that_reads_says_what_is_done(name: str) -> None:
    """On its concept's own page it may stand apart from the table of keys."""
    told = 0
    for _, page in pages(name):
        own = {key.calls for key in page.keys if not key.calls}
        for entry in (e for e in page.offered if e.listed and e.play.keys and not own):
            (key,) = entry.play.keys
            assert entry.keyed.startswith(f"{mark(key.man)}: ") and "read" in entry.marks
            assert all(f" if {when}" in entry.keyed for _, when in key.done)
            told += 1
    assert told >= 3


@pytest.mark.parametrize("name", BUNDLED)
def test_the_rule_is_said_as_give_if_and_throw_if(name: str) -> None:
    for _, page in pages(name):
        for choice in (c for key in page.keys for c in key.choices):
            assert choice.label.split()[0] in ("give", "throw", "pull", "pitch", "hand", "keep")
            assert choice.words == "" or choice.words.startswith("if ")


@pytest.mark.parametrize("name", BUNDLED)
def test_the_rule_is_true_of_each_call_with_the_tag(name: str) -> None:
    made = {page.name: page for _, page in pages(name)}
    told = 0
    for play in season_of(name).plays:
        for n, key in enumerate(play.keys):
            mine = [
                k for k in made[play.call.concept].keys if k.calls == " + ".join(play.call.tags)
            ]
            for (_, to, _), (does, _), choice in zip(
                key.choices, key.done, mine[n].choices, strict=True
            ):
                role = next((a.role for a in play.assignments if a.man == to), to)
                assert choice.label in (does, does.removesuffix(to) + role), play.call.spoken
                told += choice.label != does
    assert told


def test_the_glance_says_its_rule_and_who_fits_the_run() -> None:
    (page,) = [p for _, p in pages("cedar-flats-lanterns") if p.name == "Zone"]
    key = of(page, "Glance")
    assert [(c.label, c.words) for c in key.choices] == [
        ("give", "if he drops"),
        ("throw X", "if he fits the run"),
    ]
    assert {(r.words, "Bear One" in r.label) for r in key.looks} >= {("[W]", False), ("[J]", True)}

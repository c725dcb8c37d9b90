"""Plays → page models."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from page_text import book_text
from sample_season import crossers, sample_season
from syrupy.assertion import SnapshotAssertion

from stemline.book.content.book import Edition, make_book
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.page import call_ids, concept_groups
from stemline.book.paper import Paper
from stemline.football.field import Side
from stemline.football.play import Season
from stemline.football.rulebook.care_rules import care_rules
from stemline.football.rulebook.codes import HIGH_SCHOOL
from stemline.football.rulebook.rules import noted

EDITION = Edition("4f2c9e1", "2026-05-01")


def american() -> Season:
    """The season's team words under US high-school rules, with no calls yet."""
    return replace(
        sample_season(),
        code_title=HIGH_SCHOOL.title,
        authority=HIGH_SCHOOL.authority,
        low_block=noted(HIGH_SCHOOL.low_block),
        crossing_contact=noted(HIGH_SCHOOL.crossing_contact),
        blindside_block=noted(HIGH_SCHOOL.blindside_block),
        behind_block=noted(HIGH_SCHOOL.behind_block),
        care=tuple((rule.label, noted(rule.text)) for rule in care_rules("high school").notes),
        plays=(),
        concepts=(),
    )


def test_page_models(snapshot: SnapshotAssertion) -> None:
    book = make_book(sample_season(), EDITION, ("route", "motion before the snap"))
    assert book_text(book) == snapshot


def test_every_call_stands_once_on_a_concept_page_and_once_in_the_index() -> None:
    season = sample_season()
    book = make_book(season, EDITION, ())
    calls = sorted(play.call.spoken for play in season.plays)
    shown = [e for page in book.pages for e in page.entries if e.listed]
    assert sorted(call for e in shown for call in (e.call, *e.also)) == calls
    assert sorted(line.call for line in book.index.calls) == calls
    by_id = {e.id: (e.call, *e.also) for e in shown}
    groups = (*book.index.formations, *book.index.tags)
    lines = (*book.index.calls, *(line for group in groups for line in group.lines))
    assert all(line.call in by_id[line.id] for line in lines)


def test_ids_follow_the_plays_and_groups_keep_them_together() -> None:
    season = sample_season()
    assert call_ids(season)[:2] == ("call-1", "call-2")
    assert [len(group) for group in concept_groups(season)] == [12, 4, 6, 1]


def test_a_family_opens_once_and_unknown_concepts_still_get_a_page() -> None:
    book = make_book(replace(sample_season(), concepts=()), EDITION, ())
    assert [page.opens for page in book.of(ConceptPage)] == [True, False, True, False]
    assert book.of(ConceptPage)[0].says == ()
    assert book.of(ConceptPage)[0].serves.startswith("4x1, 3x2, 3x1")


def test_a_season_without_calls_is_still_a_book() -> None:
    book = make_book(american(), EDITION, ())
    assert book.pages == ()
    assert book.cover.about.startswith("0 concepts, 0 calls.")


def test_care_follows_the_code() -> None:
    canadian = " ".join(n.words for n in make_book(sample_season(), EDITION, ()).care.notes)
    american_words = " ".join(n.words for n in make_book(american(), EDITION, ()).care.notes)
    assert "3 hours of helmet-only" in canadian
    assert "Safe Contact" not in american_words
    assert "free-blocking zone" in american_words
    assert "state association" in american_words
    for words in (canadian, american_words):
        assert "30 minutes" in words
        assert "60 to 90 minutes" in words
        assert "does not go back the same day" in words


def test_the_book_never_says_safe_but_in_the_name_of_a_programme() -> None:
    book = make_book(sample_season(), EDITION, ())
    assert not re.search(r"\bsafe\b", repr(book).replace("Safe Contact", ""), re.IGNORECASE)


def test_the_crossing_rule_is_printed_where_paths_cross() -> None:
    pages = {p.name: p for p in make_book(sample_season(), EDITION, ()).of(ConceptPage)}
    rule = sample_season().crossing_contact
    assert pages["Crossers"].cautions[-1] == rule
    assert rule not in pages["Sprint Out"].cautions


def test_a_side_gets_its_own_column_only_where_it_casts_other_men() -> None:
    right = crossers()[0]
    same = replace(right, call=replace(right.call, side=Side.LEFT, spoken="Quads Left Crossers"))
    other = replace(
        same,
        assignments=tuple(
            replace(a, man={"X": "Z", "Z": "X"}.get(a.man, a.man)) for a in same.assignments
        ),
    )
    assert _columns(right, same) == ("man",)
    assert _columns(right, other) == ("Quads right", "Quads left")


def test_a_job_that_names_a_man_is_the_same_job_for_another_letter() -> None:
    quads, three = crossers()[0], crossers()[4]
    over = {"Quads": "Y", "Three Two": "H"}
    plays = [
        replace(
            play,
            assignments=tuple(
                replace(a, job=f"Off {over[play.call.formation]}'s heels")
                if a.role == "under"
                else a
                for a in play.assignments
            ),
        )
        for play in (quads, three)
    ]
    season = replace(sample_season(), plays=tuple(plays))
    book = make_book(season, EDITION, ())
    page = book.of(ConceptPage)[0]
    under = next(row for row in page.rows if row.role == "under")
    assert under.men == ("X", "W")
    assert "Three Two" not in [note.label for note in under.changes]
    other = next(e for d in book.of(DressedPage) for g in d.groups for e in g.entries)
    told = [(note.label, note.words) for note in other.changes[:2]]
    assert told == [("W under", "no motion"), ("H over, S settle", "")]


def test_a_tag_that_changes_men_says_who_plays_it() -> None:
    page = make_book(sample_season(), EDITION, ()).of(ConceptPage)[1]
    top = next(row for row in page.rows if row.role == "top")
    assert [(note.label, note.words) for note in top.changes] == [
        ("Quads with Swap", "S plays it."),
        ("Three Two with Swap", "H plays it."),
    ]


def test_paper_by_name() -> None:
    assert Paper.named(" A4 ") is Paper.A4
    with pytest.raises(KeyError):
        Paper.named("foolscap")


def _columns(*plays: object) -> tuple[str, ...]:
    season = replace(sample_season(), plays=plays)
    return make_book(season, EDITION, ()).of(ConceptPage)[0].columns


def test_the_line_row_says_what_the_protection_asks() -> None:
    season = sample_season()
    plays = tuple(
        replace(
            play,
            protection="five slide",
            assignments=tuple(
                replace(a, job="", says=()) if play.man(a.man).interior else a
                for a in play.assignments
            ),
        )
        for play in season.plays
    )
    page = make_book(replace(season, plays=plays), EDITION, ()).of(ConceptPage)[0]
    assert page.line is not None
    assert page.line.job == "Five men slide to the call: each his gap."

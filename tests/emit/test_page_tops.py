"""A sheet tells what stands on it: whose dress-ups go on there, and what its signs mean."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import Any

from pypdf import PdfReader
from sample_gallery import CAPTIONS, gallery_of

from stemline.book.content.answer_table import Answers, ThrowCell
from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.page import Entry
from stemline.book.content.page_marks import (
    SOLID,
    DrawnSigns,
    answer_marks,
    picture_marks,
    signs_of,
)
from stemline.book.paper import TEXT_WIDTH
from stemline.diagnostics.in_words import each_sign_once
from stemline.emit.pdf import to_pdf
from stemline.football.play import Kind, Season
from stemline.picture.scene.metrics import extent
from stemline.theme import Size, load_theme

HEADED = 60.0
"""Points below the upper edge within which a heading is the first thing of a sheet."""


def test_a_sheet_that_begins_within_a_concept_says_whose_it_is(season: Season) -> None:
    """With every call drawn there are more than a sheet."""
    season = replace(season, every_call=True)
    book = make_book(season, Edition("", ""), CAPTIONS)
    pdf = to_pdf(book, gallery_of(season, CAPTIONS), load_theme(), "2026-05-01")
    (dressed,) = book.of(DressedPage)
    reader = PdfReader(io.BytesIO(pdf))
    places = reader.named_destinations
    at = {g.id: reader.get_destination_page_number(places[g.id]) for g in dressed.groups}
    after = book.pages[book.pages.index(dressed) + 1 :]
    behind = after[0].id if after else book.index.heads[0].id
    last = reader.get_destination_page_number(places[behind])
    first = at[dressed.groups[0].id]
    assert first is not None and last is not None
    told = 0
    for number in range(first, last):
        page = reader.pages[number]
        begun = [g for g in dressed.groups if (at[g.id] or 0) < number]
        high = [float(places[id_].top or 0) for id_, on in at.items() if on == number]
        goes_on = bool(begun) and not any(page.mediabox.top - top < HEADED for top in high)
        text = " ".join(page.extract_text().split())
        of = reader.get_destination_page_number(places[begun[-1].of]) if begun else None
        says = f"{begun[-1].name}, dressed up, continued from page {(of or 0) + 1}" if begun else ""
        assert (bool(says) and says in text) == goes_on, (number, text)
        ends = [g.name for g in dressed.groups if (at[g.id] or 0) <= number][-1]
        assert f"this sheet ends with {ends}" in text
        told += goes_on
    assert told


def test_only_the_signs_of_a_page_are_told(book: Book, season: Season) -> None:
    play = next(play for play in season.plays if play.reads and play.pressure)
    assert "order of his eyes" in picture_marks((play,))
    assert "pressure" not in picture_marks((replace(play, pressure=()),))
    assert picture_marks((replace(play, reads=(), pressure=(), alerts=(), claims=()),)) == ""
    assert any(page.marks for page in book.of(ConceptPage))


def test_the_foot_of_a_sheet_tells_the_signs_that_stand_on_it_and_no_other(season: Season) -> None:
    """One picture reads a man: the sheet where it came to stand says so, no other does."""
    season = replace(season, every_call=True)
    book = make_book(season, Edition("", ""), CAPTIONS)
    (page,) = book.of(DressedPage)
    some: Any = ("any",)
    one = next(g for g in page.groups if len(g.entries) > 1)
    (read,) = signs_of([replace(one.entries[0].play, keys=some)])
    keyed = replace(one, signs=(read, *one.signs[1:]))
    page = replace(page, groups=tuple(keyed if g is one else g for g in page.groups))
    book = replace(book, pages=tuple(page if p.id == page.id else p for p in book.pages))
    pdf = to_pdf(book, gallery_of(season, CAPTIONS), load_theme(), "2026-05-01")
    reader = PdfReader(io.BytesIO(pdf))
    places = reader.named_destinations
    drawn: dict[int, list[tuple[Entry, DrawnSigns]]] = {}
    for group in page.groups:
        for entry, signs in zip(group.entries, group.signs, strict=True):
            if entry.id in places:
                at = reader.get_destination_page_number(places[entry.id])
                assert at is not None
                drawn.setdefault(at, []).append((entry, signs))
    feet = []
    for number, here in drawn.items():
        text = " ".join(reader.pages[number].extract_text().split())
        there = {
            "order of his eyes": any(s.reads for _, s in here),
            "under pressure": any(s.pressure for _, s in here),
            "letter in a box: read": any(s.keys for _, s in here),
            "shape read": any(s.claims for _, s in here),
            SOLID: any(e.solid for e, _ in here),
        }
        assert {words: words in text for words in there} == there, number
        feet.append(there["letter in a box: read"])
    assert len(feet) > 1 and feet.count(True) == 1


def test_all_signs_together_are_one_line(season: Season) -> None:
    """Where runs and passes meet on a sheet its foot tells them all: no word may leave the page."""
    theme = load_theme()
    kind = replace(theme.look(Size.FULL).types["letter"], face="italic", points=9.4)
    read = next(play for play in season.plays if play.reads)
    some: Any = ("any",)
    assert read.passer is not None
    keeps = replace(read.assignments[0], man=read.passer.label, branches=some)
    made = (
        replace(read, pressure=read.reads, claims=some, alerts=some),
        replace(
            read,
            kind=Kind.RUN,
            reads=(),
            unblocked=("J",),
            chasing=("S",),
            keys=some,
            assignments=(keeps,),
        ),
    )
    told = picture_marks(made)
    assert told.count("·") == 6
    assert extent(told, kind, theme).width < TEXT_WIDTH

    # The same of a sheet of dress-ups, which joins what each of its pictures has.
    book = make_book(replace(season, every_call=True), Edition("", ""), CAPTIONS)
    (page,) = book.of(DressedPage)
    two = next(group for group in page.groups if len(group.entries) > 1)
    both = tuple(replace(entry, solid=("H",)) for entry in two.entries[:2])
    page = replace(page, groups=(replace(two, entries=both, signs=signs_of(made)),))
    told = each_sign_once(*page.marks_of.values())
    assert told.count("·") == 7 and SOLID in told
    assert extent(told, kind, theme).width < TEXT_WIDTH


def test_only_the_cells_of_a_table_are_told() -> None:
    cells = ThrowCell("3", "[M]", "open", first=True), ThrowCell("(2)", "[C]", "tight")
    told = answer_marks(Answers(("Over", "Zero"), (("1", "flat", cells),)))
    assert "bold open" in told and "( ) a good throw" in told and "heavy line" in told
    assert not any(words in told for words in ("6+", "covered", "late"))
    assert answer_marks(None) == ""

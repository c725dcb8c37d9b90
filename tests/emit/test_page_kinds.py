"""A kind of page is a file and a template: nothing else knows which kinds there are."""

from __future__ import annotations

import io
import sys
from collections.abc import Iterator
from dataclasses import replace
from importlib import import_module
from pathlib import Path

import pytest
from pypdf import PdfReader
from sample_gallery import CAPTIONS, box

from stemline.book.content import kinds
from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.kinds.motion_page import MotionPage
from stemline.book.content.page import Page
from stemline.emit.gallery import Gallery
from stemline.emit.pdf import to_pdf
from stemline.football.play import MotionSheet, Season
from stemline.source import NOWHERE
from stemline.theme import Theme

FILE = """
from dataclasses import dataclass

from stemline.book.content.page import Page, PageKind


@dataclass(frozen=True, kw_only=True)
class WordsPage(Page):
    template = "words.html.jinja"
    words: tuple[str, ...]


def _pages(season, before):
    yield WordsPage(id="words", name="Words used", words=season.plays[0].call.tags)


KIND = PageKind(35, _pages)
"""
TEMPLATE = (
    b"{% macro body(page, gallery, numbers) %}<p>{{ page.words|join(' and ') }}</p>{% endmacro %}"
)


@pytest.fixture
def with_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, season: Season
) -> Iterator[tuple[Book, tuple[str, ...]]]:
    """A book that has a page of words, and the words."""
    (tmp_path / "words_page.py").write_text(FILE, "utf-8")
    monkeypatch.setattr(kinds, "__path__", [*kinds.__path__, str(tmp_path)])
    kinds.page_kinds.cache_clear()
    first = season.plays[0]
    tagged = replace(first, call=replace(first.call, tags=("Wheel", "Return")))
    moved = next(play for play in season.plays if play.call.motion)
    motions = (MotionSheet(moved.call.motion, moved, NOWHERE, ("Eyes on the ball.",)),)
    season = replace(season, plays=(tagged, *season.plays[1:]), motions=motions)
    yield make_book(season, Edition("4f2c9e1", "2026-05-01"), CAPTIONS), ("Wheel", "Return")
    kinds.page_kinds.cache_clear()
    sys.modules.pop(f"{kinds.__name__}.words_page", None)


def test_a_file_and_a_template_make_a_page(
    with_words: tuple[Book, tuple[str, ...]], gallery: Gallery, theme: Theme
) -> None:
    """It is in its place, named in the contents with its number, and holds its content, as that of
    motions does below its pictures."""
    book, words = with_words
    gallery = Gallery((*gallery.arts, box("motion-1", 165.6, 95)))
    plain = theme.layers[-1]
    plain = replace(plain, files={**plain.files, "words.html.jinja": TEMPLATE})
    theme = replace(theme, layers=(*theme.layers[:-1], plain))
    reader = PdfReader(io.BytesIO(to_pdf(book, gallery, theme, "")))
    at = reader.get_destination_page_number(reader.named_destinations["words"])
    assert at is not None
    text = reader.pages[at].extract_text()
    assert "Words used" in text and " and ".join(words) in text
    assert f"Words used {at + 1}" in " ".join(reader.pages[1].extract_text().split())
    (motions,) = book.of(MotionPage)
    at = reader.get_destination_page_number(reader.named_destinations[motions.id])
    (moves,) = motions.sets[0].moves
    assert at is not None
    text = reader.pages[at].extract_text()
    assert " ".join(moves) in text and "Eyes on the ball." in text


def test_every_kind_has_its_own_place_and_template(theme: Theme) -> None:
    orders = [kind.order for kind in kinds.page_kinds()]
    assert len(orders) >= 4
    assert orders == sorted(orders)
    files = theme.layers[-1].files
    for room in kinds.iter_modules(kinds.__path__):
        file = import_module(f"{kinds.__name__}.{room.name}")
        own = [page for page in vars(file).values() if isinstance(page, type)]
        pages = [p for p in own if issubclass(p, Page) and p.__module__ == file.__name__]
        for page in pages:
            name = page.template
            assert name in files, f"{page.__name__} of {file.__name__}: write themes/plain/{name}"
            assert b"{% macro body(page, gallery, numbers" in files[name], (
                f"themes/plain/{name} wants {{% macro body(page, gallery, numbers) %}} … "
                "{% endmacro %}"
            )

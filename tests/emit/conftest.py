"""The hand-made season of the book's tests, a small gallery for it, and one whole book."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "book"))

from sample_season import sample_season

from stemline.book.model import Book, Edition
from stemline.book.pages import call_ids, make_book
from stemline.emit.gallery import Art, Gallery
from stemline.emit.pdf import to_pdf
from stemline.football.play import Season
from stemline.theme import Theme, load_theme

BOX = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="{w}pt" height="{h}pt" viewBox="0 0 {w} {h}">'
    '<path d="M1 1H{x}V{y}H1Z" fill="none" stroke="#000"/></svg>'
)
"""A frame in place of a picture: the book's tests are about pages, not about drawing."""


def box(id_: str, width: float, height: float) -> Art:
    svg = BOX.format(w=width, h=height, x=width - 1, y=height - 1)
    return Art(id_, svg, f"a picture called {id_}", width, height)


def gallery_of(season: Season, captions: tuple[str, ...]) -> Gallery:
    large = {call_ids(season)[i] for i in _firsts(season)}
    calls = (
        box(id_, 525.6, 260) if id_ in large else box(id_, 165.6, 95) for id_ in call_ids(season)
    )
    return Gallery(
        (*calls, *(box(f"legend-{i}", 60, 30) for i in range(1, len(captions) + 1)))
    )


def _firsts(season: Season) -> list[int]:
    names = [play.call.concept for play in season.plays]
    return [names.index(name) for name in dict.fromkeys(names)]


CAPTIONS = ("a route", "a motion", "a block")


@pytest.fixture(scope="session")
def season() -> Season:
    return sample_season()


@pytest.fixture(scope="session")
def small_season() -> Season:
    """Only the last two concepts: seven calls."""
    whole = sample_season()
    return replace(whole, plays=whole.plays[-7:])


@pytest.fixture(scope="session")
def theme() -> Theme:
    return load_theme()


@pytest.fixture(scope="session")
def book(season: Season) -> Book:
    return make_book(season, Edition("4f2c9e1", "2026-05-01"), CAPTIONS)


@pytest.fixture(scope="session")
def gallery(season: Season) -> Gallery:
    return gallery_of(season, CAPTIONS)


@pytest.fixture(scope="session")
def pdf(book: Book, gallery: Gallery, theme: Theme) -> bytes:
    return to_pdf(book, gallery, theme, "2026-05-01")

"""The hand-made season of the book's tests, a gallery for it, and one whole book."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "book"))

from sample_gallery import CAPTIONS, gallery_of
from sample_season import sample_season

from stemline.book.content.book import Book, Edition, make_book
from stemline.emit.engine import Engine
from stemline.emit.gallery import Gallery
from stemline.emit.pdf import to_pdf
from stemline.football.play import Season
from stemline.theme import Theme, load_theme


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


@pytest.fixture
def passes(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The documents that the engine has laid out."""
    laid: list[str] = []
    real = Engine.lay_out

    def counted(self: Any, html: str) -> Any:
        laid.append(html)
        return real(self, html)

    monkeypatch.setattr(Engine, "lay_out", counted)
    return laid

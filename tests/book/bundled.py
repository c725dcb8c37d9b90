"""The bundled books' seasons and pages, each made once for all tests of a process."""

from __future__ import annotations

from functools import cache

from gate.pictures import BUNDLED, bundled_season

from stemline.book.content.book import Book, Edition, make_book

__all__ = ["BUNDLED", "book_of", "season_of"]


season_of = bundled_season


@cache
def book_of(name: str) -> Book:
    return make_book(season_of(name), Edition("", ""), ("",))

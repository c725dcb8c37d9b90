"""A whole bundled book, for the tests that read one back: each test is held against both."""

from __future__ import annotations

import pytest
from bundled import BUNDLED, book_of, season_of

from stemline.book.content.book import Book
from stemline.football.play import Season


@pytest.fixture(scope="module", params=BUNDLED)
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture(scope="module")
def season(name: str) -> Season:
    return season_of(name)


@pytest.fixture(scope="module")
def book(name: str) -> Book:
    return book_of(name)

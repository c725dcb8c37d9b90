"""From a season to the book with its real pictures."""

from __future__ import annotations

import io
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader

sys.path.insert(0, str(Path(__file__).parent / "book"))

from sample_season import sample_season

from stemline.build import build_book, pictures
from stemline.football.play import Season
from stemline.theme import load_theme


@pytest.fixture
def season() -> Season:
    """One concept: four calls in two formations."""
    whole = sample_season()
    return replace(whole, plays=whole.plays[12:16])


def test_pictures_by_call_with_progress(season: Season) -> None:
    told: list[tuple[int, int]] = []
    drawn = pictures(season, load_theme(), lambda done, of: told.append((done, of)))
    assert list(drawn) == [play.call.spoken for play in season.plays]
    assert all(svg.startswith("<svg") for svg in drawn.values())
    assert told == [(1, 4), (2, 4), (3, 4), (4, 4)]


def test_the_book_holds_every_call_and_says_how_far_it_is(season: Season) -> None:
    told: list[tuple[int, int]] = []
    pdf = build_book(
        season, "4f2c9e1", "2026-05-01", load_theme(), lambda done, of: told.append((done, of))
    )
    assert told[-1] == (4, 4)
    text = "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages)
    for play in season.plays:
        assert play.call.spoken in text

"""From a season to the book with its real pictures."""

from __future__ import annotations

import io
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

sys.path.insert(0, str(Path(__file__).parent / "book"))

from sample_season import sample_season

import stemline.printing.drawings
from stemline.football.play import Play, Season
from stemline.picture.scene.scene import Scene
from stemline.printing.printed_season import Build, Progress
from stemline.theme import Size, load_theme


@pytest.fixture
def season() -> Season:
    """One concept: four calls in two formations."""
    whole = sample_season()
    return replace(whole, plays=whole.plays[12:16])


def build(season: Season, progress: Progress) -> Build:
    return Build(season, "4f2c9e1", "2026-05-01", load_theme(), progress)


def test_pictures_by_call_with_progress(season: Season) -> None:
    told: list[tuple[int, int]] = []
    drawn = build(season, lambda done, of: told.append((done, of))).pictures()
    assert list(drawn) == [play.call.spoken for play in season.plays]
    assert all(svg.startswith("<svg") for svg in drawn.values())
    assert [done for done, _ in told] == [1, 2, 3, 4]


def test_the_book_holds_every_call(season: Season) -> None:
    pdf = build(season, lambda done, of: None).book()
    text = "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages)
    for play in season.plays:
        assert play.call.spoken in text


def test_no_picture_is_drawn_twice(season: Season, monkeypatch: pytest.MonkeyPatch) -> None:
    drawn: list[tuple[str, Size]] = []
    draw = stemline.printing.drawings.picture

    def counted(play: Play, size: Size, *rest: Any, **more: Any) -> Scene:
        drawn.append((play.call.spoken, size))
        return draw(play, size, *rest, **more)

    monkeypatch.setattr(stemline.printing.drawings, "picture", counted)
    told: list[tuple[int, int]] = []
    made = build(season, lambda done, of: told.append((done, of)))
    made.book()
    large = made.pictures()
    assert len(drawn) == len(set(drawn)) == 2 * len(season.plays) - 1
    assert told[-1] == (len(drawn), len(drawn))
    assert list(large) == [play.call.spoken for play in season.plays]

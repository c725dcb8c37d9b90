"""The clock's strip, the printed lines and the order of reads say what play and clock say.

Every pass of both bundled books, and each concept's first call against every look.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from clock_reading import order_off, printed_off, strip_off, table_off
from page_reading import Paged, paged
from picture_reading import THEME

from stemline.book.content.book import Book
from stemline.football.play import ConceptSheet, Play, Season
from stemline.football.timing.clock import ReadClock, TimedRead, read_clock
from stemline.football.timing.coverage import Against, against
from stemline.football.timing.levels import LEVELS
from stemline.picture.clock_strip import clock_scene


@pytest.fixture(scope="module")
def pages(season: Season, book: Book) -> list[Paged]:
    return paged(season, book)


def _clock(play: Play, season: Season) -> ReadClock:
    return read_clock(play, LEVELS[season.level])


def _timed(season: Season) -> Iterator[Play]:
    for play in (*season.plays, *(view for sheet in season.concepts for view in sheet.faced)):
        if play.reads:
            yield play


def _look(play: Play) -> str:
    return f"{play.call.spoken} {play.defence.name if play.defence is not None else ''}"


def test_the_strip_says_what_the_clock_says(season: Season) -> None:
    plays = list(_timed(season))
    assert sum(play.defence is not None for play in plays) > 100
    wrong = [
        f"{_look(play)}: {line}"
        for play in plays
        for clock in [_clock(play, season)]
        for line in strip_off(play, clock, clock_scene(clock, THEME))
    ]
    assert "\n".join(wrong) == ""


def test_the_printed_lines_say_what_the_clock_says(season: Season) -> None:
    wrong = [
        f"{_look(play)}: {line}"
        for play in _timed(season)
        for line in printed_off(play, _clock(play, season))
    ]
    assert "\n".join(wrong) == ""


def test_the_page_tells_the_quarterback_what_every_call_does(pages: list[Paged]) -> None:
    wrong = [
        f"{play.call.spoken}: {line}"
        for page, plays in pages
        if page.quarterback is not None
        for play in plays
        for line in order_off(page.quarterback, plays[0], play, plays)
    ]
    assert "\n".join(wrong) == ""


def _rows(sheet: ConceptSheet, season: Season) -> list[Against]:
    level = LEVELS[season.level]
    return [against(play, read_clock(play, level), level) for play in sheet.faced]


def test_the_reads_by_looks_are_the_clocks(season: Season, pages: list[Paged]) -> None:
    sheets = {sheet.name: sheet for sheet in season.concepts}
    tables = [(page, sheets[page.name]) for page, _ in pages if page.answers is not None]
    assert len(tables) > 15
    wrong = [
        f"{page.name}: {line}"
        for page, sheet in tables
        if page.answers is not None
        for line in table_off(page.answers, _rows(sheet, season), sheet.faced[0])
    ]
    assert "\n".join(wrong) == ""


# What is printed otherwise is told.


def _moved(clock: ReadClock, **values: Any) -> ReadClock:
    first: TimedRead = replace(clock.reads[0], **values)
    return replace(clock, reads=(first, *clock.reads[1:]))


def test_another_moment_man_or_order_on_the_strip_is_told(season: Season) -> None:
    play = next(_timed(season))
    clock = _clock(play, season)
    first = clock.reads[0]
    assert first.window is not None
    other = next(m.label for m in play.men if m.label not in first.read.men)
    for drawn in (
        _moved(clock, thrown=first.thrown - 0.1),
        _moved(clock, arrives=first.arrives + 0.1),
        _moved(clock, window=replace(first.window, closes=first.window.closes + 0.2)),
        _moved(clock, window=replace(first.window, man=other)),
        _moved(clock, ready=first.ready + 0.3),
        _moved(clock, distance=first.distance + 4.0),
        replace(clock, reads=clock.reads[::-1]),
    ):
        assert any(strip_off(play, clock, clock_scene(drawn, THEME)))
    assert any(printed_off(play, _moved(clock, window=replace(first.window, man=other))))
    assert any(printed_off(play, replace(clock, reads=clock.reads[::-1])))


def test_another_order_on_the_page_is_told(pages: list[Paged]) -> None:
    left = 0
    for page, plays in pages:
        strip = page.quarterback
        for gone in strip.but if strip is not None else ():
            assert strip is not None
            other = replace(strip, but=tuple(c for c in strip.but if c is not gone))
            told = [line for p in plays for line in order_off(other, plays[0], p, plays)]
            assert told, f"{page.name}: {gone}"
            left += 1
        if strip is not None and strip.stops and strip.stops[0].looks:
            stop = replace(strip.stops[0], looks=())
            other = replace(strip, stops=(stop, *strip.stops[1:]))
            assert any(order_off(other, plays[0], plays[0], plays)), page.name
    assert left > 10


def test_another_cell_of_the_reads_by_looks_is_told(season: Season, pages: list[Paged]) -> None:
    page = next(page for page, _ in pages if page.answers is not None)
    sheet = next(sheet for sheet in season.concepts if sheet.name == page.name)
    assert page.answers is not None
    rows = _rows(sheet, season)
    number, target, cells = page.answers.rows[0]
    for cell in (
        replace(cells[0], words="1"),
        replace(cells[0], nearest="[Z]"),
        replace(cells[0], first=not cells[0].first),
    ):
        row = (number, target, (cell, *cells[1:]))
        other = replace(page.answers, rows=(row, *page.answers.rows[1:]))
        assert any(table_off(other, rows, sheet.faced[0]))

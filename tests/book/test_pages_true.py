"""A page says of a man what his play says: every call of both bundled books, read back."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from job_reading import jobs
from page_reading import Paged, paged, wrong

from stemline.book.content.book import Book
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.football.play import Season


@pytest.fixture(scope="module")
def pages(season: Season, book: Book) -> list[Paged]:
    return paged(season, book)


def test_the_table_of_jobs_says_what_every_call_says(pages: list[Paged]) -> None:
    assert "\n".join(wrong(pages)) == ""


def test_a_page_names_the_front_that_its_large_picture_is_drawn_against(pages: list[Paged]) -> None:
    """In the picture's corner a deep man may leave no room for it."""
    against = [(page, page.base.play.defence) for page, _ in pages]
    assert sum(front is not None for _, front in against) > 10
    for page, front in against:
        assert front is None or f"against {front.name}" in page.drawn


def test_letters_of_the_defence_are_marked_and_ours_are_not(pages: list[Paged]) -> None:
    for page, plays in pages:
        for play in plays:
            if play.defence is None:
                continue
            theirs = {d.label for d in play.defence.defenders}
            ours = {man.label for man in play.men}
            for _, job in jobs(page, play, plays).values():
                marked = set(re.findall(r"\[(\w+)\]", job.job))
                words = re.sub(r"(playside|backside|strong|weak) [A-D]\b|[A-D] gap", "", job.job)
                bare = set(re.findall(r"(?<![\[\w])[A-Z][A-Z]?(?![\]\w])", words))
                assert marked <= theirs, job
                assert not bare & (theirs - ours), f"{play.call.spoken}: {job.job}"


def test_no_call_stands_under_what_changes_it_without_a_word(pages: list[Paged]) -> None:
    notes = [(page.name, note) for page, _ in pages for row in page.rows for note in row.changes]
    assert len(notes) > 50
    assert not [n for n in notes if not n[1].words and not n[1].label.startswith("only ")]


# What is printed otherwise is told.


def _told(page: ConceptPage, other: ConceptPage, pages: list[Paged]) -> list[str]:
    assert other != page
    plays = next(plays for one, plays in pages if one is page)
    return list(wrong([(other, plays)]))


def test_another_job_in_a_row_is_told(pages: list[Paged]) -> None:
    page, _ = pages[0]
    row = page.rows[0]
    for task in (
        replace(row.task, job="Go"),
        replace(row.task, says=("Walk.",)),
        replace(row.task, motion="waves"),
    ):
        rows = (replace(row, task=task), *page.rows[1:])
        assert _told(page, replace(page, rows=rows), pages)


def test_an_exception_that_is_left_out_is_told(pages: list[Paged]) -> None:
    """Each of every page, by itself."""
    left = 0
    for page, _ in pages:
        for i, row in enumerate(page.rows):
            for gone in row.but:
                but = tuple(change for change in row.but if change is not gone)
                rows = (*page.rows[:i], replace(row, but=but), *page.rows[i + 1 :])
                assert _told(page, replace(page, rows=rows), pages), f"{page.name}: {gone}"
                left += 1
    assert left > 50


def test_a_change_of_the_line_that_is_left_out_is_told(pages: list[Paged]) -> None:
    left = 0
    for page, _ in pages:
        for gone in page.line.but if page.line is not None else ():
            assert page.line is not None
            but = tuple(change for change in page.line.but if change is not gone)
            line = replace(page.line, but=but)
            assert _told(page, replace(page, line=line), pages), f"{page.name}: {gone}"
            left += 1
    assert left > 5

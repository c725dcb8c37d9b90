"""How a call is said, how we line up, motions, and looks at a glance: true of both bundled books,
and told where they are not."""

from __future__ import annotations

from dataclasses import replace

from front_reading import misplaced, misspoken, unmoved, unopened

from stemline.book.content.book import Book
from stemline.book.content.kinds.call_page import CallPage
from stemline.book.content.kinds.glance_page import GlancePage
from stemline.book.content.kinds.lineup_page import LineupPage, comes_in
from stemline.book.content.kinds.motion_page import MotionPage
from stemline.book.content.page import Page
from stemline.football.play import Season


def test_every_call_can_be_said_from_its_page(book: Book, season: Season) -> None:
    assert list(misspoken(book, season)) == []
    page = book.of(CallPage)[0]
    assert 3 <= len(page.apart) <= 4  # one by the field, where there is such a call
    assert len(page.names) == 4  # both books name four calls with one word


def test_every_man_stands_where_the_table_says(book: Book, season: Season) -> None:
    assert list(misplaced(book, season)) == []
    pages = book.of(LineupPage)
    assert all(len(page.sets) <= 5 for page in pages)
    assert sum(len(page.sets) for page in pages) == len(season.formations)


def test_every_motion_is_told(book: Book, season: Season) -> None:
    assert list(unmoved(book, season)) == []


def test_every_look_says_what_the_clock_gives(book: Book, season: Season) -> None:
    assert list(unopened(book, season)) == []


def test_each_route_is_run_by_one_man_alone(book: Book, season: Season) -> None:
    routes = book.of(CallPage)[1].routes
    assert len(routes) == len(season.routes) > 30
    for entry in routes:
        runners = [man for man in entry.play.men if not man.interior]
        assert [task.man for task in entry.play.assignments] == [man.label for man in runners]
        assert len(runners) == 1


def test_who_comes_in_is_told_by_letters(season: Season) -> None:
    view = season.formations[0].view
    mine = tuple(man.label for man in view.men if not man.interior)
    assert comes_in(view, mine) == ""
    assert comes_in(view, (*mine[:-1], "V")) == f"{mine[-1]} for V"


# What is printed otherwise is told.


def _with(book: Book, page: Page, other: Page) -> Book:
    assert other != page
    return replace(book, pages=tuple(other if each is page else each for each in book.pages))


def test_another_word_is_told(book: Book, season: Season) -> None:
    page = book.of(CallPage)[0]
    for other in (
        replace(page, names=page.names[1:]),
        replace(page, lists=page.lists[1:]),
        replace(page, apart=(replace(page.apart[0], parts=page.apart[0].parts[::-1]),)),
    ):
        assert any(misspoken(_with(book, page, other), season))


def test_another_place_is_told(book: Book, season: Season) -> None:
    page = book.of(LineupPage)[0]
    one = page.sets[0]
    row = one.rows[2]
    for rows in (
        one.rows[1:],
        (*one.rows[:2], replace(row, yards=("1", *row.yards[1:])), *one.rows[3:]),
        (*one.rows[:2], replace(row, depth="2" if row.depth == "on" else "on"), *one.rows[3:]),
    ):
        other = replace(page, sets=(replace(one, rows=rows), *page.sets[1:]))
        assert any(misplaced(_with(book, page, other), season))


def test_another_motion_is_told(book: Book, season: Season) -> None:
    page = book.of(MotionPage)[0]
    one = page.sets[0]
    for other in (
        replace(page, sets=page.sets[1:]),
        replace(page, sets=(replace(one, moves=()), *page.sets[1:])),
        replace(page, sets=(replace(one, moves=(("V", "runs"),)), *page.sets[1:])),
    ):
        assert any(unmoved(_with(book, page, other), season))


def test_another_answer_to_a_look_is_told(book: Book, season: Season) -> None:
    page = book.of(GlancePage)[0]
    row = page.rows[0]
    for other in (
        replace(row, rush=row.rush + 1),
        replace(row, opens=row.opens[1:]),
        replace(row, opens=((row.opens[0][0], "nobody"), *row.opens[1:])),
        replace(row, nobody=(*row.nobody, row.opens[0][0])),
        replace(row, blocked=row.blocked[1:]),
    ):
        if other != row:
            changed = replace(page, rows=(other, *page.rows[1:]))
            assert any(unopened(_with(book, page, changed), season))

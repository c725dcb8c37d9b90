"""Dress-ups are laid so that pages are full and nothing runs over."""

from __future__ import annotations

from math import ceil

from hypothesis import given
from hypothesis import strategies as st

from stemline.book.fit import NOTE_HEAD, NOTE_LINE, Arrangement, Measures, Style, arrange, room
from stemline.book.model import Paper

ROOM = room(Paper.LETTER)


def measures(dressups: int, fixed: float, points: float = 0.0, casting: float = 0.0) -> Measures:
    rows = {Style.THREE: 105.0, Style.TWO: 150.0, Style.ONE: 185.0}
    return Measures(dressups, fixed, points, casting, 40.0, rows)


def used(m: Measures, how: Arrangement) -> list[float]:
    """Height of each page as it will be laid out."""
    pages = [m.fixed + ceil(how.first / how.first_style.value) * m.row[how.first_style]]
    pages += [m.head + ceil(n / how.rest_style.value) * m.row[how.rest_style] for n in how.rest]
    pages[0 if how.points_first else 1] += m.points
    pages[0 if how.casting_first else 1] += m.casting
    notes = [NOTE_HEAD + n * NOTE_LINE if n else 0.0 for n in how.notes]
    return [page + lines for page, lines in zip(pages, notes, strict=True)]


@given(
    dressups=st.integers(0, 60),
    fixed=st.floats(250, ROOM),
    points=st.floats(0, 250),
    casting=st.sampled_from((0.0, 110.0)),
)
def test_every_page_is_full_and_none_runs_over(
    dressups: int, fixed: float, points: float, casting: float
) -> None:
    m = measures(dressups, fixed, points, casting)
    how = arrange(m, ROOM)
    assert not how.runs_on
    assert how.first + sum(how.rest) == dressups
    for height in used(m, how):
        assert height <= ROOM
        assert ROOM - height < NOTE_HEAD + 3 * NOTE_LINE


def test_one_page_when_one_page_holds_it() -> None:
    assert arrange(measures(6, 480), ROOM).pages == 1
    assert arrange(measures(7, 480), ROOM).pages == 2


def test_few_dressups_are_drawn_larger_when_there_is_room() -> None:
    assert arrange(measures(2, 540), ROOM).first_style is Style.TWO
    assert arrange(measures(2, 590), ROOM).first_style is Style.THREE


def test_coaching_points_leave_their_picture_only_when_they_must() -> None:
    assert arrange(measures(8, 500, points=150), ROOM).points_first
    moved = arrange(measures(3, 600, points=150), ROOM)
    assert not moved.points_first
    assert moved.pages == 2


def test_many_dressups_are_shared_out_over_their_pages() -> None:
    how = arrange(measures(40, 600), ROOM)
    assert how.pages == 4
    rows = [ceil(n / how.rest_style.value) for n in how.rest]
    assert max(rows) - min(rows) <= 1


def test_more_text_than_pages_can_be_planned_for_runs_on() -> None:
    how = arrange(measures(3, 2 * ROOM), ROOM)
    assert how == Arrangement(3, runs_on=True)

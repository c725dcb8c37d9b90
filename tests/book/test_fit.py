"""Dress-ups are laid so that pages are full and nothing runs over."""

from __future__ import annotations

from math import ceil

from hypothesis import given
from hypothesis import strategies as st

from stemline.book.fit import NOTE_HEAD, NOTE_LINE, Arrangement, Measures, Style, arrange, room
from stemline.book.model import Paper

ROOM = room(Paper.LETTER)


def measures(dressups: int, fixed: float, casting: float = 0.0) -> Measures:
    rows = {Style.THREE: 105.0, Style.TWO: 150.0, Style.ONE: 185.0}
    return Measures(dressups, fixed, casting, 40.0, rows)


def used(m: Measures, how: Arrangement) -> tuple[float, float]:
    """Heights of the first page and of the second."""
    rest = m.dressups - how.first
    first = m.fixed + ceil(how.first / how.first_style.value) * m.row[how.first_style]
    last = m.head + ceil(rest / how.rest_style.value) * m.row[how.rest_style] if rest else 0.0
    if how.casting_first:
        first += m.casting
    else:
        last += m.casting
    notes = [NOTE_HEAD + n * NOTE_LINE if n else 0.0 for n in how.notes]
    return first + notes[0], last + notes[1]


@given(
    dressups=st.integers(0, 11),
    fixed=st.floats(250, ROOM),
    casting=st.sampled_from((0.0, 110.0)),
)
def test_nothing_runs_over(dressups: int, fixed: float, casting: float) -> None:
    m = measures(dressups, fixed, casting)
    how = arrange(m, ROOM)
    first, last = used(m, how)
    assert 0 <= how.first <= dressups
    assert how.pages in (1, 2)
    if how.pages == 1:
        assert how.first == dressups
    if how.notes != (0, 0) or fixed + casting <= ROOM:
        assert first <= ROOM
        assert last <= ROOM


@given(dressups=st.integers(0, 11), fixed=st.floats(250, ROOM))
def test_an_empty_foot_gets_lines_for_notes(dressups: int, fixed: float) -> None:
    m = measures(dressups, fixed)
    how = arrange(m, ROOM)
    first, last = used(m, how)
    too_few = NOTE_HEAD + 3 * NOTE_LINE
    assert ROOM - first < too_few
    if how.pages == 2:
        assert ROOM - last < too_few


def test_one_page_when_one_page_holds_it() -> None:
    assert arrange(measures(6, 480), ROOM).pages == 1
    assert arrange(measures(7, 480), ROOM).pages == 2


def test_few_dressups_are_drawn_larger_when_there_is_room() -> None:
    assert arrange(measures(2, 540), ROOM).first_style is Style.TWO
    assert arrange(measures(2, 590), ROOM).first_style is Style.THREE


def test_more_than_two_pages_hold_run_on() -> None:
    how = arrange(measures(60, 600), ROOM)
    assert how.pages == 1 + ceil(20 / int((ROOM - 40) // 105))
    assert how.notes == (0, 0)

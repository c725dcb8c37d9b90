"""Dress-ups are laid so that pages are full and nothing runs over."""

from __future__ import annotations

from math import ceil

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from sample_season import crossers

from stemline.book.content.page import Entry, Remark
from stemline.book.layout.fit import (
    CARE_GAP,
    NOTE_HEAD,
    NOTE_LINE,
    SHARE_GAP,
    Arrangement,
    Measures,
    Style,
    arrange,
    front,
    front_of_plan,
    share,
    telling,
)
from stemline.book.paper import Paper, room

ROOM = room(Paper.LETTER)


def measures(
    dressups: int, fixed: float, points: float = 0.0, casting: float = 0.0, jobs: float = 0.0
) -> Measures:
    rows = {Style.THREE: 105.0, Style.TWO: 150.0, Style.ONE: 185.0}
    return Measures(dressups, fixed, points, casting, 40.0, rows, jobs)


def used(m: Measures, how: Arrangement) -> list[float]:
    """Height of each page as it will be laid out."""
    pages = [m.fixed + ceil(how.first / how.first_style.value) * m.row[how.first_style]]
    pages += [m.head + ceil(n / how.rest_style.value) * m.row[how.rest_style] for n in how.rest]
    pages[0 if how.points_first else 1] += m.points
    pages[0 if how.casting_first else 1] += m.casting
    pages[0 if how.jobs_first else 1] += m.jobs
    notes = [NOTE_HEAD + n * NOTE_LINE if n else 0.0 for n in how.notes]
    return [page + lines for page, lines in zip(pages, notes, strict=True)]


@given(
    dressups=st.integers(0, 60),
    fixed=st.floats(250, ROOM),
    points=st.floats(0, 250),
    casting=st.sampled_from((0.0, 110.0)),
    jobs=st.sampled_from((0.0, 90.0)),
)
def test_every_page_is_full_and_none_runs_over(
    dressups: int, fixed: float, points: float, casting: float, jobs: float
) -> None:
    m = measures(dressups, fixed, points, casting, jobs)
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
    assert how == Arrangement(3, runs_on=True, likely=3)


def test_a_runs_jobs_go_overleaf_only_when_they_must() -> None:
    assert arrange(measures(8, 500, points=60, jobs=120), ROOM).jobs_first
    moved = arrange(measures(8, 640, points=60, jobs=120), ROOM)
    assert (moved.jobs_first, moved.points_first, moved.runs_on) == (False, False, False)


@given(contents=st.floats(60, 2 * ROOM - 1), care=st.floats(200, 500), reading=st.floats(200, ROOM))
def test_the_front_pages_are_full_and_none_runs_over(
    contents: float, care: float, reading: float
) -> None:
    made = front(contents, care, reading, ROOM)
    last = contents % ROOM or ROOM
    assume(last == contents or last > 20)
    below = 0.0 if made.care_apart else CARE_GAP + care
    feet = [
        (last + below, made.contents_notes if made.care_apart else made.care_notes),
        *([(care, made.care_notes)] if made.care_apart else []),
        (reading, made.reading_notes if reading < ROOM else 0),
    ]
    for text, lines in feet:
        used = text + (NOTE_HEAD + lines * NOTE_LINE if lines else 0.0)
        assert used <= ROOM
        assert ROOM - used < NOTE_HEAD + 3 * NOTE_LINE


@pytest.mark.parametrize("beyond", [0.0, 0.5, 5.5])
def test_no_sheet_holds_nothing_but_notes(beyond: float) -> None:
    """A text as tall as its sheet, or a little taller than what is planned with, ends on it."""
    assert front(300.0, 200.0, ROOM + beyond, ROOM).reading_notes == 0
    assert front_of_plan(ROOM + beyond, ROOM).contents_notes == 0
    assert front(300.0, 200.0, ROOM + 200.0, ROOM).reading_notes > 0


@given(
    heights=st.lists(st.none() | st.floats(100, 1.2 * ROOM), max_size=12),
)
def test_half_pages_stand_together_where_a_sheet_has_room(heights: list[float | None]) -> None:
    """No sheet overflows, none that follows would have had room on it, and others are left."""
    made = share([None if h is None else measures(0, h) for h in heights], ROOM)
    used = None
    for height, how in zip(heights, made, strict=True):
        assert (how is None) == (height is None or height > ROOM)
        if how is None or height is None:
            used = None
            continue
        fits = used is not None and used + SHARE_GAP + height <= ROOM
        assert how.shares == fits
        used = used + SHARE_GAP + height if used is not None and fits else height
        assert used <= ROOM


def test_the_telling_pictures_have_the_most_words_beside_and_over_them() -> None:
    play = crossers()[0]

    def entry(number: int, call: str, words: int) -> Entry:
        return Entry(f"call-{number}", call, play, (Remark("X", "w" * words),) if words else ())

    few = entry(1, "Quads Right Crossers", 0)
    long = entry(2, "Quads Right Crossers Wheel", 400)
    longer = entry(3, "Quads Right Crossers Return", 900)
    named = entry(4, "Quads Right Tuck Crossers Wheel + Return", 10)
    assert telling((few, long, longer, named)) == (long, longer, named)
    assert telling(()) == ()

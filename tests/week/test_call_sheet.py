"""The call sheet: legible at arm's length, nothing lost, and told what does not fit."""

from __future__ import annotations

from dataclasses import replace
from math import atan, degrees

import pypdfium2 as pdfium
import pytest

from stemline.emit.week_pages import sheet_pdf
from stemline.printing.week_papers import LAST_MINUTES
from stemline.theme import load_theme
from stemline.week.call_sheet import (
    COMFORT,
    HEAD,
    MARGIN,
    PAPERS,
    STRIP,
    CallSheet,
    NotFitting,
    lay_out,
    least_points,
    sheet_rows,
)
from stemline.week.working_out import work_out

from .plans import HERONS, LANTERNS, bundled_week, ems, made_up, pages


def test_the_least_type_is_read_at_arms_length() -> None:
    """ISO 9241-3: a capital of at least 16 minutes of arc; 20 inches is a sheet in the hand. The
    table of sizes by distance that staffs use has 9.6 points there."""
    assert least_points() == 9.6
    cap = 0.7 * least_points() / 72
    assert degrees(atan(cap / 20)) * 60 >= 16
    assert degrees(atan((cap - 0.7 * 0.1 / 72) / 20)) * 60 < 16
    assert least_points(24) == 11.5


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("rows", [30, 90, 240])
def test_a_plan_fits_and_is_legible_or_says_what_does_not(rows: int, paper: str) -> None:
    plan = made_up(rows, rows=rows)
    week = work_out(plan, {}, pages(plan), ems())
    made = lay_out(week, paper, 2, ems())
    wanted = [(title, row) for title, _, rows_ in sheet_rows(week) for row in rows_]
    assert len(wanted) == rows
    if isinstance(made, NotFitting):
        assert (rows, made.rows) == (240, 240) and 0 < made.over < 240
        assert made.where in [title for title, *_ in sheet_rows(week)]
        return
    pieces = [piece for side in made.sides for column in side for piece in column]
    assert [(p.title, row) for p in pieces for row in p.rows] == wanted
    assert made.points >= least_points() and len(made.sides) <= 2
    for side in made.sides:
        for column in side:
            tall = sum(HEAD + sum(2.14 if r.note else 1.16 for r in p.rows) for p in column)
            assert tall * made.points <= made.height - 2 * MARGIN - STRIP + 0.01
            assert all(len(p.rows) > 1 or not p.again for p in column)
    words = ems()
    for row in (row for piece in pieces for row in piece.rows):
        assert words(row.call, "semibold") * made.points <= made.widths.call + 0.01


def test_what_fits_and_what_does_not() -> None:
    """Thirty and ninety rows fit everywhere, thirty on one side; of 240 legal paper takes all."""

    def made(rows: int, paper: str, sides: int) -> CallSheet | NotFitting:
        plan = made_up(rows, rows=rows)
        return lay_out(work_out(plan, {}, pages(plan), ems()), paper, sides, ems())

    assert isinstance(made(30, "letter", 1), CallSheet)
    assert isinstance(made(90, "letter", 2), CallSheet)
    assert isinstance(made(240, "legal", 2), CallSheet)
    assert isinstance(made(240, "letter", 1), NotFitting)


def test_the_printed_letters_are_read_at_arms_length() -> None:
    """The fullest sheet that fits, 240 rows on legal paper: the first capital of every call as it
    stands in the PDF has at least 16 minutes of arc at 20 inches, less a fiftieth for the outline's
    own rounding."""
    plan = made_up(240, rows=240)
    made = lay_out(work_out(plan, {}, pages(plan), ems()), "legal", 2, ems())
    assert isinstance(made, CallSheet)
    document = pdfium.PdfDocument(sheet_pdf(made, load_theme(), "Herons", "2026-09-01"))
    assert len(document) == len(made.sides) == 2
    measured = 0
    for side, page in zip(made.sides, document, strict=True):
        words = page.get_textpage()
        for row in (row for column in side for piece in column for row in piece.rows):
            found = words.search(row.call, match_case=True).get_next()
            if found is None:
                continue
            _, low, _, high = words.get_charbox(found[0])
            assert degrees(atan((high - low) / 72 / 20)) * 60 >= 16 * 0.98, row
            measured += 1
    assert measured > 200


def test_a_small_plan_is_set_large() -> None:
    plan = made_up(30, rows=30)
    week = work_out(plan, {}, pages(plan), ems())
    small = lay_out(week, "letter", 2, ems())
    full = made_up(90, rows=90)
    large = lay_out(work_out(full, {}, pages(full), ems()), "letter", 2, ems())
    assert isinstance(small, CallSheet) and isinstance(large, CallSheet)
    assert small.points >= large.points and len(small.sides) <= len(large.sides)


def test_no_situation_is_parted_where_there_is_room() -> None:
    """A caller looks a situation up in one place: those of all eight weeks find room whole. Where
    they do in no type but the least, a list is parted for larger letters."""
    for name, number in (
        *((HERONS, n) for n in (5, 6, 7, 8)),
        *((LANTERNS, n) for n in range(1, 5)),
    ):
        made = lay_out(bundled_week(name, number), "letter", 2, ems(), (LAST_MINUTES,))
        assert isinstance(made, CallSheet)
        pieces = [piece for side in made.sides for column in side for piece in column]
        assert [piece.title for piece in pieces if piece.again] == [], (name, number)
    one = made_up(90, rows=90)
    lists = (replace(one.lists[0], rows=tuple(row for each in one.lists for row in each.rows)),)
    week = work_out(replace(one, lists=lists), {}, pages(one), ems())
    long = lay_out(week, "letter", 2, ems())
    assert isinstance(long, CallSheet) and long.points >= COMFORT
    assert any(piece.again for side in long.sides for column in side for piece in column)


def test_the_line_for_the_wind_is_never_cut_off() -> None:
    """A plan that is only begun names all that it leaves: the head grows with these words."""
    week = bundled_week(HERONS, 5)
    begun = replace(week, plan=replace(week.plan, lists=week.plan.lists[:2]))
    made = lay_out(begun, "letter", 1, ems(), (LAST_MINUTES,))
    assert isinstance(made, CallSheet) and made.winds and len(made.left) > 8
    assert made.strip > STRIP
    page = pdfium.PdfDocument(sheet_pdf(made, load_theme(), "Herons", "2026-09-01"))[0]
    words = page.get_textpage()
    found = words.search("2nd half", match_case=True).get_next()
    assert found is not None
    low = words.get_charbox(found[0])[1]
    assert page.get_height() - low < MARGIN + made.strip - 6
    # And its head is no taller than that takes: the words end where the wind's line begins.
    assert page.get_height() - low > MARGIN + made.strip - 30

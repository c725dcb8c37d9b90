"""Wristbands: cut to the inch, and a type that is read or refused."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

import pypdfium2 as pdfium
import pytest
from PIL import Image

import stemline.emit.week_pages as week_pages
from stemline.emit.pdf import page_count
from stemline.emit.week_pages import bands_pdf
from stemline.theme import load_theme
from stemline.week.bands import (
    CLEAR,
    CROP,
    PAD,
    REFUSED,
    TITLE,
    WISHED,
    BandSheet,
    Card,
    TooSmall,
    card_of,
    place,
)
from stemline.week.week_values import PlanBand, Week

from .plans import HERONS, LANTERNS, bundled_week, ems

MM = 72 / 25.4
DPI = 600
SIZES = [(4.75, 2.75, 1), (4.0, 2.0, 3), (5.0, 3.0, 2)]


def band(width: float, height: float, windows: int, calls: int = 20) -> tuple[Week, PlanBand]:
    week = bundled_week(HERONS, 5)
    made = PlanBand(
        "Skill", ("Q",), width, height, windows, week.plan.calls[:calls], week.plan.span
    )
    return week, made


def sheets(week: Week, made: PlanBand) -> tuple[BandSheet, ...]:
    card = card_of(week, made, ems())
    assert isinstance(card, Card)
    placed = place([(card, 1)], "letter")
    assert not isinstance(placed, str)
    return placed


def printed(placed: tuple[BandSheet, ...]) -> Image.Image:
    pdf = bands_pdf(placed, "bands", load_theme(), "test", "2026-09-01")
    page = pdfium.PdfDocument(pdf)[0]
    assert page.get_width() == pytest.approx(placed[0].width, abs=0.1)
    return page.render(scale=DPI / 72).to_pil().convert("L")


def dark(pixels: list[int]) -> list[float]:
    """Middles of the runs of dark pixels, in points."""
    runs: list[tuple[int, int]] = []
    for at, value in enumerate(pixels):
        if value < 128 and runs and runs[-1][1] == at - 1:
            runs[-1] = runs[-1][0], at
        elif value < 128:
            runs.append((at, at))
    return [(a + b + 1) / 2 * 72 / DPI for a, b in runs]


@pytest.mark.parametrize(("width", "height", "windows"), SIZES)
def test_the_card_is_as_large_as_is_said(width: float, height: float, windows: int) -> None:
    """Its crop marks and its edges, within 0.3 mm, measured in the printed page."""
    placed = sheets(*band(width, height, windows))
    image = printed(placed)
    (one, *_) = placed[0].cards
    pixel = DPI / 72

    def row(y: float) -> list[int]:
        return list(image.crop((0, int(y * pixel), image.width, int(y * pixel) + 1)).tobytes())

    def column(x: float) -> list[int]:
        return list(image.crop((int(x * pixel), 0, int(x * pixel) + 1, image.height)).tobytes())

    above = dark(row(one.top - CLEAR - CROP / 2))
    beside = dark(column(one.left - CLEAR - CROP * 0.75))
    assert above[1] - above[0] == pytest.approx(72 * width, abs=0.3 * MM)
    assert beside[-1] - beside[0] == pytest.approx(72 * height * windows, abs=0.3 * MM)
    # The marks of the other two sides are in line with these.
    bottom, right = one.top + 72 * height * windows, one.left + 72 * width
    assert dark(row(bottom + CLEAR + CROP / 2)) == pytest.approx(above, abs=0.1)
    assert dark(column(right + CLEAR + CROP * 0.75)) == pytest.approx(
        [beside[0], beside[-1]], abs=0.1
    )
    # Nothing is printed between the marks and the card, and the card's own edge is where it is cut.
    for y in (one.top - CLEAR / 2, bottom + CLEAR / 2):
        assert dark(row(y)) == []
    for x in (one.left - CLEAR / 2, right + CLEAR / 2):
        assert dark(column(x)) == []
    edges = dark(row(one.top + PAD + 0.3))
    assert edges[-1] - edges[0] == pytest.approx(72 * width, abs=0.3 * MM)
    folds = [y for y in dark(column(one.left - CLEAR - CROP / 4)) if beside[0] + 1 < y]
    assert [y for y in folds if y < beside[-1] - 1] == pytest.approx(
        [one.top + n * 72 * height for n in range(1, windows)], abs=0.3 * MM
    )


@pytest.mark.parametrize(("width", "height", "windows"), SIZES)
def test_every_call_stands_on_the_card_inside_it(width: float, height: float, windows: int) -> None:
    week, made = band(width, height, windows)
    card = card_of(week, made, ems())
    assert isinstance(card, Card)
    cells = [cell for window in card.windows for column in window for cell in column]
    wanted = {(str(week.entry(c).number), week.entry(c).short) for c in made.calls}
    assert {(cell.number, cell.words) for cell in cells} == wanted
    assert [int(cell.number) for cell in cells] == sorted(int(cell.number) for cell in cells)
    words = ems()
    for window in card.windows:
        rows = max((len(column) for column in window), default=0)
        assert 2 * PAD + TITLE + rows * 1.16 * card.points <= card.window + 0.01
        for cell in (cell for column in window for cell in column):
            assert card.number + words(cell.words, "semibold") * card.points <= card.column + 0.01


def test_a_card_too_small_is_refused_with_its_room() -> None:
    week, made = band(2.0, 1.0, 1, calls=60)
    card = card_of(week, made, ems())
    assert isinstance(card, TooSmall)
    assert card.calls == 60 and 0 < card.room < 60 and card.points == REFUSED == 6.0


def test_more_calls_are_set_smaller_and_never_under_the_least() -> None:
    sizes = []
    for calls in (10, 40, 70):
        week, made = band(4.75, 2.75, 2, calls)
        card = card_of(week, made, ems())
        assert isinstance(card, Card) and card.points >= REFUSED
        sizes.append(card.points)
    assert sizes == sorted(sizes, reverse=True) and sizes[0] > sizes[-1]


def test_the_bundled_bands_are_read_on_the_wrist() -> None:
    """At 16 inches a capital of 16 minutes of arc is one of 7.7 points (ISO 9241-3)."""
    week = bundled_week(HERONS, 5)
    for made in week.plan.bands:
        card = card_of(week, made, ems())
        assert isinstance(card, Card) and card.points >= WISHED


@pytest.mark.parametrize(("name", "number"), [(HERONS, 8), (LANTERNS, 4)])
def test_a_name_is_written_one_way_on_a_card(name: str, number: int) -> None:
    """Whole in every call or short in every call, though only the longest has no room for it."""
    ways: dict[str, set[bool]] = {}
    for entry in bundled_week(name, number).entries:
        call = entry.play.call
        for part in filter(None, (call.formation, call.motion, call.concept)):
            if part in entry.call:
                ways.setdefault(part, set()).add(part in entry.short)
    assert [part for part, written in ways.items() if len(written) > 1] == []


def test_cards_stand_apart_and_on_the_paper() -> None:
    week, made = band(4.0, 2.0, 1)
    card = card_of(week, made, ems())
    assert isinstance(card, Card)
    placed = place([(card, 7)], "letter")
    assert not isinstance(placed, str)
    assert sum(len(sheet.cards) for sheet in placed) == 7
    for sheet in placed:
        for one in sheet.cards:
            assert one.left - CLEAR - CROP >= 0 and one.top - CLEAR - CROP >= 0
            assert one.left + card.width + CLEAR + CROP <= sheet.width
            assert one.top + card.height + CLEAR + CROP <= sheet.height
            others = [o for o in sheet.cards if o is not one]
            assert all(
                abs(o.left - one.left) >= card.width + 2 * CLEAR
                or abs(o.top - one.top) >= card.height + 2 * CLEAR
                for o in others
            )
    assert place([(replace(card, width=900.0), 1)], "letter") == "Skill"


def test_sheets_that_are_alike_are_as_each_laid_out_by_itself(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Two kinds of card, the last sheet of each with fewer: all but the identifier."""
    week, made = band(4.75, 2.75, 1)
    cards = [card_of(week, made, ems()), card_of(week, replace(made, name="Line"), ems())]
    placed = place([(card, 11) for card in cards if isinstance(card, Card)], "letter")
    assert not isinstance(placed, str)

    def without_id(pdf: bytes) -> bytes:
        return re.sub(rb"/ID \[[^]]*\]", b"", pdf)

    def one_by_one(sheets: Sequence[BandSheet]) -> Iterator[tuple[BandSheet, list[BandSheet]]]:
        return ((sheet, [sheet]) for sheet in sheets)

    once = bands_pdf(placed, "bands", load_theme(), "test", "2026-09-01")
    monkeypatch.setattr(week_pages, "groupby", one_by_one)
    each = bands_pdf(placed, "bands", load_theme(), "test", "2026-09-01")
    assert page_count(once) == len(placed) > len(set(placed)) > 2
    assert without_id(once) == without_id(each)

"""The dark theme is heavier and larger, and its pictures are as clean."""

from __future__ import annotations

import pytest

from stemline.theme import load_theme

from .pictures import BUNDLED, CALL, Sort, legend, sample
from .table import Judged, judge, told

THEME = load_theme("dark")

CALLS: dict[str, tuple[str, ...]] = {
    "saltmarsh-herons": (
        "Spread Right Smash",
        "Three Two Right Full Waggle Deep Over",
        "Quads Left Tuck Crossers Return",
        "Three Two Right Flood Boot",
        "Bunch Left Pylon",
        "Three Two Right Exit Choice",
        "Trey Left Throwback",
        "Ace Right Inside Zone",
        "Pro Left Power",
        "Pro Right Inside Veer",
        "Trey Right Counter",
        "Jumbo Right Power",
        "Three Two Right Outside Zone",
        "Three Two Right Slants Bubble",
    ),
    "cedar-flats-lanterns": (
        "Trips Close Left Crossers Return",
        "Trips Right Slot Option",
        "Full House Right Bootleg",
        "Trips Right Stick Nod",
        "Doubles Right Slow Screen",
        "Trips Close Right Post Wheel Follow",
        "Doubles Left Zone Keep",
        "Pistol Right Counter",
        "Full House Right Toss",
        "Trey Right Quarterback Power",
        "I Right Stretch",
        "Heavy Right Sneak",
        "Full House Right Buck Sweep",
        "Wing Right Bootleg",
    ),
}
"""Passes, screens, motions, runs, options; to both sides; close and wide formations."""

PAGES = ("protection-1", "look-1", "look-7")
"""Pages whose diagrams are judged too: a protection, a zone and a man look."""


@pytest.fixture(scope="module", params=BUNDLED)
def judged(request: pytest.FixtureRequest) -> tuple[str, list[Judged]]:
    book: str = request.param
    return book, [judge(each, THEME) for each in sample(book, CALLS[book], PAGES, THEME)]


def test_the_sample_is_what_it_says(judged: tuple[str, list[Judged]]) -> None:
    book, found = judged
    sorts = [each.picture.sort for each in found]
    calls = len(CALLS[book])
    assert {sorts.count(sort) for sort in CALL.values()} == {calls}
    assert sorts.count(Sort.SHEET) == sorts.count(Sort.SHEET_QUARTER) >= len(PAGES)
    assert Sort.CLOCK in sorts


def test_heavier_lines_still_leave_room(judged: tuple[str, list[Judged]]) -> None:
    guilty = [told(each) for each in judged[1] if each.faults]
    assert not guilty, "\n".join(guilty)


def test_the_page_that_explains_the_marks_has_room_too() -> None:
    guilty = [told(each) for each in (judge(p, THEME) for p in legend(THEME)) if each.faults]
    assert not guilty, "\n".join(guilty)

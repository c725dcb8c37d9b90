"""How a concept's dress-ups are laid on its pages, so that no page ends in an empty foot.

The back end lays the book out once in a plain way and measures each concept's parts; `arrange`
then chooses, for each concept, how many rows stand under the large picture, how wide the rest
are drawn on a second page, and how many ruled lines for the player's own notes fill what is left.
The search is small and exhaustive, and ties fall to the earlier choice: same measures, same book.

Heights and widths are points on the page.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from itertools import product
from math import ceil

from stemline.book.model import Paper

NOTE_LINE = 21.0
"""From one ruled line to the next: about 7 mm, as in an exercise book."""
NOTE_HEAD = 20.0
FEWEST_NOTES = 3
"""Fewer lines than this are not worth a heading."""


TEXT_WIDTH = 525.6
"""7.3 inches: the width of the large picture, and so of the text."""
TOP, BOTTOM = 36.0, 50.0
"""Margins above the text and below it, the footer standing in the lower one."""


class Style(Enum):
    """How dress-ups stand: three a row, two a row, or one a row with its changes beside it."""

    THREE = 3
    TWO = 2
    ONE = 1

    @property
    def factor(self) -> float:
        """How much larger than its own size a small picture is printed."""
        return {Style.THREE: 1.0, Style.TWO: 1.5, Style.ONE: 1.8}[self]

    @property
    def css(self) -> str:
        return self.name.lower()


def room(paper: Paper) -> float:
    """Height of the text on a page."""
    return paper.value[1] * 72 - TOP - BOTTOM


def side_margin(paper: Paper) -> float:
    """Margin left and right, so that the text is as wide as the large picture."""
    return (paper.value[0] * 72 - TEXT_WIDTH) / 2


@dataclass(frozen=True)
class Measures:
    """One concept, measured.

    ``fixed`` is all that stands above the dress-ups but ``casting``, the table of who plays what;
    ``head`` is the heading of a second page; ``row`` the height of a row in each style.
    """

    dressups: int
    fixed: float
    casting: float
    head: float
    row: Mapping[Style, float]


@dataclass(frozen=True)
class Arrangement:
    """A concept's layout: ``first`` dress-ups below the large picture, the others overleaf.

    ``notes`` are ruled lines at the foot of the first page and of the last.
    """

    first: int
    first_style: Style = Style.THREE
    rest_style: Style = Style.THREE
    casting_first: bool = True
    notes: tuple[int, int] = (0, 0)
    pages: int = 1


def arrange(measures: Measures, room: float) -> Arrangement:
    """The layout with fewest pages and, among those, least empty ``room`` of each page's."""
    best: tuple[tuple[float, ...], Arrangement] | None = None
    for choice in _choices(measures):
        cost = _cost(choice, measures, room)
        if cost is not None and (best is None or cost < best[0]):
            best = (cost, choice)
    chosen = best[1] if best else Arrangement(0, casting_first=False, pages=_pages(measures, room))
    return _with_notes(chosen, measures, room) if best else chosen


def _choices(m: Measures) -> list[Arrangement]:
    whole = [
        Arrangement(m.dressups, style, style) for style in (Style.THREE, Style.TWO, Style.ONE)
    ]
    split = [
        Arrangement(rows * style.value, style, rest, casting_first, pages=2)
        for rows, style, rest, casting_first in product(
            range(5), (Style.THREE, Style.TWO), Style, (True, False)
        )
        if rows * style.value < m.dressups and (rows or style is Style.THREE)
    ]
    return whole + split


def _cost(choice: Arrangement, m: Measures, room: float) -> tuple[float, ...] | None:
    """Pages, then emptiness; None for a layout that does not fit."""
    first, last = _left(choice, m, room)
    if first < 0 or last < 0:
        return None
    ragged = -choice.first % choice.first_style.value
    rest = m.dressups - choice.first
    ragged += -rest % choice.rest_style.value if rest else 0
    return (choice.pages, (first / room) ** 2 + (last / room) ** 2 + 0.004 * ragged)


def _left(choice: Arrangement, m: Measures, room: float) -> tuple[float, float]:
    """Empty room at the foot of the first page and of the second."""
    rest = m.dressups - choice.first
    first = room - m.fixed - _rows(choice.first, choice.first_style, m)
    last = room - m.head - _rows(rest, choice.rest_style, m)
    if choice.casting_first:
        first -= m.casting
    else:
        last -= m.casting
    return first, (last if rest else 0.0)


def _rows(number: int, style: Style, m: Measures) -> float:
    return ceil(number / style.value) * m.row[style]


def _with_notes(choice: Arrangement, m: Measures, room: float) -> Arrangement:
    first, last = _left(choice, m, room)
    return Arrangement(
        choice.first,
        choice.first_style,
        choice.rest_style,
        choice.casting_first,
        (_lines(first), _lines(last) if choice.pages > 1 else 0),
        choice.pages,
    )


def _lines(left: float) -> int:
    lines = int((left - NOTE_HEAD) // NOTE_LINE)
    return lines if lines >= FEWEST_NOTES else 0


def _pages(m: Measures, room: float) -> int:
    """Pages when even two do not hold it: the small pictures run on, three a row."""
    later = max(1, int((room - m.head) // m.row[Style.THREE]))
    return 1 + ceil(ceil(m.dressups / 3) / later)

"""Wristbands: cards cut to a sleeve, as large a type as they have room for. Lengths are points."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from stemline.week.call_sheet import PAPERS, Ems
from stemline.week.shorts import shortened
from stemline.week.week_values import Plan, PlanBand, Week

WARNED, REFUSED = 7.0, 6.0
"""Points under which a card is warned of, and refused: many staffs go to 6 or 7 points for 40 calls
and more; common practice, no published source."""
WISHED = 7.7
"""Points at 16 inches under which a capital has less than 16 minutes of arc (ISO 9241-3): calls are
shortened until the type has them."""
LARGEST = 12.0
_STEP = 0.1
ROOMS = (28, 24, 20, 17, 14)
"""Letters that a call may have, tried in turn until every band has the type it should."""
PAD, GAP = 4.0, 5.0
LINE, NUMBER, TITLE = 1.16, 1.3, 8.0
"""A line and a number against the type of the calls, and the strip that names the card."""
RULE = 5.0
"""Between a number and its call, for the rule that keeps 25 and "32 R" apart."""
CROP, CLEAR = 12.0, 4.0
"""A crop mark's length, and the white between it and the card."""
_EDGE = 26.0
"""What no office printer prints on, with room for the marks."""


@dataclass(frozen=True)
class BandCell:
    """A call as it stands on a card."""

    number: str
    words: str


@dataclass(frozen=True)
class Card:
    """A card set: ``windows`` are panels that fold on each other, each of columns of cells.

    ``width`` and ``height`` are those of the whole strip as it is cut, ``window`` the height of one
    panel; ``number`` is the width of the number's cell.
    """

    name: str
    title: str
    width: float
    height: float
    window: float
    points: float
    number: float
    column: float
    windows: tuple[tuple[tuple[BandCell, ...], ...], ...]


@dataclass(frozen=True)
class TooSmall:
    """A card that cannot be read: how many calls it holds and how many would fit at ``points``."""

    calls: int
    room: int
    points: float


@dataclass(frozen=True)
class PlacedCard:
    """A card on a sheet, its left top corner in points from the sheet's."""

    card: Card
    left: float
    top: float


@dataclass(frozen=True)
class BandSheet:
    """A sheet of paper with cards of one band; ``width`` is the longer side where it lies."""

    width: float
    height: float
    cards: tuple[PlacedCard, ...]


def shorts_for(plan: Plan, numbers: Callable[[str], str], ems: Ems) -> dict[str, str]:
    """Each call's short words: as long as they may be with every card of the week in good type."""
    best: tuple[float, dict[str, str]] | None = None
    for room in ROOMS:
        shorts = shortened(plan, room)
        sizes = []
        for band in plan.bands:
            cells = [BandCell(numbers(call), shorts[call]) for call in band.calls]
            made = _set(band, "", cells, ems)
            sizes.append(made.points if isinstance(made, Card) else 0.0)
        least = min(sizes, default=LARGEST)
        if least >= WISHED:
            return shorts
        if best is None or least > best[0]:
            best = least, shorts
    assert best is not None, "there is a first try"
    return best[1]


def card_of(week: Week, band: PlanBand, ems: Ems) -> Card | TooSmall:
    """The band's card, its calls by their numbers."""
    entries = sorted((week.entry(call) for call in band.calls), key=lambda e: e.number or 0)
    cells = [BandCell(str(e.number), e.short) for e in entries]
    title = f"{week.plan.number} {week.plan.opponent} · {band.name}"
    return _set(band, title, cells, ems)


def _set(band: PlanBand, title: str, cells: Sequence[BandCell], ems: Ems) -> Card | TooSmall:
    width, window = 72 * band.width, 72 * band.height
    number_ems = max((ems(c.number, "bold") for c in cells), default=1.0)
    word_ems = max((ems(c.words, "semibold") for c in cells), default=1.0)
    points = LARGEST
    while points >= REFUSED - 1e-9:
        rows, columns, number = _grid((number_ems, word_ems), points, width, window)
        if rows * columns * band.windows >= len(cells):
            return _card(band, title, cells, points, (rows, columns, number))
        points = round(points - _STEP, 1)
    rows, columns, _ = _grid((number_ems, word_ems), REFUSED, width, window)
    return TooSmall(len(cells), rows * columns * band.windows, REFUSED)


def _grid(
    widest: tuple[float, float], points: float, width: float, window: float
) -> tuple[int, int, float]:
    """Rows, columns, and the number's width at this type; ``widest`` number and words in ems."""
    number = widest[0] * points * NUMBER + RULE
    words = widest[1] * points
    rows = int((window - 2 * PAD - TITLE) / (points * LINE))
    columns = int((width - 2 * PAD + GAP) / (number + words + GAP + 1.0))
    return rows, columns, number


def _card(
    band: PlanBand, title: str, cells: Sequence[BandCell], points: float,
    grid: tuple[int, int, float],
) -> Card:  # fmt: skip
    rows, most, number = grid
    # No more columns than the calls need, and these equally long.
    columns = min(most, -(-len(cells) // (rows * band.windows))) or 1
    tall = -(-len(cells) // (columns * band.windows)) or 1
    filled = [tuple(cells[n : n + tall]) for n in range(0, len(cells), tall)]
    panels = [tuple(filled[n : n + columns]) for n in range(0, len(filled), columns)]
    panels += [()] * (band.windows - len(panels))
    width = 72 * band.width
    column = (width - 2 * PAD - GAP * (columns - 1)) / columns
    return Card(
        name=band.name,
        title=title,
        width=width,
        height=72 * band.height * band.windows,
        window=72 * band.height,
        points=points,
        number=number,
        column=column,
        windows=tuple(panels),
    )


def copies(plan: Plan, band: PlanBand) -> int:
    """How many cards are worn: one a letter, or one for each man on the field."""
    return len(band.men) or int(plan.code.players.value)


def place(cards: Sequence[tuple[Card, int]], paper: str) -> tuple[BandSheet, ...] | str:
    """Cards with their copies on sheets of ``paper``, each band the way round that holds more of
    its cards; the name of the first that is larger than the paper."""
    wide, tall = PAPERS[paper]
    sheets: list[BandSheet] = []
    for card, count in cards:
        width, height = max(
            ((wide, tall), (tall, wide)), key=lambda size: len(_corners(card, *size))
        )
        corners = _corners(card, width, height)
        if not corners:
            return card.name
        for n in range(0, count, len(corners)):
            placed = tuple(PlacedCard(card, *at) for at in corners[: count - n])
            sheets.append(BandSheet(width, height, placed))
    return tuple(sheets)


def _corners(card: Card, width: float, height: float) -> list[tuple[float, float]]:
    """Where a sheet takes cards, each with its marks: left top corners."""
    gap = 2 * CLEAR + CROP
    across = int((width - 2 * _EDGE + gap) / (card.width + gap))
    down = int((height - 2 * _EDGE + gap) / (card.height + gap))
    return [
        (_EDGE + x * (card.width + gap), _EDGE + y * (card.height + gap))
        for y in range(down)
        for x in range(across)
    ]

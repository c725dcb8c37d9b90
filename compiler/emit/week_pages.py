"""A week's papers → PDF, each from the theme's template and what was laid out before."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby
from math import ceil

from stemline.emit.gallery import Art, Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import pages_pdf
from stemline.picture.scene.metrics import faces
from stemline.theme import Theme
from stemline.week import bands, call_sheet
from stemline.week.bands import BandSheet
from stemline.week.call_sheet import CallSheet
from stemline.week.index_of import WeekIndexLine
from stemline.week.scripting import CARE, Script

_NOTHING = Gallery(())
MARGIN, FOOT = 30.0, 22.0
DUTIES = 176.0
"""Points of a scout card's width that the column of duties takes."""
"""Points round a page of text or a card, and more at its foot for the printing's words."""
_THIN = 0.4
"""Points of a crop mark."""


@dataclass(frozen=True)
class ScoutCard:
    """A card: its number, the look by name, where the ball is, when it is used, its picture,
    and each defender with what he does, in type of ``points``."""

    number: int
    look: str
    spot: str
    uses: str
    art: Art
    duties: tuple[tuple[str, str], ...]
    points: int


def sheet_pdf(sheet: CallSheet, theme: Theme, footer: str, date: str) -> bytes:
    """The call sheet, a page a side. Raises what `pages_pdf` does, as all here do."""
    html = filled(
        theme, "week-sheet.html.jinja", sheet=sheet, footer=footer,
        row=call_sheet.ROW, head=call_sheet.HEAD, note=call_sheet.NOTE, over=call_sheet.OVER,
        cell=call_sheet.CELL, margin=call_sheet.MARGIN, strip=sheet.strip, gutter=call_sheet.GUTTER,
        row_said=call_sheet.ROW_SAID,
        **_page(theme, sheet.title, sheet.width, sheet.height, f"{call_sheet.MARGIN}pt", False),
    )  # fmt: skip
    return pages_pdf(html, _NOTHING, theme, date)


def bands_pdf(
    sheets: Sequence[BandSheet], title: str, theme: Theme, footer: str, date: str
) -> bytes:
    """Wristband cards with crop marks, to be printed at 100 %. Sheets that are alike, and nearly
    all are, are laid out once; a coach's own template may tell them apart."""
    alike = [(sheet, len(list(same))) for sheet, same in groupby(sheets)]
    if not theme.bundled:
        alike = [(sheet, 1) for sheet in sheets]
    kinds = list(dict.fromkeys(placed.card for sheet in sheets for placed in sheet.cards))
    folds = any(len(card.windows) > 1 for card in kinds)
    html = filled(
        theme, "week-bands.html.jinja", sheets=tuple(sheet for sheet, _ in alike), footer=footer,
        kinds=kinds,
        folds=folds,
        crop=bands.CROP, clear=bands.CLEAR, thin=_THIN, pad=bands.PAD, gap=bands.GAP,
        name=bands.TITLE, line=bands.LINE, number=bands.NUMBER, rule=bands.RULE,
        **_page(theme, title, sheets[0].width, sheets[0].height, "0", False),
    )  # fmt: skip
    copies = tuple(copies for _, copies in alike) if theme.bundled else ()
    return pages_pdf(html, _NOTHING, theme, date, copies)


def scout_pdf(
    cards: Sequence[ScoutCard], title: str, theme: Theme, paper: str, footer: str, date: str
) -> bytes:
    """A card a page, the paper on its side."""
    height, width = call_sheet.PAPERS[paper]
    html = filled(
        theme, "week-scout.html.jinja", cards=tuple(cards), footer=footer, aside=DUTIES - 12.0,
        inner=height - 2 * MARGIN - FOOT - 1,
        **_page(theme, title, width, height, _margins(), True),
    )  # fmt: skip
    return pages_pdf(html, Gallery(tuple(card.art for card in cards)), theme, date)


def script_pdf(script: Script, theme: Theme, paper: str, footer: str, date: str) -> bytes:
    """The script, a day on pages of its own."""
    html = filled(
        theme, "week-script.html.jinja", script=script, footer=footer, care=CARE,
        **_page(theme, script.title, *call_sheet.PAPERS[paper], _margins(), True),
    )  # fmt: skip
    return pages_pdf(html, _NOTHING, theme, date)


def index_pdf(
    lines: Sequence[WeekIndexLine], title: str, theme: Theme, paper: str, footer: str, date: str
) -> bytes:
    """The index of calls and numbers."""
    html = filled(
        theme, "week-index.html.jinja", lines=tuple(lines), footer=footer,
        pitch=_index_pitch(lines, theme, paper),
        **_page(theme, title, *call_sheet.PAPERS[paper], _margins(), True),
    )  # fmt: skip
    return pages_pdf(html, _NOTHING, theme, date)


def _index_pitch(lines: Sequence[WeekIndexLine], theme: Theme, paper: str) -> float:
    """Points from a line of the index to the next: closer where a page would be begun for a few."""
    width, height = text_room(paper)
    known = faces(theme)

    def deep(text: str, face: str, share: float) -> int:
        wide = sum(known[face].glyph(letter).advance for letter in text) * _INDEX_TYPE
        return max(1, ceil(wide / (share * width - _INDEX_GAP)))

    rows = sum(
        max(deep(f"{line.said} > {line.becomes}" if line.becomes else line.said, "semibold", 0.29),
            deep(line.short, "regular", 0.2), deep(line.situations, "regular", 0.21))
        for line in lines
    )  # fmt: skip

    def last(pitch: float) -> int:
        first, next_ = (int((height - head) / (pitch + _INDEX_RULE)) for head in _INDEX_HEADS)
        return rows if rows <= first else (rows - first) % next_

    return next(
        (pitch for pitch in _INDEX_PITCHES if not 0 < last(pitch) <= _FEW), _INDEX_PITCHES[0]
    )


_INDEX_TYPE, _INDEX_GAP, _INDEX_RULE = 9.4, 7.0, 0.35
"""Points of the index: its letters, the white behind a cell, the rule under a row."""
_INDEX_HEADS = (55.0, 26.6)
"""What stands over its rows on the first page, and on each after it, with white for a row at the
foot: the engine fills none to the last point."""
_INDEX_PITCHES = (12.6, 12.2, 11.8, 11.4)
_FEW = 5


def card_room(paper: str) -> tuple[float, float]:
    """Width and height in points that a scout card's picture may take."""
    height, width = call_sheet.PAPERS[paper]
    return width - 2 * MARGIN - DUTIES, height - 2 * MARGIN - FOOT - 54 - 36


def a_page(theme: Theme, title: str, paper: str) -> dict[str, object]:
    """What the head of a numbered page of text takes."""
    return _page(theme, title, *call_sheet.PAPERS[paper], _margins(), True)


def text_room(paper: str) -> tuple[float, float]:
    """Width and height in points within the margins of such a page."""
    width, height = call_sheet.PAPERS[paper]
    return width - 2 * MARGIN, height - 2 * MARGIN - FOOT


def _margins() -> str:
    return f"{MARGIN}pt {MARGIN}pt {MARGIN + FOOT}pt"


def _page(
    theme: Theme, title: str, width: float, height: float, margins: str, numbered: bool
) -> dict[str, object]:
    return {
        "title": title, "width": width, "height": height, "margins": margins,
        "numbered": numbered, "faces": tuple(sorted(theme.fonts)),
    }  # fmt: skip

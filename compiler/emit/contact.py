"""A contact sheet → SVG, or HTML for print: small pictures close together, each under its call.

The SVG is one tall picture for a screen; it needs neither a font nor the PDF library.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import floor
from xml.sax.saxutils import escape, quoteattr

from stemline.emit.gallery import Art, Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import pages_pdf
from stemline.emit.svg import outline
from stemline.picture.scene.metrics import faces
from stemline.theme import SMALLEST_TYPE, Size, Theme

PAPERS = {"letter": (8.5, 11.0), "a4": (8.268, 11.693), "screen": (40 / 3, 7.5)}
"""Width and height in inches; a screen is 16 to 9, as slides are."""

_MARGIN = 26.0
"""Points round a page, and round the tall picture."""
_FOOT = 16.0
"""Points at the foot of a page for its number."""
_GAP, _CAPTION, _HEAD = 12.0, 12.0, 26.0
"""Points between two pictures, over one for its call, and over a family for its name."""
_ACROSS = {Size.FULL: 1, Size.QUARTER: 3, Size.THUMB: 5}
"""Pictures in a row of the tall one: what a laptop's screen shows at a readable size."""
_CALL_SIZE, _FAMILY_SIZE = 8.6, 14.0
_MORE = "…"
_ROOT = re.compile(r"^.*?<svg [^>]*>", re.DOTALL)


@dataclass(frozen=True)
class SheetCell:
    """One picture, the call over it and words below; ``listed`` is False for a view that nobody
    calls."""

    call: str
    art: Art
    listed: bool = True
    below: str = ""


@dataclass(frozen=True)
class SheetGroup:
    """A family's pictures in order."""

    name: str
    cells: tuple[SheetCell, ...]


@dataclass(frozen=True)
class Contact:
    """All pictures of a book; all are of one ``size``. ``footer`` says which printing it is."""

    title: str
    footer: str
    size: Size
    groups: tuple[SheetGroup, ...]

    @property
    def arts(self) -> tuple[Art, ...]:
        return tuple(cell.art for group in self.groups for cell in group.cells)


def contact_pdf(contact: Contact, theme: Theme, paper: str, date: str) -> bytes:
    """The sheet as a PDF on ``paper``, one of `PAPERS`; large pictures stand one to a page.

    Raises what `stemline.emit.pdf.to_pdf` does.
    """
    wide, tall = (72 * inches for inches in PAPERS[paper])
    width, height = wide - 2 * _MARGIN, tall - 2 * _MARGIN - _FOOT
    look = theme.look(contact.size)
    across, factor = floor((width + _GAP) / (look.width + _GAP)), 1.0
    if contact.size is Size.FULL:
        across, factor = 1, min(width / look.width, (height - 2 * _HEAD) / look.height)
    html = filled(
        theme,
        "contact.html.jinja",
        contact=contact,
        faces=tuple(sorted(theme.fonts)),
        large=contact.size is Size.FULL,
        across=max(across, 1),
        factor=factor,
        width=look.width * factor,
        gap=_GAP,
        paper=f"{wide:.2f}pt {tall:.2f}pt",
        margins=f"{_MARGIN}pt {_MARGIN}pt {_MARGIN + _FOOT}pt",
    )
    return pages_pdf(html, Gallery(contact.arts), theme, date)


def contact_svg(contact: Contact, theme: Theme) -> str:
    """The sheet as one SVG, five small pictures across, three quarters or one large."""
    across = _ACROSS[contact.size]
    cell = theme.look(contact.size).width
    wide = 2 * _MARGIN + across * cell + (across - 1) * _GAP
    y = _MARGIN
    parts: list[str] = []
    for group in contact.groups:
        parts.append(_words(group.name, _MARGIN, y + _HEAD - 9.0, _FAMILY_SIZE, wide, theme))
        y += _HEAD
        for start in range(0, len(group.cells), across):
            row = group.cells[start : start + across]
            for place, each in enumerate(row):
                x = _MARGIN + place * (cell + _GAP)
                parts.append(_words(each.call, x, y + _CALL_SIZE, _CALL_SIZE, cell, theme))
                parts.append(_placed(each.art, x, y + _CAPTION))
                foot = y + _CAPTION + each.art.height + _CALL_SIZE
                if each.below:
                    parts.append(_words(each.below, x, foot, _CALL_SIZE, cell, theme))
            under = _CAPTION if any(each.below for each in row) else 0.0
            y += _CAPTION + max(each.art.height for each in row) + under + _GAP
    size = f'width="{wide:.2f}pt" height="{y:.2f}pt" viewBox="0 0 {wide:.2f} {y:.2f}"'
    ground = f'<rect width="{wide:.2f}" height="{y:.2f}" fill="{theme.colours.ground}"/>'
    head = f'<svg xmlns="http://www.w3.org/2000/svg" {size} role="img">'
    return f"{head}<title>{escape(contact.title)}</title>{ground}{''.join(parts)}</svg>"


def _placed(art: Art, x: float, y: float) -> str:
    """The picture as a part of a larger one, its left top corner at x, y."""
    size = f'width="{art.width:.2f}" height="{art.height:.2f}"'
    box = f'viewBox="0 0 {art.width:.2f} {art.height:.2f}"'
    return _ROOT.sub(f'<svg x="{x:.2f}" y="{y:.2f}" {size} {box}>', art.svg, count=1)


def _words(words: str, x: float, y: float, size: float, room: float, theme: Theme) -> str:
    """Words as outlines, set smaller where they need it, and cut where that is not enough."""
    face = faces(theme)["semibold"]

    def ems(text: str) -> float:
        return sum(face.glyph(letter).advance for letter in text)

    points = max(SMALLEST_TYPE, min(size, room / max(ems(words), 0.01)))
    cut = words
    while cut and ems(cut) * points > room:
        cut = cut.removesuffix(_MORE)[:-1] + _MORE if len(cut) > 1 else ""
    paint = f'fill="{theme.colours.ink}" data-text={quoteattr(words)}'
    return (
        f'<path d="{outline(cut, face, points)}" transform="translate({x:.2f} {y:.2f})" {paint}/>'
    )

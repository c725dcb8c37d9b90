"""A contact sheet: the worst diagrams under each other, a red ring round each fault."""

from __future__ import annotations

import re
from collections.abc import Sequence
from xml.sax.saxutils import quoteattr

import resvg_py

from stemline.picture.scene.metrics import faces
from stemline.theme import Theme

from .marks import read_svg
from .table import Judged

_WIDTH, _GAP, _TITLE = 540.0, 8.0, 14.0
"""Points: the sheet, the white between two diagrams, and the room of a title."""
_DOTS = 200
"""Dots to the inch."""
_RING = 4.0


def sheet_png(judged: Sequence[Judged], theme: Theme) -> bytes:
    """The sheet as a PNG; diagrams are shown at their printed size, two or three small in a row."""
    parts: list[str] = []
    x, y, row = 0.0, 0.0, 0.0
    for each in judged:
        seen = read_svg(each.picture.svg, theme)
        if x and x + seen.width > _WIDTH:
            x, y, row = 0.0, y + row + _GAP, 0.0
        parts.append(_title(each.title, x, y + 9.0, seen.width, theme))
        body = each.picture.svg[each.picture.svg.index("<svg") :]
        body = re.sub(
            r'<svg (.*?)width="[\d.]+pt"',
            rf'<svg x="{x:g}" y="{y + _TITLE:g}" \1width="{seen.width:g}"',
            re.sub(r'height="([\d.]+)pt"', r'height="\1"', body, count=1),
            count=1,
        )
        parts.append(body)
        frame = f'x="{x:g}" y="{y + _TITLE:g}" width="{seen.width:g}" height="{seen.height:g}"'
        parts.append(f'<rect {frame} fill="none" stroke="#999" stroke-width="0.4"/>')
        for fault in each.faults:
            at = f'cx="{x + fault.x:g}" cy="{y + _TITLE + fault.y:g}" r="{_RING:g}"'
            parts.append(f'<circle {at} fill="none" stroke="#e00" stroke-width="0.5"/>')
        x, row = x + seen.width + _GAP, max(row, seen.height + _TITLE)
    size = f'width="{_WIDTH:g}pt" height="{y + row:g}pt" viewBox="0 0 {_WIDTH:g} {y + row:g}"'
    whole = f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{"".join(parts)}</svg>'
    return bytes(resvg_py.svg_to_bytes(svg_string=whole, dpi=_DOTS, background="#ffffff"))


def _title(words: str, x: float, y: float, width: float, theme: Theme) -> str:
    """Words as outlines, cut where the room ends: the sheet needs no font either."""
    face, size = faces(theme)["semibold"], 8.0
    parts: list[str] = []
    at = 0.0
    for letter in words:
        glyph = face.glyph(letter)
        if (at + glyph.advance) * size > width:
            break
        for verb, points in glyph.outline:
            parts.append(
                verb + " ".join(f"{(at + px) * size:.2f} {-py * size:.2f}" for px, py in points)
            )
        at += glyph.advance
    return f'<path d={quoteattr("".join(parts))} transform="translate({x:g} {y:g})"/>'

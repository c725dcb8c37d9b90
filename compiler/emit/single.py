"""One picture as a file of its own that is no SVG: a page of its size, or dots."""

from __future__ import annotations

from html import escape

import resvg_py

from stemline.emit.gallery import Art, Gallery
from stemline.emit.pdf import pages_pdf
from stemline.theme import Theme

DOTS = 200
"""Dots to the inch: sharp in a message or on a slide, and a large picture is some 1,500 wide."""

_PAGE = """\
<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>{title}</title>
<style>@page {{ size: {width:.2f}pt {height:.2f}pt; margin: 0; background: {ground}; }}
body {{ margin: 0 }} img {{ display: block; width: {width:.2f}pt; height: {height:.2f}pt }}</style>
</head><body><img src="stemline:picture/{id}" alt="{alt}"></body></html>
"""


def picture_pdf(art: Art, theme: Theme) -> bytes:
    """The picture on one page of its own size. Raises what `stemline.emit.pdf.to_pdf` does."""
    html = _PAGE.format(
        title=escape(art.name),
        alt=escape(art.alt),
        id=art.id,
        width=art.width,
        height=art.height,
        ground=theme.colours.ground,
    )
    return pages_pdf(html, Gallery((art,)), theme, "")


def picture_png(art: Art, theme: Theme) -> bytes:
    """The picture in dots, on the theme's ground."""
    return bytes(
        resvg_py.svg_to_bytes(
            svg_string=art.svg, dpi=DOTS, background=theme.colours.ground, skip_system_fonts=True
        )
    )

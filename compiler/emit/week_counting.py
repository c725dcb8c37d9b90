"""What a week's plan leans on → PDF: bars that a photocopier keeps, and the figures at them."""

from __future__ import annotations

from stemline.emit.gallery import Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import pages_pdf
from stemline.emit.week_pages import a_page
from stemline.theme import Theme
from stemline.week.leanings import Leanings


def counting_pdf(
    counted: Leanings, title: str, theme: Theme, paper: str, footer: str, date: str
) -> bytes:
    """Bars and figures in one. Raises what `pages_pdf` does."""
    html = filled(
        theme, "week-counting.html.jinja", counted=counted, footer=footer,
        **a_page(theme, title, paper),
    )  # fmt: skip
    return pages_pdf(html, Gallery(()), theme, date)

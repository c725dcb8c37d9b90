"""The install of a season, seen from a week → PDF."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stemline.emit.gallery import Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import pages_pdf
from stemline.emit.week_pages import a_page
from stemline.theme import Theme
from stemline.week.install_days import InstallSheet


@dataclass(frozen=True)
class InstalledCall:
    """A call of the week: its number and page in words, and the days on which it is run."""

    number: str
    call: str
    page: str
    days: str


@dataclass(frozen=True)
class InstalledCalls:
    """The calls that a day completed; ``title`` is "" for those that none has."""

    title: str
    calls: tuple[InstalledCall, ...]


def install_pdf(
    sheet: InstallSheet, planned: Sequence[InstalledCalls], title: str, theme: Theme, paper: str,
    footer: str, date: str,
) -> bytes:  # fmt: skip
    """The season by day, then the week's calls by the day that completed each. Raises what
    `pages_pdf` does."""
    html = filled(
        theme, "week-install.html.jinja", sheet=sheet, planned=tuple(planned), footer=footer,
        **a_page(theme, title, paper),
    )  # fmt: skip
    return pages_pdf(html, Gallery(()), theme, date)

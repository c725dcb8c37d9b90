"""The handbook → HTML or PDF, from the theme's template and the parts of its pages."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

from markupsafe import Markup

from stemline.emit.gallery import Art, Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import pages_pdf
from stemline.emit.week_pages import a_page
from stemline.theme import Theme


class PartKind(Enum):
    """What a part of a page is."""

    HEADING = "heading"
    PROSE = "prose"
    LIST = "list"
    TABLE = "table"
    TEXT = "text"
    PLAY = "play"


@dataclass(frozen=True)
class InlineWords:
    """Words of one style: "", "code", "strong", "em" or "link", which leads ``to`` a place."""

    style: str
    text: str
    to: str = ""


@dataclass(frozen=True)
class SamplePicture:
    """What a sample draws: its title, the picture, and its SVG for a page of the web."""

    title: str
    art: Art

    @property
    def svg(self) -> Markup:
        """Our own drawing, so its marks are marks."""
        return Markup(self.art.svg)


@dataclass(frozen=True)
class HandbookPart:
    """A part of a page. ``level`` is a heading's depth, or a fence's line on its page; ``lines``
    are a heading, a paragraph or the items of a list, ``rows`` a table with its head first."""

    kind: PartKind
    level: int = 0
    anchor: str = ""
    lines: tuple[tuple[InlineWords, ...], ...] = ()
    rows: tuple[tuple[tuple[InlineWords, ...], ...], ...] = ()
    text: str = ""
    pictures: tuple[SamplePicture, ...] = ()


def handbook_html(parts: Sequence[HandbookPart], title: str, theme: Theme, paper: str) -> str:
    """One file for a browser, with every picture in it. Raises what `filled` does."""
    return _filled(parts, title, theme, paper, printed=False)


def handbook_pdf(
    parts: Sequence[HandbookPart], title: str, theme: Theme, paper: str, date: str
) -> bytes:
    """The printed one. Raises what `pages_pdf` does."""
    html = _filled(parts, title, theme, paper, printed=True)
    arts = tuple(picture.art for part in parts for picture in part.pictures)
    return pages_pdf(html, Gallery(arts), theme, date)


def _filled(
    parts: Sequence[HandbookPart], title: str, theme: Theme, paper: str, *, printed: bool
) -> str:
    return filled(
        theme, "handbook.html.jinja", parts=tuple(parts), printed=printed,
        anchors=frozenset(f"#{part.anchor}" for part in parts if part.anchor),
        **a_page(theme, title, paper),
    )  # fmt: skip

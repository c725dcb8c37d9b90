"""A man's book of a week → PDF."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stemline.emit.gallery import Art, Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import pages_pdf
from stemline.emit.week_pages import a_page
from stemline.theme import Theme


@dataclass(frozen=True)
class ListedCall:
    """A call in a list: its number and page in words, "" where it has none."""

    number: str
    call: str
    page: str


@dataclass(frozen=True)
class PositionPicture:
    """A picture, by how much it is made smaller, and its calls; it is of the first."""

    art: Art
    factor: float
    calls: tuple[ListedCall, ...]


@dataclass(frozen=True)
class PositionJob:
    """What he is told, and its pictures. ``looks`` are what changes it, each with the words;
    ``new`` where he was not told it last week."""

    motion: str
    job: str
    looks: tuple[tuple[str, str], ...]
    says: tuple[str, ...]
    pictures: tuple[PositionPicture, ...]
    new: bool = False


@dataclass(frozen=True)
class PositionPage:
    """A man's book: where he lines up by formation, his jobs, what came and went ``since`` the
    week before ("" where there is none), how many calls he is in and how many not."""

    man: str
    places: tuple[tuple[str, str], ...]
    jobs: tuple[PositionJob, ...]
    since: str
    came: tuple[ListedCall, ...]
    went: tuple[str, ...]
    calls: int
    off: int


def position_pdf(
    page: PositionPage, arts: Sequence[Art], title: str, theme: Theme, paper: str,
    footer: str, date: str,
) -> bytes:  # fmt: skip
    """The book of one man. Raises what `pages_pdf` does."""
    html = filled(
        theme, "week-positions.html.jinja", page=page, footer=footer, **a_page(theme, title, paper)
    )
    return pages_pdf(html, Gallery(tuple(arts)), theme, date)

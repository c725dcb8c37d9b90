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


ACROSS = 3
"""Pictures beside each other on a page of a man's book."""
_CALLS, _LETTERS = 4, 150
"""Calls, and letters of all that he is told, that still stand under a picture of a third."""


@dataclass(frozen=True)
class PositionPicture:
    """A picture, by how much it is made smaller, and its calls; it is of the first. ``against`` is
    the look that it shows, "" where it shows none."""

    art: Art
    factor: float
    calls: tuple[ListedCall, ...]
    against: str = ""


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

    @property
    def short(self) -> bool:
        """Whether it has one picture, and so few words that they stand under it."""
        told = [self.motion, self.job, *self.says, *(a + b for a, b in self.looks)]
        calls = [call for picture in self.pictures for call in picture.calls]
        few = len(self.pictures) == 1 and len(calls) <= _CALLS
        return few and sum(map(len, told)) <= _LETTERS


@dataclass(frozen=True)
class PositionPage:
    """A man's book: where he lines up by formation, his jobs, what came and went ``since`` the
    week before ("" where there is none), how many calls he is in and how many not. ``killed`` are
    calls that become another at the line: they, what and on what, and his job then."""

    man: str
    places: tuple[tuple[str, str], ...]
    jobs: tuple[PositionJob, ...]
    since: str
    came: tuple[ListedCall, ...]
    went: tuple[str, ...]
    calls: int
    off: int
    killed: tuple[tuple[tuple[ListedCall, ...], str, str], ...] = ()

    @property
    def blocks(self) -> tuple[tuple[PositionJob, ...], ...]:
        """His jobs in order, short ones that follow each other beside each other: each below the
        last, they would fill sheets with white."""
        made: list[tuple[PositionJob, ...]] = []
        for job in self.jobs:
            last = made[-1] if made else ()
            beside = last and len(last) < ACROSS and all(each.short for each in (*last, job))
            made[-1:] = [(*last, job)] if beside else [*made[-1:], (job,)]
        return tuple(made)


def position_pdf(
    page: PositionPage, arts: Sequence[Art], title: str, theme: Theme, paper: str,
    footer: str, date: str,
) -> bytes:  # fmt: skip
    """The book of one man. Raises what `pages_pdf` does."""
    html = filled(
        theme, "week-positions.html.jinja", page=page, footer=footer, **a_page(theme, title, paper)
    )
    return pages_pdf(html, Gallery(tuple(arts)), theme, date)

"""A season's book in print order: the cover, the front pages, every kind of page, the indexes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import groupby
from typing import TypeVar

from stemline.book.content.care_page import Care, care
from stemline.book.content.cover_page import CoverPage, about, cover
from stemline.book.content.drawn_calls import places
from stemline.book.content.index import Index, index
from stemline.book.content.keeping import KeepPart, Reads, anew
from stemline.book.content.kinds import page_kinds
from stemline.book.content.legend_page import LegendPage, reading
from stemline.book.content.page import Listing, Page, joined
from stemline.book.content.plan_front import PlanFront
from stemline.book.paper import Paper
from stemline.football.play import Season

CAUTION = "A planning aid. Your league's rule book decides."
CONTENTS = 30
"""Lines of contents, the front pages and indexes apart, that one sheet holds when set wide."""

OfKind = TypeVar("OfKind", bound=Page)


@dataclass(frozen=True)
class Edition:
    """Which printing this is: the revision's short name, its date as text, and its paper."""

    revision: str
    date: str
    paper: Paper = Paper.LETTER


@dataclass(frozen=True)
class Book:
    """The whole book; ``pages`` are those between the front ones and the indexes. A week's has the
    page ``plan`` in place of the cover, and neither that on care nor that on reading."""

    title: str
    footer: str
    caution: str
    paper: Paper
    cover: CoverPage
    reading: LegendPage
    care: Care
    pages: tuple[Page, ...]
    index: Index
    plan: PlanFront | None = None

    def of(self, kind: type[OfKind]) -> tuple[OfKind, ...]:
        """The pages of one kind."""
        return tuple(page for page in self.pages if isinstance(page, kind))

    @property
    def contents(self) -> tuple[tuple[str, tuple[tuple[Page, ...], ...]], ...]:
        """The pages as the contents list them: runs of one `Listing`, and in each its families."""
        listed = (page for page in self.pages if page.listing is not Listing.NONE)
        runs = groupby(listed, key=lambda page: page.listing.value)
        return tuple((listing, _families(pages)) for listing, pages in runs)

    @property
    def crowded(self) -> bool:
        """Whether the contents are too long to be set wide."""
        lines = 0
        for listing, families in self.contents:
            if listing == Listing.LINE.value:
                lines += sum(map(len, families))
            elif listing == Listing.COLUMN.value:
                lines += max(map(len, families))
        return lines > CONTENTS


def make_book(
    season: Season, edition: Edition, captions: tuple[str, ...], keep: KeepPart = anew
) -> Book:
    """The book of a season; ``captions`` are those of the legend's pictures."""
    title = " ".join(part for part in (season.team.name, season.team.season) if part)
    printing = joined(edition.revision and f"revision {edition.revision}", edition.date)
    pages: list[Page] = []
    for kind in page_kinds():
        pages += kind.made(season, tuple(pages), keep)
    holds = keep(Reads.CALLS, "about", str, "", lambda: about(season))
    return Book(
        title=f"{title} playbook",
        footer=joined(season.team.name, season.team.season, printing),
        caution=CAUTION,
        paper=edition.paper,
        cover=cover(season, printing, holds),
        reading=reading(captions),
        care=care(season),
        pages=tuple(opening(pages)),
        index=index(season.plays, places(season, keep), edition.paper),
    )


def opening(pages: Iterable[Page]) -> Iterator[Page]:
    """The pages, each that is the first of its family marked so."""
    opened: set[str] = set()
    for page in pages:
        new = page.listing is not Listing.NONE and page.family not in opened
        opened |= {page.family} if new else set()
        yield replace(page, opens=True) if new else page


def _families(pages: Iterable[Page]) -> tuple[tuple[Page, ...], ...]:
    return tuple(tuple(family) for _, family in groupby(pages, key=lambda page: page.family))

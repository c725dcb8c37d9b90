"""The page on which each place of the book stands, by its id: sums over what was arranged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import accumulate

from stemline.book.content.book import Book
from stemline.book.layout.fit import Arrangement, FrontMatter

OPENING = ("contents", "care", "reading")
"""The front pages, by their ids."""
COVER = 1
"""Pages before the contents."""


@dataclass(frozen=True)
class FrontPages:
    """How many pages the contents, the page on care and the one on reading take."""

    contents: int = 1
    care: int = 1
    reading: int = 1


def page_numbers(
    book: Book, layout: Mapping[str, Arrangement], front: FrontMatter, takes: FrontPages
) -> dict[str, int]:
    """Numbers from 1 of all that the contents and the indexes point to.

    One that runs on counts for the sheets that its height fills: those after it may be too low.
    """
    made = {"contents": COVER + 1}
    at = COVER + takes.contents + 1
    if book.plan is None:
        care = COVER + takes.contents + (1 if front.care_apart else 0)
        reading = care + takes.care
        made |= {"care": care, "reading": reading}
        at = reading + takes.reading
    for page in book.pages:
        how = layout[page.id]
        at -= 1 if how.shares else 0
        made[page.id] = at
        if page.base is not None:
            made[page.base.id] = at
        made |= {page.offered[taken].id: at for taken in how.taken}
        ends = tuple(accumulate((how.first, *how.rest)))
        for number, entry in enumerate(page.dressups):
            made[entry.id] = at + _sheet(number, ends)
        for id_ in (*page.anchors, *(entry.id for entry in page.entries)):
            made.setdefault(id_, at)
        at += how.pages
    for page_at, columns in enumerate(book.index.pages, at):
        for item in (each for column in columns for each in column if each.kind == "index"):
            made[item.id] = page_at
    return made


def _sheet(number: int, ends: tuple[int, ...]) -> int:
    """On which sheet of its page, from 0, the entry of this number stands."""
    return sum(number >= end for end in ends)

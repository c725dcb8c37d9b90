"""All diagrams of a book small and close together, to look a whole playbook over in a minute.

A family starts a row under its name; below it its pictures stand in the book's order, each with
its call. Each picture is framed by itself, to keep the rows low.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from stemline.book.content.book import Book
from stemline.book.content.page import Entry, Page
from stemline.emit.contact import Contact, SheetCell, SheetGroup
from stemline.emit.pdf_ink import art_of
from stemline.emit.svg import to_svg
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.picture.picture import picture
from stemline.printing.model import Progress
from stemline.theme import Size, Theme


def contact_sheet(
    book: Book,
    theme: Theme,
    progress: Progress,
    size: Size = Size.THUMB,
    *,
    level: PlayingLevel = HIGH_SCHOOL,
    views: bool = False,
) -> Contact:
    """Every call, formation, protection and look of ``book`` at ``size``, in its order.

    ``level`` is the season's. ``views`` adds the runs against other fronts and what else its pages
    show a thing against. ``progress`` is told as for a build.
    """
    total = sum(len(_entries(page, views)) for page in book.pages)
    groups: list[SheetGroup] = []
    done = 0
    for family, pages in groupby(book.pages, lambda page: page.family or page.name):
        cells: list[SheetCell] = []
        for page in pages:
            for cell in _cells(page, theme, size, level, views):
                cells.append(cell)
                done += 1
                progress(done, total)
        if cells:
            groups.append(SheetGroup(family, tuple(cells)))
    return Contact(book.title, book.footer, size, tuple(groups))


def _cells(
    page: Page, theme: Theme, size: Size, level: PlayingLevel, views: bool
) -> Iterator[SheetCell]:
    for entry in _entries(page, views):
        scene = picture(entry.play, size, theme, duties=page.duties, level=level)
        svg = to_svg(scene, theme, f"{entry.id}-")
        art = art_of(entry.id, scene, theme, svg)
        named = entry.listed or page.base is None
        yield SheetCell(entry.call if named else f"{page.name}: {entry.call}", art, entry.listed)


def _entries(page: Page, views: bool) -> tuple[Entry, ...]:
    """A page without a large picture is about all its small ones."""
    all_there = views or page.base is None
    return tuple(e for e in page.entries if e.listed or e is page.base or all_there)

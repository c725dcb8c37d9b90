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
from stemline.printing.drawings import Drawings, Showing
from stemline.printing.model import Progress
from stemline.theme import Size


def contact_sheet(
    book: Book,
    drawings: Drawings,
    progress: Progress,
    size: Size = Size.THUMB,
    *,
    views: bool = False,
    svg: bool = True,
) -> Contact:
    """Every call, formation, protection and look of ``book`` at ``size``, in its order.

    ``svg`` tells that it becomes one. ``views`` adds the runs against other fronts and what else
    its pages show a thing against. ``progress`` is told as for a build.
    """
    total = sum(len(_entries(page, views)) for page in book.pages)
    groups: list[SheetGroup] = []
    done = 0
    for family, pages in groupby(book.pages, lambda page: page.family or page.name):
        cells: list[SheetCell] = []
        for page in pages:
            for cell in _cells(page, drawings, size, views, svg):
                cells.append(cell)
                done += 1
                progress(done, total)
        if cells:
            groups.append(SheetGroup(family, tuple(cells)))
    return Contact(book.title, book.footer, size, tuple(groups))


def _cells(
    page: Page, drawings: Drawings, size: Size, views: bool, svg: bool
) -> Iterator[SheetCell]:
    for entry in _entries(page, views):
        wanted = Showing(size, duties=page.duties)
        art = drawings.art(entry.id, entry.play, wanted, svg=svg, ids=f"{entry.id}-")
        named = entry.listed or page.base is None
        yield SheetCell(entry.call if named else f"{page.name}: {entry.call}", art, entry.listed)


def _entries(page: Page, views: bool) -> tuple[Entry, ...]:
    """A page without a large picture is about all its small ones."""
    all_there = views or page.base is None
    return tuple(e for e in page.entries if e.listed or e is page.base or all_there)

"""All diagrams of a book small and close together, to look a whole playbook over in a minute.

A family starts a row under its name; below it its pictures stand in the book's order, each with
its call. All pictures of a page of the book share one frame, as they do there.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import groupby

from stemline.book.model import Book, Entry, LookPage, Page
from stemline.draw.picture import frame_of, picture
from stemline.emit.contact import Cell, Contact, Group
from stemline.emit.gallery import Art
from stemline.emit.svg import to_svg
from stemline.football.play import Play
from stemline.theme import Size, Theme

Progress = Callable[[int, int], None]


def contact_sheet(book: Book, theme: Theme, progress: Progress, size: Size = Size.THUMB) -> Contact:
    """Every picture of ``book`` at ``size``, in its order; ``progress`` as for a build."""
    total = sum(len(_entries(page)) for page in book.pages)
    groups: list[Group] = []
    done = 0
    for family, pages in groupby(book.pages, lambda page: page.family):
        cells: list[Cell] = []
        for page in pages:
            for cell in _cells(page, theme, size):
                cells.append(cell)
                done += 1
                progress(done, total)
        if cells:
            groups.append(Group(family, tuple(cells)))
    return Contact(book.cover.team, book.footer, tuple(groups))


def _cells(page: Page, theme: Theme, size: Size) -> Iterator[Cell]:
    entries, duties = _entries(page), isinstance(page, LookPage)
    plays: list[Play] = [entry.play for entry in entries]
    shared = frame_of(plays, size, duties) if plays and size is Size.THUMB else None
    for entry in entries:
        scene = picture(entry.play, size, theme, shared, duties=duties)
        svg = to_svg(scene, theme)
        art = Art(entry.id, svg, scene.description, scene.width, scene.height)
        # A view of a page's subject is no call: the page says whose it is.
        call = entry.call if entry.listed else f"{page.name}: {entry.call}"
        yield Cell(call, art)


def _entries(page: Page) -> tuple[Entry, ...]:
    base = (page.base,) if page.base is not None else ()
    return (*base, *page.dressups)

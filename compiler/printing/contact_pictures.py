"""All diagrams of a book small and close together, to look a whole playbook over in a minute.

A family starts a row under its name; below it its pictures stand in the book's order, each with
its call. Each picture is framed by itself, to keep the rows low.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
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
    """Every call, formation, protection and look of ``book`` at ``size``, in its order, but a
    concept's dress-ups behind its own call.

    ``svg`` tells that it becomes one. ``views`` adds the runs against other fronts and what else
    its pages show a thing against. ``progress`` is told as for a build.
    """
    shown = [(page, entry) for page in book.pages for entry in _entries(page, views)]
    dressed: dict[str, list[tuple[Page, Entry]]] = {}
    for page, entry in shown:
        if _dressed(page, entry):
            dressed.setdefault(entry.play.call.concept, []).append((page, entry))
    groups: list[SheetGroup] = []
    done = 0
    for family, pages in groupby(book.pages, lambda page: page.family or page.name):
        cells: list[SheetCell] = []
        for there, entry in _with_theirs(pages, dressed, views):
            cells.append(_cell(there, entry, drawings, size, svg))
            done += 1
            progress(done, len(shown))
        if cells:
            groups.append(SheetGroup(family, tuple(cells)))
    return Contact(book.title, book.footer, size, tuple(groups))


def _with_theirs(
    pages: Iterable[Page], dressed: Mapping[str, Sequence[tuple[Page, Entry]]], views: bool
) -> Iterator[tuple[Page, Entry]]:
    """What pages show, with the dress-ups of each concept behind its page."""
    for page in pages:
        yield from ((page, e) for e in _entries(page, views) if not _dressed(page, e))
        if page.base is not None and page.base.listed:
            yield from dressed.get(page.base.play.call.concept, ())


def _dressed(page: Page, entry: Entry) -> bool:
    return page.base is None and entry.listed


def _cell(page: Page, entry: Entry, drawings: Drawings, size: Size, svg: bool) -> SheetCell:
    wanted = Showing(size, duties=page.duties)
    art = drawings.art(entry.id, entry.play, wanted, svg=svg, ids=f"{entry.id}-")
    of = entry.play.call.concept if page.base is None else page.name
    named = entry.call if entry.listed or not of else f"{of}: {entry.call}"
    return SheetCell(named, art, entry.listed)


def _entries(page: Page, views: bool) -> tuple[Entry, ...]:
    """A page without a large picture is about all its small ones."""
    all_there = views or page.base is None
    return tuple(e for e in page.entries if e.listed or e is page.base or all_there)

"""Book → PDF: the document is measured, laid out by the plans of `book.layout`, and written.

The PDF engine and the system library it needs are imported only when a book is made, so that
everything else works without them.
"""

from __future__ import annotations

import gc
import hashlib
import json
import os
import re
import zlib
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import UTC, datetime
from typing import Any

from stemline.book.content.book import Book
from stemline.book.content.page import Page
from stemline.book.layout.fit import FrontMatter, Laid
from stemline.book.layout.plans import PagePlan, plans
from stemline.emit.binding import FontsDiffer, bound
from stemline.emit.engine import Engine, PangoMissing, shared_by
from stemline.emit.gallery import Gallery
from stemline.emit.heights import stands_on
from stemline.emit.html import book_html
from stemline.emit.measuring import Measuring, Memory
from stemline.emit.outlined import Outlining
from stemline.emit.parts import Part, SetBefore, Setter, Unfilled, fonts_part, part_of
from stemline.theme import Theme

__all__ = ["PangoMissing", "identified", "page_count", "page_list", "pages_pdf", "to_pdf"]

_OBJECTS = re.compile(rb"/ObjStm.*?stream\r?\n(.*?)\nendstream", re.DOTALL)
_PAGES = re.compile(rb"/Type /Pages\b[^>]*?/Count (\d+)")


def to_pdf(
    book: Book,
    gallery: Gallery,
    theme: Theme,
    date: str,
    memory: Memory | None = None,
    before: SetBefore | None = None,
) -> bytes:
    """The book as a PDF, the same bytes for the same arguments whatever ``memory`` and ``before``
    hold.

    What is measured is kept in ``memory``, each part that is set in ``before``, and what is there
    is not done again: only for a bundled theme, whose sections hang on nothing but themselves.

    ``date`` is the edition's date, "2026-05-01"; text that is no date counts as none. Raises
    `PangoMissing`, `Refused` when the theme asks for something that is not its own, and
    `PictureFailed` when a picture cannot be drawn whole.
    """
    if theme.bundled:
        try:
            with _dated(""), _uncollected():
                with Setter(theme, before) as setter:
                    made = _BookInParts(book, gallery, theme, memory, setter).book()
                return identified(made, hashlib.sha256(made).hexdigest()[:32])
        except FontsDiffer:
            pass  # the engine took another font for a letter that stood alone: all in one, then
    with _dated(date), _uncollected():
        engine = Engine(gallery, theme)
        with engine.minded():
            document, html = _fitted(engine, book, gallery, theme)
            return _written(engine, document, html, gallery, theme)


def page_list(
    book: Book,
    gallery: Gallery,
    theme: Theme,
    date: str,
    memory: Memory | None = None,
    before: SetBefore | None = None,
) -> bytes:
    """The page of each place in the book that `to_pdf` makes of the same arguments, as JSON; raises
    as it does."""
    with _dated(date), _uncollected():
        if theme.bundled:
            with Setter(theme, before) as setter:
                stands = _BookInParts(book, gallery, theme, memory, setter).stands()
        else:
            engine = Engine(gallery, theme)
            with engine.minded():
                stands = stands_on(_fitted(engine, book, gallery, theme)[0])
    return json.dumps({id_: pages[0] for id_, pages in stands.items()}).encode()


def pages_pdf(
    html: str, gallery: Gallery, theme: Theme, date: str, copies: Sequence[int] = ()
) -> bytes:
    """Pages that are laid out once, such as a contact sheet; else as `to_pdf`. ``copies`` are how
    often each stands in the document, once where nothing is said."""
    with _dated(date), _uncollected():
        engine = Engine(gallery, theme, shared_by(theme))
        with engine.minded():
            document = engine.lay_out(html)
            if copies:
                each = zip(document.pages, copies, strict=True)
                document = document.copy([page for page, times in each for _ in range(times)])
                html = f"{html}{copies}"
            return _written(engine, document, html, gallery, theme)


def page_count(pdf: bytes) -> int:
    """How many pages a file of ours has: the count of its page tree (ISO 32000-1, 7.7.3.2), which
    stands in a packed stream of objects (7.5.7). Raises ValueError where it has none."""
    for packed in _OBJECTS.finditer(pdf):
        # Packed bytes may end in a carriage return of their own; another is left over.
        tree = _PAGES.search(zlib.decompressobj().decompress(packed[1]))
        if tree:
            return int(tree[1])
    raise ValueError("the document has no page tree")


def _written(engine: Engine, document: Any, html: str, gallery: Gallery, theme: Theme) -> bytes:
    """The document's bytes, under an identifier that follows from all that went into them."""
    return identified(engine.paint(document, engine.forms.finish), _seal(html, gallery, theme))


def _seal(html: str, gallery: Gallery, theme: Theme) -> str:
    seal = hashlib.sha256(html.encode())
    for art in gallery.arts:
        seal.update(art.ink.operators if art.ink else art.svg.encode())
    seal.update(theme.digest.encode())
    return seal.hexdigest()[:32]


def identified(pdf: bytes, identifier: str) -> bytes:
    """The file with ``identifier``, 32 hexadecimal digits, as its ID (ISO 32000-1, 14.4).

    The engine would make every object a second time for it. It belongs to the table of objects,
    the last of the file, so that nothing moves but what the table itself is.
    """
    before, table, after = pdf.rpartition(b"<</Type /XRef")
    if not table or b"/ID" in after.partition(b">>")[0]:
        raise ValueError("the document does not end with a table that has no ID yet")
    both = f"/ID [<{identifier}> <{identifier}>]".encode()
    return b"".join((before, table, both, after))


def _fitted(engine: Engine, book: Book, gallery: Gallery, theme: Theme) -> tuple[Any, str]:
    """The document as the last plan has it, and its text."""
    outlining = Outlining(book, gallery, theme)
    heights = Measuring(book, gallery, theme, outlining).heights(engine.lay_out)
    better = plans(book, heights, gallery.heights)
    plan: PagePlan | None = next(better)
    while plan is not None:
        html = book_html(book, gallery, plan.layout, theme, plan.front, plan.numbers)
        document = engine.lay_out(html)
        try:
            plan = better.send(stands_on(document))
        except StopIteration:
            plan = None
    return document, html


class _BookInParts:
    """A book cut into parts, each set alone, as the last plan has them."""

    def __init__(
        self,
        book: Book,
        gallery: Gallery,
        theme: Theme,
        memory: Memory | None,
        setter: Setter,
    ) -> None:
        self._book, self._gallery, self._theme, self._setter = book, gallery, theme, setter
        self._outlining = Outlining(book, gallery, theme)
        measuring = Measuring(book, gallery, theme, self._outlining)
        heights = measuring.kept_heights(setter.measure, {} if memory is None else memory)
        better = plans(book, heights, gallery.heights, apart=True)
        plan: PagePlan | None = next(better)
        while plan is not None:
            self._pieces = self._setter.set(self._planned(plan))
            try:
                plan = better.send(self.stands())
            except StopIteration:
                plan = None

    def book(self) -> bytes:
        sheets = sum(len(piece.pages) for piece in self._pieces)
        html = book_html(
            self._book, self._gallery, {}, self._theme, FrontMatter(), shown=(), part="feet",
            sheets=sheets - 1,
        )  # fmt: skip
        (feet,) = self._setter.set((Part("feet", html, kind="feet"),))
        (fonts,) = self._setter.set((fonts_part(self._theme, (*self._pieces, feet)),))
        return bound(self._pieces, feet, fonts)

    def stands(self) -> dict[str, list[int]]:
        """The pages from 1 on which each id stands."""
        stands: dict[str, list[int]] = {}
        before = 0
        for piece in self._pieces:
            for id_, pages in piece.stands.items():
                stands.setdefault(id_, []).extend(before + page for page in pages)
            before += len(piece.pages)
        return stands

    def _planned(self, plan: PagePlan) -> list[Part | Unfilled]:
        def part(name: str, kind: str, *shown: Page) -> Part:
            html = book_html(
                self._book, self._gallery, plan.layout, self._theme, plan.front, plan.numbers,
                shown=shown, part=kind,
            )  # fmt: skip
            return part_of(name, html, self._gallery)

        def sheet(*shown: Page) -> Unfilled:
            laid = [Laid(page, plan.layout[page.id]) for page in shown]
            outline = self._outlining.whole(laid, plan.numbers)
            return Unfilled(outline, lambda: part(shown[0].id, "pages", *shown))

        if plan.first:
            return [sheet(page) for page in plan.first]
        parts: list[Part | Unfilled] = [part("cover", "cover"), part("front", "front")]
        parts += (sheet(*some) for some in _sheets(self._book, plan))
        if self._book.index.pages:
            parts.append(part("index", "index"))
        return parts


def _sheets(book: Book, plan: PagePlan) -> list[list[Page]]:
    """The book's pages, those together that share a sheet."""
    together: list[list[Page]] = []
    for page in book.pages:
        if plan.layout[page.id].shares:
            together[-1].append(page)
        else:
            together.append([page])
    return together


@contextmanager
def _dated(date: str) -> Iterator[None]:
    """The edition's date as the only clock the engine sees, for as long as it writes."""
    try:
        seconds = int(datetime.fromisoformat(date).replace(tzinfo=UTC).timestamp())
    except ValueError:
        seconds = 0
    before = os.environ.get("SOURCE_DATE_EPOCH")
    os.environ["SOURCE_DATE_EPOCH"] = str(max(seconds, 0))
    try:
        yield
    finally:
        if before is None:
            del os.environ["SOURCE_DATE_EPOCH"]
        else:
            os.environ["SOURCE_DATE_EPOCH"] = before


@contextmanager
def _uncollected() -> Iterator[None]:
    """No search for garbage in circles while a document is laid out and written.

    Its boxes are millions of objects that all live to the end: looking through them again and
    again took a fifth of the time. What was there before is not looked through at all.
    """
    before = gc.isenabled()
    gc.disable()
    gc.freeze()
    try:
        yield
    finally:
        gc.unfreeze()
        if before:
            gc.enable()

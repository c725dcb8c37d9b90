"""How tall the parts of a book's pages are: laid out plainly, once, and kept.

A section, the page or pages of one concept, begins a sheet and hangs on nothing but itself: so
what it measures can be known from before by its own text and the sizes of its pictures, and only
the sections that changed are laid out to be measured.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any, Protocol

from stemline.book.content.book import Book
from stemline.book.content.page import Page
from stemline.book.layout.fit import FrontMatter, Laid, telling
from stemline.book.layout.numbering import OPENING, FrontPages, page_numbers
from stemline.book.layout.plans import Heights, opening_needs, page_needs, plain_layout
from stemline.diagnostics.catalogue.themes import E914
from stemline.emit.balanced import in_one_column, in_two_columns
from stemline.emit.gallery import Gallery
from stemline.emit.heights import heights_in
from stemline.emit.html import book_html
from stemline.emit.outlined import Outlining
from stemline.emit.parts import Part, part_of
from stemline.theme import Theme, refused_at, where_said


class Memory(Protocol):
    """What was measured, by a digest of all that it hangs on but the program and its libraries: who
    keeps it for longer keeps it by those."""

    def __contains__(self, key: object, /) -> bool: ...

    def __getitem__(self, key: str, /) -> Heights: ...

    def __setitem__(self, key: str, heights: Heights, /) -> None: ...


_PICTURE = re.compile(r"stemline:picture/([\w-]+)")
_TOGETHER = 8
"""Sections that are measured in one document: a sheet of style takes as long as two of them."""
Measure = Callable[[Sequence[Part]], Sequence[Heights]]
_ID = re.compile(r' id="([^"]+)"')


class Measuring:
    """A book's sections and its opening, each as the page that is laid out to measure it."""

    def __init__(self, book: Book, gallery: Gallery, theme: Theme, outlining: Outlining) -> None:
        self._book, self._gallery, self._theme = book, gallery, theme
        self._layout = plain_layout(book)
        self._short = tuple(page for page in book.pages if not page.long)
        # Any number will do to measure by: the real ones would change what is known of the opening.
        numbers = page_numbers(book, self._layout, FrontMatter(), FrontPages())
        self._numbers = dict.fromkeys(numbers, 100)
        self._outlining = outlining

    def heights(self, lay_out: Callable[[str], Any]) -> Heights:
        """The height of every part, from one document that ``lay_out`` lays out.

        Asking for one that a coach's templates or styles leave out raises `Refused`.
        """
        return _KnownHeights(heights_in(lay_out(self._html(self._short))), self._theme)

    def kept_heights(self, measure: Measure, memory: Memory) -> Heights:
        """The same from ``memory``, where each is kept; ``measure`` is asked for those that are
        not there."""
        needed = {"": opening_needs(self._book)} | {p.id: page_needs(p) for p in self._book.pages}

        def has(key: str, id_: str) -> bool:
            return key in memory and needed[id_] <= memory[key].keys()

        texts = {"": self._html(())}
        keys = {"": self._key(texts[""])}
        for page in self._short:
            keys[page.id] = outline = self._outline(page)
            if not has(outline, page.id):
                text = texts[page.id] = self._html((page,), opening=False)
                same = self._key(text)
                if has(same, page.id):  # what its template does not print is other than it was
                    memory[outline] = memory[same]
        lacking = [id_ for id_ in texts if not has(keys[id_], id_)]
        groups = [lacking[at : at + _TOGETHER] for at in range(0, len(lacking), _TOGETHER)]
        parts = [self._part(each) for each in groups]
        if self._theme.bundled:  # a coach's styles may set their columns in another way
            parts = [replace(part, html=in_one_column(part.html)) for part in parts]
        for group, found in zip(groups, measure(parts), strict=True):
            known = in_two_columns(found)
            for id_ in group:
                ids = _ID.findall(texts[id_])
                ids += [f"{each} pages" for each in OPENING if not id_]
                heights = {each: known[each] for each in ids if each in known}
                memory[keys[id_]] = memory[self._key(texts[id_])] = heights
        every = {id_: height for key in keys.values() for id_, height in memory[key].items()}
        return _KnownHeights(every, self._theme)

    def _part(self, ids: Collection[str]) -> Part:
        """Sections to be measured in one document; "" is what stands before them all."""
        pages = tuple(page for page in self._short if page.id in ids)
        return part_of("", self._html(pages, opening="" in ids), self._gallery)

    def _html(self, pages: Iterable[Page], *, opening: bool = True) -> str:
        return book_html(
            self._book, self._gallery, self._layout, self._theme,
            numbers=self._numbers, shown=tuple(pages), opening=opening,
        )  # fmt: skip

    def _outline(self, page: Page) -> str:
        laid = Laid(replace(page, dressups=telling(page.dressups)), self._layout[page.id])
        return self._outlining.sizes(laid, self._numbers)

    def _key(self, html: str) -> str:
        arts = (self._gallery.art(id_) for id_ in _PICTURE.findall(html))
        sizes = [(art.width, art.height) for art in arts]
        return hashlib.sha256(repr((self._theme.digest, sizes, html)).encode()).hexdigest()


class _KnownHeights(dict[str, float]):
    """Heights by id. Raises `Refused` for one that a coach's templates or styles leave out."""

    def __init__(self, heights: Mapping[str, float], theme: Theme) -> None:
        super().__init__(heights)
        self._theme = theme

    def __missing__(self, id_: str) -> float:
        if self._theme.bundled:
            raise KeyError(id_)
        file, line = where_said(self._theme, ())
        raise refused_at(self._theme, file, line, E914(id=id_))

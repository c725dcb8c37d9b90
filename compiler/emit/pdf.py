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
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import UTC, datetime
from typing import Any

from stemline.book.content.book import Book
from stemline.book.layout.plans import PagePlan, plans
from stemline.diagnostics.catalogue.themes import E916
from stemline.emit.engine_log import PictureFailed, heard
from stemline.emit.fetch import Refused, answer
from stemline.emit.gallery import Gallery
from stemline.emit.html import book_html
from stemline.emit.measuring import Measuring, Memory, stands_on
from stemline.emit.pdf_forms import Forms
from stemline.theme import Theme, refused_at, where_said

_OBJECTS = re.compile(rb"/ObjStm.*?stream\r?\n(.*?)\nendstream", re.DOTALL)
_PAGES = re.compile(rb"/Type /Pages\b[^>]*?/Count (\d+)")
_PANGO = """\
the PDF needs the system library Pango, which is not installed
  Debian, Ubuntu: sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0
  macOS:          brew install pango
  Windows:        in MSYS2, pacman -S mingw-w64-x86_64-pango
see also the installation page of WeasyPrint: https://doc.courtbouillon.org/weasyprint/stable/"""


class PangoMissing(RuntimeError):
    """The system library that sets text is not there; the message says how to install it."""

    def __init__(self, why: OSError) -> None:
        super().__init__(f"{_PANGO}\n(it said: {why})")


def to_pdf(
    book: Book, gallery: Gallery, theme: Theme, date: str, memory: Memory | None = None
) -> bytes:
    """The book as a PDF, the same bytes for the same arguments whatever ``memory`` holds.

    What is measured is kept in ``memory``, and not measured again that is there: only for a bundled
    theme, whose sections hang on nothing but themselves.

    ``date`` is the edition's date, "2026-05-01"; text that is no date counts as none. Raises
    `PangoMissing`, `Refused` when the theme asks for something that is not its own, and
    `PictureFailed` when a picture cannot be drawn whole.
    """
    with _dated(date), _uncollected():
        engine = _Engine(_weasyprint(), gallery, theme)
        with engine.minded():
            document, html = _fitted(engine, book, gallery, theme, memory)
            return engine.written(document, html, gallery, theme)


def page_list(
    book: Book, gallery: Gallery, theme: Theme, date: str, memory: Memory | None = None
) -> bytes:
    """The page of each place in the book that `to_pdf` makes of the same arguments, as JSON; raises
    as it does. Nothing is painted."""
    with _dated(date), _uncollected():
        engine = _Engine(_weasyprint(), gallery, theme)
        with engine.minded():
            document, _ = _fitted(engine, book, gallery, theme, memory)
            return json.dumps(
                {id_: pages[0] for id_, pages in stands_on(document).items()}
            ).encode()


def pages_pdf(html: str, gallery: Gallery, theme: Theme, date: str) -> bytes:
    """Pages that are laid out once, such as a contact sheet; else as `to_pdf`."""
    with _dated(date), _uncollected():
        engine = _Engine(_weasyprint(), gallery, theme)
        with engine.minded():
            return engine.written(engine.lay_out(html), html, gallery, theme)


def page_count(pdf: bytes) -> int:
    """How many pages a file of ours has: the count of its page tree (ISO 32000-1, 7.7.3.2), which
    stands in a packed stream of objects (7.5.7). Raises ValueError where it has none."""
    for packed in _OBJECTS.finditer(pdf):
        # Packed bytes may end in a carriage return of their own; another is left over.
        tree = _PAGES.search(zlib.decompressobj().decompress(packed[1]))
        if tree:
            return int(tree[1])
    raise ValueError("the document has no page tree")


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


def _inside(document: Any, theme: Theme) -> None:
    """Raises `Refused` where a link leads out of the document, or it carries other files."""
    links = [link for page in document.pages for link in page.links if link[0] != "internal"]
    asked = [f"a link to {target}" for _, target, *_ in links]
    if document.metadata.attachments:
        asked.append("a file attached to the document")
    if asked:
        word = asked[0].rpartition(" ")[2] if links else "attachment"
        file, line = where_said(theme, (word, "attachment"))
        raise refused_at(theme, file, line, E916(why=asked[0][:120]))


def _fitted(
    engine: _Engine, book: Book, gallery: Gallery, theme: Theme, memory: Memory | None
) -> tuple[Any, str]:
    """The document as the last plan has it, and its text."""
    heights = Measuring(book, gallery, theme).heights(
        engine.lay_out, memory if theme.bundled else None
    )
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


class _Engine:
    """The layout engine with our fetcher, and its pictures parsed once for all passes."""

    def __init__(self, weasyprint: Any, gallery: Gallery, theme: Theme) -> None:
        pictures = {art.id: art.svg for art in gallery.arts if art.ink is None}
        self._forms = Forms(theme)
        self._html = weasyprint.HTML
        self._names = {f"stemline:picture/{art.id}": art.name for art in gallery.arts}
        self._fatal: type[BaseException] = weasyprint.urls.FatalURLFetchingError
        self._fetcher = _fetcher(weasyprint, theme, pictures)
        placed = self._forms.images(gallery.arts)
        self._cache: dict[str, Any] = {f"stemline:picture/{id_}": p for id_, p in placed.items()}

    def lay_out(self, html: str) -> Any:
        page = self._html(string=html, base_url="stemline:theme/", url_fetcher=self._fetcher)
        return page.render(cache=self._cache)

    def written(self, document: Any, html: str, gallery: Gallery, theme: Theme) -> bytes:
        """The document's bytes, under an identifier that follows from all that went into them."""
        _inside(document, theme)
        pdf: bytes = document.write_pdf(pdf_tags=True, finisher=self._forms.finish)
        return identified(pdf, _seal(html, gallery, theme))

    @contextmanager
    def minded(self) -> Iterator[None]:
        """While it is entered, nothing that goes wrong in a document is passed over."""
        try:
            with heard():
                yield
        except self._fatal as why:
            raise Refused(str(why.__cause__ or why)) from why
        except PictureFailed as failed:
            named = self._names.get(failed.address) or failed.address
            raise PictureFailed(named, failed.why) from failed


def _fetcher(weasyprint: Any, theme: Theme, pictures: Mapping[str, str]) -> Any:
    """A fetcher that opens nothing by itself: every address goes through `answer`."""
    urls = weasyprint.urls
    base: Any = urls.URLFetcher

    class Fetcher(base):  # type: ignore[misc]
        def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> Any:
            body, media = answer(url, theme, pictures)
            return urls.URLFetcherResponse(url, body, {"Content-Type": media})

    return Fetcher(allowed_protocols=(), allow_redirects=False, fail_on_errors=True)


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
    again took a fifth of the time.
    """
    before = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if before:
            gc.enable()


def _weasyprint() -> Any:
    try:
        import weasyprint
        import weasyprint.urls
    except OSError as why:
        raise PangoMissing(why) from why
    return weasyprint

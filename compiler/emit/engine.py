"""The engine that lays pages out, as we let it work: with our fetcher, our pictures and our fonts.

It and the system library that it needs are imported only when a page is made, so that everything
else works without them.
"""

from __future__ import annotations

import ctypes.util
import re
import sys
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, nullcontext, suppress
from functools import lru_cache
from typing import Any

from stemline.diagnostics.catalogue.themes import E916
from stemline.emit.engine_log import PictureFailed, heard
from stemline.emit.engine_memory import remember
from stemline.emit.engine_styles import without_notes
from stemline.emit.fetch import Refused, answer
from stemline.emit.gallery import Gallery
from stemline.emit.pdf_forms import Forms
from stemline.theme import Theme, refused_at, where_said

_PANGO = """\
the PDF needs the system library Pango, which is not installed
  Debian, Ubuntu: sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0
  macOS:          brew install pango
  Windows:        in MSYS2, pacman -S mingw-w64-x86_64-pango
see also the installation page of WeasyPrint: https://doc.courtbouillon.org/weasyprint/stable/"""

_BASE = "stemline:theme/"
_LINKED = re.compile(r'<link rel="stylesheet" href="stemline:theme/([\w-]+\.css)">')


class PangoMissing(RuntimeError):
    """The system library that sets text is not there; the message says how to install it."""

    def __init__(self, why: OSError) -> None:
        super().__init__(f"{_PANGO}\n(it said: {why})")


class _Taken(Exception):
    """The objects have gone to who wanted them: the engine need not write them."""


class Engine:
    """The layout engine with our fetcher, and its pictures parsed once for all passes.

    ``shared`` is of the same theme: documents that have it load fonts and read style sheets once.
    """

    def __init__(self, gallery: Gallery, theme: Theme, shared: Shared | None = None) -> None:
        weasyprint = _weasyprint()
        known = remember()
        pictures = {art.id: art.svg for art in gallery.arts if art.ink is None}
        self.forms = Forms(theme)
        bare = known and shared is not None  # another coach's theme may have notes
        self._html = without_notes(weasyprint.HTML) if bare else weasyprint.HTML
        self._shared, self._theme = shared, theme
        self._names = {f"stemline:picture/{art.id}": art.name for art in gallery.arts}
        self._fatal: type[BaseException] = weasyprint.urls.FatalURLFetchingError
        self._fetcher = _fetcher(weasyprint, theme, pictures)
        placed = self.forms.images(gallery.arts)
        self._cache: dict[str, Any] = {f"stemline:picture/{id_}": p for id_, p in placed.items()}

    def lay_out(self, html: str) -> Any:
        fonts, sheets = None, []
        if self._shared is not None:
            fonts = self._shared.fonts
            sheets = [self._shared.sheet(name) for name in _LINKED.findall(html)]
            html = _LINKED.sub("", html)
        page = self._html(string=html, base_url=_BASE, url_fetcher=self._fetcher)
        return page.render(font_config=fonts, cache=self._cache, stylesheets=sheets)

    def paint(self, document: Any, finisher: Any, *, tags: bool = True) -> bytes:
        """The document's file; ``finisher`` is given it and its objects before they are written.
        Raises `Refused` where it leads out of itself."""
        _inside(document, self._theme)
        made: bytes = document.write_pdf(pdf_tags=tags, finisher=finisher)
        return made

    def hand_over(
        self, document: Any, taker: Any, *, tags: bool = True, fonts: bool = True
    ) -> None:
        """As `paint`, but ``taker`` keeps the objects and no file is written of them. Without
        ``fonts`` it leaves those out, and they are as they came."""

        def taken(*of: Any) -> None:
            taker(*of)
            raise _Taken

        with suppress(_Taken), nullcontext() if fonts else _fonts_left():
            self.paint(document, taken, tags=tags)

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


@contextmanager
def _fonts_left() -> Iterator[None]:
    """Fonts are not cut down to the glyphs that a document uses."""
    from weasyprint.pdf.fonts import Font

    clean = Font.clean
    Font.clean = lambda *_: None
    try:
        yield
    finally:
        Font.clean = clean


def _fetcher(weasyprint: Any, theme: Theme, pictures: Mapping[str, str]) -> Any:
    """A fetcher that opens nothing by itself: every address goes through `answer`."""
    urls = weasyprint.urls
    base: Any = urls.URLFetcher

    class Fetcher(base):  # type: ignore[misc]
        def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> Any:
            body, media = answer(url, theme, pictures)
            return urls.URLFetcherResponse(url, body, {"Content-Type": media})

    return Fetcher(allowed_protocols=(), allow_redirects=False, fail_on_errors=True)


class Shared:
    """What the documents of one bundled theme share: its fonts loaded, its style sheets read.

    A sheet is given to the engine as a reader's own, which yields to what stands in the document:
    that is how bundled templates use it, for pages and places alone. Another coach's theme may lean
    on the order of its sheets, so it has none of this.
    """

    def __init__(self, theme: Theme) -> None:
        self._weasyprint = _weasyprint()
        from weasyprint.text.fonts import FontConfiguration

        self.fonts: Any = FontConfiguration()
        self._theme = theme
        self._sheets: dict[str, Any] = {}

    def sheet(self, name: str) -> Any:
        """A style sheet of the theme. Raises `Refused` where it has no such file."""
        if name not in self._sheets:
            body, _ = answer(f"{_BASE}{name}", self._theme, {})
            self._sheets[name] = self._weasyprint.CSS(
                string=body.decode("utf-8-sig"), base_url=_BASE, font_config=self.fonts,
                url_fetcher=_fetcher(self._weasyprint, self._theme, {}),
            )  # fmt: skip
        return self._sheets[name]


def shared_by(theme: Theme) -> Shared | None:
    """What this process keeps for documents of ``theme``; nothing for one that is not bundled."""
    # The fonts lie in the folder for what is temporary, and go with it.
    return _shared_in(tempfile.gettempdir(), theme) if theme.bundled else None


@lru_cache(maxsize=1)
def _shared_in(_: str, theme: Theme) -> Shared:
    return Shared(theme)


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


def _weasyprint() -> Any:
    try:
        with suppress(OSError), _asking_no_compiler():
            return _imported()
        return _imported()
    except OSError as why:
        raise PangoMissing(why) from why


def _imported() -> Any:
    import weasyprint
    import weasyprint.urls

    return weasyprint


@contextmanager
def _asking_no_compiler() -> Iterator[None]:
    """The engine looks for each of its libraries under the names of all systems. On Linux Python
    asks a compiler and a linker about each that is not there, some 300 processes; the loader knows
    the names that are right by itself."""
    find = ctypes.util.find_library
    if sys.platform == "linux":
        ctypes.util.find_library = _found_nowhere
    try:
        yield
    finally:
        ctypes.util.find_library = find


def _found_nowhere(name: str) -> str | None:
    return None

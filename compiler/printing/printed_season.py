"""Season → pictures and the book: the one place where the back ends are joined."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import replace

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.page import Entry, Page
from stemline.book.paper import Paper
from stemline.emit.apart import apart
from stemline.emit.gallery import Art, Gallery
from stemline.emit.pdf import page_list, to_pdf
from stemline.emit.pdf_ink import art_of
from stemline.football.play import Season
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import LEVELS
from stemline.outside.store import Store
from stemline.picture.clock_strip import clock_scene
from stemline.picture.legend.legend import legend_entries
from stemline.picture.picture import frame_of
from stemline.picture.trimmed import roomier
from stemline.printing.drawings import Drawings, Showing
from stemline.printing.kept_parts import KeptFragments, KeptHeights
from stemline.printing.model import Progress
from stemline.theme import Size, Theme


class Build:
    """A season on its way to paper: each of its pictures is drawn once, whoever asks for it.

    ``revision`` is its short name and ``date`` its day ("2026-05-01"); both are printed on every
    page. ``book`` is what is printed, the season's own where it is None.
    """

    def __init__(
        self,
        season: Season,
        revision: str,
        date: str,
        theme: Theme,
        progress: Progress,
        paper: Paper = Paper.LETTER,
        store: Store | None = None,
        book: Book | None = None,
    ) -> None:
        self._season, self._theme, self._date = season, theme, date
        self._level = LEVELS[season.level]
        self._store = store
        self._drawings = Drawings(theme, self._level, store)
        # Only the page on reading shows the legend, and a week's book has none.
        self._legend = legend_entries(theme) if book is None or book.plan is None else ()
        captions = tuple(caption for caption, _ in self._legend)
        self._book = book or make_book(season, Edition(revision, date, paper), captions)
        self._large: dict[str, Art] = {}
        self._told, self._all, self._progress = 0, _all(self._book, season), progress

    def book(self) -> bytes:
        """The playbook as a PDF.

        Raises `stemline.emit.pdf.PangoMissing` where the PDF library's system part is missing.
        """
        gallery = self._gallery()
        values = self._book, gallery, self._theme, self._date, *self._memory()
        return apart(self._theme, len(gallery.arts), to_pdf, *values)

    def pages(self) -> dict[str, int]:
        """The page of the book on which each call stands. Raises as `book` does."""
        gallery = self._gallery()
        values = self._book, gallery, self._theme, self._date, *self._memory()
        made = apart(self._theme, len(gallery.arts), page_list, *values)
        at = json.loads(made)
        lines = self._book.index.calls
        return {line.call: at[line.id] for line in lines if line.id in at}

    def _gallery(self) -> Gallery:
        """Every picture that the book prints."""
        shown = [(page, tuple(_showings(page))) for page in self._book.pages]
        asked = [(entry.play, wanted, svg) for _, some in shown for entry, wanted, svg in some]
        with self._drawings.beside(asked):
            arts = [art for page, some in shown for art in self._arts(page, some)]
        for number, (_, scene) in enumerate(self._legend, 1):
            arts.append(art_of(f"legend-{number}", scene, self._theme, ""))
        return Gallery(tuple(arts))

    def _memory(self) -> tuple[KeptHeights | None, KeptFragments | None]:
        """What was measured and set before, for bundled themes alone: another's may draw as it
        likes."""
        if self._store is None or not self._theme.bundled:
            return None, None
        heights = KeptHeights(self._store)
        return heights, KeptFragments(heights)

    def pictures(self) -> dict[str, str]:
        """Every call's large picture as SVG, by the call as it is spoken."""
        rest = [play for play in self._season.plays if play.call.spoken not in self._large]
        with self._drawings.beside([(play, Showing(Size.FULL), True) for play in rest]):
            for play in rest:
                art = self._drawings.art("", play, Showing(Size.FULL), svg=True)
                self._large[play.call.spoken] = art
                self._tell()
        spoken = (play.call.spoken for play in self._season.plays)
        return {call: self._large[call].svg for call in spoken}

    def _arts(self, page: Page, showings: Iterable[tuple[Entry, Showing, bool]]) -> list[Art]:
        """The page's pictures, the clock after the large one."""
        arts: list[Art] = []
        for entry, wanted, svg in showings:
            art = self._drawings.art(entry.id, entry.play, wanted, svg=svg)
            if svg:
                self._large[entry.call] = art
            arts.append(art)
            self._tell()
            if entry is page.large and page.clock:
                arts.append(self._clock(page, entry))
        return arts

    def _clock(self, page: Page, base: Entry) -> Art:
        """The quarterback's clock of the page's first call."""
        clock = replace(read_clock(base.play, self._level), rusher=page.rusher)
        return art_of(page.clock, clock_scene(clock, self._theme), self._theme, "")

    def _tell(self) -> None:
        self._told += 1
        self._progress(self._told, self._all)


def _showings(page: Page) -> Iterator[tuple[Entry, Showing, bool]]:
    """What is drawn of each call of the page, and whether its SVG is wanted too: the first large,
    the others small and all in one frame, to be compared."""
    if page.large is not None:
        yield page.large, Showing(Size.FULL, duties=page.duties, trim=True), page.large.listed
    for entries in page.framed:
        frame = frame_of([entry.play for entry in entries], Size.THUMB, page.duties)
        frame = roomier(frame) if page.flows else frame
        wanted = Showing(Size.THUMB, frame, duties=page.duties, trim=page.trims)
        yield from ((entry, wanted, False) for entry in entries)


def _all(book: Book, season: Season) -> int:
    """How many pictures there are to draw: the book's, and a large one of each call in it small."""
    pages = sum(len(page.entries) for page in book.pages)
    large = sum(page.large is not None and page.large.listed for page in book.pages)
    return pages + len(season.plays) - large

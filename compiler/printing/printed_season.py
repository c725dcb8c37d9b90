"""Season → pictures and the book: the one place where the back ends are joined."""

from __future__ import annotations

import json
from collections.abc import Container, Iterator
from dataclasses import replace

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.keeping import anew
from stemline.book.content.page import Entry, Page
from stemline.book.paper import Paper
from stemline.emit.apart import apart
from stemline.emit.gallery import Art, Gallery
from stemline.emit.pdf import page_list, to_pdf
from stemline.emit.pdf_ink import art_of
from stemline.emit.side_by_side import SideBySide
from stemline.football.play import Play, Season
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import LEVELS
from stemline.outside.store import Store
from stemline.picture.clock_strip import clock_scene
from stemline.picture.legend.legend import legend_entries
from stemline.picture.picture import frame_of
from stemline.picture.trimmed import roomier
from stemline.printing.drawings import Drawings, Showing
from stemline.printing.kept_parts import KeptFragments, KeptHeights
from stemline.printing.kept_sections import KeptSections
from stemline.printing.model import Progress
from stemline.theme import Size, Theme

_FULL = Showing(Size.FULL)
_Calls = dict[str, tuple[Play, Art | None]]


class Build:
    """A season on its way to paper: each of its pictures is drawn once, whoever asks for it.

    ``revision`` is its short name and ``date`` its day ("2026-05-01"); both are printed on every
    page. ``book`` is what is printed, the season's own where it is None. ``helpers`` draw and set
    it, as `stemline.printing.workbench` does; without them processes are started for each.
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
        sections: KeptSections | None = None,
        helpers: SideBySide | None = None,
    ) -> None:
        self._helpers = helpers
        self._season, self._theme, self._date = season, theme, date
        self._level = LEVELS[season.level]
        self._store = store
        self._drawings = Drawings(theme, self._level, store, helpers)
        # Only the page on reading shows the legend, and a week's book has none.
        self._legend = legend_entries(theme) if book is None or book.plan is None else ()
        captions = tuple(caption for caption, _ in self._legend)
        self._sections = sections
        keep = sections.keep if sections is not None else anew
        self._book = book or make_book(season, Edition(revision, date, paper), captions, keep)
        self._large: dict[str, Art] = {}
        self._at = {line.call: line.id for line in self._book.index.calls}
        self._told, self._all, self._progress = 0, _all(self._book, season), progress

    def book(self, *, pictures: bool = False) -> bytes:
        """The playbook as a PDF. Where `pictures` is asked for afterwards, ``pictures`` has what it
        gives drawn along with the book's, by the same processes.

        Raises `stemline.emit.pdf.PangoMissing` where the PDF library's system part is missing.
        """
        gallery = self._gallery(calls=pictures)
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

    def _gallery(self, *, calls: bool = False) -> Gallery:
        """Every picture that the book prints; ``calls`` has those of `pictures` drawn too."""
        shown = [(page, entries) for page in self._book.pages for entries in _sets(page) if entries]
        wanted: list[Showing | list[Art]] = [
            self._found(entries, _is_large(page, entries)) or _showing(page, entries)
            for page, entries in shown
        ]
        asked = [
            (entry.play, replace(how, solid=entry.solid), _is_large(page, entries))
            for (page, entries), how in zip(shown, wanted, strict=True)
            if isinstance(how, Showing)
            for entry in entries
        ]
        large = {entries[0].call for page, entries in shown if _is_large(page, entries)}
        rest = self._found_calls(large) if calls else {}
        with self._drawings.beside([*asked, *_lacking(rest)]):
            arts = [
                art
                for (page, entries), how in zip(shown, wanted, strict=True)
                for art in self._arts(page, entries, how)
            ]
            self._draw_calls(rest)
        for number, (_, scene) in enumerate(self._legend, 1):
            arts.append(art_of(f"legend-{number}", scene, self._theme, ""))
        return Gallery(tuple(arts))

    def _memory(self) -> tuple[KeptHeights | None, KeptFragments | None, SideBySide | None]:
        """What was measured and set before, and who sets the rest, for bundled themes alone:
        another's may draw as it likes."""
        if not self._theme.bundled:
            return None, None, None
        if self._store is None:
            return None, None, self._helpers
        heights = KeptHeights(self._store)
        return heights, KeptFragments(heights), self._helpers

    def pictures(self) -> dict[str, str]:
        """Every call's large picture as SVG, by the call as it is spoken."""
        rest = self._found_calls(self._large)
        with self._drawings.beside(_lacking(rest)):
            self._draw_calls(rest)
        if self._sections is not None:
            self._sections.write()
        return {play.call.spoken: self._large[play.call.spoken].svg for play in self._season.plays}

    def _found_calls(self, known: Container[str]) -> _Calls:
        """The calls but those that are ``known``, each with its large picture as it is kept."""
        plays = {play.call.spoken: play for play in self._season.plays}
        return {
            call: (play, self._kept(f"full {call}", self._at.get(call, ""), svg=True))
            for call, play in plays.items()
            if call not in known
        }

    def _draw_calls(self, calls: _Calls) -> None:
        for call, (play, art) in calls.items():
            if art is None:
                art = self._drawings.art("", play, _FULL, svg=True)
                self._drew(f"full {call}", self._drawings.name(play, _FULL), self._at.get(call, ""))
            self._large[call] = art
            self._tell()

    def _found(self, entries: tuple[Entry, ...], svg: bool) -> list[Art] | None:
        """The pictures of these as they are kept; None where one is not: they share a frame."""
        made = [self._kept(entry.id, svg=svg) for entry in entries]
        found = [art for art in made if art is not None]
        return found if len(found) == len(made) else None

    def _arts(
        self, page: Page, entries: tuple[Entry, ...], wanted: Showing | list[Art]
    ) -> list[Art]:
        """Pictures of the page that share a frame, the clock after the large one."""
        arts: list[Art] = []
        for number, entry in enumerate(entries):
            svg = _is_large(page, entries)
            if isinstance(wanted, Showing):
                how = replace(wanted, solid=entry.solid)
                art = self._drawings.art(entry.id, entry.play, how, svg=svg)
                self._drew(entry.id, self._drawings.name(entry.play, how))
            else:
                art = wanted[number]
            if svg:
                self._large[entry.call] = art
            arts.append(art)
            self._tell()
            if entry is page.large and page.clock:
                arts.append(self._clock(page, entry))
        return arts

    def _kept(self, name: str, of: str = "", *, svg: bool = False) -> Art | None:
        if self._sections is None:
            return None
        return self._drawings.kept(self._sections.drawing(name, of), "" if of else name, svg=svg)

    def _drew(self, name: str, drawing: str, of: str = "") -> None:
        if self._sections is not None:
            self._sections.drew(name, drawing, of)

    def _clock(self, page: Page, base: Entry) -> Art:
        """The quarterback's clock of the page's first call."""
        held = self._kept(page.clock, base.id)
        if held is not None:
            return replace(held, id=page.clock)
        clock = replace(read_clock(base.play, self._level), rusher=page.rusher)
        art = art_of(page.clock, clock_scene(clock, self._theme), self._theme, "")
        if self._sections is not None:
            name = self._sections.own_name(page.clock, base.id)
            self._drawings.keep(name, art)
            self._drew(page.clock, name, base.id)
        return art

    def _tell(self) -> None:
        self._told += 1
        self._progress(self._told, self._all)


def _lacking(calls: _Calls) -> list[tuple[Play, Showing, bool]]:
    return [(play, _FULL, True) for play, art in calls.values() if art is None]


def _sets(page: Page) -> Iterator[tuple[Entry, ...]]:
    """The pictures of the page, the large one alone, the others by the frame that they share."""
    if page.large is not None:
        yield (page.large,)
    yield from page.framed


def _is_large(page: Page, entries: tuple[Entry, ...]) -> bool:
    """Whether it is the large picture of a call, whose SVG is wanted too."""
    return entries[0] is page.large and entries[0].listed


def _showing(page: Page, entries: tuple[Entry, ...]) -> Showing:
    """How these are drawn: the first large, the others small and all in one frame, to be
    compared."""
    if page.large is not None and entries[0] is page.large:
        return Showing(Size.FULL, duties=page.duties, trim=True)
    frame = frame_of([entry.play for entry in entries], Size.THUMB, page.duties)
    frame = roomier(frame) if page.flows else frame
    return Showing(Size.THUMB, frame, duties=page.duties, trim=page.trims)


def _all(book: Book, season: Season) -> int:
    """How many pictures there are to draw: the book's, and a large one of each call in it small."""
    pages = sum(len(page.entries) for page in book.pages)
    large = sum(page.large is not None and page.large.listed for page in book.pages)
    return pages + len(season.plays) - large

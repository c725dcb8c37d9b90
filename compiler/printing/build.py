"""Season → pictures and the book: the one place where the back ends are joined."""

from __future__ import annotations

import json
from dataclasses import replace

from stemline.book.content.page_models import Book, ConceptPage, Edition, LookPage, Page
from stemline.book.content.pages import make_book
from stemline.book.paper import Paper
from stemline.emit.apart import apart
from stemline.emit.gallery import Art, Gallery
from stemline.emit.ink import art_of
from stemline.emit.pdf import page_list, to_pdf
from stemline.emit.svg import to_svg
from stemline.football.play import Season
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import LEVELS
from stemline.picture.clock_strip import clock_scene
from stemline.picture.legend.legend import legend_entries
from stemline.picture.picture import frame_of, picture
from stemline.picture.scene.scene import Scene
from stemline.printing.model import Progress
from stemline.theme import Size, Theme


class Build:
    """A season on its way to paper: each of its pictures is drawn once, whoever asks for it.

    ``revision`` is its short name and ``date`` its day ("2026-05-01"); both are printed on every
    page.
    """

    def __init__(
        self,
        season: Season,
        revision: str,
        date: str,
        theme: Theme,
        progress: Progress,
        paper: Paper = Paper.LETTER,
    ) -> None:
        self._season, self._theme, self._date = season, theme, date
        self._level = LEVELS[season.level]
        self._legend = legend_entries(theme)
        captions = tuple(caption for caption, _ in self._legend)
        self._book = make_book(season, Edition(revision, date, paper), captions)
        self._large: dict[str, Art] = {}
        self._told, self._progress = 0, progress

    def book(self) -> bytes:
        """The playbook as a PDF.

        Raises `stemline.emit.pdf.PangoMissing` where the PDF library's system part is missing.
        """
        gallery = self._gallery()
        count = len(gallery.arts)
        return apart(self._theme, count, to_pdf, self._book, gallery, self._theme, self._date)

    def pages(self) -> dict[str, int]:
        """The page of the book on which each call stands. Raises as `book` does."""
        gallery = self._gallery()
        count = len(gallery.arts)
        made = apart(self._theme, count, page_list, self._book, gallery, self._theme, self._date)
        at = json.loads(made)
        lines = self._book.index.calls
        return {line.call: at[line.id] for line in lines if line.id in at}

    def _gallery(self) -> Gallery:
        """Every picture that the book prints."""
        arts = [art for page in self._book.pages for art in self._arts(page)]
        for number, (_, scene) in enumerate(self._legend, 1):
            arts.append(_art(f"legend-{number}", scene, self._theme))
        return Gallery(tuple(arts))

    def pictures(self) -> dict[str, str]:
        """Every call's large picture as SVG, by the call as it is spoken."""
        drawn: dict[str, str] = {}
        for play in self._season.plays:
            art = self._large.get(play.call.spoken)
            if art is None:
                scene = picture(play, Size.FULL, self._theme, level=self._level)
                art = _art("", scene, self._theme, named=True)
                self._tell()
            drawn[play.call.spoken] = art.svg
        return drawn

    def _arts(self, page: Page) -> list[Art]:
        """The page's first picture large, the others small and all in one frame, to be compared."""
        duties = isinstance(page, LookPage)
        arts: list[Art] = []
        if page.base is not None:
            scene = picture(
                page.base.play, Size.FULL, self._theme, duties=duties, level=self._level
            )
            art = _art(page.base.id, scene, self._theme, named=True)
            if page.base.listed:
                self._large[page.base.call] = art
            arts.append(art)
            self._tell()
        if isinstance(page, ConceptPage) and page.clock:
            arts.append(self._clock(page))
        plays = [entry.play for entry in page.dressups]
        frame = frame_of(plays, Size.THUMB, duties) if plays else None
        for entry in page.dressups:
            scene = picture(
                entry.play, Size.THUMB, self._theme, frame, duties=duties, level=self._level
            )
            arts.append(_art(entry.id, scene, self._theme))
            self._tell()
        return arts

    def _clock(self, page: ConceptPage) -> Art:
        """The quarterback's clock of the page's first call."""
        clock = read_clock(page.base.play, self._level)
        free = page.answers.rusher if page.answers is not None else None
        scene = clock_scene(replace(clock, rusher=free), self._theme)
        return _art(page.clock, scene, self._theme)

    def _tell(self) -> None:
        self._told += 1
        self._progress(self._told, _all(self._book, self._season))


def _all(book: Book, season: Season) -> int:
    """How many pictures there are to draw: the book's, and a large one of each call in it small."""
    pages = sum(len(page.dressups) + (page.base is not None) for page in book.pages)
    return pages + len(season.plays) - len(book.concepts)


def _art(id_: str, scene: Scene, theme: Theme, *, named: bool = False) -> Art:
    """``named`` is a picture that also becomes a file of its own: it has an SVG too."""
    svg = to_svg(scene, theme) if named else ""
    return art_of(id_, scene, theme, svg)

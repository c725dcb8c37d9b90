"""Motions and shifts: each once, in the formation most often called with it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.book.content.keeping import Reads
from stemline.book.content.page import Entry, Listing, Page, PageKind
from stemline.football.play import MotionSheet, Season


@dataclass(frozen=True)
class MovedSet:
    """A motion: its picture, what each man does who moves, and the concepts called with it."""

    entry: Entry
    moves: tuple[tuple[str, str], ...]
    concepts: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class MotionPage(Page):
    template = "motion.html.jinja"
    listing = Listing.FIRST

    sets: tuple[MovedSet, ...]

    @property
    def framed(self) -> tuple[tuple[Entry, ...], ...]:
        return (tuple(one.entry for one in self.sets),)


def _pages(season: Season, _: Sequence[Page]) -> Iterator[MotionPage]:
    sets = tuple(_set(sheet, i, season) for i, sheet in enumerate(season.motions, 1))
    if sets:
        yield MotionPage(id="motions", name="Motions and shifts", sets=sets)


KIND = PageKind(12, _pages, reads=Reads.CALLS)


def _set(sheet: MotionSheet, number: int, season: Season) -> MovedSet:
    formation = sheet.view.call.formation
    entry = Entry(f"motion-{number}", sheet.name, sheet.view, listed=False, aside=f"in {formation}")
    together: dict[str, list[str]] = {}
    for task in sheet.view.assignments:
        if task.motion is not None:
            words = task.motion.words.removeprefix(sheet.name).lstrip(" ,")
            together.setdefault(words, []).append(task.man)
    used = (play.call.concept for play in season.plays if play.call.motion == sheet.name)
    moves = tuple((" ".join(men), words) for words, men in together.items())
    return MovedSet(entry, moves, tuple(dict.fromkeys(used)))

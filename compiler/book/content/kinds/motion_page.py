"""Motions and shifts: each once, in the formation most often called with it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from stemline.book.content.keeping import Reads
from stemline.book.content.page import Entry, Listing, Page, PageKind
from stemline.describe.phrases import yards
from stemline.football.play import Motion, MotionSheet, Season
from stemline.geometry.paths import length


@dataclass(frozen=True)
class MovedSet:
    """A motion: its picture, what each man does who moves, the concepts called with it, and the
    coach's own words."""

    entry: Entry
    moves: tuple[tuple[str, str], ...]
    concepts: tuple[str, ...]
    says: tuple[str, ...] = ()


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
        if task.motion is not None and moves(task.motion):
            words = as_it_happens(task.motion, sheet.name)
            together.setdefault(words, []).append(task.man)
    used = (play.call.concept for play in season.plays if play.call.motion == sheet.name)
    rows = tuple((" ".join(men), words) for words, men in together.items())
    return MovedSet(entry, rows, tuple(dict.fromkeys(used)), sheet.says)


def moves(motion: Motion) -> bool:
    """Whether he goes anywhere: who stands already where the motion brings him does not."""
    return length(motion.path.corners) > _STANDS


def as_it_happens(motion: Motion, name: str) -> str:
    """``across the ball, set``: which way he goes, where the motion's words say only how."""
    how = motion.words.removeprefix(name).lstrip(" ,")
    if how not in ("set", "running"):
        return how
    start, end = motion.path.start, motion.path.end
    steps = [b.x - a.x for a, b in pairwise(motion.path.corners) if abs(b.x - a.x) > _STANDS]
    if any(a * b < 0 for a, b in pairwise(steps)):
        inward = steps[0] * start.x < 0
        return f"{'in, then out' if inward else 'out, then in'}, {how}"
    if start.x * end.x < 0:
        return f"across the ball, {how}"
    wider = abs(end.x) - abs(start.x)
    ways = [f"{'out' if wider > 0 else 'in'} {yards(abs(wider))}"] * (abs(wider) >= _A_YARD)
    if min(-start.y, -end.y) < _A_YARD / 2 <= abs(start.y - end.y):
        ways.append("off the line" if end.y < start.y else "up to the line")
    return ", ".join((" and ".join(ways), how)) if ways else how


_STANDS = 0.1
"""Yards that are no way to go."""
_A_YARD = 1.0

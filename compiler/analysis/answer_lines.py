"""The concepts that have no answer to a look, as lines of a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from stemline.diagnostics.in_words import how_many
from stemline.football.timing.answers import Faced

MOST_CONCEPTS = 8
MOST_LOOKS = 3
"""Concepts, and looks of one, that are named before the others are counted: what a coach reads at
the end of a check. Each has its own table under `--timing`."""
SHARE = 0.5
"""The part of a concept's calls that have no answer from which the concept itself has none; below
it, it is the set that a call is made from. A choice of ours."""


@dataclass(frozen=True)
class _LookAnswered:
    """A concept against a look: how many of its calls have no answer, of how many, and when the
    first free rusher is there in these (None where he is blocked in all)."""

    look: str
    without: int
    calls: int
    rusher: float | None


def answer_lines(faced: Iterable[Faced]) -> Iterator[str]:
    """A short paragraph, a line a concept, those with most to answer first; nothing at all where
    every concept has an answer to every look."""
    concepts = {name: _cells(rows) for name, rows in _by_concept(faced).items()}
    open_ones = {
        name: cells
        for name, every in concepts.items()
        if (cells := [c for c in every if c.without >= SHARE * c.calls])
    }
    if not open_ones:
        return
    yield "no answer by the clock (planning figures): nobody open or nearly, no hot throw in time"
    worst = sorted(open_ones, key=lambda name: -sum(c.without for c in open_ones[name]))
    yield from (f"    {name} against {_against(open_ones[name])}" for name in worst[:MOST_CONCEPTS])
    if len(worst) > MOST_CONCEPTS:
        yield f"    and {how_many(len(worst) - MOST_CONCEPTS, 'more concept')}"


def _by_concept(faced: Iterable[Faced]) -> dict[str, list[Faced]]:
    rows: dict[str, list[Faced]] = {}
    for one in faced:
        rows.setdefault(one.concept, []).append(one)
    return rows


def _cells(rows: Sequence[Faced]) -> list[_LookAnswered]:
    """One concept's cells that somebody is left over in, in the order of the looks."""
    cells = []
    for look in dict.fromkeys(one.look for one in rows):
        here = [one.answer for one in rows if one.look == look]
        bare = [answer for answer in here if not answer.given]
        rusher = min((a.rusher for a in bare if a.rusher is not None), default=None)
        if bare:
            cells.append(_LookAnswered(look, len(bare), len(here), rusher))
    return cells


def _against(cells: Sequence[_LookAnswered]) -> str:
    """``Zero, Two Man and 2 more looks in 3 to 4 of 4 calls, a free rusher at 1.7 s``."""
    named = ", ".join(cell.look for cell in cells[:MOST_LOOKS])
    more = len(cells) - MOST_LOOKS
    others = f" and {how_many(more, 'more look')}" if more > 0 else ""
    least, most = min(c.without for c in cells), max(c.without for c in cells)
    calls = max(c.calls for c in cells)
    number = f"{least} to {most}" if least < most else f"{most}"
    part = "" if least == calls else f" in {number} of {calls} calls"
    first = min((c.rusher for c in cells if c.rusher is not None), default=None)
    free = "" if first is None else f", a free rusher at {first:.1f} s"
    return f"{named}{others}{part}{free}"

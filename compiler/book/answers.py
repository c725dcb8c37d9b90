"""Reads by looks: for each read of a concept and each look, how open its man is at the catch."""

from __future__ import annotations

from stemline.book.fronts import NOTHING
from stemline.book.model import Answers, Cell
from stemline.football.play import ConceptSheet
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import Against, Cover, against
from stemline.football.timing.levels import Level


def answers(sheet: ConceptSheet, level: Level) -> Answers | None:
    """The table of a pass concept's first call; None where there is no look to stand against.

    A column a look, a row a read; ``first`` of a cell tells the read that the look leaves open
    first.
    """
    stood = [against(play, read_clock(play, level), level) for play in sheet.faced]
    if not stood:
        return None
    rows = []
    for i, read in enumerate(sheet.faced[0].reads):
        cells = tuple(_cell(one, i) for one in stood)
        rows.append((str(read.number), read.target, cells))
    return Answers(tuple(one.look for one in stood), tuple(rows))


def _cell(one: Against, read: int) -> Cell:
    if read >= len(one.reads):
        return Cell(NOTHING, "", "never")  # against this look one man fewer is read
    part = one.reads[read]
    near = part.cover in (Cover.OPEN, Cover.TIGHT)
    words = f"{part.yards:.0f}" if near else NOTHING
    return Cell(words, part.nearest, part.cover.name.lower(), one.best is part)

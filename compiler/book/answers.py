"""Reads by looks: for each read of a concept and each look, how open its man is at the catch."""

from __future__ import annotations

from stemline.book.fronts import NOTHING
from stemline.book.letters import mark
from stemline.book.model import Answers, Cell
from stemline.football.play import ConceptSheet
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import TOLD, Against, Cover, against
from stemline.football.timing.levels import Level


def answers(sheet: ConceptSheet, level: Level) -> Answers | None:
    """The table of a pass concept's first call; None where there is no look to stand against.

    A column a look, a row a read; ``first`` of a cell tells the read that the look leaves open
    first. Under them when a free rusher is there, and the hot throw.
    """
    stood = [against(play, read_clock(play, level), level) for play in sheet.faced]
    if not stood:
        return None
    rows = []
    for i, read in enumerate(sheet.faced[0].reads):
        cells = tuple(_cell(one, i) for one in stood)
        rows.append((str(read.number), read.target, cells))
    free = any(one.rusher is not None for one in stood)
    rushers = tuple(_rusher(one) for one in stood) if free else ()
    return Answers(tuple(one.look for one in stood), tuple(rows), rushers)


def _rusher(one: Against) -> tuple[str, str]:
    """When a free rusher is there, and what the pressure order throws before."""
    if one.rusher is None:
        return "", ""
    hot = one.hot.read.read.target if one.hot else NOTHING
    return f"{one.rusher:.1f} s", hot if one.pressure else ""


def _cell(one: Against, read: int) -> Cell:
    if read >= len(one.reads):
        return Cell(NOTHING, "", "never")  # against this look one man fewer is read
    part = one.reads[read]
    near = part.cover in (Cover.OPEN, Cover.TIGHT)
    words = f"{min(part.yards, TOLD):.0f}" if near else NOTHING
    if near and part.yards > TOLD:
        words += "+"
    return Cell(words, mark(part.nearest), part.cover.name.lower(), one.best is part)

"""Reads by looks: for each read of a concept and each look, how open its man is at the catch."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from stemline.book.content.block_table import NOTHING
from stemline.book.content.letters import mark
from stemline.football.play import Season
from stemline.football.put_to_looks import LookAnswered, PutToLooks
from stemline.football.timing.answers import check_to
from stemline.football.timing.coverage import TOLD, Cover
from stemline.football.timing.levels import LEVELS
from stemline.football.timing.putting import put_to_looks


@dataclass(frozen=True)
class ThrowCell:
    """A read against a look: yards to the nearest defender and his letter, "open", "tight",
    "covered", "late" or "never", and whether it is the read that is thrown to."""

    words: str
    nearest: str
    cover: str
    first: bool = False


@dataclass(frozen=True)
class Answers:
    """Reads by looks: a column for each of ``looks``, a row a read: number, target, cells.

    ``rushers`` are, where any look has a free one, a cell a look: when he is at the passer (""
    where all are blocked), and what the pressure order throws before; ``rusher`` is the soonest
    of them, in seconds. ``checks`` are, where any look leaves nobody, a cell a look: what to check
    to ("" where somebody is there).
    """

    looks: tuple[str, ...]
    rows: tuple[tuple[str, str, tuple[ThrowCell, ...]], ...]
    rushers: tuple[tuple[str, str], ...] = ()
    checks: tuple[str, ...] = ()
    rusher: float | None = None


def answers(season: Season) -> dict[str, Answers]:
    """The table of each pass concept's first call, by the concept's name; none of one that stands
    against no look.

    A column a look, a row a read; ``first`` of a cell tells the read that is thrown to. Under them
    when a free rusher is there, and the hot throw; and what to check to where nobody is open.
    """
    level = LEVELS[season.level]
    known = ((s.put, s.faced) for s in season.concepts)
    stood = [put or put_to_looks(faced, level) for put, faced in known if put or faced]
    return {one.concept: _table(one, check_to(one, stood)) for one in stood}


def _table(one: PutToLooks, checks: Mapping[str, str]) -> Answers:
    rows = tuple(
        (number, target, tuple(_cell(row, i) for row in one.rows))
        for i, (number, target) in enumerate(one.reads)
    )
    first = min((row.rusher for row in one.rows if row.rusher is not None), default=None)
    return Answers(
        looks=tuple(row.look for row in one.rows),
        rows=rows,
        rushers=tuple(map(_rusher, one.rows)) if first is not None else (),
        checks=tuple(_check(row.look, checks) for row in one.rows) if checks else (),
        rusher=first,
    )


def _rusher(one: LookAnswered) -> tuple[str, str]:
    """When a free rusher is there, and what the pressure order or the hot throws before."""
    if one.rusher is None:
        return "", ""
    return f"{one.rusher:.1f} s", one.told or NOTHING


def _check(look: str, checks: Mapping[str, str]) -> str:
    """What to check to where nobody is open: a concept of the book, else out of the call."""
    return checks[look] or "another call" if look in checks else ""


def _cell(one: LookAnswered, read: int) -> ThrowCell:
    if read >= len(one.reads):
        return ThrowCell(NOTHING, "", "never")  # against this look one man fewer is read
    part = one.reads[read]
    cover = Cover[part.cover]
    if cover is Cover.LATE:
        return ThrowCell("late", "", "late")
    if cover is Cover.NEVER:  # nobody runs it where its man has picked up a rusher
        return ThrowCell(NOTHING if part.run else "blocks", "", "never")
    words = NOTHING
    if cover in (Cover.OPEN, Cover.TIGHT):
        words = f"{min(part.yards, TOLD):.0f}" + ("+" if part.yards > TOLD else "")
    if cover is Cover.TIGHT:
        words = f"({words})"
    return ThrowCell(words, mark(part.nearest), cover.name.lower(), one.best == read)

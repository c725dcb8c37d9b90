"""Every pass against every look of the playbook: who has an answer, by the clock.

What is known from the last check is taken from there. The rest is worked out from sealed values
alone, by several processes where there is much of it, and comes in the same order either way.
"""

from __future__ import annotations

import gc
import hashlib
import os
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass, replace
from functools import lru_cache
from multiprocessing import get_context

from stemline.football.conditions import LookWord
from stemline.football.defenders import Defence
from stemline.football.field import Side
from stemline.football.play import Call
from stemline.football.timing.answers import Answer, Faced, answer
from stemline.football.timing.levels import PlayingLevel
from stemline.outside.cache import Cache, Row
from stemline.outside.program import program
from stemline.playbook.playbook import Playbook
from stemline.resolve.cast import CallParts, Cast
from stemline.resolve.expand import CalledAt, Expander, called_at
from stemline.resolve.order import Order
from stemline.resolve.sealing import Sealed, seal, unsealed

POOL = 900
"""Calls by looks from which a second process pays: it needs about a second before it works."""
NEVER = 10**9
"""What ``pool`` is where the work is done here, whatever it is."""
_CHUNK = 12
_NOBODY = Call("", Side.RIGHT, "", "", (), "")
"""What a call is named decides nothing."""


@dataclass(frozen=True)
class _SealedCall:
    """One call and the looks it is still to be put to, all sealed; ``keys`` of what comes of it."""

    program: str
    keys: tuple[str, ...]
    level: Sealed[PlayingLevel]
    casting: Sealed[CallParts]
    defences: tuple[Sealed[Defence], ...]


def face(
    book: Playbook,
    orders: Sequence[Order],
    cache: Cache,
    *,
    pool: int = POOL,
    expander: Expander | None = None,
) -> tuple[Faced, ...]:
    """The answer of each call to each look, from the middle of the field, in the order of the
    calls; nothing of a call that reads nobody, or cannot stand against a look.

    From ``pool`` pairs on that are not known yet several processes share the work. ``expander`` is
    the book's, where somebody has lined its looks up before.
    """
    known = cache.rows() if program() else {}
    sealing = _Sealing(book, expander or Expander(book))
    cells = [cell for order in orders for cell in sealing.cells(order)]
    work = list(_missing(cells, known, sealing.level))
    made = {
        key: row
        for asked, rows in zip(work, _done(work, pool), strict=True)
        for key, row in zip(asked.keys, rows, strict=True)
    }
    used = {c.key: made[c.key] if c.key in made else known[c.key] for c in cells}
    if program():
        cache.keep(used, known)
    return tuple(
        Faced(cell.concept, cell.call, cell.look, Answer(*row))
        for cell in cells
        if (row := used[cell.key]) is not None
    )


@dataclass(frozen=True)
class _CallAgainst:
    """A call and a look, and the key of what comes of them."""

    concept: str
    call: str
    look: str
    casting: Sealed[CallParts]
    defence: Sealed[Defence]
    key: str


class _Sealing:
    """Seals the calls of one playbook; calls of one set share their defences."""

    def __init__(self, book: Playbook, expander: Expander) -> None:
        self._book = book
        self._expander = expander
        self.level = seal(book.settings.level)
        self._defences: dict[tuple[str, CalledAt], Sealed[Defence] | None] = {}

    def cells(self, order: Order) -> Iterator[_CallAgainst]:
        casting = self._expander.casting(order, order.timed_from)
        if casting is None:
            return
        call = casting.call
        sealed = seal(replace(casting, call=_NOBODY, family=""))
        begun = hashlib.sha256(program().encode())
        for part in (self.level, sealed):
            begun.update(hashlib.sha256(part).digest())
        for key, look in self._book.looks.items():
            defence = self._defence(key, order)
            if defence is not None:
                digest = begun.copy()
                digest.update(hashlib.sha256(defence).digest())
                name = digest.hexdigest()[:32]
                yield _CallAgainst(call.concept, call.spoken, look.name, sealed, defence, name)

    def _defence(self, look: str, order: Order) -> Sealed[Defence] | None:
        """The look against the call's men, sealed; None where it cannot line up."""
        at = called_at(self._book, order, order.timed_from)
        assert at is not None, "it was cast there"
        key = look, at
        if key not in self._defences:
            made, _ = self._expander.defence(*key)
            self._defences[key] = seal(made) if made is not None else None
        return self._defences[key]


def _missing(
    cells: Iterable[_CallAgainst], known: dict[str, Row], level: Sealed[PlayingLevel]
) -> Iterator[_SealedCall]:
    """The work that is left, a call at a time; what two calls have in common is done once."""
    asked: dict[Sealed[CallParts], dict[str, Sealed[Defence]]] = {}
    for cell in cells:
        if cell.key not in known:
            asked.setdefault(cell.casting, {})[cell.key] = cell.defence
    for casting, defences in asked.items():
        yield _SealedCall(program(), tuple(defences), level, casting, tuple(defences.values()))


def _done(work: Sequence[_SealedCall], pool: int) -> Iterable[tuple[Row, ...]]:
    """The rows of each piece of work, in order."""
    number = processors()
    if number < 2 or sum(len(w.defences) for w in work) < pool:
        return [worked(w) for w in work]
    try:
        # A started process knows nothing of this one: the same on every system.
        with ProcessPoolExecutor(
            number, mp_context=get_context("spawn"), initializer=gc.disable
        ) as executor:
            return list(executor.map(_worked_elsewhere, work, chunksize=_CHUNK))
    except (BrokenProcessPool, OSError, ImportError, OtherProgram):
        return [worked(w) for w in work]  # a machine that lets nobody start a process


def processors() -> int:
    """How many processes may work side by side."""
    return min(len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else
               os.cpu_count() or 1, 8)  # fmt: skip


class OtherProgram(Exception):
    """A process was started from a source that is not the one its parent runs."""


def _worked_elsewhere(work: _SealedCall) -> tuple[Row, ...]:
    if program() != work.program:
        raise OtherProgram
    return worked(work)


def worked(work: _SealedCall) -> tuple[Row, ...]:
    """The answers of one call, from nothing but sealed values."""
    level, cast = _level(work.level), Cast(unsealed(work.casting))
    return tuple(_row(cast, _defence(defence), level) for defence in work.defences)


def _row(cast: Cast, defence: Defence, level: PlayingLevel) -> Row:
    play, found = cast.play(tuple(LookWord(word) for word in defence.shows), defence)
    if any(d.is_error for d in found):
        return None
    got = answer(play, level)
    return (got.nearly, got.hot, got.rusher) if got is not None else None


@lru_cache(maxsize=4)
def _level(sealed: Sealed[PlayingLevel]) -> PlayingLevel:
    """A level once a process: what men of it run is remembered by the level itself."""
    return unsealed(sealed)


@lru_cache(maxsize=1024)
def _defence(sealed: Sealed[Defence]) -> Defence:
    """A defence that calls of one set have in common."""
    return unsealed(sealed)

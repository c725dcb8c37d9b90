"""What a check and the clock say of one playbook's calls: kept from the last time, else found now.

What is said of a call hangs on the playbook's texts, the program and its grammar. It is kept under
all of them, as plain text, so a stale answer cannot come out.
"""

from __future__ import annotations

import gc
import hashlib
import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from dataclasses import replace
from itertools import groupby
from multiprocessing import get_context

from stemline.analysis.passes_against_looks import NEVER, OtherProgram, face, processors
from stemline.football.timing.answers import Faced
from stemline.outside.cache import Cache, Row
from stemline.outside.program import bundled, program
from stemline.outside.store import Store
from stemline.session import Session
from stemline.source import Source

NO_ANSWER = "no answer"
"""What stands for a code where the clock speaks and not a check."""

SaidOfCall = Mapping[tuple[str, str], str]
"""(code, text without the call's name, or the look that has no answer) → text."""

APART = 60
"""Calls from which one more process pays: it needs a second before it works, and a call takes some
25 ms."""
MOST = 4
"""Processes that share a comparison at most: each has to read the texts of its side again."""
STAY = 12
"""Of a share one call in so many stays here: about what another process could do until it has read
the texts."""


class SideAnalysis:
    """What is said of the calls of one session."""

    def __init__(self, session: Session, cache: Cache, store: Store) -> None:
        self._session, self._cache = session, cache
        self._store = store if program() else Store(None)
        self._texts = tuple(tree.source for tree, _ in session.trees)
        begun = hashlib.sha256(f"{program()} {bundled()}".encode())
        for source in self._texts:
            begun.update(hashlib.sha256(source.text.encode("utf-8", "surrogatepass")).digest())
        self._begun = begun

    def kept(self, calls: Sequence[str], looks: Sequence[str] = ()) -> dict[str, SaidOfCall]:
        """What is known of these calls from before."""
        asked = {call: self._key(call, looks) for call in calls}
        rows = {call: _read(self._store.get(key)) for call, key in asked.items()}
        return {call: said for call, said in rows.items() if said is not None}

    def keep(self, said: Mapping[str, SaidOfCall], looks: Sequence[str] = ()) -> None:
        for call, row in said.items():
            self._store.put(self._key(call, looks), _written(row))

    def against(self, calls: Sequence[str], looks: Sequence[str]) -> dict[str, SaidOfCall]:
        """Which of these looks, by their keys, the calls have no answer to, proving nothing."""
        said = self.kept(calls, looks)
        left = [call for call in dict.fromkeys(calls) if call not in said]
        book, by_name = self._session.book, self._session.calls.by_name
        assert book is not None, "both sides were read"
        some = replace(book, looks={key: book.looks[key] for key in looks})
        told: dict[str, dict[tuple[str, str], str]] = {call: {} for call in left}
        orders, maker = [by_name[call] for call in left], self._session.expander
        _tell(told, face(some, orders, self._cache, pool=NEVER, expander=maker))
        self.keep(told, looks)
        return {**said, **told}

    def checked(self, calls: Sequence[str]) -> list[str]:
        """Those of which a check has kept all: of them nothing has to be worked out."""
        return [call for call in calls if self._session.is_known(call)]

    def found(self, calls: Sequence[str], *, alone: bool = False) -> dict[str, SaidOfCall]:
        """What is said of these calls, from what a check has kept of them, else worked out now.

        ``alone`` tells that no other process may share the work.
        """
        return _found(self._session, calls, self._cache, alone=alone) if calls else {}

    def asked_elsewhere(self, pool: ProcessPoolExecutor, calls: Sequence[str]) -> _Later:
        return pool.submit(_found_elsewhere, program(), self._texts, tuple(calls), self._cache)

    def _key(self, call: str, looks: Sequence[str]) -> str:
        digest = self._begun.copy()
        about = "\0".join(("what follows", call, *looks))
        digest.update(about.encode("utf-8", "surrogatepass"))
        return digest.hexdigest()[:40]


_Later = Future[dict[str, SaidOfCall]]
_Asked = tuple[int, str]
"""A side, 0 for the old one, and a call of it."""


def both_said(
    sides: tuple[SideAnalysis, SideAnalysis], calls: tuple[Sequence[str], Sequence[str]]
) -> tuple[dict[str, SaidOfCall], dict[str, SaidOfCall]]:
    """What is said of the calls of each side. Where much is known neither from the last comparison
    nor from a check, other processes work out their share of it, of whichever side it is."""
    known = [side.kept(asked) for side, asked in zip(sides, calls, strict=True)]
    left = [
        [call for call in dict.fromkeys(asked) if call not in said]
        for asked, said in zip(calls, known, strict=True)
    ]
    made = _both_found(sides, left)
    for side, said in zip(sides, made, strict=True):
        side.keep(said)
    return {**known[0], **made[0]}, {**known[1], **made[1]}


def _both_found(
    sides: tuple[SideAnalysis, SideAnalysis], left: Sequence[Sequence[str]]
) -> tuple[dict[str, SaidOfCall], dict[str, SaidOfCall]]:
    old, new = sides
    known = [set(side.checked(calls)) for side, calls in zip(sides, left, strict=True)]
    # This process takes from the front, and has read the new side for what comes next.
    work = [(n, call) for n in (1, 0) for call in left[n] if call not in known[n]]
    shares = _shares(work, min(processors(), MOST))
    if not shares:
        return old.found(left[0]), new.found(left[1])
    away = {each for share in shares for each in share}
    rest = [[call for call in calls if (n, call) not in away] for n, calls in enumerate(left)]
    try:
        with _processes(len(shares)) as pool:
            later = [
                (n, sides[n].asked_elsewhere(pool, [call for _, call in calls]))
                for share in shares
                for n, calls in groupby(share, key=lambda each: each[0])
            ]
            made = [side.found(calls, alone=True) for side, calls in zip(sides, rest, strict=True)]
            for n, each in later:
                made[n].update(each.result())
            return made[0], made[1]
    except (BrokenProcessPool, OSError, ImportError, OtherProgram):
        # A machine that lets nobody start a process.
        return old.found(left[0]), new.found(left[1])


def _shares(work: Sequence[_Asked], most: int) -> list[Sequence[_Asked]]:
    """What other processes do of the work, from its end: one share less than ``most`` processes
    have work for; none where one is enough."""
    number = min(most, len(work) // APART)
    if number < 2:
        return []
    each = len(work) // number
    each -= each // STAY
    first = len(work) - each * (number - 1)
    return [work[at : at + each] for at in range(first, len(work), each)]


@contextmanager
def _processes(number: int) -> Iterator[ProcessPoolExecutor]:
    """Processes that know nothing of this one: the same on every system. An interrupt does not
    wait for them."""
    pool = ProcessPoolExecutor(number, mp_context=get_context("spawn"), initializer=gc.disable)
    try:
        yield pool
    finally:
        pool.shutdown(wait=False, cancel_futures=True)


def _found_elsewhere(
    asked_by: str, texts: tuple[Source, ...], calls: tuple[str, ...], cache: Cache
) -> dict[str, SaidOfCall]:
    if program() != asked_by:
        raise OtherProgram
    return _found(Session(texts, ""), calls, _ReadAlone(cache), alone=True)


def _found(
    session: Session, calls: Sequence[str], cache: Cache, *, alone: bool
) -> dict[str, SaidOfCall]:
    """What is said now. What a check has kept is used; what is found here is kept for it."""
    told: dict[str, dict[tuple[str, str], str]] = {call: {} for call in calls}
    orders, by_name = [], session.calls.by_name
    for call in told:
        proof = session.proof(call)
        for d in proof.found:
            text = d.message
            told[call].setdefault((d.code, text.replace(call, "")), text)
        if proof.right and proof.reads:
            orders.append(by_name[call])
    _tell(told, session.faced(orders, cache, alone=alone))
    return dict(told)


def _tell(told: Mapping[str, dict[tuple[str, str], str]], faced: Iterable[Faced]) -> None:
    """Put into ``told`` which looks the calls have no answer to."""
    for one in faced:
        if not one.answer.given:
            text = f"{one.concept} has no answer to {one.look} by the clock (planning figures)"
            told[one.call][NO_ANSWER, one.look] = text


class _ReadAlone(Cache):
    """A cache that is read and never written: of two that write at once one would lose rows."""

    def __init__(self, cache: Cache) -> None:
        self._cache = cache

    def rows(self) -> dict[str, Row]:
        return self._cache.rows()

    def keep(self, used: Mapping[str, Row], known: Mapping[str, Row]) -> None:
        pass


def _written(said: SaidOfCall) -> bytes:
    rows = [[*key, text] for key, text in said.items()]
    return json.dumps(rows, separators=(",", ":")).encode("utf-8", "surrogatepass")


def _read(data: bytes | None) -> SaidOfCall | None:
    """What was kept; None where there is nothing, or it is not as we write."""
    if not data:
        return None
    found: dict[tuple[str, str], str] = {}
    try:
        for row in json.loads(data):
            match row:
                case [str(code), str(about), str(text)]:
                    found[code, about] = text
                case _:
                    return None
    except (ValueError, TypeError, RecursionError):
        return None
    return found

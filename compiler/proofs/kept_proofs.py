"""Proofs taken from what is kept, else made and kept: a check proves what an edit reaches.

An answer is kept under all that it was worked out from (`call_readings.py`). Rows are JSON and are
read as that; one that is not as we write costs the time to prove again.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.outside.program import program
from stemline.outside.store import Store
from stemline.proofs.reading import Reading, key_of

T = TypeVar("T")


class KeptAnswers:
    """Answers in ``store`` by what was read for them; nothing is kept of a program that cannot be
    told."""

    def __init__(self, store: Store) -> None:
        self.keeps = bool(store.keeps and program())
        self._store = store

    def found(
        self, kind: str, reading: Callable[[], Reading], work: Callable[[], Iterable[Diagnostic]]
    ) -> tuple[Diagnostic, ...]:
        """What a question of that kind finds."""
        return self.answer(kind, reading, lambda: tuple(work()), found_written, found_read)

    def answer(
        self,
        kind: str,
        reading: Callable[[], Reading],
        work: Callable[[], T],
        write: Callable[[T, Reading], object],
        read: Callable[[object, Reading], T],
    ) -> T:
        """What ``work`` gives, from what is kept where it is; as JSON has it by ``write``, which
        raises ValueError for what cannot be kept, and by ``read``, for what it did not write."""
        if not self.keeps:
            return work()
        asked = reading()
        held = self.held(kind, asked, read)
        if held is not None:
            return held
        made = work()
        self.keep(kind, asked, made, write)
        return made

    def held(self, kind: str, asked: Reading, read: Callable[[object, Reading], T]) -> T | None:
        """What is kept; None where nothing is, or it is not as we write."""
        data = self._store.get(key_of(kind, asked)) if self.keeps else None
        if data is None:
            return None
        try:
            return read(json.loads(data), asked)
        except (ValueError, LookupError, TypeError, RecursionError):
            return None

    def keep(
        self, kind: str, asked: Reading, made: T, write: Callable[[T, Reading], object]
    ) -> None:
        if not (self.keeps and self._store.adding):
            return
        try:
            data = json.dumps(write(made, asked), separators=(",", ":"))
        except ValueError:
            return
        self._store.put(key_of(kind, asked), data.encode("utf-8", "surrogatepass"))


def found_written(found: Sequence[Diagnostic], reading: Reading) -> list[object]:
    if not found:
        return []
    # Every code is known to its check, and checks bring the numbers with them.
    from stemline.proofs.found_as_data import as_data

    return as_data(found, reading)


def found_read(held: object, reading: Reading) -> tuple[Diagnostic, ...]:
    if held == []:
        return ()
    from stemline.proofs.found_as_data import from_data

    return from_data(held, reading)

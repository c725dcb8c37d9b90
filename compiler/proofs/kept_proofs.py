"""Proofs taken from what is kept, else made and kept: a check proves what an edit reaches.

An answer is kept under all that it was worked out from (`call_readings.py`). Rows are JSON and are
read as that; one that is not as we write costs the time to prove again.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot
from stemline.outside.program import program
from stemline.outside.store import Store
from stemline.playbook.dress_ups import Dress
from stemline.playbook.playbook import Playbook
from stemline.proofs.call_readings import CallReadings, key_of
from stemline.proofs.play_facts_as_data import play_facts_as_data, play_facts_from_data
from stemline.proofs.reading import Reading
from stemline.resolve.expand import Expander, Order
from stemline.resolve.season import Calls, Proof, Prove, Proving, is_broken

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
        return self.answer(kind, reading, lambda: tuple(work()), _as_data, _from_data)

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


class KeptProving(Proving):
    """Proves the calls of one playbook that are not known to be right or wrong."""

    def __init__(
        self,
        book: Playbook,
        calls: Calls,
        expander: Expander,
        prove: Prove,
        readings: Callable[[], CallReadings],
        kept: KeptAnswers,
    ) -> None:
        super().__init__(book, calls, expander, prove)
        self._readings = readings
        self._kept = kept

    def _proof(self, dress: Dress, order: Order) -> Proof:
        prove = super()._proof
        return self._kept.answer(
            "proof",
            lambda: self._readings().call(order, self._bare(order), dress),
            lambda: prove(dress, order),
            _proof_as_data,
            _proof_from_data,
        )

    def held(self, dress: Dress, order: Order) -> Proof | None:
        """The proof of a call, where it is known and nothing has to be worked out."""
        if order not in self._proofs and not is_broken(self.book, order):
            reading = self._readings().call(order, self._bare(order), dress)
            held = self._kept.held("proof", reading, _proof_from_data)
            if held is None:
                return None
            self._proofs[order] = held
        return self.proof(dress, order)

    def from_spot(self, order: Order, spot: BallSpot) -> Sequence[Diagnostic]:
        prove = super().from_spot
        return self._kept.found(
            f"from {spot.value}",
            lambda: self._readings().call(order, self._bare(order)),
            lambda: prove(order, spot),
        )

    def _unused(self, key: tuple[str, str]) -> Sequence[Diagnostic]:
        prove = super()._unused
        return self._kept.found(
            "unused",
            lambda: self._readings().unused_tag(key, self.plain_calls(key[0])),
            lambda: prove(key),
        )

    def _bare(self, order: Order) -> Order | None:
        return self.bare(order) if order.tags else None


def _as_data(found: Sequence[Diagnostic], reading: Reading) -> list[object]:
    if not found:
        return []
    # Every code is known to its check, and checks bring the numbers with them.
    from stemline.proofs.found_as_data import as_data

    return as_data(found, reading)


def _from_data(held: object, reading: Reading) -> tuple[Diagnostic, ...]:
    if held == []:
        return ()
    from stemline.proofs.found_as_data import from_data

    return from_data(held, reading)


def _proof_as_data(proof: Proof, reading: Reading) -> object:
    return [_as_data(proof.found, reading), play_facts_as_data(proof.facts)]


def _proof_from_data(held: object, reading: Reading) -> Proof:
    match held:
        case [found, facts]:
            return Proof(_from_data(found, reading), play_facts_from_data(facts))
    raise ValueError(held)

"""The proof of each call, from what is kept where it is: a check proves what an edit reaches."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot
from stemline.playbook.dress_ups import Dress
from stemline.playbook.playbook import Playbook
from stemline.proofs.call_readings import CallReadings
from stemline.proofs.kept_proofs import KeptAnswers, found_read, found_written
from stemline.proofs.play_facts_as_data import play_facts_as_data, play_facts_from_data
from stemline.proofs.reading import Reading
from stemline.resolve.all_calls import Calls, is_broken
from stemline.resolve.expand import Expander
from stemline.resolve.order import Order
from stemline.resolve.season import Proof, Prove, Proving


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


def _proof_as_data(proof: Proof, reading: Reading) -> object:
    return [found_written(proof.found, reading), play_facts_as_data(proof.facts)]


def _proof_from_data(held: object, reading: Reading) -> Proof:
    match held:
        case [found, facts]:
            return Proof(found_read(found, reading), play_facts_from_data(facts))
    raise ValueError(held)

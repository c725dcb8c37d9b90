"""What is asked of a call before its play is wanted, as JSON has it, and read back as that."""

from __future__ import annotations

from stemline.football.call_facts import CallFacts
from stemline.football.field import BallSpot
from stemline.proofs.reading import Reading


def facts_as_data(facts: CallFacts, _: Reading) -> object:
    return [facts.right, facts.reads, facts.run, facts.ball.value]


def facts_from_data(held: object, _: Reading) -> CallFacts:
    """The value that was written. Raises ValueError for what is not as we write."""
    match held:
        case [bool(right), bool(reads), bool(run), str(ball)]:
            return CallFacts(right, reads, run, BallSpot(ball))
    raise ValueError(held)

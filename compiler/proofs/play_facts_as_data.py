"""What is known of a call's play, as plain data to be kept with its proof."""

from __future__ import annotations

from stemline.football.field import BallSpot, Side
from stemline.football.play import Step
from stemline.resolve.play_facts import PlayFacts


def play_facts_as_data(facts: PlayFacts | None) -> object:
    if facts is None:
        return None
    feet = [
        [step.name, step.words, None if step.side is None else step.side.value, step.said]
        for step in facts.feet
    ]
    where = facts.side.value, facts.spot.value, facts.shape, facts.protection
    return [*where, feet, facts.reads]


def play_facts_from_data(held: object) -> PlayFacts | None:
    """Raises ValueError for what `play_facts_as_data` does not write."""
    match held:
        case None:
            return None
        case [
            int(side), str(spot), [int(strong), int(weak)], str(protection), list(feet),
            bool(reads),
        ]:  # fmt: skip
            where = Side(side), BallSpot(spot), (strong, weak)
            return PlayFacts(*where, protection, tuple(map(_step, feet)), reads)
    raise ValueError(held)


def _step(held: object) -> Step:
    match held:
        case [str(name), str(words), None, str(said)]:
            return Step(name, words, None, said)
        case [str(name), str(words), int(side), str(said)]:
            return Step(name, words, Side(side), said)
    raise ValueError(held)

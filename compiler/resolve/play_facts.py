"""What is kept of a call's play, so that its index, contents and tables need no play."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from stemline.football.field import BallSpot, Side
from stemline.football.later import later
from stemline.football.play import Play, Step
from stemline.playbook.playbook import Playbook
from stemline.resolve.expand import call_of
from stemline.resolve.order import Order


@dataclass(frozen=True)
class PlayFacts:
    """Of the play as it is drawn: the true side and the spot, the receivers to each side, the
    protection's name, the quarterback's feet, and whether he looks at anybody."""

    side: Side
    spot: BallSpot
    shape: tuple[int, int]
    protection: str
    feet: tuple[Step, ...]
    reads: bool


def facts_of(play: Play) -> PlayFacts:
    where = play.call.side, play.ball, play.shape
    return PlayFacts(*where, play.protection, play.feet, play.is_read)


def play_by_facts(
    book: Playbook, order: Order, facts: PlayFacts, make: Callable[[], Play | None]
) -> Play:
    """The play that ``make`` gives, which is asked for more than the facts say of it."""
    concept = book.concepts[order.concept]
    known = {
        "call": call_of(book, order, facts.side),
        "family": concept.family,
        "kind": concept.kind,
        "shape": facts.shape,
        "protection": facts.protection,
        "feet": facts.feet,
        "ball": facts.spot,
        "is_read": facts.reads,
    }

    def fill(_: str) -> dict[str, object]:
        made = make()
        assert made is not None, "a call that is right has a play"
        return vars(made)

    return later(Play, known, fill)

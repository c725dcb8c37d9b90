"""A call by its names: what a dress-up orders, before any play is made of it."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.field import BallSpot, Side, Way
from stemline.source import Span


@dataclass(frozen=True)
class Order:
    """A call by the keys of its definitions; ``spoken`` as the coach calls it.

    ``span`` is where its formation is dressed up, ``tags_span`` its tags. ``second`` tells that it
    is what another call becomes at the line, ``turned`` that it then goes to the other side than
    the one its formation is called to: the men stay where they are. ``middle`` is the field side
    from the middle, None for none. ``best`` are the spots that it is best called from, none where
    its dress-up does not say; ``not_from`` those that it is never called from. ``goal`` is how many
    yards from their goal line it is called, and ``look`` the key of the look that it then is drawn
    against ("" for the base look).
    """

    formation: str
    way: Way
    motion: str
    concept: str
    tags: tuple[str, ...]
    spoken: str
    span: Span
    tags_span: Span
    middle: Side | None = Side.RIGHT
    best: tuple[BallSpot, ...] = ()
    not_from: frozenset[BallSpot] = frozenset()
    second: bool = False
    turned: bool = False
    goal: int | None = None
    look: str = ""

    def at(self, spot: BallSpot) -> Side | None:
        """The true side from a spot; None for a call by the field from a middle without one."""
        return self.way.at(spot, self.middle)

    @property
    def spots(self) -> tuple[BallSpot, ...]:
        """Those that it may be called from: where it has a side, less those that it is never
        called from."""
        return tuple(s for s in BallSpot if s not in self.not_from and self.at(s) is not None)

    @property
    def drawn_from(self) -> BallSpot:
        """The first spot that it is best called from, else the one that it is timed from."""
        return next((spot for spot in self.best if spot in self.spots), self.timed_from)

    @property
    def timed_from(self) -> BallSpot:
        """The middle; for a call by the field the hash from which it goes right. The first spot
        that it is called from where that is none of them."""
        usual = {Way.FIELD: BallSpot.LEFT_HASH, Way.BOUNDARY: BallSpot.RIGHT_HASH}
        wanted = (usual.get(self.way, BallSpot.MIDDLE), *self.spots)
        return next((spot for spot in wanted if spot in self.spots), BallSpot.MIDDLE)

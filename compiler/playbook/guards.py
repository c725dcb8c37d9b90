"""Which of several facts holds: the one whose condition is the narrowest."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from stemline.playbook.said import Said

T = TypeVar("T")


def narrowest(said: Iterable[Said[T]]) -> Said[T] | None:
    """The fact with the fewest worlds: the one that refines the others. Of two with as many it is
    the one that asks for a formation, and for fewer of them."""
    return min(said, key=_room, default=None)


def _room(said: Said[T]) -> tuple[int, bool, int]:
    guard = said.guard
    named = len(guard.formations)
    return len(guard.worlds) * guard.moves.bit_count(), not named, named

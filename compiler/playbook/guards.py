"""Which of several facts holds: the one whose condition is the narrowest."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from stemline.playbook.said import Said

T = TypeVar("T")


def narrowest(said: Iterable[Said[T]]) -> Said[T] | None:
    """The fact with the fewest worlds: the one that refines the others."""
    return min(said, key=lambda s: len(s.guard.worlds) * s.guard.moves.bit_count(), default=None)

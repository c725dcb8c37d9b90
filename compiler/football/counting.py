"""Counting receivers: outside in on each side, at the snap, and what follows from the count."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from stemline.football.field import Side
from stemline.football.landmarks import TACKLE_SPLIT, TIGHT_END_REACH
from stemline.football.play import Man, Rank
from stemline.football.players import Position


@dataclass(frozen=True)
class Count:
    """Receivers by side, widest first (labels), the strong side, and the men behind the ball."""

    left: tuple[str, ...]
    right: tuple[str, ...]
    strong: Side
    backs: tuple[str, ...]

    def on(self, side: Side) -> tuple[str, ...]:
        return self.left if side is Side.LEFT else self.right

    @property
    def weak(self) -> Side:
        return self.strong.other

    @property
    def shape(self) -> tuple[int, int]:
        """Receivers strong and weak: (3, 1)."""
        return len(self.on(self.strong)), len(self.on(self.weak))

    @property
    def shape_word(self) -> str:
        return "{}x{}".format(*self.shape)


def count(men: Iterable[Man], called: Side) -> Count:
    """Count eligible men outside the tackles at the snap; a tie is strong to the called side.

    Two men at one width (a stack) count by who is nearer the line. The rest, the quarterback
    apart, are backs, ordered from the deepest. Common practice, no published source.
    """
    eligible = [m for m in men if not m.interior and m.position is not Position.QUARTERBACK]
    wide = [m for m in eligible if abs(m.snap.x) > TACKLE_SPLIT]

    def outside_in(side: Side) -> tuple[str, ...]:
        mine = [m for m in wide if m.snap.x * side.value > 0]
        mine.sort(key=lambda m: (-abs(round(m.snap.x, 3)), -m.snap.y, m.label))
        return tuple(m.label for m in mine)

    left, right = outside_in(Side.LEFT), outside_in(Side.RIGHT)
    strong = called
    if len(left) != len(right):
        strong = Side.LEFT if len(left) > len(right) else Side.RIGHT
    backs = sorted((m for m in eligible if m not in wide), key=lambda m: (m.snap.y, m.label))
    return Count(left, right, strong, tuple(m.label for m in backs))


def ranked(men: Iterable[Man], counted: Count) -> tuple[Man, ...]:
    """The men with their rank filled in."""
    ranks = {
        label: Rank(side, number)
        for side in Side
        for number, label in enumerate(counted.on(side), 1)
    }
    return tuple(replace(m, rank=ranks.get(m.label)) for m in men)


def tight_ends(men: Iterable[Man]) -> tuple[str, ...]:
    """Men who are tight ends by place: on the line, within reach of a tackle."""
    return tuple(
        m.label
        for m in men
        if not m.interior
        and m.on_line
        and TACKLE_SPLIT < abs(m.snap.x) <= TACKLE_SPLIT + TIGHT_END_REACH
    )

"""Counting receivers: outside in on each side, at the snap, and what follows from the count."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property

from stemline.football.field import Side
from stemline.football.line import FULL_LINE, MOST_SPLIT
from stemline.football.offence.landmarks import SHORT_END_REACH, TACKLE_SPLIT, TIGHT_END_REACH
from stemline.football.play import Man, Rank
from stemline.football.players import Position
from stemline.football.rulebook.rules import custom

RUN_GAP = MOST_SPLIT + 0.2
"""Linemen farther apart than this do not stand in one run."""
_BACK_DEPTH = 2.0
"""Yards behind the line from which a man is behind it, not beside it: a slot or a wing stands
one yard off. Common practice."""
STACK_WIDTH = custom(1.0)
"""Two men less than this many yards apart across may be a stack, which counts by depth. Common
practice, no published source."""
STACK_DEPTH = custom(1.5)
"""The hind man of a stack is at least so many yards behind the front one: a wing, a yard behind an
end and half a yard outside him, is none. Common practice, no published source."""


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

    @cached_property
    def shape(self) -> tuple[int, int]:
        """Receivers strong and weak: (3, 1)."""
        return len(self.on(self.strong)), len(self.on(self.weak))

    @property
    def shape_word(self) -> str:
        return "{}x{}".format(*self.shape)


def count(men: Iterable[Man], called: Side) -> Count:
    """Count eligible men outside the tackles at the snap; a tie is strong to the called side.

    A man well behind the line is a back as far out as a usual tackle stands, however close or short
    the line is. Men of a stack, and two at one width, count by who is nearer the line. The rest,
    the quarterback apart, are backs, in the order of `_turn`. Common practice, no published source.
    """
    men = tuple(men)
    edges = tackles(men)
    eligible = [m for m in men if not m.interior and m.position is not Position.QUARTERBACK]
    wide = [m for m in eligible if _outside(m, edges)]

    def outside_in(side: Side) -> tuple[str, ...]:
        mine = [m for m in wide if m.snap.x * side.value > 0]
        mine.sort(key=lambda m: (-abs(round(m.snap.x, 3)), -m.snap.y, m.label))
        return tuple(m.label for m in _unstacked(mine))

    left, right = outside_in(Side.LEFT), outside_in(Side.RIGHT)
    strong = called
    if len(left) != len(right):
        strong = Side.LEFT if len(left) > len(right) else Side.RIGHT
    backs = sorted((m for m in eligible if m not in wide), key=lambda m: _turn(m, called))
    return Count(left, right, strong, tuple(m.label for m in backs))


def _unstacked(men: Iterable[Man]) -> list[Man]:
    """The men from outside in, and in a stack the nearer to the line first.

    A man goes before each man beside whom he is and who stands behind him, up to the first who is
    no such man: so nobody passes one who is wider and no part of the stack.
    """
    done: list[Man] = []
    for man in men:
        place = len(done)
        while place and _stacked(man, done[place - 1]):
            place -= 1
        done.insert(place, man)
    return done


def _stacked(front: Man, hind: Man) -> bool:
    """Whether ``hind`` stands in a stack behind ``front``."""
    across, back = abs(hind.snap.x - front.snap.x), front.snap.y - hind.snap.y
    return round(across, 3) < STACK_WIDTH.value and round(back, 3) >= STACK_DEPTH.value


def _turn(man: Man, called: Side) -> tuple[int, float, float, str]:
    """A back's turn: a back by position first and a fullback last, since a stated position decides
    before a place; of those alike the deepest, then whoever is nearer the called side."""
    rank = {Position.BACK: 0, Position.FULLBACK: 2}.get(man.position, 1)
    return rank, round(man.snap.y, 3), -round(man.snap.x * called.value, 3), man.label


def _outside(man: Man, edges: tuple[float, float]) -> bool:
    behind = not man.on_line and man.snap.y <= -_BACK_DEPTH
    least = TACKLE_SPLIT if behind else 0.0
    left, right = edges
    return man.snap.x > max(right, least) or man.snap.x < min(left, -least)


def tackles(men: Iterable[Man]) -> tuple[float, float]:
    """x of the last man of the interior line to the left and to the right, in yards.

    The line is the unbroken run of linemen over the ball: one who is split off is no edge of it.
    Without any (a play made for a test) the usual tackles stand.
    """
    line = sorted([m.snap.x for m in men if m.on_line and m.interior])
    if not line:
        return -TACKLE_SPLIT, TACKLE_SPLIT
    middle = min(range(len(line)), key=lambda i: abs(line[i]))
    left = right = middle
    while left > 0 and line[left] - line[left - 1] <= RUN_GAP:
        left -= 1
    while right + 1 < len(line) and line[right + 1] - line[right] <= RUN_GAP:
        right += 1
    return line[left], line[right]


def ranked(men: Iterable[Man], counted: Count) -> tuple[Man, ...]:
    """The men with their rank filled in."""
    ranks = {
        label: Rank(side, number)
        for side in Side
        for number, label in enumerate(counted.on(side), 1)
    }
    return tuple(
        man if man.rank == (rank := ranks.get(man.label)) else replace(man, rank=rank)
        for man in men
    )


def tight_ends(men: Iterable[Man]) -> tuple[str, ...]:
    """Men who are tight ends by place: on the line, within reach of its last lineman."""
    men = tuple(men)
    left, right = tackles(men)
    short = 0 < sum(m.interior for m in men) < FULL_LINE
    reach = SHORT_END_REACH if short else TIGHT_END_REACH
    return tuple(
        m.label
        for m in men
        if m.on_line
        and not m.interior
        and (0 < m.snap.x - right <= reach or 0 < left - m.snap.x <= reach)
    )

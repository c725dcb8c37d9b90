"""Who goes first in a stunt, as a number at the tip of each man's arrow on a look team's card."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from stemline.football.defenders import Defender
from stemline.geometry.box import Box
from stemline.geometry.paths import Point

TIP = -14.0
"""Points: how far past the line of scrimmage an arrow ends where nothing is in its way."""
WHITE = 4.0
"""Points between a number's tile and whatever else is on the card."""
_ASIDE = (0, 3, -3, 6, -6, 9, -9, 12, -12)
"""Points to a side of an arrow's tip where its number is tried: it stays over the arrow."""


def stunt_orders(defenders: Sequence[Defender]) -> dict[str, int]:
    """The turn of each man of a stunt by his label: 1 for who is waited for, 2 for who comes behind
    him, and so on. Nobody else has one."""
    after = {d.label: d.duty.behind for d in defenders if d.duty and d.duty.behind}

    def turn(label: str, seen: frozenset[str] = frozenset()) -> int:
        first = after.get(label)
        if first is None or label in seen:
            return 1
        return 1 + turn(first, seen | {label})

    return {label: turn(label) for pair in after.items() for label in pair}


@dataclass(frozen=True)
class OrderRoom:
    """A card on which numbers shall stand: what none may meet, ``rings`` by their middles and
    radii, and every line of it by whose it is; lengths in points."""

    frame: Box
    taken: Sequence[Box]
    rings: Sequence[tuple[Point, float]]
    lines: Mapping[str, Sequence[Point]]

    def placed(self, tiles: Mapping[str, tuple[float, float]]) -> dict[str, Box]:
        """The tile of each man, of so much width and height, past the tip of his arrow; nobody's
        where one finds no place."""
        for order in (list(tiles), list(tiles)[::-1]):
            found: dict[str, Box] = {}
            for label in order:
                tried = self._tried(self.lines[label], *tiles[label])
                free = (b for b in tried if self._free(b, label, found.values()))
                if (box := next(free, None)) is None:
                    break
                found[label] = box
            else:
                return found
        return {}

    def _tried(self, way: Sequence[Point], wide: float, tall: float) -> Iterator[Box]:
        for aside in _ASIDE:
            yield _tile(Point(way[-1].x + aside, way[-1].y - tall / 2 - WHITE), wide, tall)

    def _free(self, box: Box, label: str, others: Iterable[Box]) -> bool:
        room = box.grown(WHITE / 2)
        if not self.frame.holds(room):
            return False
        if any(room.overlap(each) > 0 for each in (*self.taken, *others)):
            return False
        if any(at.distance(_nearest(at, room)) < radius for at, radius in self.rings):
            return False
        return not any(
            _meets(a, b, box if of == label else room)
            for of, way in self.lines.items()
            for a, b in pairwise(way)
        )


def _tile(at: Point, wide: float, tall: float) -> Box:
    return Box(at.x - wide / 2, at.y - tall / 2, at.x + wide / 2, at.y + tall / 2)


def _nearest(at: Point, box: Box) -> Point:
    return Point(min(max(at.x, box.left), box.right), min(max(at.y, box.bottom), box.top))


def _meets(a: Point, b: Point, box: Box) -> bool:
    """Whether a straight piece comes into the box, to the point."""
    steps = max(1, int(a.distance(b)))
    along = (a + (b - a).scaled(i / steps) for i in range(steps + 1))
    return any(box.left < at.x < box.right and box.bottom < at.y < box.top for at in along)

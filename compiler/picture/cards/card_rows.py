"""Who stands where on a card, in points: rows by depth, and in a row nobody on another.

A card is read from three yards, so its letters are larger than the men's places on a field at
scale. Across, the box is opened up and the field outside it is closed; men keep their order, and
as near to their places as the room allows. Deep and shallow are told in rows.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from stemline.geometry.paths import Point


@dataclass(frozen=True)
class Standee:
    """What stands on a card: at ``want``, in yards, were it to scale; ``wide`` and ``tall`` are
    half of what it takes, in points."""

    name: str
    want: Point
    wide: float
    tall: float


@dataclass(frozen=True)
class CardScale:
    """A map that only rises, straight from each of its points to the next, and on beyond."""

    points: tuple[tuple[float, float], ...]

    def __call__(self, value: float) -> float:
        keys = [a for a, _ in self.points]
        at = min(max(bisect_right(keys, value), 1), len(keys) - 1)
        (a, x), (b, y) = self.points[at - 1], self.points[at]
        return x + (value - a) * (y - x) / (b - a)


def scale_through(pairs: Sequence[tuple[float, float]]) -> CardScale:
    """The map through the ``pairs``; of two that begin alike their middle, and past the last on as
    before. At least two of them have to differ."""
    by_key: dict[float, list[float]] = {}
    for key, value in sorted(pairs):
        by_key.setdefault(round(key, 3), []).append(value)
    return CardScale(tuple((key, sum(vs) / len(vs)) for key, vs in sorted(by_key.items())))


def across(
    box: tuple[float, float], ends: tuple[float, float], yard: float, wide: float
) -> CardScale:
    """From yards to points: ``yard`` points each in the ``box``, the rest of ``wide`` points shared
    by what lies outside it as far as the ``ends``, but no yard longer than in the box."""
    (left, right), outside = box, box[0] - ends[0] + ends[1] - box[1]
    room = wide - yard * (right - left)
    each = min(yard, room / outside) if outside > 0 else yard
    begin = (wide - yard * (right - left) - each * outside) / 2
    a = begin + each * (left - ends[0])
    b = a + yard * (right - left)
    return scale_through(((left - 1.0, a - each), (left, a), (right, b), (right + 1.0, b + each)))


def in_row(
    wants: Sequence[float], halves: Sequence[float], gap: float, low: float, high: float
) -> list[float]:
    """Places on a line, in order, each two ``gap`` apart from edge to edge, as near to the wanted
    ones as can be (the least sum of squares), within ``low`` and ``high`` where they find room."""
    offsets = [0.0]
    for a, b in pairwise(halves):
        offsets.append(offsets[-1] + a + b + gap)
    blocks: list[list[float]] = []  # mean, count: pooled neighbours that would stand too close
    for want, offset in zip(wants, offsets, strict=True):
        blocks.append([want - offset, 1.0])
        while len(blocks) > 1 and blocks[-2][0] > blocks[-1][0]:
            mean, count = blocks.pop()
            before = blocks[-1]
            whole = before[1] + count
            blocks[-1] = [(before[0] * before[1] + mean * count) / whole, whole]
    least, most = low + halves[0], high - halves[-1] - offsets[-1]
    begins = [max(min(mean, most), least) for mean, count in blocks for _ in range(round(count))]
    return [begin + offset for begin, offset in zip(begins, offsets, strict=True)]


def rows_of(standing: Sequence[Standee], deep: float) -> list[list[Standee]]:
    """Those who stand within ``deep`` yards of the first of a row are in that row."""
    rows: list[list[Standee]] = []
    for each in sorted(standing, key=lambda s: s.want.y):
        if not rows or each.want.y - rows[-1][0].want.y > deep:
            rows.append([])
        rows[-1].append(each)
    return rows

"""Where small words and tiles go: near their place, on no line, no symbol, no other word.

Each label has ranked places around its anchor: sixteen directions at a few distances, the
direction that its maker prefers being the cheapest. A place costs its rank, the ink under it and
the other labels it would lie on. Labels take their cheapest place one after the other, then each
in turn moves to a cheaper place as long as any does: a discrete descent as in Christensen, Marks
and Shieber, "An Empirical Study of Algorithms for Point-Feature Label Placement", ACM
Transactions on Graphics 14(3), 1995. It draws no lots, so a picture never changes by itself. It
finds a good arrangement, not always the best one.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from stemline.draw.ink import Ink
from stemline.draw.scene import Box
from stemline.paths import Point

_WAYS = 16
_RINGS = ((0.0, 0.0), (1.0, 1.3), (2.2, 3.0), (3.8, 5.5), (6.0, 9.0), (9.0, 15.0))
"""Distances from the anchor, in ``stride``, and what each costs."""
_ON_LINE = 2.0
_CROWD = 0.04
"""Cost of ink near a label but not under it: a number stands nearest to its own line."""
_MISREAD = 3.0
"""Cost of standing so that the label might belong to another label's place."""
_CLEARLY = 1.5
"""Its own place must be this many times nearer than any other."""
_CUT_OFF = 1.0
"""Cost of a line between a label and its place."""
_ON_SYMBOL = 30.0
_LEADER_ON_SYMBOL = 4.0
"""Cost of each of seven places along a leader that lies on a symbol."""
_ON_LABEL = 25.0
_OUTSIDE = 60.0
_PASSES = 4
_ROOM = 1
"""Rings beyond the first that a label may always fall back to when another needs its place."""
_LEADER_FROM = 1.9
"""A label farther off than this many strides gets a leader."""


@dataclass(frozen=True)
class Wanted:
    """A label to place. ``at`` is what it labels; ``gap`` yards of white to it; ``toward`` the
    direction it would rather lie in, and ``hold`` what the opposite direction costs."""

    at: Point
    width: float
    height: float
    gap: float
    toward: Point
    hold: float


@dataclass(frozen=True)
class Placed:
    """Where a label went, and the ends of its leader if it had to go far."""

    box: Box
    leader: tuple[Point, Point] | None


@dataclass(frozen=True)
class _Place:
    box: Box
    cost: float
    ring: int


def place(
    wanted: Sequence[Wanted], ink: Ink, frame: Box, stride: float, pad: float
) -> tuple[Placed, ...]:
    """A place for each label. ``stride`` is a step away from the anchor and ``pad`` the white
    around a label, both in yards."""
    anchors = tuple(dict.fromkeys(w.at for w in wanted))
    choices = [_places(w, anchors, ink, frame, stride, pad) for w in wanted]
    near = _neighbours(choices, pad)
    taken: list[int] = []
    for index, places in enumerate(choices):
        others = [choices[o][taken[o]].box for o in near[index] if o < index]
        taken.append(_cheapest(places, others, pad))
    for _ in range(_PASSES):
        moved = False
        for index, places in enumerate(choices):
            others = [choices[o][taken[o]].box for o in near[index]]
            best = _cheapest(places, others, pad)
            moved |= best != taken[index]
            taken[index] = best
        if not moved:
            break
    return tuple(
        Placed(p.box, _leader(w.at, p.box) if _RINGS[p.ring][0] > _LEADER_FROM else None)
        for w, p in ((w, choices[i][taken[i]]) for i, w in enumerate(wanted))
    )


def _places(
    want: Wanted, anchors: Sequence[Point], ink: Ink, frame: Box, stride: float, pad: float
) -> list[_Place]:
    """The places a label may take, the nearest ring first; rings that cannot win are left out."""
    made: list[_Place] = []
    facing = math.atan2(want.toward.y, want.toward.x)
    for ring, (far, dear) in enumerate(_RINGS):
        for way in range(_WAYS):
            turn = way * 2 * math.pi / _WAYS
            box = _box(want, facing + turn, want.gap + far * stride)
            cost = dear + want.hold * (1 - math.cos(turn)) / 2
            if not frame.holds(box):
                cost += _OUTSIDE
            elif ink.covers(box.grown(pad / 2)):
                cost += _ON_SYMBOL
            else:
                under, beside = ink.under(box.grown(pad), 2 * pad)
                cost += _ON_LINE * under + _CROWD * beside
                cost += _CUT_OFF * _cut_off(want.at, box, ink, pad)
                cost += _MISREAD * _misread(want.at, box, anchors, 2 * stride)
                if far > _LEADER_FROM:
                    cost += _leader_cost(want.at, box, ink)
            made.append(_Place(box, cost, ring))
        after = _RINGS[min(ring + 1, len(_RINGS) - 1)][1]
        if ring >= _ROOM and min(p.cost for p in made) <= after:
            break
    return made


def _misread(at: Point, box: Box, anchors: Sequence[Point], near: float) -> int:
    """How many other labels' anchors this one might be read as belonging to."""
    far = min(_CLEARLY * _gap(at, box), near)
    if far <= 0:
        return 0
    return sum(1 for other in anchors if other != at and _gap(other, box) < far)


def _cut_off(at: Point, box: Box, ink: Ink, pad: float) -> float:
    """Ink between a label and its anchor, the label's own line near the anchor left out."""
    start, end = _leader(at, box)
    dot, total = pad / 4, 0.0
    for part in (0.45, 0.65, 0.85):
        p = start + (end - start).scaled(part)
        total += ink.under(Box(p.x - dot, p.y - dot, p.x + dot, p.y + dot), dot)[1]
    return total


def _gap(at: Point, box: Box) -> float:
    """Yards from a point to the nearest place of a box."""
    dx = max(box.left - at.x, 0.0, at.x - box.right)
    dy = max(box.bottom - at.y, 0.0, at.y - box.top)
    return math.hypot(dx, dy)


def _leader_cost(at: Point, box: Box, ink: Ink) -> float:
    """What a leader crosses on its way; the first and last fifth are its own business."""
    start, end = _leader(at, box)
    cost, dot = 0.0, 0.02 * box.height
    for i in range(2, 9):
        p = start + (end - start).scaled(i / 10)
        if ink.covers(Box(p.x - dot, p.y - dot, p.x + dot, p.y + dot)):
            cost += _LEADER_ON_SYMBOL
    return cost


def _box(want: Wanted, angle: float, gap: float) -> Box:
    """The label's box in one direction from its anchor, ``gap`` yards off."""
    dx, dy = math.cos(angle), math.sin(angle)
    half_w, half_h = want.width / 2, want.height / 2
    x = want.at.x + dx * gap + half_w * max(-1.0, min(1.0, 1.4 * dx))
    y = want.at.y + dy * gap + half_h * max(-1.0, min(1.0, 1.4 * dy))
    return Box(x - half_w, y - half_h, x + half_w, y + half_h)


def _neighbours(choices: Sequence[Sequence[_Place]], pad: float) -> list[list[int]]:
    reach = [_reach(places).grown(pad) for places in choices]
    return [
        [o for o, box in enumerate(reach) if o != i and box.overlap(own) > 0]
        for i, own in enumerate(reach)
    ]


def _reach(places: Sequence[_Place]) -> Box:
    return Box(
        min(p.box.left for p in places),
        min(p.box.bottom for p in places),
        max(p.box.right for p in places),
        max(p.box.top for p in places),
    )


def _cheapest(places: Sequence[_Place], others: Sequence[Box], pad: float) -> int:
    best, best_cost = 0, math.inf
    for index, p in enumerate(places):
        cost = p.cost
        if cost >= best_cost:
            continue
        b = p.box
        left, right, bottom, top = b.left - pad, b.right + pad, b.bottom - pad, b.top + pad
        for o in others:
            if o.left < right and o.right > left and o.bottom < top and o.top > bottom:
                cost += _ON_LABEL
        if cost < best_cost - 1e-9:
            best, best_cost = index, cost
    return best


def _leader(at: Point, box: Box) -> tuple[Point, Point]:
    """From the anchor to the nearest place of the label's edge."""
    x = min(max(at.x, box.left), box.right)
    y = min(max(at.y, box.bottom), box.top)
    return at, Point(x, y)

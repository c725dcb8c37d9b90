"""Where small words and tiles go: near their place, on no line, no symbol, no other word.

Each label has ranked places around its anchor: sixteen directions at a few distances, the
direction that its maker prefers being the cheapest. A place costs its rank, the ink under it, and
what it and another label's place do to each other; `choosing` finds the arrangement that costs
least. It draws no lots, so a picture never changes by itself. What lies under a place is looked for
only where its rank alone does not rule it out.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import Enum, auto

from stemline.geometry.box import Box, square
from stemline.geometry.paths import Point
from stemline.picture.labels.choosing import CheapestFirst, choose
from stemline.picture.scene.ink import Ink

_WAYS = 16
_RINGS = ((0.0, 0.0), (1.0, 1.3), (2.2, 3.0), (3.8, 5.5), (6.0, 9.0), (9.0, 15.0))
"""Distances from the anchor, in ``stride``, and what each costs."""
_ON_LINE = 2.0
_STRUCK = 2.0
"""Cost, besides, of ink that touches the letters and not only the white round them."""
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
_LEADER_ON_LINE = 0.5
"""Cost of each that lies on a line: crossing one is little, running along it is much."""
_ON_LABEL = 25.0
_LEADER_ON_LABEL = 12.0
_LEADERS_CROSS = 4.0
_OUTSIDE = 60.0
_ROOM = 1
"""Rings beyond the first that a label may always fall back to when another needs its place. One
that lies on another all the same is given them all, and the best arrangement is looked for anew."""
_ALSO = 0.4
"""Cost of another place than the first of several."""
_LEADER_FROM = 1.9
"""A label farther off than this many strides gets a leader."""


class Trouble(Enum):
    """What a label's place costs for."""

    AWAY = auto()
    """It stands farther off, or on another side, than it would rather."""
    LINE = auto()
    """It lies on a line."""
    SYMBOL = auto()
    """It lies on a symbol."""
    LABEL = auto()
    """It or its leader lies on another label or leader."""
    EDGE = auto()
    """It reaches over the picture's edge."""
    DOUBT = auto()
    """It might belong to another label's place."""
    CUT_OFF = auto()
    """A line or a symbol runs between it and its place."""


@dataclass(frozen=True)
class Wanted:
    """A label to place. ``at`` is what it labels; ``gap`` yards of white to it; ``toward`` the
    direction it would rather lie in, and ``hold`` what the opposite direction costs. ``also`` are
    other places that it may stand at just as truly. ``past`` are pieces of others' lines near it: a
    label beyond one of them has a leader however near it is."""

    at: Point
    width: float
    height: float
    gap: float
    toward: Point
    hold: float
    also: tuple[Point, ...] = ()
    past: tuple[tuple[Point, Point], ...] = ()


@dataclass(frozen=True)
class Placed:
    """Where a label went, and the ends of its leader if it had to go far.

    ``cost`` is what its place costs, ``shared`` the part of it for lying on other labels;
    ``trouble`` is what most of the cost is for, and ``other`` the number of the label it lies on,
    if that is the trouble.
    """

    box: Box
    leader: tuple[Point, Point] | None
    cost: float = 0.0
    shared: float = 0.0
    trouble: Trouble = Trouble.AWAY
    other: int | None = None


@dataclass(frozen=True)
class _Place:
    box: Box
    leader: tuple[Point, Point] | None
    costs: tuple[tuple[Trouble, float], ...]

    @property
    def cost(self) -> float:
        return sum(cost for _, cost in self.costs)


@dataclass(frozen=True)
class _Paper:
    """What labels are placed on: `place` tells of each, ``anchors`` are those of all labels."""

    anchors: tuple[Point, ...]
    ink: Ink
    frame: Box
    stride: float
    pad: float


class _Places:
    """The places that a label may take, by number; each is worked out when it is asked for, and
    ``made`` are those that were. ``ranks`` are what they cost for where they are, which each costs
    at least."""

    def __init__(self, want: Wanted, paper: _Paper, room: int) -> None:
        self._want, self._paper, self._room = want, paper, room
        self._own = (want.at, *want.also)
        self._others = [at for at in paper.anchors if at not in self._own]
        self._asked: list[tuple[int, int, Point]] = []
        self.made: dict[int, _Place] = {}
        self.ranks: list[float] = []
        self._lay_out()
        self.by_cost = CheapestFirst(self.ranks, self.cost)

    def __getitem__(self, k: int) -> _Place:
        if k not in self.made:
            self.made[k] = self._place(*self._asked[k], self.ranks[k])
        return self.made[k]

    def cost(self, k: int) -> float:
        return self[k].cost

    def _lay_out(self) -> None:
        """The places, the nearest ring first; rings that cannot win are left out, but ``room``
        rings beyond the first always stay."""
        want, room = self._want, self._room
        facing = math.atan2(want.toward.y, want.toward.x)
        turns = [way * 2 * math.pi / _WAYS for way in range(_WAYS)]
        ways = [(_way(facing + turn), want.hold * (1 - math.cos(turn)) / 2) for turn in turns]
        for number in range(len(self._own)):
            first = len(self.ranks)
            for ring, (_, dear) in enumerate(_RINGS):
                for way, astray in ways:
                    self._asked.append((number, ring, way))
                    self.ranks.append(dear + astray + (_ALSO if number else 0.0))
                after = _RINGS[min(ring + 1, len(_RINGS) - 1)][1]
                if ring >= room and self._has(first, after):
                    break
            if room == _ROOM and self._has(first, _RINGS[_ROOM][1]):
                break

    def _has(self, first: int, most: float) -> bool:
        """Whether one of the places from number ``first`` on costs no more than that."""
        ranked = sorted((rank, k) for k, rank in enumerate(self.ranks[first:], first))
        return any(self.cost(k) <= most for rank, k in ranked if rank <= most)

    def _place(self, number: int, ring: int, way: Point, rank: float) -> _Place:
        want, at, far = self._want, self._own[number], _RINGS[ring][0]
        box = _box(want, at, way, want.gap + far * self._paper.stride)
        line = _leader(at, box)
        led = far > _LEADER_FROM or any(_cross(line, piece) for piece in want.past)
        leader = line if led else None
        under = _under(at, box, leader, self._others, self._paper)
        return _Place(box, leader, ((Trouble.AWAY, rank), *under))


def place(
    wanted: Sequence[Wanted], ink: Ink, frame: Box, stride: float, pad: float
) -> tuple[Placed, ...]:
    """A place for each label. ``stride`` is a step away from the anchor and ``pad`` the white
    around a label, both in yards."""
    paper = _Paper(tuple(dict.fromkeys(w.at for w in wanted)), ink, frame, stride, pad)
    choices = [_Places(want, paper, _ROOM) for want in wanted]
    found = _chosen(choices, pad)
    tight = [i for i, placed in enumerate(found) if placed.shared]
    for i in tight:
        choices[i] = _Places(wanted[i], paper, len(_RINGS))
    return _chosen(choices, pad) if tight else found


def _chosen(choices: Sequence[_Places], pad: float) -> tuple[Placed, ...]:
    """The cheapest of all arrangements."""

    def together(i: int, k: int, j: int, at: int) -> float:
        return _together(made[i][k], made[j][at], pad)

    made = [places.made for places in choices]
    taken = choose([places.by_cost for places in choices], together)
    all_ = [places[k] for places, k in zip(choices, taken, strict=True)]
    return tuple(_placed(i, all_, pad) for i in range(len(all_)))


def _placed(index: int, all_: Sequence[_Place], pad: float) -> Placed:
    own = all_[index]
    shared = [0.0 if o == index else _together(own, p, pad) for o, p in enumerate(all_)]
    parts = [*own.costs, (Trouble.LABEL, sum(shared))]
    trouble = max(parts, key=lambda part: part[1])[0]
    other = shared.index(max(shared)) if trouble is Trouble.LABEL else None
    cost = sum(cost for _, cost in parts)
    return Placed(own.box, own.leader, cost, sum(shared), trouble, other)


def _under(
    at: Point,
    box: Box,
    leader: tuple[Point, Point] | None,
    others: Iterable[Point],
    paper: _Paper,
) -> tuple[tuple[Trouble, float], ...]:
    """What a place costs for what is near it; ``others`` are the anchors of other labels."""
    ink, pad = paper.ink, paper.pad
    if not paper.frame.holds(box):
        return ((Trouble.EDGE, _OUTSIDE),)
    half = pad / 2
    if ink.covers(box, half):
        return ((Trouble.SYMBOL, _ON_SYMBOL),)
    under, beside = ink.under(box.grown(pad), 2 * pad)
    struck = 0.0
    if under:
        left, bottom, right, top = box.left, box.bottom, box.right, box.top
        struck = ink.within(left - half, bottom - half, right + half, top + half)
    cut = _CUT_OFF * _cut_off(at, box, ink, pad)
    if leader is not None:
        cut += _leader_cost(leader, box, ink, half)
    return (
        (Trouble.LINE, _ON_LINE * under + _STRUCK * struck + _CROWD * beside),
        (Trouble.CUT_OFF, cut),
        (Trouble.DOUBT, _MISREAD * _misread(at, box, others, 2 * paper.stride)),
    )


def _misread(at: Point, box: Box, others: Iterable[Point], near: float) -> int:
    """How many other labels' anchors this one might be read as belonging to."""
    far = min(_CLEARLY * _gap(at, box), near)
    if far <= 0:
        return 0
    left, right, bottom, top = box.left - far, box.right + far, box.bottom - far, box.top + far
    about = [o for o in others if left < o.x < right and bottom < o.y < top]
    return sum(1 for other in about if _gap(other, box) < far)


def _cut_off(at: Point, box: Box, ink: Ink, pad: float) -> float:
    """Ink between a label and its anchor, the label's own line near the anchor left out."""
    start, end = _leader(at, box)
    dot, total = pad / 2, 0.0
    for part in (0.45, 0.65, 0.85):
        x, y = start.x + (end.x - start.x) * part, start.y + (end.y - start.y) * part
        total += ink.within(x - dot, y - dot, x + dot, y + dot)
    return total


def _gap(at: Point, box: Box) -> float:
    """Yards from a point to the nearest place of a box."""
    dx = max(box.left - at.x, 0.0, at.x - box.right)
    dy = max(box.bottom - at.y, 0.0, at.y - box.top)
    return math.hypot(dx, dy)


def _leader_cost(leader: tuple[Point, Point], box: Box, ink: Ink, near: float) -> float:
    """What a leader crosses on its way; the first and last fifth are its own business."""
    start, end = leader
    cost, dot = 0.0, 0.02 * box.height
    for i in range(2, 9):
        p = start + (end - start).scaled(i / 10)
        if ink.covers(square(p, dot)):
            cost += _LEADER_ON_SYMBOL
        elif ink.under(square(p, near))[0] >= 1:
            cost += _LEADER_ON_LINE
    return cost


def _way(angle: float) -> Point:
    return Point(math.cos(angle), math.sin(angle))


def _box(want: Wanted, at: Point, way: Point, gap: float) -> Box:
    """The label's box in one direction from its anchor, ``gap`` yards off."""
    dx, dy = way.x, way.y
    half_w, half_h = want.width / 2, want.height / 2
    x = at.x + dx * gap + half_w * max(-1.0, min(1.0, 1.4 * dx))
    y = at.y + dy * gap + half_h * max(-1.0, min(1.0, 1.4 * dy))
    return Box(x - half_w, y - half_h, x + half_w, y + half_h)


def _together(a: _Place, b: _Place, pad: float) -> float:
    """What two labels' places cost beyond what each costs by itself."""
    one, two = a.box, b.box
    cost = 0.0
    if (
        one.left - pad < two.right
        and one.right + pad > two.left
        and one.bottom - pad < two.top
        and one.top + pad > two.bottom
    ):
        cost += _ON_LABEL
    if a.leader is not None and _crosses(a.leader, two, pad / 2):
        cost += _LEADER_ON_LABEL
    if b.leader is not None and _crosses(b.leader, one, pad / 2):
        cost += _LEADER_ON_LABEL
    if a.leader is not None and b.leader is not None and _cross(a.leader, b.leader):
        cost += _LEADERS_CROSS
    return cost


def _crosses(leader: tuple[Point, Point], box: Box, pad: float) -> bool:
    """Whether a straight line comes within ``pad`` of a box: clipped against its four sides."""
    start, end = leader
    enter, leave = 0.0, 1.0
    for at, by, low, high in (
        (start.x, end.x - start.x, box.left - pad, box.right + pad),
        (start.y, end.y - start.y, box.bottom - pad, box.top + pad),
    ):
        if abs(by) < 1e-12:
            if not low < at < high:
                return False
            continue
        first, last = sorted(((low - at) / by, (high - at) / by))
        enter, leave = max(enter, first), min(leave, last)
    return enter < leave


def _cross(one: tuple[Point, Point], two: tuple[Point, Point]) -> bool:
    """Whether two straight lines cross between their ends; those from one place do not."""
    return _parted(one, two) and _parted(two, one)


def _parted(line: tuple[Point, Point], by: tuple[Point, Point]) -> bool:
    """Whether the ends of ``line`` lie on different sides of the line through ``by``."""
    start, end = by
    way = end - start
    sides = [way.x * (p.y - start.y) - way.y * (p.x - start.x) for p in line]
    return sides[0] * sides[1] < 0


def _leader(at: Point, box: Box) -> tuple[Point, Point]:
    """From the anchor to the nearest place of the label's edge."""
    x = min(max(at.x, box.left), box.right)
    y = min(max(at.y, box.bottom), box.top)
    return at, Point(x, y)

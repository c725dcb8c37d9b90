"""Who leads the carrier through his hole, on which side of him and in which order.

Leaders run beside the carrier's line, each in a lane of his own. Lanes are given so that they
cross least: men who come in side by side and go out the other way round must cross once, and are
let cross where it is seen best.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, permutations

from stemline.football.play import Assignment, Play
from stemline.geometry.curves import turn_angle
from stemline.geometry.paths import Path, Point, crossing
from stemline.picture.paper.surface import Board
from stemline.picture.ways.at_hole import HOLE, SHALLOW, near

_ASIDE = 0.2
"""Yards aside from the carrier within which a block has no side of its own."""
_AWAY = 0.6
"""Yards beside the hole from which a corner tells on which side a leader comes."""
_MOST = 4
"""Men who lead on one side of the carrier at most; five do not fit into a hole."""
_SQUARE = 45.0
"""Degrees: a leader who would cross the carrier at less than `SHALLOW` before the hole, and at more
than this past it, stays on the side he comes from until he is through."""
_BEFORE = 2.0
"""What a crossing before the hole costs, against one past it: there is less room among men."""


def lanes_of(play: Play, path: Path, board: Board) -> dict[str, float]:
    """Who leads through the hole, each in his own lane, on the side of his block; those of one
    side in the order in which they cross least."""
    made: dict[str, float] = {}
    step = (board.weight("carry") + board.weight("block")) / 2 + board.mark("lead_gap")
    more = board.weight("block") + board.mark("lead_gap")
    leaders = [t for t in play.assignments if t.man != play.carrier and _leads(t, path, board)]
    for side in (-1.0, 1.0):
        these = [task for task in leaders if _side(task, path) == side][:_MOST]
        ways = [_way(task, path, side) for task in these]
        best: Sequence[_LeaderWay] = min(permutations(ways), key=_crossings)
        for number, way in enumerate(best):
            made[way.man] = side * (step + number * more)
    return made


@dataclass(frozen=True)
class _LeaderWay:
    """How a leader comes into the hole and goes out of it, in degrees round the hole: 0 is
    straight across the carrier, 180 straight away from him."""

    man: str
    into: float
    out: float


def _way(task: Assignment, path: Path, side: float) -> _LeaderWay:
    hole = _at_line(path)
    before, end = _before(task, hole) - hole, _end(task) - hole
    into = math.degrees(math.atan2(max(-before.y, 0.0), -side * before.x))
    return _LeaderWay(task.man, into, math.degrees(math.atan2(max(end.y, 0.0), -side * end.x)))


def _crossings(order: Sequence[_LeaderWay]) -> float:
    """What the crossings of leaders cost, each in the lane of his place, the first beside the
    carrier. Two who cross at a small angle cannot be told apart."""
    cost = 0.0
    for inner, outer in combinations(order, 2):
        for by, weight in ((inner.into - outer.into, _BEFORE), (inner.out - outer.out, 1.0)):
            if by > 0:
                cost += weight + SHALLOW / (1.0 + by)
    return round(cost, 6)


def _at_line(path: Path) -> Point:
    """Where the carrier crosses the line of scrimmage; the end of his path where he does not."""
    here = crossing(path, 0.0)
    return path.end if here is None else Point(here, 0.0)


def _before(task: Assignment, hole: Point) -> Point:
    """The last corner from which a leader comes to the hole, beside it or below it."""
    assert task.path is not None
    corners = task.path.corners
    away = (p for p in reversed(corners[:-1]) if abs(p.x - hole.x) > _AWAY or p.y < -HOLE)
    return next(away, corners[0])


def _end(task: Assignment) -> Point:
    assert task.path is not None
    return task.path.end


def _leads(task: Assignment, path: Path, board: Board) -> bool:
    if not task.hits or task.path is None:
        return False
    return any(near(leg.to, path, board.mark("lead")) for leg in task.path.legs[:-1])


def _side(task: Assignment, path: Path) -> float:
    """On which side of the carrier's line a man leads: that of his block, or the side that he
    comes from where he has none or could not be told from the carrier as he crosses him."""
    assert task.path is not None
    end, start = task.path.end, task.path.start
    blocks = _beside(end, crossing(path, min(max(end.y, 0.0), path.end.y - _ASIDE)))
    comes = _beside(start, crossing(path, start.y)) or _beside(start, path.start.x)
    if blocks and comes and blocks != comes:
        hole = _at_line(path)
        into = _angle(_before(task, hole), path, hole)
        if into < SHALLOW and _angle(end, path, hole) > _SQUARE:
            return comes
    return blocks or comes or (1.0 if path.end.x < 0 else -1.0)


def _beside(at: Point, x: float | None) -> float:
    """On which side of the carrier, who is at ``x``, a place is; 0 for neither."""
    if x is None or abs(at.x - x) <= _ASIDE:
        return 0.0
    return 1.0 if at.x > x else -1.0


def _angle(at: Point, path: Path, hole: Point) -> float:
    """Degrees between the way from the hole to a place and the carrier's, as he is as deep."""
    carrier = crossing(path, at.y)
    there = Point(carrier, at.y) if carrier is not None else path.end if at.y > 0 else path.start
    return 180.0 - turn_angle(at, hole, there)


def band(lanes: Mapping[str, float], board: Board) -> tuple[float, float]:
    """How far to the left and right of the carrier's line he and his leaders reach."""
    carry, block = board.weight("carry") / 2, board.weight("block") / 2
    low = min([-carry, *(lane - block for lane in lanes.values())])
    return low, max([carry, *(lane + block for lane in lanes.values())])

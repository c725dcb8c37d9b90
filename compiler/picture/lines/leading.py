"""Men who lead the carrier through his hole, who climb across him, who follow him."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from stemline.football.blocking.carrying import same_hole
from stemline.geometry.curves import far_from, left_of, turn_angle, unit
from stemline.geometry.paths import Ending, Leg, Path, Point, along, crossing, length, polyline
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.ways.at_hole import HOLE, SHALLOW, DrawnHole, near

_PAST = 1.9
"""Yards past the line where a man who leads through the hole leaves it for his block."""
_EARLY = 0.5
"""The same for a block at the line: past the men of his own line."""
_BELOW = -0.8
"""Yards from the line where a man from the backfield is in his lane, at the latest."""
_LEVEL = 0.2
"""Yards past the line where each of two who lead on one side is in his own lane, when the carrier
comes to the hole from the side."""
_ACROSS = 0.1
"""Yards aside from the line to there by which he does."""
_TURN = 0.5
_STEP = 0.1
"""Yards by which his way is searched for where he comes into the carrier's line."""


def led(path: Path, man: str, hole: DrawnHole, board: Board) -> Path:
    """The path of a man who leads, kept beside the carrier's line, bend for bend, until he is past
    the defenders in the hole: the lane is clear of them, so his own turns in it are left out."""
    aside = hole.lanes[man]
    legs = path.legs[:-1]
    leads = (i for i, leg in enumerate(legs) if near(leg.to, hole.aim, board.mark("lead")))
    enters = next(leads, None)
    if enters is None:
        return path
    entry = legs[enters].to
    low = min(entry.y, _BELOW) if path.start.y < -HOLE else entry.y
    leaves = _PAST if path.end.y > _PAST + 1.0 else _EARLY
    beyond = crossing(hole.path, leaves) if path.end.y > 0 else None
    lane = _beside(low, leaves, man, hole, board)
    if beyond is not None:
        lane.append(Leg(Point(beyond + aside, leaves), _TURN))
    before = legs[:enters]
    if low >= 0:
        before = _squared(before, path.start, lane[0].to.x, aside, hole)
    return replace(path, legs=(*before, *lane, path.legs[-1]))


def _squared(
    legs: tuple[Leg, ...], start: Point, x: float, aside: float, hole: DrawnHole
) -> tuple[Leg, ...]:
    """The legs of a pull to a lane beyond the carrier, with its last turn behind the line right
    below the lane: at a slant he would run along the carrier."""
    last = legs[-1] if legs else None
    beyond = aside * (x - start.x) > 0 and hole.wing is None
    if last is None or not beyond or start.y < -HOLE or last.to.y >= 0:
        return legs
    return (*legs[:-1], replace(last, to=Point(x, last.to.y)))


def _beside(low: float, high: float, man: str, hole: DrawnHole, board: Board) -> list[Leg]:
    """A leader's lane from one depth to another. Below the line it is that of the hole: he is
    there first, wherever the carrier still is."""
    aside, reach = hole.lanes[man], board.mark("lead") / 2
    here = crossing(hole.path, max(low, 0.0)) or hole.path.end.x
    if low < 0 and hole.wing is not None:
        made = _under_wing(here + aside, hole.wing, board)
    else:
        made = [Leg(Point(here + aside, low), reach)]
    level = crossing(hole.path, _LEVEL)
    across = low < 0 and level is not None and abs(level - here) > _ACROSS
    if level is not None and across and hole.wing is None and _beside_another(man, hole):
        made.append(Leg(Point(level + aside, _LEVEL), reach))
    for a, b in pairwise(polyline(hole.path)):
        if made[-1].to.y + _LEVEL < b.y < high - _LEVEL and b.y > _LEVEL and b.y > a.y:
            made.append(Leg(b - left_of(unit(a, b)).scaled(aside), reach))
    return made


def _beside_another(man: str, hole: DrawnHole) -> bool:
    """Whether another leads on the same side of the carrier."""
    return any(other != man and hole.lanes[man] * hole.lanes[other] > 0 for other in hole.lanes)


def _under_wing(x: float, wing: Symbol, board: Board) -> list[Leg]:
    """The way of a leader behind a wing and up outside him, as far from him as his lane is."""
    out = 1.0 if wing.at.x > 0 else -1.0
    reach = board.mark("turn") / 2
    y = wing.at.y - out * (x - wing.at.x)
    return [Leg(Point(wing.at.x - out * wing.edge, y), reach), Leg(Point(x, y), reach)]


def crossed(path: Path, hole: DrawnHole, board: Board) -> Path:
    """The path of a climb that would cross the carrier at a small angle, brought over to the side
    where it ends at once: the two do not run up the field on one line."""
    start, end = path.start, path.end
    here, there = crossing(hole.path, start.y), crossing(hole.path, end.y)
    if end.y >= hole.path.end.y:
        there = hole.path.end.x
    white = (board.weight("carry") + board.weight("climb")) / 2 + board.mark("lead_gap")
    if here is None or there is None:
        return path
    if (start.x - here) * (end.x - there) >= 0 and abs(start.x - here) >= white:
        return path
    ahead = Point(start.x + there - here, end.y)
    if 180.0 - turn_angle(end, start, ahead) > SHALLOW:
        return path
    side = 1.0 if end.x > there else -1.0
    y = min(start.y + abs(start.x - here) + white, end.y)
    over = Point((crossing(hole.path, y) or there) + side * white, y)
    after = [leg for leg in path.legs[:-1] if leg.to.y > y and side * (leg.to.x - over.x) >= 0]
    return replace(path, legs=(Leg(over, _TURN), *after, path.legs[-1]))


def followed(path: Path, hole: DrawnHole, board: Board, symbols: Iterable[Symbol]) -> Path:
    """The path of a man who only follows the carrier through his hole, ended where he comes into
    his line and clear of the other men."""
    if path.ending is not Ending.RUN or not same_hole(path, hole.aim):
        return path
    whole, way, lane = polyline(path), polyline(hole.path), board.mark("lane")
    points = [along(whole, n * _STEP) for n in range(math.ceil(length(whole) / _STEP))]
    joins = next((i for i, p in enumerate(points) if far_from(way, p) < lane), len(points))
    if joins in (0, len(points)):
        return path
    others = [(s.at, s.edge + board.mark("clear")) for s in symbols]
    while joins > 1 and any(points[joins].distance(at) < near for at, near in others):
        joins -= 1
    legs = [leg for leg in path.legs[:-1] if _index(points, leg.to) < joins]
    return replace(path, legs=(*legs, Leg(_past(points[joins], path.start, others))))


def _past(end: Point, start: Point, others: Sequence[tuple[Point, float]]) -> Point:
    """The end, or a place beside it where a man stands straight between it and the start: his line
    goes round that man, and would come back into him."""
    for at, room in others:
        if start.y < at.y < end.y and abs(at.x - start.x) < room and abs(at.x - end.x) < room:
            side = 1.0 if end.x >= at.x else -1.0
            return Point(at.x + side * room, end.y)
    return end


def _index(points: Sequence[Point], at: Point) -> int:
    """Which point is nearest to a place."""
    return min(range(len(points)), key=lambda i: points[i].distance(at))

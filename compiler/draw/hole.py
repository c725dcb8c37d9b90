"""The carrier's way through his hole, and those who lead him through it beside him.

On paper the hole is as wide as the white between two symbols; a man who leads the carrier through
it is drawn in a lane beside him, the two of them in the middle of it. A defender's letter that
stands in the way is moved aside by `defenders`, so the way must be known before the letters are.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from stemline.draw.board import Board
from stemline.draw.curves import far_from
from stemline.draw.detours import Round, detour
from stemline.draw.gaps import through_gaps
from stemline.draw.symbols import Symbol
from stemline.draw.ways import begun_at, behind_passer, ghosts_of, keep_off
from stemline.football.play import Assignment, Kind, Play
from stemline.paths import Ending, Leg, Path, Point, length, polyline

_HOLE = 1.6
"""Yards to each side of the line of scrimmage where the carrier's way is set by his hole."""
_PAST = 1.9
"""Yards past the line where a man who leads through the hole leaves it for his block."""
_EARLY = 0.5
"""The same for a block at the line: past the men of his own line."""
_TURN = 0.5
_BEHIND = 0.6
"""Yards from the line of scrimmage where men stand whom the way to the hole must go round again."""
_NARROW = 0.3
_ASIDE = 0.2
"""Yards aside from the carrier within which a block has no side of its own."""
_SHORTEST = 0.8
"""Yards: the path of a man who only follows the carrier is cut to no less than this."""


@dataclass(frozen=True)
class Hole:
    """The carrier's path, and how far to the right of it each man leads him through the line."""

    path: Path
    lanes: Mapping[str, float]


def find_hole(play: Play, symbols: Mapping[str, Symbol], board: Board) -> Hole | None:
    """The carrier's hole; None where nobody carries the ball on a close picture."""
    if not board.close or play.kind is not Kind.RUN or not play.carrier:
        return None
    path = play.assignment(play.carrier).path
    if path is None or not path.legs:
        return None
    path = begun_at(path, symbols[play.carrier].at)
    path = behind_passer(path, symbols, play.carrier, board)
    keep = keep_off(symbols, ghosts_of(play, symbols, board), play.carrier, board)
    path = detour(path, keep, board.mark("turn"))
    lanes = _lanes(play, path, board)
    aside = -(max([0.0, *lanes.values()]) + min([0.0, *lanes.values()])) / 2
    others = [s for name, s in symbols.items() if name != play.carrier]
    white = board.weight("carry") / 2 + board.mark("gap") / 2 + abs(aside)
    through = through_gaps(path, others, white, aside)
    path = _shifted(path, aside) if through == path else through
    behind = [_narrow(o) for o in keep if abs(o.at.y) > _BEHIND]
    return Hole(_not_back(detour(path, behind, board.mark("turn"))), lanes)


def _narrow(o: Round) -> Round:
    """A man with less white round him, so that a turn in the hole is not moved out of it."""
    return replace(o, radius=o.hard + _NARROW * (o.radius - o.hard))


def _lanes(play: Play, path: Path, board: Board) -> dict[str, float]:
    """Who leads through the hole, each in his own lane, on the side of his block."""
    made: dict[str, float] = {}
    step = (board.weight("carry") + board.weight("block")) / 2 + board.mark("lead_gap")
    for task in play.assignments:
        if task.man != play.carrier and _leads(task, path, board):
            side = _side(task, path)
            lane = side * step
            while any(abs(lane - taken) < 1e-9 for taken in made.values()):
                lane += side * (board.weight("block") + board.mark("lead_gap"))
            made[task.man] = lane
    return made


def _leads(task: Assignment, path: Path, board: Board) -> bool:
    if not task.hits or task.path is None:
        return False
    return any(_near(leg.to, path, board.mark("lead")) for leg in task.path.legs[:-1])


def _near(at: Point, path: Path, lane: float) -> bool:
    here = crossing(path, at.y) if abs(at.y) < _HOLE else None
    return here is not None and abs(at.x - here) <= lane


def _side(task: Assignment, path: Path) -> float:
    """On which side of the carrier's line a man blocks; else the side that he comes from."""
    assert task.path is not None
    end, start = task.path.end, task.path.start
    here = crossing(path, min(max(end.y, 0.0), path.end.y - _ASIDE))
    for at, x in ((end, here), (start, crossing(path, start.y)), (start, path.start.x)):
        if x is not None and abs(at.x - x) > _ASIDE:
            return 1.0 if at.x > x else -1.0
    return 1.0 if path.end.x < 0 else -1.0


def _shifted(path: Path, by: float) -> Path:
    """The path with its part from the hole on moved aside."""
    if not by:
        return path
    legs = tuple(
        replace(leg, to=leg.to + Point(by, 0.0)) if leg.to.y > -_HOLE else leg for leg in path.legs
    )
    return replace(path, legs=legs)


def led(path: Path, man: str, hole: Hole, board: Board) -> Path:
    """The path of a man who leads, kept beside the carrier's until he is past the defenders in
    the hole."""
    aside = hole.lanes[man]
    legs: list[Leg] = []
    for leg in path.legs[:-1]:
        # he is there first: he goes to the hole itself, wherever the carrier still is
        here = crossing(hole.path, max(leg.to.y, 0.0))
        near = here is not None and _near(leg.to, hole.path, board.mark("lead") + abs(aside))
        legs.append(replace(leg, to=Point(here + aside, leg.to.y)) if near and here else leg)
    leaves = _PAST if path.end.y > _PAST + 1.0 else _EARLY
    beyond = crossing(hole.path, leaves)
    if path.end.y > 0 and beyond is not None:
        legs.append(Leg(Point(beyond + aside, leaves), _TURN))
    return replace(path, legs=(*legs, path.legs[-1]))


def followed(path: Path, hole: Hole, lane: float, symbols: Iterable[Symbol], clear: float) -> Path:
    """The path of a man who only follows the carrier, ended where he comes into his line and
    ``clear`` of the other men."""
    points, way = polyline(path), polyline(hole.path)
    if path.ending is not Ending.RUN or far_from(way, points[-1]) > lane:
        return path
    joins = len(points) - 1
    while joins > 0 and far_from(way, points[joins - 1]) < lane:
        joins -= 1
    if length(points[joins:]) < _SHORTEST or joins == 0:
        return path
    others = [(s.at, s.edge + clear) for s in symbols]
    while joins > 1 and any(points[joins].distance(at) < near for at, near in others):
        joins -= 1
    legs = [leg for leg in path.legs[:-1] if _index(points, leg.to) < joins]
    return replace(path, legs=(*legs, Leg(points[joins])))


def _index(points: Sequence[Point], at: Point) -> int:
    """Which point is nearest to a place."""
    return min(range(len(points)), key=lambda i: points[i].distance(at))


def _not_back(path: Path) -> Path:
    """The carrier's path without a hook: once bent outward past the line he stays outside."""
    outward = 1.0 if path.end.x > 0 else -1.0
    past = [i for i, leg in enumerate(path.legs[:-1]) if leg.to.y > 0]
    if not past:
        return path
    widest = max(past, key=lambda i: outward * path.legs[i].to.x)
    corner = path.legs[widest].to
    if outward * corner.x <= outward * path.end.x:
        return path
    end = Leg(Point(corner.x, path.end.y))
    return replace(path, legs=(*path.legs[: widest + 1], end))


def crossing(path: Path, y: float) -> float | None:
    """Where a path last crosses a depth, going up the field."""
    found = None
    for a, b in pairwise(path.corners):
        if a.y <= y < b.y:
            found = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y)
    return found

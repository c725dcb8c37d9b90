"""Pulling behind the line, in front of a quarterback under centre.

On the field he has opened out of the way by the time a guard comes by; on paper he stands where
he is at the snap. So he is drawn a little deeper and the pull a little shallower, each in a lane
of its own between the centre and him.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from stemline.football.play import Assignment, Play
from stemline.geometry.paths import Path, Point
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol

_BESIDE = 0.8
"""Yards beside the ball within which a path passes between the centre and him."""
_BEHIND = 0.3
"""Yards behind the line from which a lineman's path counts as a pull."""
_TOGETHER = 0.8
"""Yards that two pulls must share before one is drawn below the other."""


def make_room(play: Play, symbols: Mapping[str, Symbol], board: Board) -> dict[str, Symbol]:
    """The symbols, a quarterback under centre moved back to let each puller by."""
    made = dict(symbols)
    passer = _under_centre(play, symbols)
    count = len(_pullers(play))
    if passer is None or not count:
        return made
    need = -_lane(count, symbols, board) - passer.edge - board.mark("pull_lane") / 2
    if need < passer.at.y:
        made[passer.man.label] = replace(passer, at=Point(passer.at.x, need))
    return made


def in_lanes(play: Play, symbols: Mapping[str, Symbol], board: Board) -> Play:
    """The play with each pull that passes the quarterback brought into its lane, and one that
    runs along another below it."""
    lanes: dict[str, float] = {}
    if _under_centre(play, symbols) is not None:
        for number, task in enumerate(_pullers(play), 1):
            lanes[task.man] = _lane(number, symbols, board)
    paths = {
        task.man: _lifted(task.path, lanes[task.man]) if task.man in lanes else task.path
        for task in play.assignments
        if task.path is not None and task.hits and play.man(task.man).on_line
    }
    pulls = sorted(
        (man for man, path in paths.items() if _low(path) is not None),
        key=lambda man: (man not in lanes, -min(p.y for p in paths[man].corners)),
    )
    for number, man in enumerate(pulls):
        above = [_floor(paths[man], paths[other], symbols, board) for other in pulls[:number]]
        floor = min(above, default=0.0)
        if man not in lanes and floor < 0.0:
            paths[man] = _sunk(paths[man], floor)
    tasks = tuple(
        replace(task, path=paths.get(task.man, task.path)) if task.path is not None else task
        for task in play.assignments
    )
    return replace(play, assignments=tasks)


def _low(path: Path) -> tuple[float, float] | None:
    """From where to where a path runs behind the line; None for one that does not."""
    xs = [p.x for p in path.corners[1:-1] if p.y < -_BEHIND]
    return (min(xs), max(xs)) if len(xs) > 1 else None


def _floor(path: Path, other: Path, symbols: Mapping[str, Symbol], board: Board) -> float:
    """How far behind the line a pull must be, to run below another; 0 where it may be anywhere."""
    own, its = _low(path), _low(other)
    if own is None or its is None:
        return 0.0
    low, high = max(own[0], its[0]), min(own[1], its[1])
    if high - low < _TOGETHER:
        return 0.0
    white = board.mark("clear") / 2
    past = [s.edge + white for s in symbols.values() if s.man.on_line and low <= s.at.x <= high]
    deep = max([-min(p.y for p in other.corners), *past])
    return -deep - board.mark("pull_lane")


def _sunk(path: Path, floor: float) -> Path:
    legs = [
        replace(leg, to=Point(leg.to.x, min(leg.to.y, floor))) if leg.to.y < -_BEHIND else leg
        for leg in path.legs[:-1]
    ]
    return replace(path, legs=(*legs, path.legs[-1]))


def _under_centre(play: Play, symbols: Mapping[str, Symbol]) -> Symbol | None:
    return next((symbols[man.label] for man in play.men if man.under_centre), None)


def _pullers(play: Play) -> list[Assignment]:
    """Blockers off the line who pass behind the centre, the shallowest first."""
    found = [
        task
        for task in play.assignments
        if task.path is not None and task.hits and play.man(task.man).on_line and _passes(task.path)
    ]
    return sorted(found, key=_shallow)


def _shallow(task: Assignment) -> float:
    return -min(p.y for p in task.path.corners) if task.path is not None else 0.0


def _passes(path: Path) -> bool:
    behind = [p.x for p in path.corners if p.y < -_BEHIND] + [path.start.x]
    return min(behind) < _BESIDE and max(behind) > -_BESIDE and len(behind) > 1


def _lane(number: int, symbols: Mapping[str, Symbol], board: Board) -> float:
    """Yards behind the line of the numbered lane."""
    edge = max((s.edge for s in symbols.values() if s.man.interior), default=0.0)
    return edge + (number - 0.25) * board.mark("pull_lane")


def _lifted(path: Path, lane: float) -> Path:
    legs = tuple(replace(leg, to=Point(leg.to.x, max(leg.to.y, -lane))) for leg in path.legs[:-1])
    return replace(path, legs=(*legs, *path.legs[-1:]))

"""Blockers in front of a ball that is caught behind the line: a screen."""

from __future__ import annotations

from stemline.football.play import Assignment, Play
from stemline.football.players import Position
from stemline.geometry.paths import Ending, Path, Point

AHEAD = 12.0
"""Yards from the catch within which a blocker is in front of it. Common practice."""
RELEASES = 3.0
"""Yards from his place that a lineman goes who lets his man run past and leads. Common practice:
shorter steps are a pass set."""
_INSIDE = (Position.QUARTERBACK, Position.BACK, Position.FULLBACK)
_LINE = (Position.CENTRE, Position.GUARD, Position.TACKLE)


def blockers(play: Play, catch: Point) -> int:
    """How many men block in front of a catch: each takes one defender."""
    tasks = [(task, task.path) for task in play.assignments if task.path is not None]
    return sum(_leads(play, task, path, catch) for task, path in tasks)


def led(play: Play) -> bool:
    """Whether linemen let the rush come and lead a screen."""
    return any(
        task.path is not None
        and task.path.ending is Ending.BLOCK
        and play.man(task.man).position in _LINE
        and task.path.end.distance(task.path.start) >= RELEASES
        for task in play.assignments
    )


def _leads(play: Play, task: Assignment, path: Path, catch: Point) -> bool:
    if path.ending is not Ending.BLOCK or not path.legs or path.end.distance(catch) > AHEAD:
        return False
    position = play.man(task.man).position
    if position in _LINE:
        return path.end.distance(path.start) >= RELEASES
    return position not in _INSIDE

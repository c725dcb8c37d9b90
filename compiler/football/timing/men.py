"""Every man of a play against time: the paths of `Play`, run by the level's men."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from stemline.football.conditions import LookWord
from stemline.football.field import Field, Side
from stemline.football.play import Assignment, Man, Play
from stemline.football.timing.draws import draws, drop_down
from stemline.football.timing.levels import REMEMBERED, PlayingLevel
from stemline.football.timing.running import (
    Speed,
    Timeline,
    last_heading,
    runner,
    timeline,
    velocity,
)
from stemline.geometry.paths import Ending, Path, Point

CARRIER = "carrier"
"""The role of the man who has the ball on a run, or shows that he has it on a pass."""
ON = 12.0
"""Yards that a man who runs on may go past the end of what is drawn."""
INBOUNDS = 0.8
"""Yards inside the sideline at which he is still caught in bounds. Common practice."""


def timelines(play: Play, level: PlayingLevel) -> dict[str, Timeline]:
    """Everyone who runs after the snap, by label; blockers are not among them."""
    made: dict[str, Timeline] = {}
    for task in play.assignments:
        if task.path is None or task.role == CARRIER:
            continue  # who carries, or shows that he carries, is no receiver
        if task.path.legs and task.path.ending is not Ending.BLOCK:
            made[task.man] = run_path(play, task, task.path, level)
    return made


def run_path(play: Play, task: Assignment, path: Path, level: PlayingLevel) -> Timeline:
    """One path of a man: his own or a branch."""
    man = play.man(task.man)
    start = level.start.value + (level.press.value if _pressed(play, man) else 0.0)
    if task.path is not None and path.legs[:1] == task.path.legs[:1]:
        start += task.waits or 0.0  # of his ways those that begin with the block
    draw = draws(play)
    if draw is not None and task.man in (draw.giver, draw.taker) and path == task.path:
        start += given_at(play, level) - _meets(play, task.man, level)
    speed = runner(level, man.natural or man.position, man.forty)
    return _timed(path, speed, start, level.settle.value, _moving(task), _beyond(path, play.field))


def given_at(play: Play, level: PlayingLevel) -> float:
    """When the ball of a draw is given: the drop is down, and both men are there."""
    men = [man for x in play.exchanges for man in (x.giver, x.taker)]
    return max(drop_down(play, level), *(_meets(play, man, level) for man in men))


def _meets(play: Play, man: str, level: PlayingLevel) -> float:
    """When he is where the first part of his way ends, if he goes at the snap."""
    path = play.assignment(man).path
    if path is None or not path.legs:
        return 0.0
    who = play.man(man)
    speed = runner(level, who.natural or who.position, who.forty)
    return level.start.value + speed.time(path.start.distance(path.legs[0].to))


@lru_cache(maxsize=REMEMBERED)
def _timed(
    path: Path, speed: Speed, start: float, settle: float, first: Point, beyond: Point | None
) -> Timeline:
    """`timeline`, once a path: a man runs the same one in call after call and against every look,
    and what is worked out from the very timeline is remembered by it."""
    return timeline(path, speed, start=start, settle=settle, first=first, beyond=beyond)


def _pressed(play: Play, man: Man) -> bool:
    """Against press the men on the line outside are met at once. Common practice."""
    wide = man.rank is not None and man.rank.number == 1
    return LookWord.PRESS.value in play.against and man.on_line and wide


def _moving(task: Assignment) -> Point:
    """The velocity with which he comes out of his motion."""
    motion = task.motion
    if motion is None or not motion.running:
        return Point(0.0, 0.0)
    for a, b in reversed(list(pairwise(motion.path.corners))):
        if a.distance(b) > 1e-6:
            return velocity(a, b, motion.speed)
    return Point(0.0, 0.0)


def _beyond(path: Path, field: Field) -> Point | None:
    """Where a man who runs on would be twelve yards later, still in bounds."""
    if path.ending is not Ending.RUN:
        return None
    way, end = last_heading(path), path.end
    if abs(way.x) > abs(way.y):
        way = Point(1.0 if way.x > 0 else -1.0, 0.0)  # he stays flat once he has his depth
    far = ON
    if way.x:
        side = Side.RIGHT if way.x > 0 else Side.LEFT
        room = (field.sideline(side) - side.value * INBOUNDS - end.x) / way.x
        far = max(0.0, min(far, room))
    return end + way.scaled(far)

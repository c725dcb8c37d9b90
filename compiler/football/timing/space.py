"""Room between men: crossing paths, two men in one window, and the shapes that a concept claims.

The limits are common practice, no published source: shoulders are about half a yard, so two men
who come nearer than that and a little run into each other; crossers who brush shoulders
pass within a yard or so; one defender has two men who stand within two yards of each other.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache
from itertools import combinations, pairwise

import numpy as np

from stemline.football.play import Claim, Play
from stemline.football.timing.clock import ReadClock, TimedRead
from stemline.football.timing.levels import REMEMBERED
from stemline.football.timing.running import Array, Timeline
from stemline.geometry.paths import Point

COLLIDE = 0.6
BRUSH = 1.75
CROWD = 2.0
HIGH_LOW = 4.0
"""Yards that must lie between the high and the low man: what one defender cannot cover."""
STRETCH = 5.0
"""Yards between neighbours of a horizontal stretch on one man."""
TRIANGLE = 1.8
"""Yards that each corner of a triangle must stand off the line through the other two."""
SPAN = 20.0
"""Yards from one corner of a triangle to another, at most: the quarterback sees it in one glance.
Common practice, no published source: from the flat to the corner route of a snag or flood."""
_STEP = 0.02
_TIMES = np.arange(0.0, 5.0, _STEP)
_AWAY = 0.4
"""Seconds in which men who line up close together get apart."""
_STACKED = 1.2
"""Yards: men who line up one behind the other are taught to go to either side of each other."""
_MET = 3.5
"""Yards: men who pass at a greater distance are not said to cross."""


class Meeting(Enum):
    COLLIDE = "collide"
    BRUSH = "brush"
    LOOSE = "loose"


@dataclass(frozen=True)
class MenCross:
    """Two men whose paths cross: when they are nearest, how far apart, who is deeper then.

    ``at`` is half way between them at that moment; ``first`` is the man who goes over.
    """

    over: str
    under: str
    time: float
    apart: float
    at: Point
    meeting: Meeting


@dataclass(frozen=True)
class Crowd:
    """Another man so near to the man a read is thrown to that one defender has both; he is ``at``
    this place then."""

    read: TimedRead
    other: str
    apart: float
    at: Point


@dataclass(frozen=True)
class Measured:
    """A claimed shape, measured when the reads are thrown: ``least`` is its tightest figure, and
    ``most`` says that this one must not be more than is wanted."""

    claim: Claim
    least: float
    wanted: float
    words: str
    most: bool = False

    @property
    def holds(self) -> bool:
        if self.most:
            return self.least <= self.wanted + 1e-9
        return self.least >= self.wanted - 1e-9

    @property
    def wish(self) -> str:
        """The yards wanted, as they are said: "1.8", "at most 20"."""
        return f"{'at most ' * self.most}{self.wanted:g}"


def crossings(men: Mapping[str, Timeline]) -> tuple[MenCross, ...]:
    """Every two men who pass each other: one comes from the left of the other to his right.

    Men who only start close together do not meet: a moment counts in which they had come nearer.
    """
    pairs = combinations(sorted(men.items()), 2)
    met = (_crossing(one, line, two, other) for (one, line), (two, other) in pairs)
    return tuple(crossing for crossing in met if crossing is not None)


@lru_cache(maxsize=REMEMBERED)
def _crossing(one: str, line: Timeline, two: str, other: Timeline) -> MenCross | None:
    """Where two men pass each other; ``one`` is the first of their labels."""
    mine, his = _watched(line), _watched(other)
    if abs(mine[0, 0] - his[0, 0]) <= _STACKED:
        return None
    first = int(np.argmax(max(line.start, other.start) + _AWAY < _TIMES))
    apart = np.hypot(*(mine - his).T)
    i = first + int(np.argmin(apart[first:]))
    order = np.sign(mine[:, 0] - his[:, 0])
    passed = bool((order[first:] != order[first]).any())
    nearer = i > first and apart[i] < _MET
    if not nearer or not (passed or apart[i] <= BRUSH):
        return None
    over, under = (one, two) if mine[i, 1] >= his[i, 1] else (two, one)
    middle = (mine[i] + his[i]) / 2
    at = Point(float(middle[0]), float(middle[1]))
    gap = float(apart[i])
    return MenCross(over, under, float(_TIMES[i]), gap, at, meeting(gap))


@lru_cache(maxsize=REMEMBERED)
def _watched(line: Timeline) -> Array:
    """Where a man is at each of `_TIMES`."""
    return line.where(_TIMES)


def meeting(apart: float) -> Meeting:
    if apart < COLLIDE:
        return Meeting.COLLIDE
    return Meeting.BRUSH if apart <= BRUSH else Meeting.LOOSE


def crowds(clock: ReadClock) -> tuple[Crowd, ...]:
    """Reads whose man has another receiver beside him when the ball arrives; a man who is looked
    at in the same glance is no crowd."""
    found: list[Crowd] = []
    thrown = [read for read in clock.reads if read.window is not None and read.thrown_to]
    times = np.array([read.arrives for read in thrown])
    places = {label: line.where(times).tolist() for label, line in sorted(clock.men.items())}
    for n, read in enumerate(thrown):
        own = read.window.man if read.window is not None else ""
        for label, where in places.items():
            if label in (own, read.read.partner_man):
                continue
            apart = math.dist(where[n], (read.at.x, read.at.y))
            if apart < CROWD:
                found.append(Crowd(read, label, apart, Point(*where[n])))
    return tuple(found)


def measured(play: Play, clock: ReadClock) -> tuple[Measured, ...]:
    """Each claim measured.

    A triangle, and a spot, where the ball is caught. A high-low or a stretch of men at the moment
    when the ball comes to the first of them, since that is when one defender must choose.
    """
    spots = {spot.name for spot in play.spots}
    looks = {look.read.target: look for look in clock.reads}
    made: list[Measured] = []
    for claim in play.claims:
        read = [looks[t] for t in claim.targets if t in looks and looks[t].thrown_to]
        moment = min((look.arrives for look in read), default=0.0)
        places = {*spots} if claim.kind != "triangle" else {*claim.targets}
        points = [
            _at(target, point, play, clock, None if target in places else moment)
            for target, point in zip(claim.targets, claim.points, strict=True)
        ]
        made.append(_measure(claim, points))
    return tuple(made)


def _at(target: str, point: Point, play: Play, clock: ReadClock, moment: float | None) -> Point:
    """Where a claimed man is at ``moment``; a spot, without one, where it is thrown to."""
    if moment is None:
        return next((look.at for look in clock.reads if look.read.target == target), point)
    task = play.runs(target)
    line = clock.men.get(task.man) if task is not None else None
    return line.at(moment) if line is not None and moment else point


def _measure(claim: Claim, points: Sequence[Point]) -> Measured:
    match claim.kind:
        case "triangle":
            longest = max(points[i].distance(points[i - 1]) for i in range(3))
            if longest > SPAN:
                words = f"{longest:.1f} yards from corner to corner"
                return Measured(claim, longest, SPAN, words, most=True)
            least = min(_off(points[i], points[i - 1], points[i - 2]) for i in range(3))
            return Measured(
                claim, least, TRIANGLE, f"{least:.1f} yards off the line at its flattest"
            )
        case "high-low":
            least = points[0].y - points[1].y
            return Measured(claim, least, HIGH_LOW, f"{least:.1f} yards from low to high")
        case _:
            across = sorted(point.x for point in points)
            least = min(b - a for a, b in pairwise(across))
            return Measured(claim, least, STRETCH, f"{least:.1f} yards across at its narrowest")


def _off(point: Point, a: Point, b: Point) -> float:
    """How far a point stands off the line through two others."""
    base = a.distance(b)
    if base < 1e-9:
        return 0.0
    area = abs((b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x))
    return area / base

"""A path against time: how a man runs what is drawn.

He speeds up by v(t) = vmax - (vmax - v0) exp(-t/tau), the usual start curve of a sprint, and every
turn leaves him a part of his speed. Each piece between two turns has a closed form. It follows
from the model that a mirrored path takes as long, that a slower man is nowhere earlier, and that a
longer stem never makes a route faster.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from stemline.football.players import Position
from stemline.football.timing.levels import (
    DRIFT,
    GRASS,
    GROUPS,
    PLANTED_TURN,
    ROUNDED_TURN,
    PlayingLevel,
    Splits,
)
from stemline.geometry.paths import Curve, Ending, Path, Point, segments

Array = NDArray[np.float64]
Plane = NDArray[np.complex128]
"""Points of the field as complex numbers, x + iy: half the work of pairs."""

ROUNDED_REACH = 1.0
"""Yards of rounding from which a turn is one that keeps its speed: planted ones are half a yard,
rounded ones two."""


_STANDS = Point(0.0, 0.0)


@dataclass(frozen=True)
class Speed:
    """``top`` yards a second, ``tau`` seconds: the two constants of a start curve."""

    top: float
    tau: float

    def distance(self, time: float, first: float = 0.0) -> float:
        """Yards run in ``time`` from a speed of ``first``."""
        gap = self.top - first
        return self.top * time - gap * self.tau * (1 - math.exp(-time / self.tau))

    def speed(self, time: float, first: float = 0.0) -> float:
        return self.top - (self.top - first) * math.exp(-time / self.tau)

    def time(self, yards: float, first: float = 0.0) -> float:
        """Seconds for ``yards`` from a speed of ``first`` (at most the top speed)."""
        if yards <= 0:
            return 0.0
        at = yards / self.top + self.tau  # never too early, so that Newton's steps only come down
        for _ in range(60):
            step = (self.distance(at, first) - yards) / self.speed(at, first)
            at -= step
            if abs(step) < 1e-12:
                break
        return at


@cache
def start_curve(splits: Splits) -> Speed:
    """The curve through two splits: 10 and 40 yards."""
    low, high = 0.05, 5.0
    for _ in range(80):
        tau = (low + high) / 2
        top = 40 / _flight(splits.forty, tau)
        if top * _flight(splits.ten, tau) < 10:
            high = tau
        else:
            low = tau
    return Speed(40 / _flight(splits.forty, tau), tau)


def _flight(time: float, tau: float) -> float:
    """Seconds at top speed that cover as much as ``time`` from a standing start."""
    return time - tau * (1 - math.exp(-time / tau))


@cache
def runner(level: PlayingLevel, position: Position, forty: float | None = None) -> Speed:
    """How a man of this level and position runs a route; ``forty`` is his own 40 in seconds."""
    splits = level.splits[GROUPS[position]].value
    if forty is not None:
        splits = Splits(splits.ten * forty / splits.forty, forty)
    track = start_curve(splits)
    return Speed(track.top / GRASS, track.tau * GRASS)


def kept(degrees: float, rounded: bool) -> float:
    """The part of his speed that a turn of so many degrees leaves a man."""
    degrees = abs(degrees) % 360
    return float(keeps(np.array(min(degrees, 360 - degrees)), rounded))


def keeps(degrees: Array, rounded: bool = False) -> Array:
    """`kept` for many turns of 0 to 180 degrees."""
    table = ROUNDED_TURN if rounded else PLANTED_TURN
    left: Array = np.interp(degrees, [d for d, _ in table], [k for _, k in table])
    return left


@dataclass(frozen=True)
class Turn:
    """A turn of the path, at ``yards`` along it: when he is there and how sharp it is."""

    yards: float
    time: float
    degrees: float
    at: Point


@dataclass(frozen=True, eq=False)
class Timeline:
    """Where a man is at every moment.

    ``points`` and ``yards`` (along the path) are the polyline; ``times``, ``starts`` and
    ``speeds`` give each piece between two turns its first moment, yard and speed. ``arrives`` is
    when he comes to the path's end, ``ready`` when he can catch there: after he has turned, if
    the path settles; ``left`` when he is done with the last turn before a path that runs on.
    """

    speed: Speed
    points: Array
    yards: Array
    times: Array
    starts: Array
    speeds: Array
    tops: Array
    turns: tuple[Turn, ...]
    start: float
    arrives: float
    ready: float
    settles: bool

    @property
    def left(self) -> float:
        return self.turns[-1].time if self.turns else self.start

    def run(self, times: Array) -> Array:
        """Yards along the path at each of ``times`` (seconds after the snap)."""
        piece = np.clip(np.searchsorted(self.times, times, side="right") - 1, 0, None)
        since = np.maximum(times - self.times[piece], 0.0)
        top = self.tops[piece]
        gap = top - self.speeds[piece]
        moved = top * since - gap * self.speed.tau * (1 - np.exp(-since / self.speed.tau))
        last = np.append(self.starts[1:], self.yards[-1])
        run: Array = np.minimum(self.starts[piece] + moved, last[piece])
        return run

    def pace(self, time: float) -> float:
        """Yards a second on the whole from his start to ``time``, a tenth of a second at least."""
        return float(self.run(np.array([time]))[0]) / max(time - self.start, 0.1)

    def where(self, times: Array) -> Array:
        """x and y at each of ``times``: shape (times, 2)."""
        run = self.run(times)
        x = np.interp(run, self.yards, self.points[:, 0])
        y = np.interp(run, self.yards, self.points[:, 1])
        return np.stack((x, y), axis=-1)

    def at(self, time: float) -> Point:
        x, y = self.where(np.array([time]))[0]
        return Point(float(x), float(y))

    def when(self, yards: float) -> float:
        """The moment at which he has run ``yards`` of the path."""
        piece = int(np.clip(np.searchsorted(self.starts, yards, side="right") - 1, 0, None))
        rest = min(yards, float(self.yards[-1])) - float(self.starts[piece])
        speed = Speed(float(self.tops[piece]), self.speed.tau)
        return float(self.times[piece]) + speed.time(rest, float(self.speeds[piece]))


def timeline(
    path: Path,
    speed: Speed,
    *,
    start: float,
    settle: float = 0.0,
    first: Point = _STANDS,
    beyond: Point | None = None,
) -> Timeline:
    """A path run from ``start`` seconds after the snap.

    ``first`` is the velocity he has then (a man in motion), ``settle`` the seconds he needs to
    stop and turn, ``beyond`` the place to which he goes on after a path that does not end there.
    """
    points, bends, end = _laid(path, beyond)
    yards = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))))
    at_speed = min(_along(first, points), speed.top)
    time, done = start, 0.0
    times, starts, speeds = [start], [0.0], [at_speed]
    turns: list[Turn] = []
    for index, degrees, rounded in bends:
        here = float(yards[index])
        needs = speed.time(here - done, at_speed)
        time, done = time + needs, here
        at_speed = speed.speed(needs, at_speed) * kept(degrees, rounded)
        turns.append(Turn(here, time, degrees, Point(*map(float, points[index]))))
        times.append(time)
        starts.append(here)
        speeds.append(at_speed)
    needs = speed.time(float(yards[end]) - done, at_speed)
    arrives = time + needs
    tops = [speed.top] * len(times)
    if beyond is not None and _across(points):
        times.append(arrives)
        starts.append(float(yards[end]))
        speeds.append(min(speed.speed(needs, at_speed), speed.top * DRIFT))
        tops.append(speed.top * DRIFT)
    settles = path.ending is Ending.SETTLE
    return Timeline(
        speed=speed,
        points=points,
        yards=yards,
        times=np.array(times),
        starts=np.array(starts),
        speeds=np.array(speeds),
        tops=np.array(tops),
        turns=tuple(turns),
        start=start,
        arrives=arrives,
        ready=arrives + (settle if settles else 0.0),
        settles=settles,
    )


def _laid(path: Path, beyond: Point | None) -> tuple[Array, list[tuple[int, float, bool]], int]:
    """The polyline; its turns as index, degrees and whether rounded; the index of the end."""
    points: list[Point] = [path.start]
    bends: list[tuple[int, float, bool]] = []
    corners = path.corners
    sharp = {leg.to: leg.reach >= ROUNDED_REACH for leg in path.legs}
    for piece in segments(path):
        if isinstance(piece, Curve):
            for i in range(1, 8):
                points.append(piece.at(i / 8))
            bends.append((len(points) - 4, _bend(piece.start, piece.corner, piece.end),
                          sharp.get(piece.corner, False)))  # fmt: skip
        points.append(piece.end)
        if not isinstance(piece, Curve) and piece.end in corners[1:-1]:
            i = corners.index(piece.end, 1)
            bends.append((len(points) - 1, _bend(corners[i - 1], piece.end, corners[i + 1]), False))
    end = len(points) - 1
    if beyond is not None and beyond.distance(points[-1]) > 1e-6:
        points.append(beyond)
    if len(points) == 1:
        points.append(points[0])
    return np.array([(p.x, p.y) for p in points]), bends, end


def _across(points: Array) -> bool:
    """Whether a path ends more across the field than up it."""
    way = np.abs(points[-1] - points[-2])
    return bool(way[0] > way[1])


def _bend(a: Point, b: Point, c: Point) -> float:
    first = math.atan2(b.x - a.x, b.y - a.y)
    then = math.atan2(c.x - b.x, c.y - b.y)
    turn = math.degrees(then - first) % 360
    return min(turn, 360 - turn)


def _along(velocity: Point, points: Array) -> float:
    """What a first velocity is worth on the way the path starts."""
    size = math.hypot(velocity.x, velocity.y)
    if size < 1e-9 or len(points) < 2:
        return 0.0
    way = points[1] - points[0]
    if not np.any(way):
        return 0.0
    turn = math.degrees(math.atan2(way[0], way[1]) - math.atan2(velocity.x, velocity.y))
    return size * kept(turn, rounded=True)


def positions(timelines: Sequence[Timeline], times: Array) -> Array:
    """Where all men are at all times: shape (men, times, 2)."""
    return np.stack([line.where(times) for line in timelines])


def velocity(a: Point, b: Point, speed: float) -> Point:
    """``speed`` yards a second from a toward b."""
    far = a.distance(b)
    return Point(0.0, 0.0) if far < 1e-9 else (b - a).scaled(speed / far)


def last_heading(path: Path) -> Point:
    """The direction in which a path ends, one yard long; none for a path without legs."""
    for a, b in reversed(list(pairwise(path.corners))):
        if a.distance(b) > 1e-9:
            return velocity(a, b, 1.0)
    return Point(0.0, 0.0)

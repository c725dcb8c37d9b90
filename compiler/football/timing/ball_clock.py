"""When and where the ball is given, man by man: the coach's lines put on the clock.

A hand-off is made where the two men are both there; a toss, pitch, shovel or throw leaves when its
giver is ready and is caught where it meets its man. Everything else follows from the men's paths.
Times in seconds after the snap, places in yards.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np

from stemline.football.exchanges import (
    ANOTHER_THROWS,
    BACK_IN_HAND,
    HANDED_IN_GUN,
    HANDED_UNDER,
    HANDLES,
    LEAST_AIR,
    PASS_SPEED,
    QUICK_THROW,
    REACH,
    RUNS_BY,
    SHOVELLED,
    SNAP_FLIES,
    STEP_OF_GIVER,
    TOSS_SPEED,
    TOSSED,
    BallMoves,
    Exchange,
    holders,
)
from stemline.football.play import HANDS_DEEP, Assignment, Play
from stemline.football.timing.draws import draws
from stemline.football.timing.levels import REMEMBERED, PlayingLevel
from stemline.football.timing.men import given_at, run_path
from stemline.football.timing.running import Timeline
from stemline.geometry.curves import nearest
from stemline.geometry.paths import Point, polyline

_STEP = 0.02
_LONGEST = 5.0
"""Seconds after which nobody waits for the ball any more."""


@dataclass(frozen=True)
class BallMoment:
    """One exchange on the clock: the ball leaves ``given`` at ``leaves`` and is taken at ``taken``
    at the time ``there``.

    ``apart`` are the yards between the two men where they should meet, ``late`` the seconds by
    which the later one comes there after the other: none for a ball that flies. ``waits`` is who is
    there first, "" where no place is said.
    """

    exchange: Exchange
    leaves: float
    there: float
    given: Point
    taken: Point
    apart: float = 0.0
    late: float = 0.0
    waits: str = ""


@lru_cache(maxsize=REMEMBERED)
def ball_moments(play: Play, level: PlayingLevel) -> tuple[BallMoment, ...]:
    """The exchanges of a play in order, each with its moment and place."""
    return tuple(_Ball(play, level).moments())


def back_at(play: Play, level: PlayingLevel) -> float | None:
    """When the quarterback can throw a ball that he gave away and got back; None where he has it
    all the time, or not at the end."""
    passer = play.passer
    if passer is None or not any(x.taker == passer.label and x.said for x in play.exchanges):
        return None
    if holders(play.exchanges, passer.label)[-1] != passer.label:
        return None
    return ball_moments(play, level)[-1].there + BACK_IN_HAND.value


def _moments(first: float, last: float) -> list[float]:
    """Moments a step apart, from the first up to the last."""
    times, time = [], first
    while time <= last:
        times.append(time)
        time += _STEP
    return times


class _Ball:
    """Follows the ball through one play."""

    def __init__(self, play: Play, level: PlayingLevel) -> None:
        self._play, self._level = play, level
        self._lines: dict[str, Timeline] = {}
        self._passer = play.passer

    def moments(self) -> Iterator[BallMoment]:
        since = 0.0
        for x in self._play.exchanges:
            ready = x.after if x.after is not None else since + self._readies(x, since)
            made = self._flown(x, ready) if x.kind.flies else self._handed(x, ready)
            yield made
            since = made.there

    def _readies(self, x: Exchange, since: float) -> float:
        """Seconds that the giver needs from having it."""
        passer = self._passer
        first = since == 0.0
        if x.kind is BallMoves.SNAP:
            return 0.0
        if first and passer is not None and x.giver == passer.label:
            under = -passer.snap.y <= HANDS_DEEP
            if x.kind is BallMoves.THROW:
                return QUICK_THROW.value
            if x.kind is BallMoves.SHOVEL:
                return SHOVELLED.value
            if x.kind.flies:
                return TOSSED.value
            motion = self._task(x.taker).motion
            if motion is not None and motion.running:
                return RUNS_BY.value
            if draws(self._play) is not None:
                return given_at(self._play, self._level)
            return (HANDED_UNDER if under else HANDED_IN_GUN).value
        if x.kind is BallMoves.THROW:
            return ANOTHER_THROWS.value
        return HANDLES.value

    def _handed(self, x: Exchange, ready: float) -> BallMoment:
        """Where the two are both there, from ``ready`` on; the said place if there is one."""
        if x.kind is BallMoves.SNAP:
            at = self._at(x.taker, SNAP_FLIES.value)
            return BallMoment(x, 0.0, SNAP_FLIES.value, self._stands(x.giver), at)
        if x.at is not None:
            there = [self._reaches(man, x.at, ready) for man in (x.giver, x.taker)]
            time = max(ready, *there)
            giver, taker = self._at(x.giver, time), self._at(x.taker, time)
            apart = max(0.0, giver.distance(taker) - self._steps(x.giver))
            first = x.giver if there[0] <= there[1] else x.taker
            return BallMoment(x, time, time, giver, taker, apart, abs(there[0] - there[1]), first)
        best: tuple[float, float] | None = None
        times = _moments(ready, ready if x.after is not None else _LONGEST)
        back = self._steps_back(x)
        for time, giver, taker in zip(
            times, self._gives(x, times), self._places(x.taker, times), strict=True
        ):
            near = giver.distance(taker)
            if best is None or near < best[0] - 1e-6:
                best = near, time
            if near <= back:
                break
        near, time = best or (0.0, ready)
        (giver,), taker = self._gives(x, [time]), self._at(x.taker, time)
        return BallMoment(x, time, time, giver, taker, max(0.0, near - self._steps(x.giver)))

    def _gives(self, x: Exchange, times: Sequence[float]) -> list[Point]:
        """Where the giver is: a quarterback of whom nothing is said runs his boot when he has given
        it, not before."""
        passer = self._passer
        if not x.said and passer is not None and x.giver == passer.label:
            return [self._stands(x.giver)] * len(times)
        return self._places(x.giver, times)

    def _steps_back(self, x: Exchange) -> float:
        """Yards from which a quarterback who was under centre steps back to the runner, and does
        not wait at the line for him."""
        passer = self._passer
        if passer is None or x.giver != passer.label or not passer.under_centre:
            return 0.0
        return STEP_OF_GIVER.value + REACH.value

    def _flown(self, x: Exchange, leaves: float) -> BallMoment:
        """A ball that flies to where it meets its man: where he is told to have it, or on his way.

        Said nothing, the giver lets it go as soon as he is ready.
        """
        given = self._at(x.giver, leaves)
        speed = (PASS_SPEED if x.kind is BallMoves.THROW else TOSS_SPEED).value
        if x.at is not None:
            air = max(LEAST_AIR.value, given.distance(x.at) / speed)
            there = max(leaves + air, self._reaches(x.taker, x.at, 0.0))
            return BallMoment(x, leaves, there, given, self._has_it(x, there))
        there = leaves + LEAST_AIR.value
        while there < leaves + _LONGEST:
            if given.distance(self._at(x.taker, there)) <= speed * (there - leaves):
                break
            there += _STEP
        return BallMoment(x, leaves, there, given, self._at(x.taker, there))

    def _has_it(self, x: Exchange, time: float) -> Point:
        """Where a man catches what is tossed back to him: a quarterback who was under centre has
        dropped to the place by then, which no path of his tells."""
        passer = self._passer
        dropped = passer is not None and x.taker == passer.label and passer.under_centre
        if dropped and x.at is not None and self._line(x.taker) is None:
            return x.at
        return self._at(x.taker, time)

    # Where a man is.

    def _task(self, man: str) -> Assignment:
        return self._play.assignment(man)

    def _stands(self, man: str) -> Point:
        return self._play.man(man).snap

    def _line(self, man: str) -> Timeline | None:
        task = self._task(man)
        if task.path is None or not task.path.legs:
            return None
        if man not in self._lines:
            self._lines[man] = run_path(self._play, task, task.path, self._level)
        return self._lines[man]

    def _at(self, man: str, time: float) -> Point:
        return self._places(man, [time])[0]

    def _places(self, man: str, times: Sequence[float]) -> list[Point]:
        """A man at each of some moments; past his path's end he is there."""
        line, task = self._line(man), self._task(man)
        if line is None or task.path is None:
            return [self._stands(man)] * len(times)
        end, arrives, where = task.path.end, line.arrives, line.where(np.array(times)).tolist()
        return [
            end if time >= arrives else Point(x, y)
            for time, (x, y) in zip(times, where, strict=True)
        ]

    def _reaches(self, man: str, place: Point, ready: float) -> float:
        """When a man is at the point of his way that is nearest to a place; one without a way
        steps there."""
        line, task = self._line(man), self._task(man)
        if line is None or task.path is None:
            return ready
        points = polyline(task.path)
        far, best, found = 0.0, float("inf"), 0.0
        for a, b in pairwise(points):
            near, share = nearest(a, b, place)
            if near.distance(place) < best - 1e-9:
                best, found = near.distance(place), far + share * a.distance(b)
            far += a.distance(b)
        return line.when(found)

    def _steps(self, man: str) -> float:
        """A man who is told no way steps to the one who takes it from him."""
        return 0.0 if self._line(man) is not None else STEP_OF_GIVER.value

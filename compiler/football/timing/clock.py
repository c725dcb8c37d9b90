"""The read clock: for each read, when the feet are ready, where its man is and when the ball is
there.

A read of a spot is open while a man is in the spot; a read of a man is open once he has made his
last turn until a little after the end of what is drawn for him. Who settles stays to be thrown to:
no ball comes too late for him by the clock alone. The ball is on time when it arrives while the
read is open: the first ball that meets him then. What a passer may do instead, against a defence,
is in `chances`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from functools import cache, lru_cache

import numpy as np
from numpy.typing import NDArray

from stemline.football.exchanges import BallMoves, said_any
from stemline.football.play import Play, Read, Spot
from stemline.football.timing.ball_clock import back_at, ball_moments
from stemline.football.timing.levels import (
    DOWNFIELD,
    DRIFTS,
    GAP,
    LOB,
    REMEMBERED,
    RUN_ON,
    SLOW,
    THROTTLE,
    TOUCH,
    UNDERNEATH,
    WAIT,
    PlayingLevel,
)
from stemline.football.timing.men import timelines
from stemline.football.timing.running import Array, Timeline
from stemline.football.timing.rushing import free_rusher
from stemline.football.timing.throwing import Foot, clock, flight
from stemline.geometry.paths import Point

MOST_KEPT = 4096
"""Clocks that are remembered: a season's calls against its looks, so that none is read twice."""
_STEP = 0.02
_LONGEST = 6.0
"""Seconds after the snap at which a play is over for this model."""


class Verdict(Enum):
    ON_TIME = "on time"
    EARLY = "early"
    LATE = "late"
    TOO_FAR = "too far"
    NOBODY = "nobody"


@dataclass(frozen=True)
class Window:
    """When a read is open, in seconds after the snap, and by whom."""

    man: str
    opens: float
    closes: float


@dataclass(frozen=True)
class TimedRead:
    """One read on the clock. Times in seconds after the snap, lengths in yards.

    ``foot`` is the step that throws it and ``ready`` when it is down; the ball leaves at
    ``thrown`` from ``passer`` and is at ``at`` by ``arrives``. ``off`` is by how much it is early
    (negative) or late (positive) where it is.
    """

    read: Read
    foot: str
    ready: float
    passer: Point
    thrown: float
    window: Window | None
    at: Point
    distance: float
    arrives: float
    verdict: Verdict
    off: float

    @property
    def air(self) -> float:
        return self.arrives - self.thrown

    @property
    def misses(self) -> float:
        """By how much it is early or late, between the moments as they are printed: a reader who
        takes one from the other gets this figure."""
        if self.window is None or self.verdict not in (Verdict.EARLY, Verdict.LATE):
            return abs(self.off)
        early = self.verdict is Verdict.EARLY
        bound = self.window.opens if early else self.window.closes
        return abs(round(round(self.arrives, 1) - round(bound, 1), 1))

    @property
    def thrown_to(self) -> bool:
        """Whether there is a man whom the ball can reach."""
        return self.verdict not in (Verdict.NOBODY, Verdict.TOO_FAR)


@dataclass(frozen=True)
class ReadClock:
    """The reads of one call in order, its order under pressure, the feet with the exchanges that
    are said, and who runs when.

    ``beside`` are the throws that no number of the order has: to who is looked at `with` another,
    and to whom a key chooses. ``rusher`` is when a free man reaches the passer; None where the look
    that the play stands against frees nobody, or there is no look.
    """

    feet: tuple[Foot, ...]
    reads: tuple[TimedRead, ...]
    pressure: tuple[TimedRead, ...]
    rusher: float | None
    men: Mapping[str, Timeline]
    beside: tuple[TimedRead, ...] = ()


@lru_cache(maxsize=MOST_KEPT)
def read_clock(play: Play, level: PlayingLevel) -> ReadClock:
    """`clocked`, kept: many ask it of one play (checks, pages, tables)."""
    return clocked(play, level)


def clocked(play: Play, level: PlayingLevel) -> ReadClock:
    """The clock of a pass play; without a quarterback nothing is read or thrown."""
    men = timelines(play, level)
    passer = play.passer
    if passer is None:
        return ReadClock((), (), (), None, men)
    toward = play.strong
    first = next((r.at.x for r in play.reads if r.at.x), 0.0)
    if first:
        toward = play.strong if (first > 0) == (play.strong.value > 0) else play.strong.other
    feet = _with_the_ball(clock(play.feet, passer.snap, toward, level), play, level)
    reads = _looks(play, play.reads, feet, men, level)
    return ReadClock(
        feet=_and_the_ball(feet, play, level),
        reads=reads,
        pressure=_looks(play, play.pressure, feet, men, level),
        rusher=free_rusher(play, reads[0].passer if reads else passer.snap, level),
        men=men,
        beside=(*_partners(play, reads, men, level), *_keyed(play, feet, men, level)),
    )


def _partners(
    play: Play, reads: Sequence[TimedRead], men: Mapping[str, Timeline], level: PlayingLevel
) -> Iterator[TimedRead]:
    """Who is seen in one glance with another: thrown off the same foot, or a reset after it."""
    for look in reads:
        if look.read.partner_man and look.read.partner_man not in look.read.men:
            read = replace(look.read, target=look.read.partner, men=(look.read.partner_man,))
            later = look.ready + level.again["reset"].value
            feet = (Foot(look.foot, time, look.passer) for time in (look.ready, later))
            yield min((_look(play, read, foot, men, level) for foot in feet), key=_worth)


def _keyed(
    play: Play, feet: Sequence[Foot], men: Mapping[str, Timeline], level: PlayingLevel
) -> Iterator[TimedRead]:
    """Who is thrown to off a man who is read, off the foot that is best for it."""
    ordered = {man for read in play.reads for man in (*read.men, read.partner_man)}
    throws = [foot for foot in feet if foot.name != "fake"] or feet[-1:]
    for key in play.keys:
        for does, man, _ in key.choices:
            if does != "throw" or man in ordered or man not in men or not throws:
                continue
            end = men[man].points[-1]
            target = play.as_said(man)
            at = Point(float(end[0]), float(end[1]))
            read = Read(0, target, at, (man,), "", "", "", key.span)
            yield min((_look(play, read, foot, men, level) for foot in throws), key=_worth)


def _with_the_ball(feet: tuple[Foot, ...], play: Play, level: PlayingLevel) -> tuple[Foot, ...]:
    """The feet of a quarterback who gave the ball away and gets it back: the first that throws is
    down when he has it in hand, the others as long after it."""
    back = back_at(play, level)
    throws = next((foot for foot in feet if foot.name != "fake"), None)
    if back is None or throws is None or throws.time >= back:
        return feet
    late = back - throws.time
    return tuple(
        foot if foot.name == "fake" else replace(foot, time=foot.time + late) for foot in feet
    )


def _and_the_ball(feet: tuple[Foot, ...], play: Play, level: PlayingLevel) -> tuple[Foot, ...]:
    """The feet as they are told, with each exchange that the coach says in its place ("hand to R",
    "toss to Q"): a quarterback who hands the ball on there fakes nothing."""
    passer = play.passer
    if not said_any(play.exchanges) or passer is None:
        return feet
    gives = [m for m in ball_moments(play, level) if m.exchange.kind is not BallMoves.SNAP]
    handed = any(
        m.exchange.kind is BallMoves.HAND and m.exchange.giver == passer.label for m in gives
    )
    kept = [foot for foot in feet if foot.name != "fake" or not handed]
    ball = [Foot(m.exchange.in_short, m.leaves, m.given) for m in gives]
    return tuple(sorted((*ball, *kept), key=lambda foot: foot.time))


def _looks(
    play: Play,
    reads: Sequence[Read],
    feet: Sequence[Foot],
    men: Mapping[str, Timeline],
    level: PlayingLevel,
) -> tuple[TimedRead, ...]:
    looks: list[TimedRead] = []
    used: dict[str, int] = {}
    last: Foot | None = None
    for read in reads:
        last = _foot(read, feet, used, last, level)
        if last is not None:
            looks.append(_look(play, read, last, men, level))
    return tuple(looks)


def _foot(
    read: Read, feet: Sequence[Foot], used: dict[str, int], last: Foot | None, level: PlayingLevel
) -> Foot | None:
    """The step that throws a read; a read without one comes a reset after the read before it.

    Eyes and feet go from one read to the next: no two are thrown at one moment.
    """
    foot = _named(read, feet, used, last, level)
    if foot is not None and last is not None and foot.time < last.time + 1e-9:
        return Foot(foot.name, last.time + level.again["reset"].value, foot.at)
    return foot


def _named(
    read: Read, feet: Sequence[Foot], used: dict[str, int], last: Foot | None, level: PlayingLevel
) -> Foot | None:
    """The step that a read names, else the next there is."""
    named = [foot for foot in feet if foot.name == read.foot]
    count = used.get(read.foot, 0)
    used[read.foot] = count + 1
    if named and count < len(named):
        return named[count]
    again = level.again["reset"].value
    if named and last is not None:
        return Foot(last.name, last.time + again, last.at)
    if last is None:
        return feet[0] if feet else None
    later = next((foot for foot in feet if foot.time > last.time + 1e-9), None)
    return later or Foot("reset", last.time + again, last.at)


def _look(
    play: Play, read: Read, foot: Foot, men: Mapping[str, Timeline], level: PlayingLevel
) -> TimedRead:
    thrown = foot.time + level.motion.value
    spot = next((s for s in play.spots if s.name == read.target), None)
    windows = [w for w in (window(m, men[m], spot) for m in read.men if m in men) if w]
    if not windows:
        return TimedRead(read, foot.name, foot.time, foot.at, thrown, None, read.at, 0.0, thrown,
                    Verdict.NOBODY, 0.0)  # fmt: skip
    looked = [_thrown_to(read, foot, thrown, one, men[one.man], level) for one in windows]
    return min(looked, key=_worth)


def _worth(look: TimedRead) -> tuple[bool, bool, float]:
    """Who is thrown to of several men in a spot: on time, else in reach, else the nearest miss."""
    return look.verdict is not Verdict.ON_TIME, look.verdict is Verdict.TOO_FAR, abs(look.off)


def _thrown_to(
    read: Read, foot: Foot, thrown: float, open_: Window, line: Timeline, level: PlayingLevel
) -> TimedRead:
    caught = catch(line, foot.at, thrown, level, open_)
    if caught is None:
        # Where he is when the longest throw would come down: still farther away than that.
        at = line.at(min(open_.closes, thrown + float(_flights(level.deep.value)[1].max())))
        return TimedRead(
            read,
            foot.name,
            foot.time,
            foot.at,
            thrown,
            open_,
            at,
            at.distance(foot.at),
            thrown,
            Verdict.TOO_FAR,
            0.0,
        )
    arrives, at = caught
    if line.settles:  # he stays: what makes such a throw late is the rush, or a defender
        open_ = replace(open_, closes=max(open_.closes, arrives))
    verdict, off = Verdict.ON_TIME, 0.0
    if arrives < open_.opens - GAP:
        verdict, off = Verdict.EARLY, arrives - open_.opens
    elif arrives > open_.closes + GAP:
        verdict, off = Verdict.LATE, arrives - open_.closes
    return TimedRead(read, foot.name, foot.time, foot.at, thrown, open_, at, at.distance(foot.at),
                arrives, verdict, off)  # fmt: skip


@lru_cache(maxsize=REMEMBERED)
def window(man: str, line: Timeline, spot: Spot | None) -> Window | None:
    """When a man is open: in the spot that is looked at, or by himself; None if he never is."""
    if line.settles:
        return Window(man, line.ready, line.ready + WAIT)
    if spot is None:
        return Window(man, line.left, line.arrives + _runs_on(line))
    times = np.arange(0.0, _LONGEST, _STEP)
    places = line.where(times)
    inside = (np.abs(places[:, 0] - spot.at.x) <= spot.half_width) & (
        np.abs(places[:, 1] - spot.at.y) <= spot.half_height
    )
    inside &= times >= line.start
    if not inside.any():
        return None
    # The last stay: a crosser who comes back goes through the spot on his way out too.
    last = int(np.flatnonzero(inside)[-1])
    before = np.flatnonzero(~inside[: last + 1])
    first = int(before[-1]) + 1 if len(before) else 0
    return Window(man, float(times[first]), max(float(times[last]), line.arrives + _runs_on(line)))


def _runs_on(line: Timeline) -> float:
    """How long a man is open past the end of what is drawn for him."""
    end, before = line.points[-1], line.points[-2]
    across = abs(end[0] - before[0]) > abs(end[1] - before[1])
    return DRIFTS if across and end[1] <= UNDERNEATH else RUN_ON


@lru_cache(maxsize=REMEMBERED)
def catch(
    line: Timeline, passer: Point, thrown: float, level: PlayingLevel, open_: Window
) -> tuple[float, Point] | None:
    """When and where a ball that leaves at ``thrown`` meets a man; None beyond the arm's reach.

    A ball may be driven, thrown with touch, or lobbed to a man who is far downfield; of all
    places where it can meet him the first in his window counts, else the first.
    """
    if line.settles and thrown >= line.ready:
        at = line.at(thrown)
        air = driven(np.array([at.distance(passer)]), np.array([at.y >= DOWNFIELD]), level)[0]
        return (thrown + float(air), at) if np.isfinite(air) else None
    times = np.arange(thrown, _LONGEST + 2.0, _STEP)
    places = line.where(times)
    hang = times - thrown
    yards = np.hypot(places[:, 0] - passer.x, places[:, 1] - passer.y)
    deep = places[:, 1] >= DOWNFIELD
    least = driven(yards, deep, level)
    spare = np.where(deep, THROTTLE, _STEP / 2)
    met = np.isfinite(least) & (least <= hang + spare) & (hang <= longest(least, deep) + _STEP)
    arrives = thrown + np.maximum(hang, np.where(np.isfinite(least), least, 0.0))
    good = met & (arrives >= open_.opens) & (arrives <= open_.closes)
    found = np.flatnonzero(good if good.any() else met)
    if len(found):
        return float(arrives[found[0]]), line.at(float(times[found[0]]))
    # He outruns the arm: where he would have to wait least for the ball, as an underthrown one.
    waits = np.where(np.isfinite(least), least - hang, np.inf)
    soonest = int(np.argmin(waits))
    if not waits[soonest] < SLOW:
        return None
    return float(times[soonest] + waits[soonest]), line.at(float(times[soonest]))


def driven(yards: Array, deep: NDArray[np.bool_], level: PlayingLevel) -> Array:
    """Flight times: downfield, and beyond the reach of a usual ball, with all that the arm has."""
    usual, hard = _air(yards, level.ball.value), _air(yards, level.deep.value)
    air: Array = np.where(deep | ~np.isfinite(usual), hard, usual)
    return air


def longest(least: Array, deep: NDArray[np.bool_]) -> Array:
    """The longest that balls may hang whose shortest flights are ``least``: touch, or a lob."""
    touch = least * TOUCH
    hang: Array = np.where(deep, np.maximum(touch, LOB), touch)
    return hang


@cache
def _flights(mph: float) -> tuple[Array, Array]:
    """Distances that an arm reaches, half a yard apart, and the flight to each."""
    known: list[float] = []
    while (time := flight(len(known) / 2, mph)) is not None:
        known.append(time)
    return np.arange(len(known)) / 2, np.array(known)


def _air(yards: Array, mph: float) -> Array:
    """Flight times of many distances; infinite beyond the arm's reach."""
    known, times = _flights(mph)
    air: Array = np.where(yards > known[-1], np.inf, np.interp(yards, known, times))
    return air

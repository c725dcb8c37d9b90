"""A call against a look: which read is open when the ball comes, and by how much.

Until the throw, defenders do what their duty says (`zone_coverage`, `quarters`, `man_coverage`),
from then on they break on the ball (`breaking`). Of the throws that a read offers (`chances`) the
roomiest counts, since a passer throws where they are not.
These are planning figures, common practice, with no published source.
"""

from __future__ import annotations

import math
from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from stemline.football.defence.zones import DEEP
from stemline.football.defenders import Defender, DutyKind
from stemline.football.play import Play
from stemline.football.timing.breaking import beside, broken, in_the_way, squatted
from stemline.football.timing.chances import Chances, chances, together
from stemline.football.timing.clock import ReadClock, TimedRead
from stemline.football.timing.levels import GAP, REMEMBERED, PlayingLevel
from stemline.football.timing.man_coverage import chased
from stemline.football.timing.quarters import in_quarters, matched
from stemline.football.timing.running import Array, Timeline
from stemline.football.timing.screens import blockers
from stemline.football.timing.squatting import squatting
from stemline.football.timing.zone_coverage import dropped
from stemline.geometry.paths import Point

OPEN = 2.5
"""Yards to the nearest defender at the catch from which a man is called open. A league's tracking
page measures separation so, and calls a man tightly covered within a yard; the targets of a pro
week were on the average 3.06 yards clear."""
TIGHT = 1.0
"""Yards from which a good throw beats a defender who does not stand in its way. The league's own
line for a tight window; a defender's leverage is worth 1 to 1.5 yards, as common practice has it.
"""
UPFIELD = 5.0
"""Yards that a corner who squats comes while the man with a screen turns up the field: the yards to
him count for so much less. Common practice: a screen is not thrown in front of him."""
BETWEEN = 0.5
"""What the yards of a defender count at most who is in the way of the ball."""
TOLD = 6.0
"""Yards that are told at most, as "6+": he is open, and by how much more no estimate knows."""
_STEP = 0.1
"""Seconds between the places of a defender; between them he runs straight."""
_UNTIL = 6.0
_TIMES = np.arange(0.0, _UNTIL + 2 * _STEP, _STEP)


class Cover(Enum):
    """How a read is covered.

    Open: nobody is near. Tight: a defender is, a yard off or more, but beside or behind his man,
    who has the leverage: a throw away from that defender beats him, a bad one does not. Covered:
    nearer than a yard, or within the open yards and in the way of the ball. Late: it would leave
    the hand after a free rusher is there.
    """

    OPEN = "open"
    TIGHT = "tight"
    COVERED = "covered"
    LATE = "late"
    NEVER = "not there"


@dataclass(frozen=True)
class Separation:
    """One read against one look: yards to the nearest defender at the catch, and who that is.

    The catch is the roomiest that the read offers: the ball leaves at ``thrown`` (seconds after
    the snap) and is caught at ``at`` by ``arrives``; the clock's own catch, the first, is in
    ``read``. On a screen ``blocked`` are the defenders for whom there is a blocker in front, and
    the yards are those to the first man without one.
    """

    read: TimedRead
    yards: float
    nearest: str
    cover: Cover
    thrown: float
    arrives: float
    at: Point
    blocked: tuple[str, ...] = ()

    @property
    def waits(self) -> bool:
        """Whether the passer throws it later, or with more air, than the clock has it."""
        return self.arrives > self.read.arrives + 1e-9

    @property
    def opened(self) -> bool:
        """Whether its man is open by the time the ball leaves the hand; by the time he has it,
        behind the line: there is nobody whom he has to get away from first."""
        window = self.read.window
        by = self.arrives if self.behind else self.thrown
        return window is not None and window.opens <= by + GAP

    @property
    def behind(self) -> bool:
        """Whether it is caught behind the line."""
        return self.at.y <= 0


@dataclass(frozen=True)
class Against:
    """A call against a look: each read, and when its first free rusher reaches the passer (None
    where every rusher is blocked). ``pressure`` are the reads of the pressure order, ``told`` the
    protection's hot where none is written and somebody is free: ``mans`` when it is a man's own."""

    look: str
    reads: tuple[Separation, ...]
    pressure: tuple[Separation, ...]
    rusher: float | None
    told: str = ""
    mans: bool = False

    @property
    def best(self) -> Separation | None:
        """Who is thrown to: the first who is open, else the first whom a good throw finds."""
        found = (r for c in (Cover.OPEN, Cover.TIGHT) for r in self.reads if r.cover is c)
        return next(found, None)

    @property
    def hot(self) -> Separation | None:
        """What answers a free rusher: the first of the pressure order, or without one of the
        reads, that is not covered, is open when it is thrown, and leaves the hand before he is
        there; None without one, and where nobody is free."""
        if self.rusher is None:
            return None
        there = (Cover.OPEN, Cover.TIGHT)
        order = self.pressure or self.reads
        return next((r for r in order if r.cover in there and r.opened), None)

    @property
    def hot_words(self) -> str:
        """Whom a free rusher's answer goes to: a man's hot of the protection before the reads,
        and its words where none of them is in time; "" for nobody."""
        if (self.told and self.mans) or self.hot is None:
            return self.told
        return self.hot.read.read.target

    @property
    def leaves_nobody(self) -> bool:
        """Whether nobody is thrown to."""
        return self.best is None and self.hot is None

    @property
    def out(self) -> float | None:
        """When the ball leaves for an open man, seconds after the snap; None without one."""
        best = self.best
        return best.thrown if best is not None and best.cover is Cover.OPEN else None


def against(play: Play, clock: ReadClock, level: PlayingLevel) -> Against:
    """The separations of a play that stands against a defence (`Play.defence` must be set)."""
    defence = play.defence
    assert defence is not None, "a play that stands against a look"
    rusher = clock.rusher
    covering = tuple(d for d in defence.defenders if not d.rushes)
    looks = (*clock.reads, *(clock.pressure if rusher is not None else ()))
    throws = [_throws(look, clock, level, rusher) if covering else None for look in looks]
    offered = [one for one in throws if one is not None]
    rooms = iter(_rooms(play, clock, covering, offered, level) if offered else ())
    made = [
        _never(look) if one is None else _separation(play, look, one, covering, next(rooms), rusher)
        for look, one in zip(looks, throws, strict=True)
    ]
    count = len(clock.reads)
    reads, pressure = tuple(made[:count]), tuple(made[count:])
    reads = tuple(_sooner(r, pressure) for r in reads)
    there = sorted(play.hot, key=lambda one: one.given != "")  # the one that is always thrown
    hot = next(iter(there), None) if rusher is not None and not play.pressure else None
    if hot is None:
        return Against(defence.name, reads, pressure, rusher)
    return Against(defence.name, reads, pressure, rusher, hot.throws, bool(hot.men))


def _sooner(read: Separation, pressure: Sequence[Separation]) -> Separation:
    """A read that comes too late: as the pressure order has it, where it is thrown in time."""
    target = read.read.read.target
    if read.cover is not Cover.LATE:
        return read
    same = (p for p in pressure if p.read.read.target == target and p.cover is not Cover.LATE)
    hot = next(same, read)
    return replace(hot, read=replace(hot.read, read=read.read.read))


def _throws(
    look: TimedRead, clock: ReadClock, level: PlayingLevel, rusher: float | None
) -> Chances | None:
    """The throws of a read; None where there is no man whom the ball can reach."""
    if look.window is None or not look.thrown_to:
        return None
    return chances(look, clock.men[look.window.man], level, rusher)


def _rooms(
    play: Play,
    clock: ReadClock,
    covering: Sequence[Defender],
    offered: Sequence[Chances],
    level: PlayingLevel,
) -> list[Array]:
    """For each read, how far each defender is from each of its catches: (defenders, throws). Who
    is within `OPEN` and in the way of the ball is at none."""
    throws = together(offered)
    count = math.ceil(min(float(throws.arrives.max()), _UNTIL) / _STEP) + 2
    times = _TIMES[:count]
    places = {label: _sampled(line)[:count] for label, line in clock.men.items()}
    sets = min((look.ready for look in clock.reads), default=math.inf)
    stack, eyes = _before_the_throw(play, covering, places, times, level, sets)
    moments = np.minimum(throws.thrown / _STEP, count - 1).astype(int)
    watches = eyes[:, moments]  # defenders, throws
    some = np.flatnonzero(watches.any(axis=1)).tolist()
    rest = np.flatnonzero(~watches.all(axis=1)).tolist()
    away = np.empty(watches.shape)
    ahead = np.empty(watches.shape, dtype=bool)
    ahead[rest] = in_the_way(throws, stack[rest], throws.thrown, _STEP)
    away[rest] = _breaks(play, [covering[i] for i in rest], throws, stack[rest], level)
    ahead[some] = np.where(
        watches[some], in_the_way(throws, stack[some], throws.met, _STEP), ahead[some]
    )
    away[some] = np.where(watches[some], beside(throws, stack[some], _STEP), away[some])
    away = np.where(ahead & (away < OPEN), np.minimum(away, BETWEEN), away)
    return np.split(away, np.cumsum([len(one) for one in offered])[:-1], axis=1)


def _breaks(
    play: Play, men: Sequence[Defender], throws: Chances, places: Array, level: PlayingLevel
) -> Array:
    """How far those who look at the ball are from each catch: (men, throws)."""
    deep = np.array([d.duty is not None and d.duty.kind in DEEP for d in men], dtype=bool)
    squats = np.array([squatting(d, play) for d in men], dtype=bool)
    away = np.empty((len(men), len(throws)))
    away[~squats] = broken(throws, places[~squats], deep[~squats], level, _STEP)
    if squats.any():
        away[squats] = squatted(throws, places[squats], level, _STEP)
    return away


@lru_cache(maxsize=REMEMBERED)
def _sampled(line: Timeline) -> Array:
    """Where a man is at each of `_TIMES`."""
    return line.where(_TIMES)


def _never(look: TimedRead) -> Separation:
    return Separation(look, 0.0, "", Cover.NEVER, look.thrown, look.arrives, look.at)


def _separation(
    play: Play,
    look: TimedRead,
    throws: Chances,
    covering: Sequence[Defender],
    away: Array,
    rusher: float | None,
) -> Separation:
    """The roomiest throw of a read; ``away`` how far each defender is from each catch.

    A corner who squats outside a screen is not blocked from the inside: he sets its edge.
    """
    behind = throws.at[:, 1] <= 0
    squats = np.array([squatting(d, play) for d in covering])
    rest = np.flatnonzero(~squats)
    lead = min(blockers(play, look.at), len(rest) - 1) if behind.any() else 0
    room = away.min(axis=0)
    if lead > 0:
        left = np.partition(away[rest], lead, axis=0)[lead]
        edge = np.maximum(0.0, away[squats] - UPFIELD).min(axis=0, initial=math.inf)
        room = np.where(behind, np.minimum(left, edge), room)
    best = int(np.argmax(room.round(6)))
    nearest: list[int] = np.argsort(away[:, best], kind="stable").tolist()
    taken = [i for i in nearest if not squats[i]][:lead] if behind[best] and lead > 0 else []
    yards, thrown = float(room[best]), float(throws.thrown[best])
    cover = Cover.OPEN if yards >= OPEN else Cover.TIGHT if yards >= TIGHT else Cover.COVERED
    if rusher is not None and thrown > rusher + GAP:
        cover = Cover.LATE
    x, y = map(float, throws.at[best])
    return Separation(
        look, yards, next(covering[i].label for i in nearest if i not in taken), cover, thrown,
        float(throws.arrives[best]), Point(x, y), tuple(covering[i].label for i in taken),
    )  # fmt: skip


def _before_the_throw(
    play: Play,
    defenders: Sequence[Defender],
    places: Mapping[str, Array],
    times: Array,
    level: PlayingLevel,
    sets: float,
) -> tuple[Array, NDArray[np.bool_]]:
    """Where defenders are, (defenders, times, 2), and when each has his eyes on a man and not on
    the ball, (defenders, times)."""
    where = np.empty((len(defenders), len(times), 2))
    eyes = np.zeros(where.shape[:2], dtype=bool)
    man = [i for i, d in enumerate(defenders) if _follows(d, places)]
    four = [i for i, d in enumerate(defenders) if in_quarters(d)]
    rest = [i for i in range(len(defenders)) if i not in {*man, *four}]
    where[rest] = dropped([defenders[i] for i in rest], play, places, times, level, sets)
    if four:
        where[four], eyes[four] = matched([defenders[i] for i in four], play, places, times, level)
    if man:
        where[man], eyes[man] = chased([defenders[i] for i in man], places, times, level), True
    return where, eyes


def _follows(defender: Defender, men: Container[str]) -> bool:
    duty = defender.duty
    return duty is not None and duty.kind is DutyKind.MAN and duty.man in men

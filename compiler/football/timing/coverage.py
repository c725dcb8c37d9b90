"""A call against a look: which read is open when the ball comes, and by how much.

Until the throw, defenders do what their duty says (`zone_coverage`, `man_coverage`), from then on
they break on the ball (`breaking`). Of the throws that a
read offers (`chances`) the roomiest counts, since a passer throws where they are not.
These are planning figures, common practice, with no published source.
"""

from __future__ import annotations

import math
from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache

import numpy as np

from stemline.football.defence import Defender, DutyKind
from stemline.football.play import Play
from stemline.football.timing.breaking import beside, broken
from stemline.football.timing.chances import Chances, chances, together
from stemline.football.timing.clock import Look, ReadClock
from stemline.football.timing.levels import FARTHER, REMEMBERED, Level
from stemline.football.timing.man_coverage import chased
from stemline.football.timing.running import Array, Timeline
from stemline.football.timing.screens import blockers
from stemline.football.timing.zone_coverage import dropped
from stemline.football.zones import DEEP
from stemline.paths import Point

OPEN = 2.5
"""Yards to the nearest defender at the catch from which a man is called open."""
TIGHT = 1.0
TOLD = 6.0
"""Yards that are told at most, as "6+": he is open, and by how much more no estimate knows."""
_STEP = 0.1
"""Seconds between the places of a defender; between them he runs straight."""
_UNTIL = 6.0
_TIMES = np.arange(0.0, _UNTIL + 2 * _STEP, _STEP)


class Cover(Enum):
    """How a read is covered."""

    OPEN = "open"
    TIGHT = "tight"
    COVERED = "covered"
    NEVER = "not there"


@dataclass(frozen=True)
class Separation:
    """One read against one look: yards to the nearest defender at the catch, and who that is.

    The catch is the roomiest that the read offers: the ball leaves at ``thrown`` (seconds after
    the snap) and is caught at ``at`` by ``arrives``; the clock's own catch, the first, is in
    ``read``. On a screen ``blocked`` are the defenders for whom there is a blocker in front, and
    the yards are those to the first man without one.
    """

    read: Look
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
    def behind(self) -> bool:
        """Whether it is caught behind the line."""
        return self.at.y <= 0


@dataclass(frozen=True)
class Against:
    """A call against a look: each read, and when its first free rusher reaches the passer (None
    where every rusher is blocked). ``pressure`` are the reads of the pressure order."""

    look: str
    reads: tuple[Separation, ...]
    pressure: tuple[Separation, ...]
    rusher: float | None

    @property
    def best(self) -> Separation | None:
        return next((r for r in self.reads if r.cover is Cover.OPEN), None)

    @property
    def hot(self) -> Separation | None:
        """What answers a free rusher: the first of the pressure order that is not covered and
        leaves the hand before he is there; None without one, and where nobody is free."""
        rusher = self.rusher
        if rusher is None:
            return None
        there = (Cover.OPEN, Cover.TIGHT)
        return next((r for r in self.pressure if r.cover in there and r.thrown <= rusher), None)


def against(play: Play, clock: ReadClock, level: Level) -> Against:
    """The separations of a play that stands against a defence (`Play.defence` must be set)."""
    defence = play.defence
    assert defence is not None, "a play that stands against a look"
    free = [d for d in defence.rushers if d.label in play.unblocked]
    rusher = min((_there(d, play, level) for d in free), default=None)
    covering = tuple(d for d in defence.defenders if not d.rushes)
    looks = (*clock.reads, *(clock.pressure if rusher is not None else ()))
    throws = [_throws(look, clock, level, rusher) if covering else None for look in looks]
    offered = [one for one in throws if one is not None]
    rooms = iter(_rooms(play, clock, covering, offered, level) if offered else ())
    made = [
        _never(look) if one is None else _separation(play, look, one, covering, next(rooms))
        for look, one in zip(looks, throws, strict=True)
    ]
    count = len(clock.reads)
    return Against(defence.name, tuple(made[:count]), tuple(made[count:]), rusher)


def _there(rusher: Defender, play: Play, level: Level) -> float:
    """When a free rusher reaches the passer: sooner through a gap inside than off the edge."""
    inside = rusher.duty is not None and rusher.duty.gap[:1] in ("A", "B")
    time = level.inside if inside else level.edge
    return time.value + FARTHER * play.field.code.restraining.value


def _throws(look: Look, clock: ReadClock, level: Level, rusher: float | None) -> Chances | None:
    """The throws of a read; None where there is no man whom the ball can reach."""
    if look.window is None or not look.thrown_to:
        return None
    return chances(look, clock.men[look.window.man], level, rusher)


def _rooms(
    play: Play,
    clock: ReadClock,
    covering: Sequence[Defender],
    offered: Sequence[Chances],
    level: Level,
) -> list[Array]:
    """For each read, how far each defender is from each of its catches: (defenders, throws)."""
    throws = together(offered)
    count = math.ceil(min(float(throws.arrives.max()), _UNTIL) / _STEP) + 2
    times = _TIMES[:count]
    places = {label: _sampled(line)[:count] for label, line in clock.men.items()}
    sets = min((look.ready for look in clock.reads), default=math.inf)
    where = defenders_at(play, covering, places, times, level, sets)
    stack = np.stack([where[d.label] for d in covering])
    follows = np.array([_follows(d, places) for d in covering])
    deep = np.array([d.duty is not None and d.duty.kind in DEEP for d in covering])
    away = np.empty((len(covering), len(throws)))
    away[follows] = beside(throws, stack[follows], _STEP)
    away[~follows] = broken(throws, stack[~follows], deep[~follows], level, _STEP)
    return np.split(away, np.cumsum([len(one) for one in offered])[:-1], axis=1)


@lru_cache(maxsize=REMEMBERED)
def _sampled(line: Timeline) -> Array:
    """Where a man is at each of `_TIMES`."""
    return line.where(_TIMES)


def _never(look: Look) -> Separation:
    return Separation(look, 0.0, "", Cover.NEVER, look.thrown, look.arrives, look.at)


def _separation(
    play: Play, look: Look, throws: Chances, covering: Sequence[Defender], away: Array
) -> Separation:
    """The roomiest throw of a read; ``away`` how far each defender is from each catch."""
    behind = throws.at[:, 1] <= 0
    lead = min(blockers(play, look.at), len(covering) - 1) if behind.any() else 0
    room = away.min(axis=0)
    if lead:
        room = np.where(behind, np.partition(away, lead, axis=0)[lead], room)
    best = int(np.argmax(room.round(6)))
    order = [covering[i].label for i in np.argsort(away[:, best], kind="stable")]
    ahead = lead if behind[best] else 0
    yards = float(room[best])
    cover = Cover.OPEN if yards >= OPEN else Cover.TIGHT if yards >= TIGHT else Cover.COVERED
    x, y = map(float, throws.at[best])
    return Separation(look, yards, order[ahead], cover, float(throws.thrown[best]),
                      float(throws.arrives[best]), Point(x, y), tuple(order[:ahead]))  # fmt: skip


def defenders_at(
    play: Play,
    defenders: Sequence[Defender],
    places: Mapping[str, Array],
    times: Array,
    level: Level,
    sets: float = math.inf,
) -> dict[str, Array]:
    """Where each defender is at each time while the ball has not been thrown: (times, 2).

    ``sets`` is when the passer is ready to throw his first read, in seconds after the snap.
    """
    men = [d for d in defenders if _follows(d, places)]
    rest = [d for d in defenders if not _follows(d, places)]
    zone = dropped(rest, play, places, times, level, sets)
    where = {d.label: zone[i] for i, d in enumerate(rest)}
    if men:
        man = chased(men, places, times, level)
        where |= {d.label: man[i] for i, d in enumerate(men)}
    return where


def _follows(defender: Defender, men: Container[str]) -> bool:
    duty = defender.duty
    return duty is not None and duty.kind is DutyKind.MAN and duty.man in men

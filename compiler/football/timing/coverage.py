"""A call against a look: where the defenders are when the ball comes, and which read is open.

Defenders do what their duty says. A man defender gives ground until his cushion is gone, turns and
runs with his man, and goes around whoever is in his way; a break fools him for as long as he needs
to see it. A zone defender drops to his landmark, a deep one stays deeper than whoever comes into
his part. From the throw on everybody breaks on the ball who does not have his eyes on a man.
These are planning figures, common practice, with no published source.
"""

from __future__ import annotations

import math
from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from stemline.football.defence import Defence, Defender, DutyKind
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.football.timing.clock import Look, ReadClock
from stemline.football.timing.levels import FARTHER, Level
from stemline.football.timing.running import Array, Speed, keeps, runner
from stemline.paths import Point

OPEN = 2.5
"""Yards to the nearest defender at the catch from which a man is called open."""
TIGHT = 1.0
BACKPEDAL, SHUFFLE = 5.0, 2.5
"""Yards a second of a defender who gives ground facing the ball: of one who lines up off, and of
one who is close and reads flat-footed. Common practice: 4.5 to 5.5 and 2 to 3."""
LINES_UP_OFF = 7.0
"""Yards off his man from which a defender backpedals."""
DROP = 5.5
"""Yards a second of a zone drop."""
DEEP_DROP = 8.0
"""Yards a second of a deep defender on his way; once he is threatened he runs as fast as he can."""
READS = 0.3
"""Seconds in which a zone defender reads pass before he drops. Common practice: 0.3 to 0.6."""
CUSHION = 3.5
"""Yards at which a man defender who is run at turns and goes with his man."""
DEEPER = 3.0
"""Yards that a deep defender stays deeper than the deepest man in his part of the field."""
PART = 12.0
"""Yards to each side of his landmark that a deep defender minds."""
STRAIGHT = 1.7
"""Up the field for so much across it (30 degrees): a man who runs at his defender."""
LEVERAGE = 0.8
"""Yards to the side of his man that a man defender keeps, on the side that he lined up on."""
CLOSES = 0.35
"""Seconds in which a man defender means to be back at his man's hip."""
BODY = 1.0
"""Yards within which he cannot run through somebody else: a rub, a brush, traffic."""
BRAKE = 12.0
"""Yards a second that a man who stops loses in a second: two or three steps from a run."""
MOVED = 0.4
"""Yards that a man has gone before his defender takes him to be on his way."""
HANDS = 1.0
"""Yards that a defender reaches with a dive or a long arm."""
_STEP = 0.05
_UNTIL = 5.0
_DEEP = (DutyKind.THIRD, DutyKind.HALF, DutyKind.QUARTER)


class Cover(Enum):
    """How a read is covered."""

    OPEN = "open"
    TIGHT = "tight"
    COVERED = "covered"
    NEVER = "not there"


@dataclass(frozen=True)
class Separation:
    """One read against one look: yards to the nearest defender at the catch, and who that is."""

    read: Look
    yards: float
    nearest: str
    cover: Cover


@dataclass(frozen=True)
class Against:
    """A call against a look: each read, and when its first free rusher reaches the passer (None
    where every rusher is blocked)."""

    look: str
    reads: tuple[Separation, ...]
    rusher: float | None

    @property
    def best(self) -> Separation | None:
        return next((r for r in self.reads if r.cover is Cover.OPEN), None)


def against(play: Play, clock: ReadClock, level: Level) -> Against:
    """The separations of a play that stands against a defence (`Play.defence` must be set)."""
    defence = play.defence
    assert defence is not None, "a play that stands against a look"
    times = np.arange(0.0, _UNTIL, _STEP)[: _last(clock) + 1]
    places = {label: line.where(times) for label, line in clock.men.items()}
    where = defenders_at(play, defence, places, times, level)
    covering = [d for d in defence.defenders if not d.rushes]
    reads = tuple(_separation(look, covering, where, level, places) for look in clock.reads)
    free = [d for d in defence.rushers if d.label in play.unblocked]
    rusher = min((_there(d, play, level) for d in free), default=None)
    return Against(defence.name, reads, rusher)


def _there(rusher: Defender, play: Play, level: Level) -> float:
    """When a free rusher reaches the passer: sooner through a gap inside than off the edge."""
    inside = rusher.duty is not None and rusher.duty.gap[:1] in ("A", "B")
    time = level.inside if inside else level.edge
    return time.value + FARTHER * play.field.code.restraining.value


def _last(clock: ReadClock) -> int:
    """The last step that is asked for: the latest catch."""
    return max((round(look.arrives / _STEP) for look in clock.reads), default=0)


def _separation(
    look: Look,
    defenders: Sequence[Defender],
    where: Mapping[str, Array],
    level: Level,
    men: Container[str],
) -> Separation:
    if look.window is None or not look.thrown_to or not defenders:
        return Separation(look, 0.0, "", Cover.NEVER)
    best: tuple[float, str] = (np.inf, "")
    for defender in defenders:
        place = where[defender.label]
        if _follows(defender, men):
            away = _beside(look, place)
        else:
            away = _broken(look, place, level, _deep(defender))
        best = min(best, (away, defender.label))
    yards, nearest = best
    cover = Cover.OPEN if yards >= OPEN else Cover.TIGHT if yards >= TIGHT else Cover.COVERED
    return Separation(look, yards, nearest, cover)


def _beside(look: Look, place: Array) -> float:
    """How far from the catch a man is who plays his man and not the ball."""
    x, y = place[_moment(look.arrives, place)]
    return max(0.0, math.hypot(look.at.x - x, look.at.y - y) - HANDS)


def _broken(look: Look, place: Array, level: Level, deep: bool) -> float:
    """How far from the catch a man comes who breaks on the throw once he has seen it.

    One who faces the ball underneath has to turn first for a throw over his head.
    """
    speed = runner(level, Position.WIDEOUT)
    breaks = look.thrown + level.react.value
    i = _moment(min(breaks, look.arrives), place)
    here, before = place[i], place[max(i - 2, 0)]
    gap = np.array([look.at.x, look.at.y]) - here
    far = float(np.hypot(*gap))
    toward = float(np.dot(here - before, gap) / (far or 1.0)) / (2 * _STEP)
    if gap[1] > abs(gap[0]) and not deep:
        toward = 0.0
    time = max(0.0, look.arrives - breaks)
    reach = speed.distance(time, min(max(toward, 0.0), speed.top)) + HANDS * min(time, 1.0)
    return max(0.0, far - reach)


def _moment(time: float, place: Array) -> int:
    return min(round(time / _STEP), len(place) - 1)


def defenders_at(
    play: Play, defence: Defence, places: Mapping[str, Array], times: Array, level: Level
) -> dict[str, Array]:
    """Where each defender is at each time while the ball has not been thrown: (times, 2)."""
    men = [d for d in defence.defenders if _follows(d, places)]
    rest = [d for d in defence.defenders if not _follows(d, places)]
    dropped = _drop(rest, places, times, runner(level, Position.WIDEOUT).top)
    where = {d.label: dropped[i] for i, d in enumerate(rest)}
    if men:
        chased = _chase(men, places, times, level)
        where |= {d.label: chased[i] for i, d in enumerate(men)}
    return where


def _follows(defender: Defender, men: Container[str]) -> bool:
    duty = defender.duty
    return duty is not None and duty.kind is DutyKind.MAN and duty.man in men


def _deep(defender: Defender) -> bool:
    return defender.duty is not None and defender.duty.kind in _DEEP


def _man(defender: Defender) -> str:
    return defender.duty.man if defender.duty is not None else ""


def _drop(men: Sequence[Defender], places: Mapping[str, Array], times: Array, top: float) -> Array:
    """Runs to landmarks; who rushes or has nobody stands where he is. (men, times, 2)."""
    made = np.empty((len(men), len(times), 2))
    for i, defender in enumerate(men):
        duty, x, y = defender.duty, defender.at.x, defender.at.y
        if duty is None or duty.to is None or duty.kind is DutyKind.RUSH:
            made[i] = x, y
            continue
        goal = np.repeat([[duty.to.x, duty.to.y]], len(times), axis=0)
        pace = np.full(len(times), DROP)
        if duty.kind in _DEEP:
            goal[:, 1] = np.maximum(goal[:, 1], _deepest(duty.to, places, times) + DEEPER)
            pace = np.where(goal[:, 1] > duty.to.y, max(DEEP_DROP, top), DEEP_DROP)
        steps = zip(times, goal.tolist(), pace.tolist(), strict=True)
        for j, (time, (to_x, to_y), fast) in enumerate(steps):
            made[i, j] = x, y
            far = math.hypot(to_x - x, to_y - y)
            if time >= READS and far > 0:
                part = min(1.0, fast * _STEP / far)
                x, y = x + (to_x - x) * part, y + (to_y - y) * part
    return made


def _deepest(landmark: Point, places: Mapping[str, Array], times: Array) -> Array:
    """How deep the deepest man in a deep defender's part is, at each time."""
    deep = np.zeros(len(times))
    for place in places.values():
        mine = np.abs(place[:, 0] - landmark.x) <= PART
        deep = np.maximum(deep, np.where(mine, place[:, 1], 0.0))
    return deep


def _chase(
    men: Sequence[Defender], places: Mapping[str, Array], times: Array, level: Level
) -> Array:
    """Man defenders, step by step: each a mass that cannot turn at once. (men, times, 2)."""
    curve = runner(level, Position.WIDEOUT)
    late = round(level.react.value / _STEP)
    targets = np.stack([places[_man(d)] for d in men])
    here = np.array([(d.at.x, d.at.y) for d in men])
    side = np.sign(here[:, 0] - targets[:, 0, 0]) * LEVERAGE
    off = here[:, 1] - np.maximum(targets[:, 0, 1], 0.0) >= LINES_UP_OFF
    gives = np.where(off, BACKPEDAL, SHUFFLE)
    bodies = np.stack(list(places.values()))
    other = np.array([[label != _man(d) for label in places] for d in men])
    going = np.zeros_like(here)
    made = np.empty((len(men), len(times), 2))
    for i in range(len(times)):
        made[:, i] = here
        seen, past = targets[:, max(i - late, 0)], targets[:, max(i - late - 2, 0)]
        run = (seen - past) / (2 * _STEP)
        wish = _wish(here, seen + run * late * _STEP, run, side, gives, curve.top)
        gone = np.hypot(*(seen - targets[:, 0]).T) > MOVED
        going = _turned(going, np.where(gone[:, None], wish, 0.0), curve)
        going = _around(going, here, bodies[:, i], other)
        here = here + going * _STEP
    return made


def _wish(here: Array, man: Array, run: Array, side: Array, gives: Array, top: float) -> Array:
    """How man defenders mean to run, given where they take their men to be and to run: (men, 2)."""
    hip = man + np.stack([side, np.zeros(len(side))], axis=-1)
    wish = run + (hip - here) / CLOSES
    cushion = here[:, 1] - man[:, 1]
    comes = (cushion > 0) & (run[:, 1] > STRAIGHT * np.abs(run[:, 0]))
    ground = np.where(cushion > CUSHION, np.minimum(run[:, 1], gives), run[:, 1])
    wish[:, 1] = np.where(comes, ground, wish[:, 1])
    size = np.hypot(wish[:, 0], wish[:, 1])
    slowed: Array = wish * np.minimum(1.0, top / np.where(size > 0, size, 1.0))[:, None]
    return slowed


def _turned(going: Array, wish: Array, curve: Speed) -> Array:
    """Velocities a step later: a turn costs a defender what it costs a receiver. (men, 2)."""
    speed, want = np.hypot(*going.T), np.hypot(*wish.T)
    cosine = np.einsum("ij,ij->i", going, wish) / np.maximum(speed * want, 1e-9)
    degrees = np.where(want > 1e-9, np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0))), 0.0)
    left = speed * np.where(speed > 1e-9, keeps(degrees), 1.0)
    faster = left + (curve.top - left) * (_STEP / curve.tau)
    pace = np.where(want > left, np.minimum(want, faster), np.maximum(want, left - BRAKE * _STEP))
    way = np.where((want > 1e-9)[:, None], wish, going)
    size = np.maximum(np.hypot(*way.T), 1e-9)
    turned: Array = way * (pace / size)[:, None]
    return turned


def _around(going: Array, here: Array, bodies: Array, other: NDArray[np.bool_]) -> Array:
    """Speeds less what would run through a receiver who is somebody else's.

    ``bodies`` are the receivers (receivers, 2), ``other`` whether each is not a defender's own man
    (men, receivers).
    """
    gaps = bodies[None] - here[:, None]
    far = np.hypot(gaps[..., 0], gaps[..., 1])
    for k, j in np.argwhere(other & (far > 0) & (far < BODY)):
        way = gaps[k, j] / far[k, j]
        going[k] -= way * max(0.0, float(np.dot(going[k], way)))
    return going

"""A call against a look: where the defenders are when the ball comes, and which read is open.

Defenders do what their duty says: a man defender holds his cushion until he is threatened and then
follows, paying for every turn; a zone defender drops to his landmark, a deep one stays deeper
than whoever comes into his part. From the throw on everybody breaks on the ball. These are
planning figures, common practice, with no published source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum

import numpy as np

from stemline.football.defence import Defence, Defender, DutyKind
from stemline.football.players import Position
from stemline.football.play import Play
from stemline.football.timing.clock import Look, ReadClock, Verdict
from stemline.football.timing.levels import Level
from stemline.football.timing.running import Array, runner
from stemline.paths import Point

OPEN = 2.5
"""Yards to the nearest defender at the catch from which a man is called open."""
TIGHT = 1.0
BACKPEDAL = 5.0
"""Yards a second of a defender who gives ground facing the ball. Common practice: 4.5 to 5.5."""
DROP = 5.5
"""Yards a second of a zone drop."""
READS = 0.3
"""Seconds in which a zone defender reads pass before he drops. Common practice: 0.3 to 0.6."""
CUSHION = 3.5
"""Yards at which a man defender who is run at turns and goes with his man."""
DEEPER = 3.0
"""Yards that a deep defender stays deeper than the deepest man in his part of the field."""
PART = 12.0
"""Yards to each side of his landmark that a deep defender minds."""
LEVERAGE = 0.8
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
    """A call against a look: each read, and the number of the first that the look leaves open."""

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
    times = np.arange(0.0, _UNTIL, _STEP)
    places = {label: line.where(times) for label, line in clock.men.items()}
    where = defenders_at(play, defence, places, times, level)
    covering = [d for d in defence.defenders if not d.rushes]
    reads = tuple(_separation(look, covering, where, times, level) for look in clock.reads)
    rusher = clock.rusher if any(d.label in play.unblocked for d in defence.rushers) else None
    return Against(defence.name, reads, rusher)


def _separation(
    look: Look,
    defenders: Sequence[Defender],
    where: Mapping[str, Array],
    times: Array,
    level: Level,
) -> Separation:
    if look.verdict in (Verdict.NOBODY, Verdict.TOO_FAR) or not defenders:
        return Separation(look, 0.0, "", Cover.NEVER)
    speed = runner(level, Position.WIDEOUT)
    breaks = look.thrown + level.react.value
    i = min(int(round(min(breaks, look.arrives) / _STEP)), len(times) - 1)
    target = np.array([look.at.x, look.at.y])
    best: tuple[float, str] = (np.inf, "")
    for defender in defenders:
        here, before = where[defender.label][i], where[defender.label][max(i - 2, 0)]
        gap = target - here
        far = float(np.hypot(*gap))
        toward = float(np.dot(here - before, gap) / (far or 1.0)) / (2 * _STEP)
        time = max(0.0, look.arrives - breaks)
        reach = speed.distance(time, min(max(toward, 0.0), speed.top)) + HANDS * min(time, 1.0)
        best = min(best, (max(0.0, far - reach), defender.label))
    yards, nearest = best
    cover = Cover.OPEN if yards >= OPEN else Cover.TIGHT if yards >= TIGHT else Cover.COVERED
    return Separation(look, yards, nearest, cover)


def defenders_at(
    play: Play, defence: Defence, places: Mapping[str, Array], times: Array, level: Level
) -> dict[str, Array]:
    """Where each defender is at each time while the ball has not been thrown: (times, 2)."""
    where: dict[str, Array] = {}
    men = [d for d in defence.defenders if _follows(d, places)]
    if men:
        targets = np.stack([places[d.duty.man] for d in men if d.duty is not None])
        chased = _chase(men, targets, times, level)
        where |= {d.label: chased[i] for i, d in enumerate(men)}
    for defender in defence.defenders:
        if defender.label not in where:
            where[defender.label] = _drop(defender, places, times)
    return where


def _follows(defender: Defender, places: Mapping[str, Array]) -> bool:
    duty = defender.duty
    return duty is not None and duty.kind is DutyKind.MAN and duty.man in places


def _drop(defender: Defender, places: Mapping[str, Array], times: Array) -> Array:
    """A straight run to the landmark; who rushes or has nobody stands where he is."""
    start = np.array([defender.at.x, defender.at.y])
    duty = defender.duty
    if duty is None or duty.to is None or duty.kind is DutyKind.RUSH:
        return np.repeat(start[None], len(times), axis=0)
    goal = np.repeat(np.array([[duty.to.x, duty.to.y]]), len(times), axis=0)
    if duty.kind in _DEEP:
        deepest = _deepest(duty.to, places, times)
        goal[:, 1] = np.maximum(goal[:, 1], deepest + DEEPER)
    way = goal - start
    far = np.hypot(way[:, 0], way[:, 1])
    gone = np.maximum(times - READS, 0.0) * DROP
    if duty.kind in _DEEP:
        # He turns and runs once he is threatened, so he may go faster than a drop.
        gone = np.maximum(times - READS, 0.0) * (DROP + 2.5)
    share = np.where(far > 0, np.minimum(1.0, gone / np.where(far > 0, far, 1.0)), 1.0)
    moved: Array = start + way * share[:, None]
    return moved


def _deepest(landmark: Point, places: Mapping[str, Array], times: Array) -> Array:
    """How deep the deepest man in a deep defender's part is, at each time."""
    deep = np.zeros(len(times))
    for place in places.values():
        mine = np.abs(place[:, 0] - landmark.x) <= PART
        deep = np.maximum(deep, np.where(mine, place[:, 1], 0.0))
    return deep


def _chase(men: Sequence[Defender], targets: Array, times: Array, level: Level) -> Array:
    """Man defenders, step by step: each a mass that cannot turn at once. (men, times, 2)."""
    curve = runner(level, Position.WIDEOUT)
    push = curve.top / curve.tau
    late = int(round(level.react.value / _STEP))
    here = np.array([(d.at.x, d.at.y) for d in men])
    side = np.sign(here[:, 0] - targets[:, 0, 0]) * LEVERAGE
    going = np.zeros_like(here)
    made = np.empty((len(men), len(times), 2))
    for i in range(len(times)):
        made[:, i] = here
        seen = targets[:, max(i - late, 0)]
        past = targets[:, max(i - late - 2, 0)]
        run = (seen - past) / (2 * _STEP)
        aim = seen + np.stack([side, np.zeros(len(men))], axis=-1)
        gap = aim - here
        far = np.hypot(gap[:, 0], gap[:, 1])
        toward = np.einsum("ij,ij->i", here - seen, run)
        waits = (far > CUSHION) & (toward > 0) & (here[:, 1] > seen[:, 1])
        pace = np.minimum(far / (2 * _STEP), curve.top)
        wish = gap / np.where(far > 0, far, 1.0)[:, None] * pace[:, None]
        give = np.stack([np.zeros(len(men)), np.where(toward > 0, BACKPEDAL / 2, 0.0)], axis=-1)
        wish = np.where(waits[:, None], give, wish)
        change = wish - going
        size = np.hypot(change[:, 0], change[:, 1])
        most = np.minimum(size, push * _STEP)
        going = going + change / np.where(size > 0, size, 1.0)[:, None] * most[:, None]
        here = here + going * _STEP
    return made

"""Defenders once the ball is on its way: how far from each catch each of them is.

Everybody breaks on the ball who does not have his eyes on a man, and gets a hand on one that
passes him low enough.
These are planning figures, common practice, with no published source.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stemline.football.players import Position
from stemline.football.timing.chances import Chances
from stemline.football.timing.levels import UNDERNEATH, PlayingLevel
from stemline.football.timing.running import Array, Plane, Speed, runner
from stemline.football.timing.throwing import height
from stemline.football.timing.zone_coverage import DROP

HANDS = 1.0
"""Yards that a defender reaches with a dive or a long arm."""
TRAILS = 0.7
"""Yards that one reaches who looks at his man and not at the ball: an arm. From memory."""
ON_THE_ARM = 0.1
"""Seconds before the ball leaves at which one breaks who reads the arm. Common practice."""
OVER = 0.5
"""Cosine of the angle off the passer's line within which a ball goes over a man's head."""
LEADS = 0.6
"""Cosine of the angle off the way of the ball's lead within which a defender is in it: some 50
degrees either way. Common practice, no published source."""
PLANT = 0.2
"""Seconds that a defender needs to plant and drive who is on his way somewhere else when the ball
leaves, on top of seeing it: 0.45 to 0.6 in all out of a pedal. Common practice."""
REACH = 2.6
"""Metres up to which a defender bats a ball on its way: arm's reach and a jump. From memory."""
ARM = 0.8
"""Yards to the side that he bats a ball which passes him. From memory."""
PASSES = np.array((0.25, 0.4, 0.55, 0.7, 0.85))[:, None]
"""Parts of a ball's flight at which it is looked whether a defender gets a hand on it."""
_BEFORE = 0.1
"""Seconds over which a defender's own way is taken when the ball leaves."""


def beside(throws: Chances, places: Array, step: float) -> Array:
    """How far from each catch men are who play their men and not the ball: (men, throws).

    ``places`` are the defenders without a throw, ``step`` seconds apart: (men, times, 2). A man
    slows down with his man, so he is judged when his man is there.
    """
    there = _at(_plane(places), throws.met, step)
    return np.maximum(0.0, np.abs(_plane(throws.drawn) - there) - TRAILS)


def in_the_way(throws: Chances, places: Array, times: Array, step: float) -> NDArray[np.bool_]:
    """Whether each defender is where the ball would be led to, at ``times``: (defenders, throws).

    A ball is led: it comes ahead of a man on the run, and short of one who stands, between him
    and the passer. A defender there has the leverage; one beside or behind his man has not.
    """
    lead = _plane(throws.way)
    gap = _at(_plane(places), times, step) - _plane(throws.drawn)
    return _dot(gap, lead) > LEADS * np.abs(gap)


def squatted(throws: Chances, places: Array, level: PlayingLevel, step: float) -> Array:
    """`broken` for corners who squat in the flat: their eyes are on the passer, and they come on
    his arm to what is thrown short."""
    deep = np.zeros(len(places), dtype=bool)
    late = broken(throws, places, deep, level, step)
    early = broken(throws, places, deep, level, step, see=-ON_THE_ARM)
    return np.where(throws.at[:, 1] <= UNDERNEATH, early, late)


def broken(
    throws: Chances,
    places: Array,
    deep: NDArray[np.bool_],
    level: PlayingLevel,
    step: float,
    *,
    see: float | None = None,
) -> Array:
    """How far from each catch men come who break on the throw once they have seen it: (men,
    throws); 0 where one bats it on its way. ``places`` as in `beside`, ``deep`` who of them is;
    ``see`` is when they see it, in seconds after it has left the hand.

    One who is on his way elsewhere plants first; one who faces the ball underneath has to turn for
    a throw over his head. Nobody ends up farther away than by going on as if nothing was thrown.
    """
    speed = runner(level, Position.WIDEOUT)
    breaks = throws.thrown + (level.choose.value if see is None else see)
    when = np.minimum(breaks, throws.arrives)
    moments = np.concatenate((when, np.maximum(when - _BEFORE, 0.0), throws.arrives))
    here, was, ends = np.split(_at(_plane(places), moments, step), 3, axis=1)
    passer, catch = _plane(throws.passer), _plane(throws.at)
    going = (here - was) / _BEFORE
    gap, out = catch - here, here - passer
    far = np.abs(gap)
    behind = _dot(gap, out) > OVER * far * np.abs(out)
    over = behind & ~deep[:, None]
    toward = _dot(going, gap) / np.maximum(far, 1e-9)
    toward = np.where(over, 0.0, np.minimum(np.maximum(toward, 0.0), speed.top))
    elsewhere = np.where(over, 1.0, np.minimum(1.0, (np.abs(going) - toward) / DROP))
    time = np.maximum(0.0, throws.arrives - breaks - PLANT * elsewhere)
    left = np.maximum(0.0, far - _run(speed, time, toward) - HANDS * np.minimum(time, 1.0))
    left = np.minimum(left, np.abs(catch - ends))
    air = throws.arrives - throws.thrown
    return np.where(_bats(passer, catch, air, here, speed, level), 0.0, left)


def _bats(
    passer: Plane, catch: Plane, air: Array, here: Plane, speed: Speed, level: PlayingLevel
) -> NDArray[np.bool_]:
    """Whether men who were ``here`` when they saw a ball leave get a hand on it on its way."""
    low, part = height(PASSES, air) <= REACH, PASSES
    ball = passer + part * (catch - passer)  # parts, throws
    time = np.maximum(0.0, part * air - level.choose.value)
    reach = np.where(low, ARM + _run(speed, time, 0.0), -1.0)
    gets: NDArray[np.bool_] = np.any(np.abs(ball - here[:, None]) <= reach, axis=1)
    return gets


def _run(speed: Speed, time: Array, first: Array | float) -> Array:
    """Yards run in many times, each from its own speed."""
    gone = 1 - np.exp(-time / speed.tau)
    run: Array = speed.top * time - (speed.top - first) * speed.tau * gone
    return run


def _at(places: Plane, times: Array, step: float) -> Plane:
    """Where men are at many times: (men, times)."""
    moment = np.minimum(times / step, places.shape[1] - 1)
    before = moment.astype(int)
    after = np.minimum(before + 1, places.shape[1] - 1)
    part = moment - before
    there: Plane = places[:, before] * (1 - part) + places[:, after] * part
    return there


def _plane(places: Array) -> Plane:
    """Points as complex numbers, x + iy."""
    points: Plane = places[..., 0] + 1j * places[..., 1]
    return points


def _dot(one: Plane, other: Plane) -> Array:
    dot: Array = one.real * other.real + one.imag * other.imag
    return dot

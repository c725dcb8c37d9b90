"""The quarterback's clock and the ball's flight.

The flight is a ball thrown flat with drag that goes with the square of its speed: the horizontal
motion has a closed form, the angle is found from the fall. Mass and size from the rule books (14
to 15 ounces, 20.75 to 21.25 inches around); drag 0.10, in the measured range of 0.05 to 0.14 for a
tight spiral (Watts and Moore, American Journal of Physics 71:791, 2003).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from stemline.football.field import Side
from stemline.football.offence.quarterback import MOVING
from stemline.football.play import HANDS_DEEP, Step
from stemline.football.timing.levels import FAKED, PlayingLevel
from stemline.football.timing.running import Array
from stemline.geometry.paths import Point

MASS = 0.415
"""Kilograms: 14 to 15 ounces."""
AROUND = 0.533
"""Metres: 20.75 to 21.25 inches."""
DRAG = 0.10
AIR = 1.2
"""Kilograms a cubic metre, at sea level in mild weather."""
GRAVITY = 9.81
RELEASE, CATCH = 2.0, 1.5
"""Metres above the ground. Common practice, no published source."""
METRES = 0.9144
MPH = 0.44704
STEEPEST = 1.0
"""Tangent of the steepest throw: at 45 degrees a ball goes farthest."""

_LOSS = 0.5 * AIR * DRAG * (AROUND**2 / (4 * math.pi)) / MASS


@cache
def flight(yards: float, mph: float) -> float | None:
    """Seconds in the air of a ball driven so far; None where the arm does not reach."""
    if yards <= 0:
        return 0.0
    x, v = yards * METRES, mph * MPH
    slope, time = 0.0, 0.0
    for _ in range(200):
        level = v / math.hypot(1.0, slope)
        again = math.expm1(_LOSS * x) / (_LOSS * level)
        slope = (GRAVITY * again * again / 2 - (RELEASE - CATCH)) / x
        if slope > STEEPEST:
            return None
        if abs(again - time) < 1e-9:
            return again
        time = again
    return None


def height(part: float | Array, air: float | Array) -> Array:
    """Metres above the ground of a ball that has done ``part`` of its ``air`` seconds.

    A parabola from hand to hand: what drag takes off the height is less than a defender's hand.
    """
    up = (CATCH - RELEASE) + GRAVITY * np.square(air) / 2
    high: Array = RELEASE + up * part - GRAVITY * np.square(np.multiply(part, air)) / 2
    return high


# How deep and how wide the passer is when a step is down, in yards from where he took the snap;
# the width is toward the side of a moving launch. Common practice: three steps from the gun end 7
# to 8 yards deep, five 8 to 9; a sprint launches 6 to 7 deep outside the tackle; a boot 7 to 9
# deep and 8 to 10 wide.
_MOVES: dict[str, tuple[float, float]] = {
    "catch": (0.0, 0.0),
    "quick": (0.5, 0.0),
    "1": (0.8, 0.0),
    "3": (2.3, 0.0),
    "5": (3.6, 0.0),
    "7": (4.8, 0.0),
    "set": (2.0, 0.0),
    "fake": (1.5, 0.0),
    "sprint": (1.5, 5.5),
    "roll": (2.5, 5.0),
    "boot": (3.0, 9.0),
    "hitch": (-0.7, 0.0),
    "reset": (0.0, 0.0),
}
_DROPS = frozenset({"3", "5", "7", "set"})
_UNDER_DEPTH = 3.0
"""Under centre a drop goes so much farther, since it starts at the ball. Common practice."""


@dataclass(frozen=True)
class Foot:
    """A piece of footwork: when it is down (seconds after the snap) and where the passer is."""

    name: str
    time: float
    at: Point


def in_gun(stands: Point) -> bool:
    """Whether a quarterback who stands there drops from the gun: deeper than a centre's hands."""
    return -stands.y > HANDS_DEEP


def clock(
    steps: Sequence[Step], stands: Point, toward: Side, level: PlayingLevel
) -> tuple[Foot, ...]:
    """When each step of the feet is down. ``stands`` is the quarterback at the snap.

    A first step, and each drop, is timed from the snap; a hitch or reset after the step before. A
    drop behind a run fake waits for the fake.
    """
    gun = in_gun(stands)
    faked = False
    feet: list[Foot] = []
    at, time = stands, 0.0
    for step in steps:
        if step.name in level.again:
            time += level.again[step.name].value
            base = at
        else:
            taken = (level.foot if gun else level.under)[step.name].value
            time = max(time, taken, FAKED if faked and step.name in _DROPS else 0.0)
            faked = faked or step.name == "fake"
            base = stands if gun else Point(stands.x, stands.y - _under(step.name))
        back, wide = _MOVES[step.name]
        side = step.side or toward
        at = Point(base.x + side.value * wide, base.y - back)
        feet.append(Foot(step.name, time, at))
    return tuple(feet)


def _under(name: str) -> float:
    return 0.0 if name == "catch" or name in MOVING else _UNDER_DEPTH

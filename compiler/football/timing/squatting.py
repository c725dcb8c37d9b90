"""A corner who squats: the flat is his, and he waits for it near the line.

He hands the widest man to the safety behind him, looks in for the second, and meets whoever comes
short. These are planning figures, common practice, with no published source; that nothing short is
thrown in front of him is in the texts (Brown, "Basic approach to three-step passing", 2005).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stemline.football.defenders import Defender, DutyKind
from stemline.football.play import Play
from stemline.football.timing.levels import MINDS, READS, UNDERNEATH, PlayingLevel
from stemline.football.timing.running import Array

IN_FRONT = 1.5
"""Yards deeper than a short man at which he waits for the ball in front of him. Common practice."""
FLAT_LEAN = 8.0
"""Yards off his landmark that a short man in the flat draws a corner who squats. Common practice:
the flat is his, the curl behind it his neighbour's."""
FLAT_INSIDE = 4.0
"""Yards from the ball at which the flat begins. Common practice: outside the tackle box."""
LOOKS_IN = 2.0
"""Yards inside his landmark at which he waits: he hands the widest man to the safety and looks
for the second one. Common practice."""
STAYS_OUT = 1.0
"""Yards inside his place that he goes at most, where the flat is nearer than he stands. Common
practice: the outside is his."""
OUT_OF = 2.0
"""Yards outside the widest man, or his own place, up to which he widens while nobody is short.
Common practice: he has nobody to meet there."""
FLAT_OUT = 10.0
"""Yards from the ball to which he widens all the same, from a tight split. Common practice: the
flat is open there."""
SQUATS_AT = 5.0
"""Yards deep at which he waits while nobody is short. Common practice."""
SQUATS = 7.0
"""Yards deep up to which a corner squats. Common practice: 5 to 7."""
IN_FRONT_OF = 2.0
"""Yards inside the widest man at which he is still the outside man of the defence."""


def squatting(defender: Defender, play: Play) -> bool:
    """Whether a corner squats: the flat is his, he is near the line, and nobody is wider."""
    duty = defender.duty
    if duty is None or duty.kind is not DutyKind.FLAT or defender.at.y > SQUATS:
        return False
    side = 1.0 if defender.at.x > 0 else -1.0
    widest = max((man.snap.x * side for man in play.men), default=0.0)
    return defender.at.x * side >= widest - IN_FRONT_OF


def in_the_flat(
    marks: Array, stands: Array, goals: Array, seen: Array, times: Array, level: PlayingLevel
) -> tuple[Array, NDArray[np.bool_]]:
    """Where corners who squat mean to be, (men, times, 2), and when they have a man in the flat.

    The flat is theirs before the curl behind it: the widest who comes or sits outside the tackle,
    and short, is met. One who is on his way up the field is not short yet. ``marks`` are their
    landmarks, ``stands`` x of their places, ``goals`` where they would go by the nearest threat,
    ``seen`` the receivers.
    """
    goals = goals.copy()
    side = np.sign(marks[..., 0])
    waits = np.maximum(np.abs(marks[..., 0]) - LOOKS_IN, stands * side - STAYS_OUT)
    widest = (seen[None, ..., 0] * side[:, None]).max(axis=1)
    most = np.maximum(np.maximum(widest, stands * side) + OUT_OF, FLAT_OUT)
    goals[..., 0] = side * np.minimum(waits, most)
    goals[..., 1] = np.maximum(goals[..., 1], SQUATS_AT)
    step = float(times[1] - times[0]) if len(times) > 1 else 1.0
    way = np.diff(seen, axis=1, prepend=seen[:, :1]) / step
    stays = (way[..., 1] <= np.abs(way[..., 0])) & (seen[..., 1] <= UNDERNEATH)
    stays &= times >= READS + level.choose.value
    there = seen + way * level.choose.value + (0.0, IN_FRONT)
    gaps = there[None] - marks[:, None]
    far = np.hypot(gaps[..., 0], gaps[..., 1])
    out = there[None, ..., 0] * side[:, None]
    out = np.where(stays & (out >= FLAT_INSIDE) & (far <= MINDS), out, -np.inf)
    who = np.argmax(out, axis=1)[:, None]  # who is inside of the widest is his neighbour's
    away = np.take_along_axis(far, who, axis=1)[:, 0]
    gap = np.take_along_axis(gaps, who[..., None], axis=1)[:, 0]
    short: NDArray[np.bool_] = np.isfinite(out.max(axis=1))
    part = np.where(short, np.minimum(1.0, FLAT_LEAN / np.maximum(away, 1e-9)), 0.0)
    return np.where(short[..., None], marks + gap * part[..., None], goals), short

"""Four deep: each takes the man who comes up the field in his quarter, and goes where he goes.

The outside two have the widest man, the inside two the second: past a few yards each has him man
to man wherever he goes, his eyes on him and not on the ball, and who has nobody helps on the man
beside him ("Quarters coverage: alignment and assignments", a national youth sports site). A second
man in his quarter whom nobody has he stays between. All figures: common practice, no published
source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from stemline.football.defence.zones import middle_of
from stemline.football.defenders import Defender, DutyKind
from stemline.football.play import Play
from stemline.football.timing.levels import UNDERNEATH, PlayingLevel
from stemline.football.timing.running import Array
from stemline.football.timing.zone_coverage import deep_pace, expected, landmark, on_his_way

CARRIES = 8.0
"""Yards to each side of his landmark in which one in quarters finds his man."""
OVER_HIM = 0.5
"""Yards deeper than his man that he stays who has one."""
TOGETHER = 0.3
"""Seconds within which two men come up the field at one time."""
ROBS = 4.0
"""Yards off his landmark that he goes who has nobody, to help on the man beside him."""
SEES = 12.0
"""Yards to each side of his landmark in which he helps."""
_NEVER = np.iinfo(np.int64).max


def in_quarters(defender: Defender) -> bool:
    duty = defender.duty
    return duty is not None and duty.kind is DutyKind.QUARTER and duty.to is not None


def matched(
    men: Sequence[Defender],
    play: Play,
    places: Mapping[str, Array],
    times: Array,
    level: PlayingLevel,
) -> tuple[Array, NDArray[np.bool_]]:
    """Where men in quarters are, (men, times, 2), and when each has a man, (men, times).

    ``places`` are the receivers, each (times, 2); ``times`` seconds after the snap, evenly apart.
    """
    step = float(times[1] - times[0]) if len(times) > 1 else 1.0
    marks = np.stack([landmark(d) for d in men])
    receivers = np.stack(list(places.values())) if places else np.empty((0, len(times), 2))
    where, high = expected(receivers, step, level)
    inside = middle_of(play.field) - marks[:, 0]
    up = receivers[..., 1] > UNDERNEATH
    goals, has = _goals(marks, where, high, up, inside, round(TOGETHER / step))
    pace = np.full(len(times), deep_pace(level))
    made = [on_his_way(d, goal, times, pace) for d, goal in zip(men, goals, strict=True)]
    return np.stack(made), has


def _goals(
    marks: Array,
    where: Array,
    high: Array,
    up: NDArray[np.bool_],
    inside: Array,
    together: int,
) -> tuple[Array, NDArray[np.bool_]]:
    """Where they mean to be, and when each has a man and nobody else to mind."""
    goals = np.repeat(marks[:, None], where.shape[1], axis=1)
    has = np.zeros((len(marks), *where.shape[:2]), dtype=bool)
    if not len(where):
        return goals, np.zeros(goals.shape[:2], dtype=bool)
    across = where[None, ..., 0] - marks[:, 0, None, None]
    near = (np.abs(across) <= CARRIES) & up
    comes = np.where(near.any(axis=2), near.argmax(axis=2), _NEVER)
    for i, man in enumerate(_taken(comes, across, inside, together)):
        if man >= 0:
            has[i, man, comes[i, man] :] = True
    minds = has | (near & ~has.any(axis=0))
    helped = ~minds.any(axis=1, keepdims=True) & _beside(across, up)
    count = (minds | helped).sum(axis=1)
    goes = ((minds | helped) * across).sum(axis=1) / np.maximum(count, 1)
    goals[..., 0] += np.where(helped.any(axis=1), np.clip(goes, -ROBS, ROBS), goes)
    deepest = np.where(minds | helped, high, -np.inf).max(axis=1) + OVER_HIM
    mine: NDArray[np.bool_] = np.any(has, axis=1)
    goals[..., 1] = np.where(mine, deepest, np.maximum(goals[..., 1], deepest))
    alone: NDArray[np.bool_] = mine & (count == 1)
    return goals, alone


def _beside(across: Array, up: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Of the men who are up the field, the nearest to each landmark."""
    far = np.where((np.abs(across) <= SEES) & up, np.abs(across), np.inf)
    nearest: NDArray[np.bool_] = np.isfinite(far) & (far <= far.min(axis=1, keepdims=True))
    return nearest


def _taken(comes: NDArray[np.int64], across: Array, inside: Array, together: int) -> list[int]:
    """Whom each takes, -1 for nobody: the first who comes, of some at one time the widest."""
    his = [-1] * len(comes)
    for i in np.argsort(-np.abs(inside), kind="stable").tolist():
        mine = comes[i].copy()
        mine[[man for man in his if man >= 0]] = _NEVER
        first = mine.min(initial=_NEVER)
        if first < _NEVER:
            some = np.flatnonzero(mine <= min(first + together, _NEVER - 1))
            out = across[i, some, first] * -np.sign(inside[i])
            his[i] = int(some[out.argmax()])
    return his

"""The throws that one read offers: on rhythm, and what a passer does who waits or takes air.

The clock judges the first ball that meets a man in his window. A passer sees the defenders too: he
drives it, puts touch on it, or holds it for as long as a hitch takes, so that it comes down where
they are not. Longer he does not wait: his eyes go on to the next read.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from stemline.football.timing.clock import TimedRead, driven, longest
from stemline.football.timing.levels import DOWNFIELD, REMEMBERED, SLOW, PlayingLevel
from stemline.football.timing.running import Array, Timeline

SLIDES = np.array((-2.0, -1.0, 1.0, 2.0))
"""Yards across that a man who settles moves from where he is drawn, into the hole between zones:
two steps. Common practice. Who has him man to man goes with him."""
_STEP = 0.1
"""Seconds between the throws, and between the catches, that are looked at."""
_STILL = 0.1
"""Yards run in `_STEP` up to which a man stands."""
_FINE, _NEAR = 0.02, 0.05
"""Seconds, and yards, within which the moment is found at which a man is somewhere."""


@dataclass(frozen=True, eq=False)
class Chances:
    """Throws, of one read the clock's own first.

    Each leaves the hand at ``passer`` (throws, 2) at ``thrown`` and is caught at ``at`` (throws,
    2) by ``arrives``; its man is there at ``met``, before the ball where he slows down for it.
    ``drawn`` (throws, 2) is the place of his route that he is at then: a man who settles moves off
    it into the hole. ``way`` (throws, 2), one yard long, is where a ball leads him: where he runs,
    or to the passer where he stands. Seconds after the snap, and yards.
    """

    passer: Array
    thrown: Array
    arrives: Array
    met: Array
    at: Array
    drawn: Array
    way: Array

    def __len__(self) -> int:
        return len(self.thrown)


def together(parts: Sequence[Chances]) -> Chances:
    """The throws of many reads, one read after another."""
    fields = ("passer", "thrown", "arrives", "met", "at", "drawn", "way")
    return Chances(*(np.concatenate([getattr(part, name) for part in parts]) for name in fields))


@lru_cache(maxsize=REMEMBERED)
def chances(look: TimedRead, line: Timeline, level: PlayingLevel, rusher: float | None) -> Chances:
    """What a read offers; ``rusher`` is when a free man is at the passer (None without one)."""
    first = np.array([look.at.x, look.at.y])
    window = look.window
    latest = look.thrown + level.again["hitch"].value
    if rusher is not None:
        latest = max(look.thrown, min(latest, rusher))
    thrown = np.arange(look.thrown, latest + 1e-9, _STEP)
    until = window.closes if window is not None else look.arrives
    caught = np.arange(look.arrives, until + 1e-9, _STEP)
    places = line.where(caught)
    yards = np.hypot(places[:, 0] - look.passer.x, places[:, 1] - look.passer.y)
    deep = places[:, 1] >= DOWNFIELD
    least = driven(yards, deep, level)
    hang = caught[None, :] - thrown[:, None]
    good = np.isfinite(least) & (least <= hang) & (hang <= longest(least, deep))
    row, column = np.nonzero(good)
    thrown = np.append(look.thrown, thrown[row])
    arrives = np.append(look.arrives, caught[column])
    met = np.append(_met(look, line), caught[column])
    at = np.vstack((first, places[column]))
    passer = np.repeat([[look.passer.x, look.passer.y]], len(at), axis=0)
    return _slid(Chances(passer, thrown, arrives, met, at, at, _way(line, met, at, passer)), line)


def _way(line: Timeline, met: Array, at: Array, passer: Array) -> Array:
    """Where a ball leads a man at each catch."""
    runs = line.where(met) - line.where(np.maximum(met - _STEP, 0.0))
    far = np.hypot(runs[:, 0], runs[:, 1])[:, None]
    back = passer - at
    back = back / np.maximum(np.hypot(back[:, 0], back[:, 1])[:, None], _FINE)
    way: Array = np.where(far > _STILL, runs / np.maximum(far, _FINE), back)
    return way


def _slid(throws: Chances, line: Timeline) -> Chances:
    """The throws, and of a man who settles the earliest of each moment to either side too."""
    if not line.settles:
        return throws
    _, soonest = np.unique(throws.thrown, return_index=True)
    soonest = soonest[throws.met[soonest] >= line.arrives - _FINE]
    each = np.tile(soonest, len(SLIDES))
    moved = throws.at[each] + np.stack(
        (np.repeat(SLIDES, len(soonest)), np.zeros(len(each))), axis=1
    )
    aside = Chances(throws.passer[each], throws.thrown[each], throws.arrives[each],
                    throws.met[each], moved, throws.drawn[each], throws.way[each])  # fmt: skip
    return together((throws, aside))


def _met(look: TimedRead, line: Timeline) -> float:
    """When the man of a read is at the clock's own catch."""
    times = np.arange(max(0.0, look.arrives - SLOW), look.arrives + _FINE / 2, _FINE)
    places = line.where(times)
    away = np.hypot(places[:, 0] - look.at.x, places[:, 1] - look.at.y)
    near = np.flatnonzero(away < away.min() + _NEAR)
    return float(times[near[-1]])

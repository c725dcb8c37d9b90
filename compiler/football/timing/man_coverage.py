"""Man defenders before the throw: each gives ground, turns, runs with his man, and is rubbed.

Each is a mass that cannot turn at once. He gives ground until his cushion is gone, turns and runs
with his man; a break fools him for as long as he needs to see it; somebody in his way he goes
around. Points of the plane are complex numbers here, x + iy: half the work of pairs.
These are planning figures, common practice, with no published source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stemline.football.defence import Defender
from stemline.football.players import Position
from stemline.football.timing.levels import Level
from stemline.football.timing.running import Array, Speed, keeps, runner

BACKPEDAL, SHUFFLE = 5.0, 2.5
"""Yards a second of a defender who gives ground facing the ball: of one who lines up off, and of
one who is close and reads flat-footed. Common practice: 4.5 to 5.5 and 2 to 3."""
LINES_UP_OFF = 7.0
"""Yards off his man from which a defender backpedals."""
CUSHION = 3.5
"""Yards at which a man defender who is run at turns and goes with his man."""
STRAIGHT = 1.7
"""Up the field for so much across it (30 degrees): a man who runs at his defender."""
LEVERAGE = 0.8
"""Yards to the side of his man that a man defender keeps, on the side that he lined up on."""
CLOSES = 0.35
"""Seconds in which a man defender means to be back at his man's hip."""
BODY = 1.0
"""Yards within which he cannot run through somebody else: a rub, a brush, traffic."""
TRASH = 0.8
"""Part of his speed with which a defender goes over or under somebody in his way."""
RUB, JOG = 25.0, 4.0
"""Yards a second that he loses in a second meanwhile, and what he keeps at the least. A rub costs
him about half a second. Common practice."""
BRAKE = 12.0
"""Yards a second that a man who stops loses in a second: two or three steps from a run."""
MOVED = 0.4
"""Yards that a man has gone before his defender takes him to be on his way."""

_DEGREES = np.arange(180.0, -1.0, -1.0)
_COSINE, _KEPT = np.cos(np.radians(_DEGREES)), keeps(_DEGREES)
"""What a turn leaves of a man's speed, by its cosine."""

Plane = NDArray[np.complex128]


def chased(
    men: Sequence[Defender],
    places: Mapping[str, Array],
    times: Array,
    level: Level,
) -> Array:
    """Where man defenders are: (men, times, 2).

    ``places`` are the receivers, each (times, 2); ``times`` seconds after the snap, evenly apart.
    """
    curve = runner(level, Position.WIDEOUT)
    fine = np.arange(0.0, float(times[-1]) + _STEP, _STEP)
    late, before = round(level.react.value / _STEP), round(_LOOKS / _STEP)
    bodies = _bodies(places, times, fine)
    labels = list(places)
    whose = [labels.index(_man(d)) for d in men]
    targets = bodies[whose]
    other = np.ones((len(men), len(labels)), dtype=bool)
    other[np.arange(len(men)), whose] = False
    seen = _late(targets, late)
    runs = (seen - _late(seen, before)) / _LOOKS
    paths = _Seen(
        men=seen,
        runs=runs,
        hips=seen + runs * (late * _STEP) + _hip(runs, _side(men, targets)),
        straight=runs.imag > STRAIGHT * np.abs(runs.real),
        ground=np.minimum(runs.imag, _gives(men, targets)[:, None]),
        gone=np.maximum.accumulate(np.abs(seen - targets[:, :1]) > MOVED, axis=1),
    )
    made = _run(np.array([complex(d.at.x, d.at.y) for d in men]), paths, curve, bodies, other)
    step = round(float(times[1] - times[0]) / _STEP) if len(times) > 1 else 1
    kept = made[:, : (len(times) - 1) * step + 1 : step]
    return np.stack((kept.real, kept.imag), axis=-1)


_STEP = 0.05
"""Seconds of a defender's step: what a turn costs him is told by it."""
_LOOKS = 0.1
"""Seconds over which a defender sees how a man runs."""


def _bodies(places: Mapping[str, Array], times: Array, fine: Array) -> Plane:
    """Where the receivers are at finer times: (receivers, times)."""
    x, y = (
        np.stack([np.interp(fine, times, place[:, axis]) for place in places.values()])
        for axis in (0, 1)
    )
    return x + 1j * y


def _late(places: Plane, steps: int) -> Plane:
    """Where men were so many steps before: (men, times)."""
    first = np.repeat(places[:, :1], steps, axis=1)
    return np.concatenate((first, places[:, : places.shape[1] - steps]), axis=1)


def _man(defender: Defender) -> str:
    return defender.duty.man if defender.duty is not None else ""


def _side(men: Sequence[Defender], targets: Plane) -> Array:
    """The side of his man on which each stays: the one that he lined up on."""
    side: Array = np.sign(np.array([d.at.x for d in men]) - targets[:, 0].real) * LEVERAGE
    return side


def _gives(men: Sequence[Defender], targets: Plane) -> Array:
    """How fast each gives ground."""
    off = np.array([d.at.y for d in men]) - np.maximum(targets[:, 0].imag, 0.0) >= LINES_UP_OFF
    return np.where(off, BACKPEDAL, SHUFFLE)


def _hip(runs: Plane, side: Array) -> Array:
    """Where a man defender means to be beside his man: on his side of him, and behind one who
    runs across the field."""
    across = np.abs(runs.real) > np.abs(runs.imag)
    hip: Array = np.where(across, -np.sign(runs.real) * LEVERAGE, side[:, None])
    return hip


@dataclass(frozen=True, eq=False)
class _Seen:
    """What each defender knows of his man at each time: (men, times).

    Where he takes him to be (``men``) and to run (``runs``), where he means to be beside him
    (``hips``); whether he is run at (``straight``) and how much ground he would give; whether his
    man has ``gone``.
    """

    men: Plane
    runs: Plane
    hips: Plane
    straight: NDArray[np.bool_]
    ground: Array
    gone: NDArray[np.bool_]


def _run(here: Plane, paths: _Seen, curve: Speed, bodies: Plane, other: NDArray[np.bool_]) -> Plane:
    """Where defenders are who start ``here``: (men, times)."""
    going = np.zeros_like(here)
    made = np.empty_like(paths.men)
    for i in range(len(paths.men.T)):
        made[:, i] = here
        gone = paths.gone[:, i]
        if not gone.any():
            continue
        run = paths.runs[:, i]
        wish = run + (paths.hips[:, i] - here) / CLOSES
        cushion = here.imag - paths.men[:, i].imag
        comes = (cushion > 0) & paths.straight[:, i]
        ground = np.where(cushion > CUSHION, paths.ground[:, i], run.imag)
        wish.imag = np.where(comes, ground, wish.imag)
        going = _turned(going, wish, curve) * gone
        going, past = _around(going, here, bodies[:, i], other, run)
        here = here + past * _STEP
    return made


def _turned(going: Plane, wish: Plane, curve: Speed) -> Plane:
    """Velocities a step later: a turn costs a defender what it costs a receiver."""
    speed, size = np.abs(going), np.abs(wish)
    way = wish / np.maximum(size, 1e-9)
    cosine = (way * going.conj()).real / np.maximum(speed, 1e-9)
    left = speed * np.interp(cosine, _COSINE, _KEPT)
    faster = left + (curve.top - left) * (_STEP / curve.tau)
    want = np.minimum(size, curve.top)
    turned: Plane = way * np.minimum(np.maximum(want, left - BRAKE * _STEP), faster)
    return turned


def _around(
    going: Plane, here: Plane, bodies: Plane, other: NDArray[np.bool_], run: Plane
) -> tuple[Plane, Plane]:
    """What velocities are left to those whom somebody else's receiver is in the way of, and how
    they get past him.

    ``bodies`` are the receivers, ``other`` whether each is not a defender's own man (men,
    receivers), ``run`` how their men run. He slows down, and goes past on the side on which he
    means to run already, else over the top.
    """
    gaps = bodies[None] - here[:, None]
    near = other & (np.abs(gaps) < BODY)
    if not near.any():
        return going, going
    left, past = going.copy(), going.copy()
    for k, j in np.argwhere(near):
        way = gaps[k, j] / max(abs(gaps[k, j]), 1e-9)
        along = past[k] * way.conjugate()  # real: into him; imaginary: past him
        if along.real <= 0:
            continue
        turn = along.imag
        if abs(turn) < 1e-6:
            over = (1j * way).imag
            turn = over if abs(over) > 1e-6 else -run[k].real * way.imag
        past[k] = way * 1j * np.sign(turn) * max(abs(along.imag), abs(past[k]) * TRASH)
        size = abs(going[k])
        left[k] *= max(size - RUB * _STEP, min(size, JOG)) / max(size, 1e-9)
    return left, past

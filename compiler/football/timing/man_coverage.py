"""Man defenders before the throw: each gives ground, turns, runs with his man, and is rubbed.

Each is a mass that cannot turn at once. He gives ground until his cushion is gone, turns and runs
with his man; a break fools him for as long as he needs to see it; somebody in his way he goes
around. Points of the plane are complex numbers here, x + iy: half the work of pairs.
These are planning figures, common practice, with no published source.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from stemline.football.defenders import Defender
from stemline.football.players import Position
from stemline.football.timing.levels import PlayingLevel
from stemline.football.timing.running import Array, Plane, Speed, keeps, runner

BACKPEDAL, SHUFFLE = 5.0, 2.5
"""Yards a second of a defender who gives ground facing the ball: of one who lines up off, and of
one who is close and reads flat-footed. Common practice: 4.5 to 5.5 and 2 to 3."""
LINES_UP_OFF = 7.0
"""Yards off his man from which a defender backpedals."""
CUSHION = 3.5
"""Yards at which a man defender who is run at turns and goes with his man."""
AHEAD = 0.12
"""Seconds ahead of what he has seen of his man at which he turns: he goes before his cushion is
gone."""
STRAIGHT = 1.7
"""Up the field for so much across it (30 degrees): a man who runs at his defender."""
LEVERAGE = 0.8
"""Yards to the side of his man that a man defender keeps, on the side that he lined up on."""
HIP = 0.6
"""Yards behind a man who runs across the field that he means to be."""
CLOSES = 0.35
"""Seconds in which a man defender means to be back at his man's hip."""
WAITS = 1.0
"""Yards past the line at which he waits for a man who is behind it: he does not go in after him.
Common practice."""
BODY = 1.0
"""Yards within which he cannot run through somebody else: a rub, a brush, traffic."""
TRASH = 0.8
"""Part of his speed with which a defender goes over or under somebody in his way."""
RUB, JOG = 25.0, 4.0
"""Yards a second that he loses in a second meanwhile, and what he keeps at the least. A rub costs
him about half a second. Common practice."""
BRAKE = 12.0
"""Yards a second that a man who stops loses in a second: two or three steps from a run."""
RELEASE = 0.5
"""Seconds after the snap in which a man only comes off the line; twice as long after it he may
break either way. Common practice."""
MOVED, STIRRED = 0.4, 0.05
"""Yards that a man has gone before his defender takes him to be on his way, and before one does who
is up close: he goes with the first step."""
PRESSES = 3.0
"""Yards off his man up to which he is up close."""

_DEGREES = np.arange(180.0, -1.0, -1.0)
_COSINE, _KEPT = np.cos(np.radians(_DEGREES)).tolist(), keeps(_DEGREES).tolist()
_SLOPE = [0.0, *(np.diff(_KEPT) / np.diff(_COSINE)).tolist()]
"""What a turn leaves of a man's speed, by its cosine, and how it grows up to there."""


def chased(
    men: Sequence[Defender],
    places: Mapping[str, Array],
    times: Array,
    level: PlayingLevel,
) -> Array:
    """Where man defenders are: (men, times, 2).

    ``places`` are the receivers, each (times, 2); ``times`` seconds after the snap, evenly apart.
    """
    fine = np.arange(0.0, float(times[-1]) + _STEP, _STEP)
    bodies = _bodies(places, times, fine)
    labels = list(places)
    whose = [labels.index(d.duty.man if d.duty is not None else "") for d in men]
    others = {own: np.delete(bodies, own, axis=0) for own in set(whose)}
    targets = {own: bodies[own].tobytes() for own in set(whose)}
    made = [
        _ran(_Chase(complex(d.at.x, d.at.y), targets[own], level, seen), others[own])
        for d, own, seen in zip(men, whose, _what_they_see(men, bodies[whose], level), strict=True)
    ]
    step = round(float(times[1] - times[0]) / _STEP) if len(times) > 1 else 1
    kept = np.array(made)[:, : (len(times) - 1) * step + 1 : step]
    return np.stack((kept.real, kept.imag), axis=-1)


def _what_they_see(men: Sequence[Defender], targets: Plane, level: PlayingLevel) -> Iterator[_Seen]:
    """What each defender knows of his man, who is at ``targets``: (men, times)."""
    late = _lateness(targets.shape[1], level)
    then = np.maximum(np.arange(targets.shape[1]) - late, 0)
    seen = targets[:, then]
    runs = (seen - targets[:, np.maximum(then - _LOOKS_BACK, 0)]) / _LOOKS
    there = seen + runs * (late * _STEP)
    hips = there + _hip(runs, _side(men, targets))
    hips = np.where(seen.imag < 0, hips.real + 1j * np.maximum(hips.imag, WAITS), hips)
    straight = runs.imag > STRAIGHT * np.abs(runs.real)
    ground = np.minimum(runs.imag, _gives(men, targets)[:, None])
    moved = np.where(_off(men, targets) <= PRESSES, STIRRED, MOVED)[:, None]
    gone = np.maximum.accumulate(np.abs(seen - targets[:, :1]) > moved, axis=1)
    columns = (seen + runs * AHEAD, runs, hips, straight, ground, gone)
    return map(_Seen, *(column.tolist() for column in columns))


_RUNS = 512
"""Runs that are remembered: those of some fifteen calls against ten looks, ten megabytes."""
_MARGIN = 1e-6
"""Yards by which two ways to reckon a distance never differ."""
_STEP = 0.05
"""Seconds of a defender's step: what a turn costs him is told by it."""
_LOOKS = 0.1
"""Seconds over which a defender sees how a man runs."""


_LOOKS_BACK = round(_LOOKS / _STEP)


def _lateness(count: int, level: PlayingLevel) -> NDArray[np.int64]:
    """How many steps behind each of ``count`` times a defender sees his man: at the snap he only
    has to react, once his man may break he has to see which way."""
    choosing = np.clip((np.arange(count) * _STEP - RELEASE) / RELEASE, 0.0, 1.0)
    seconds = level.react.value + (level.choose.value - level.react.value) * choosing
    steps: NDArray[np.int64] = np.round(seconds / _STEP).astype(np.int64)
    return steps


def _bodies(places: Mapping[str, Array], times: Array, fine: Array) -> Plane:
    """Where the receivers are at finer times: (receivers, times)."""
    x, y = (
        np.stack([np.interp(fine, times, place[:, axis]) for place in places.values()])
        for axis in (0, 1)
    )
    return x + 1j * y


def _side(men: Sequence[Defender], targets: Plane) -> Array:
    """The side of his man on which each stays: the one that he lined up on."""
    side: Array = np.sign(np.array([d.at.x for d in men]) - targets[:, 0].real) * LEVERAGE
    return side


def _gives(men: Sequence[Defender], targets: Plane) -> Array:
    """How fast each gives ground."""
    return np.where(_off(men, targets) >= LINES_UP_OFF, BACKPEDAL, SHUFFLE)


def _off(men: Sequence[Defender], targets: Plane) -> Array:
    """How many yards up the field from his man each lines up."""
    off: Array = np.array([d.at.y for d in men]) - np.maximum(targets[:, 0].imag, 0.0)
    return off


def _hip(runs: Plane, side: Array) -> Array:
    """Where a man defender means to be beside his man: on his side of him, and behind one who
    runs across the field."""
    across = np.abs(runs.real) > np.abs(runs.imag)
    hip: Array = np.where(across, -np.sign(runs.real) * HIP, side[:, None])
    return hip


@dataclass(frozen=True)
class _Seen:
    """What one defender knows of his man at each time.

    Where he takes him to be (``man``) and to run (``runs``), where he means to be beside him
    (``hips``); whether he is run at (``straight``) and how much ground he would give; whether his
    man has ``gone``.
    """

    man: Sequence[complex]
    runs: Sequence[complex]
    hips: Sequence[complex]
    straight: Sequence[bool]
    ground: Sequence[float]
    gone: Sequence[bool]


@dataclass(frozen=True)
class _Chase:
    """A defender who starts ``here`` after a man whose places are ``target``; what he has ``seen``
    of him follows from these and the level."""

    here: complex
    target: bytes
    level: PlayingLevel
    seen: _Seen = field(compare=False)


def _ran(chase: _Chase, others: Plane) -> Sequence[complex]:
    """Where a defender is at each time, past the other receivers, (men, times). Most have nobody
    in their way, and run as they do after the same man in other calls and looks."""
    way = _alone(chase)
    if not (np.abs(others - np.array(way)) < BODY + _MARGIN).any():
        return way
    return _followed(chase.here, chase.seen, _curve(chase.level), others.T.tolist())


@lru_cache(maxsize=_RUNS)
def _alone(chase: _Chase) -> Sequence[complex]:
    """Where a defender is at each time if no other receiver is on the field."""
    nobody: Sequence[Sequence[complex]] = ((),) * len(chase.seen.man)
    return _followed(chase.here, chase.seen, _curve(chase.level), nobody)


def _curve(level: PlayingLevel) -> Speed:
    return runner(level, Position.WIDEOUT)


def _followed(
    here: complex, seen: _Seen, curve: Speed, others: Sequence[Sequence[complex]]
) -> list[complex]:
    """Where a defender is at each time who starts ``here``; ``others`` are the receivers at each
    time who are not his man. Plain numbers: five men at a time are too few for arrays to pay."""
    going, made = 0j, []
    top, gains, brakes = curve.top, _STEP / curve.tau, BRAKE * _STEP
    rows = zip(seen.man, seen.runs, seen.hips, seen.straight, seen.ground, seen.gone, others,
               strict=True)  # fmt: skip
    for man, run, hip, straight, ground, gone, bodies in rows:
        made.append(here)
        if not gone:
            continue
        wish = run + (hip - here) / CLOSES
        if straight and (cushion := here.imag - man.imag) > 0:
            wish = complex(wish.real, ground if cushion > CUSHION else run.imag)
        # A turn costs a defender what it costs a receiver.
        left, size = abs(going), abs(wish)
        if size < 1e-9:
            going = 0j
        else:
            if left > 0:
                cosine = (wish.real * going.real + wish.imag * going.imag) / (size * left)
                turn = bisect_right(_COSINE, cosine)
                if turn < len(_COSINE):
                    left *= _KEPT[turn] + (cosine - _COSINE[turn]) * _SLOPE[turn]
            faster = left + (top - left) * gains
            want = max(size if size < top else top, left - brakes)
            going = wish * ((faster if faster < want else want) / size)
        past = going
        for body in bodies:
            if abs(body - here) < BODY:
                going, past = _around(going, past, body - here, run)
        here += past * _STEP
    return made


def _around(going: complex, past: complex, gap: complex, run: complex) -> tuple[complex, complex]:
    """What velocity is left to a defender whom somebody else's receiver is in the way of, and how
    he gets ``past`` him.

    ``gap`` is from him to that receiver, ``run`` how his man runs. He slows down, and goes past on
    the side on which he means to run already, else over the top.
    """
    way = gap / max(abs(gap), 1e-9)
    along = past * way.conjugate()  # real: into him; imaginary: past him
    if along.real <= 0:
        return going, past
    turn = along.imag
    if abs(turn) < 1e-6:
        over = way.real
        turn = over if abs(over) > 1e-6 else -run.real * way.imag
    side = math.copysign(1.0, turn) if turn else 0.0
    past = way * complex(0.0, side * max(abs(along.imag), abs(past) * TRASH))
    size = abs(going)
    return going * (max(size - RUB * _STEP, min(size, JOG)) / max(size, 1e-9)), past

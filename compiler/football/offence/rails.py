"""A stem on a line up the field: `go up 2 outside numbers`, `post 12 up 1 inside numbers by 6`.

`to` says where a route ends; `up` says on which line it is run: the man leans onto it and stays on
it until he breaks. Eight yards to get there are common practice, no published source; a stem of
less than twelve is on its line by two thirds of it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil

from stemline.football.offence.aiming import RELEASE
from stemline.football.offence.strokes import (
    FLAT,
    Break,
    Depth,
    RunTo,
    Settle,
    Stroke,
    Target,
    Up,
)
from stemline.football.offence.tracing import Runner, target_x

BY = 8.0
SHARE = 2 / 3
LEAST = 3.0
"""Yards of a stem below which nobody can lean onto a line and run up it. Common practice."""


@dataclass(frozen=True)
class Rail:
    """The line, and the depth by which a man is on it, None where it is not said."""

    line: Target
    by: float | None


def stem_of(strokes: tuple[Stroke, ...], called: float) -> float | None:
    """How deep the straight piece goes that a rail shapes; None for a route without one."""
    at = _stem(strokes)
    stem = strokes[at] if at is not None else None
    deep = stem.to.at(called) if isinstance(stem, Up) else 0.0
    return deep if deep >= LEAST else None


def on_by(rail: Rail, stem: float) -> float:
    """The depth by which a man is on the line of a stem so deep."""
    return min(BY, stem * SHARE) if rail.by is None else rail.by


def in_time(rail: Rail, stem: float, runner: Runner) -> Rail:
    """The rail with a depth by which he can be on it, where none is said and the usual one is too
    near: a yard across is a yard up."""
    by, across = on_by(rail, stem), abs(target_x(rail.line, runner) - runner.start.x)
    more = float(ceil(across))
    if rail.by is None and across > by - runner.start.y and more < stem:
        return replace(rail, by=more)
    return rail


def railed(strokes: tuple[Stroke, ...], rail: Rail, called: float) -> tuple[Stroke, ...]:
    """The strokes with their stem on the line; as they are where they have none."""
    at, stem = _stem(strokes), stem_of(strokes, called)
    if at is None or stem is None:
        return strokes
    by = on_by(rail, stem)
    if at == 0:
        lean = (Up(Depth(min(RELEASE, by / 4))), RunTo(rail.line, Depth(by)))
        return (*lean, *strokes)
    before = strokes[at - 1]
    flat = isinstance(before, Break) and before.degrees == FLAT
    return (*strokes[: at - 1], RunTo(rail.line, None if flat else Depth(by)), *strokes[at:])


def _stem(strokes: tuple[Stroke, ...]) -> int | None:
    """Which stroke is run on the line: the last of a route that ends upfield, else the first."""
    moving = [i for i, stroke in enumerate(strokes) if not isinstance(stroke, Settle)]
    ends = [i for i in moving[-1:] if isinstance(strokes[i], Up)]
    begins = [i for i in moving[:1] if isinstance(strokes[i], Up)]
    return next(iter((*ends, *begins)), None)

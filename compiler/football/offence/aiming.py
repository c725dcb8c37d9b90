"""A route with a place of its own: `curl 12 to 2 inside numbers`, `seam to hash at 18`.

A place is where the route ends, and the way there leads to it: a vertical is stemmed onto the
place's lane and run up it, a hook turns at the place. Nobody runs past and comes back along
the line, or slides there from where he would have turned. Common practice, no published source.
"""

from __future__ import annotations

import math
from dataclasses import replace

from stemline.football.offence.strokes import (
    FLAT,
    Break,
    Depth,
    Lateral,
    RunTo,
    Settle,
    Stroke,
    Target,
    Up,
)

RELEASE = 2.0
"""Yards straight up before a stem leans to its place. Common practice, no published source."""


def aimed(
    strokes: tuple[Stroke, ...], target: Target, end: Depth | None, called: float
) -> tuple[Stroke, ...]:
    """The strokes with ``target`` for the place where they end, ``end`` yards deep where it is
    given; ``called`` is the depth called for the route."""
    moving = [i for i, stroke in enumerate(strokes) if not isinstance(stroke, Settle)]
    if not moving:
        return (*strokes, RunTo(target, end))
    at = moving[-1]
    before, last, after = strokes[:at], strokes[at], strokes[at + 1 :]
    match last:
        case RunTo():
            return (*before, replace(last, target=target, depth=end or last.depth), *after)
        case Up(top):
            return (*_stemmed(before, target, (end or top).at(called), called), *after)
        case Break(degrees=degrees) if degrees == FLAT:
            return (*before, RunTo(target, end, last.speed), *after)
        case Break(degrees=degrees) if degrees < FLAT or not _is_stem(before):
            there = end or Depth(_depth((*before, last), called))
            return (*before, RunTo(target, there, last.speed), *after)
        case Break():
            return (*_hooked(before, last, target, end, called), *after)
    return strokes


def _stemmed(
    before: tuple[Stroke, ...], target: Target, top: float, called: float
) -> tuple[Stroke, ...]:
    """Onto the place's lane by half of the way up, later where the route itself turns later."""
    start = _depth(before, called)
    lane = max((start + top) / 2, start)
    if before and isinstance(before[-1], RunTo):
        return (*before[:-1], replace(before[-1], target=target), Up(Depth(top)))
    if before and isinstance(before[-1], Break):
        turned = _depth(before[:-1], called)
        lane = start if before[-1].degrees == FLAT else max((turned + top) / 2, start)
        return (*before[:-1], RunTo(target, Depth(lane), before[-1].speed), Up(Depth(top)))
    return (*before, Up(Depth(min(RELEASE, top / 4))), RunTo(target, Depth(lane)), Up(Depth(top)))


def _hooked(
    before: tuple[Stroke, ...], last: Break, target: Target, end: Depth | None, called: float
) -> tuple[Stroke, ...]:
    """The stem leans to where the turn must be made so that it ends in the place."""
    across = last.yards * math.sin(math.radians(last.degrees))
    wider = (last.lateral is Lateral.IN) is not target.far
    outside = target.outside + (across if wider else -across)
    top = _depth(before, called)
    turn = RunTo(replace(target, outside=outside), Depth(top))
    stem = Up(Depth(min(RELEASE, top / 4)))
    finish = last if end is None else RunTo(target, end, last.speed)
    return (*before[:-1], stem, turn, finish)


def _is_stem(before: tuple[Stroke, ...]) -> bool:
    """Whether nothing but a run straight up comes first, which can lean instead."""
    return len(before) == 1 and isinstance(before[0], Up)


def _depth(strokes: tuple[Stroke, ...], called: float) -> float:
    """Yards past the line where the strokes end, for a man who starts on it."""
    deep = 0.0
    for stroke in strokes:
        match stroke:
            case Up(to):
                deep = to.at(called)
            case Break(yards=yards, degrees=degrees):
                deep += yards * math.cos(math.radians(degrees))
            case RunTo(depth=Depth() as there):
                deep = there.at(called)
    return deep

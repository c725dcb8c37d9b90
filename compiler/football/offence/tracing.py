"""Strokes → a path: one route run by one man on one field."""

from __future__ import annotations

import math
from dataclasses import dataclass

from stemline.football.field import Field, Side
from stemline.football.offence.landmarks import x_of
from stemline.football.offence.strokes import (
    Break,
    Lateral,
    Route,
    RunTo,
    Settle,
    Stroke,
    Target,
    Up,
)
from stemline.geometry.paths import Ending, Leg, Path, Point

# How much of a turn is rounded, in yards before and after the point. A cut of up to 45 degrees is
# spread over about three steps, 4 to 6 yards in all (Yamashita and others, Frontiers in Sports
# and Active Living, 2025); a planted square cut takes two or three slow steps (common practice).
PLANTED = 0.5
ROUNDED = 2.0
WIDEST_CUT_AT_SPEED = 60.0
"""Degrees up to which a runner keeps his speed and so rounds the turn. Common practice."""
SIDELINE_ROOM = 0.8
"""A route drawn toward the sideline stops this far inside it, so that the catch is in bounds."""


@dataclass(frozen=True)
class Runner:
    """Where a man starts and which way is out for him."""

    start: Point
    out: Side
    field: Field


def trace(strokes: tuple[Stroke, ...], depth: float, runner: Runner) -> Path:
    """The path of ``strokes`` with ``depth`` as the called depth.

    Ends in SETTLE after a settle stroke, else in RUN. Never leaves the field of play sideways.
    """
    at, legs, ending = runner.start, list[Leg](), Ending.RUN
    heading: float | None = None
    for stroke in strokes:
        match stroke:
            case Settle():
                ending = Ending.SETTLE
                continue
            case Up(to):
                target, speed = Point(at.x, to.at(depth)), False
            case Break(lateral, yards, degrees, speed):
                target = _broken(at, lateral, yards, degrees, runner)
            case RunTo(place, at_depth, speed):
                y = at.y if at_depth is None else at_depth.at(depth)
                target = Point(target_x(place, runner), y)
        target = _inside(target, at, runner.field)
        if target.distance(at) < 0.05:
            continue
        turned = math.degrees(math.atan2(target.x - at.x, target.y - at.y))
        if legs and heading is not None:
            legs[-1] = Leg(legs[-1].to, _reach(abs(turned - heading), speed))
        legs.append(Leg(target))
        at, heading = target, turned
    return Path(runner.start, tuple(legs), ending)


def target_x(place: Target, runner: Runner) -> float:
    """x of a target: on the runner's own side, or past the ball for a far one."""
    side = runner.out.other if place.far else runner.out
    if place.landmark is None:
        return runner.start.x + side.value * place.outside
    return x_of(place.landmark, side, runner.field) + side.value * place.outside


def called_depth(route: Route, depth: float | None) -> float:
    return route.depth if depth is None else depth


def _broken(at: Point, lateral: Lateral, yards: float, degrees: float, runner: Runner) -> Point:
    way = runner.out.value if lateral is Lateral.OUT else -runner.out.value
    angle = math.radians(degrees)
    return at + Point(way * yards * math.sin(angle), yards * math.cos(angle))


def _reach(turn: float, speed: bool) -> float:
    turn = min(turn, 360 - turn)
    return ROUNDED if speed or turn <= WIDEST_CUT_AT_SPEED else PLANTED


def _inside(point: Point, start: Point, field: Field) -> Point:
    """Short of the sideline; but who is nearer to it already, at ``start``, is not moved in."""
    left, right = field.sideline(Side.LEFT), field.sideline(Side.RIGHT)
    least = max(left, min(left + SIDELINE_ROOM, start.x))
    most = min(right, max(right - SIDELINE_ROOM, start.x))
    return Point(min(max(point.x, least), most), point.y)

"""Strokes traced to a path: turns, rounding, the sideline, and targets on both sides."""

from __future__ import annotations

import math

import pytest

from stemline.football.field import BallSpot, Field, Side
from stemline.football.offence.landmarks import Landmark
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import (
    Break,
    Depth,
    Lateral,
    Route,
    RunTo,
    Settle,
    Stroke,
    Target,
    Up,
)
from stemline.football.offence.tracing import (
    PLANTED,
    ROUNDED,
    SIDELINE_ROOM,
    Runner,
    called_depth,
    target_x,
    trace,
)
from stemline.football.rulebook.codes import CANADIAN_AMATEUR
from stemline.geometry.paths import Ending, Path, Point

HERE = Field(CANADIAN_AMATEUR, BallSpot.MIDDLE, 10)


def runner(x: float = 10, y: float = 0, out: Side = Side.RIGHT, on: Field = HERE) -> Runner:
    return Runner(Point(x, y), out, on)


def corners(
    *strokes: Stroke, depth: float = 10, by: Runner | None = None
) -> list[tuple[float, float]]:
    path = trace(strokes, depth, by or runner())
    return [(round(p.x, 3), round(p.y, 3)) for p in path.corners[1:]]


@pytest.mark.parametrize(
    ("stroke", "expected"),
    [
        (Up(Depth(6)), (10, 6)),
        (Up(Depth(0, called=True)), (10, 10)),
        (Up(Depth(-3, called=True)), (10, 7)),
        (Break(Lateral.IN, 4), (6, 0)),
        (Break(Lateral.OUT, 4), (14, 0)),
        (Break(Lateral.OUT, 4, 0), (10, 4)),
        (Break(Lateral.IN, 4, 45), (10 - 4 * math.sqrt(0.5), 4 * math.sqrt(0.5))),
        (Break(Lateral.OUT, 2, 180), (10, -2)),
        (RunTo(Target(Landmark.BALL), Depth(5)), (0, 5)),
        (RunTo(Target(Landmark.TACKLE, 0.5)), (3.1, 0)),
        (RunTo(Target(Landmark.TACKLE, 6, far=True), Depth(5)), (-8.6, 5)),
        (RunTo(Target(None, 5), Depth(2)), (15, 2)),
        (RunTo(Target(None, -5)), (5, 0)),
        (RunTo(Target(Landmark.NUMBERS, -2), Depth(0, called=True)), (20.5, 10)),
    ],
)
def test_one_stroke(stroke: Stroke, expected: tuple[float, float]) -> None:
    assert corners(stroke) == [(round(expected[0], 3), round(expected[1], 3))]


def test_out_is_where_the_runner_is_sent_and_not_where_he_stands() -> None:
    sent_left = runner(2, -5, Side.LEFT)
    assert corners(Break(Lateral.OUT, 4), by=sent_left) == [(-2, -5)]
    assert target_x(Target(Landmark.TACKLE), sent_left) == -2.6
    assert target_x(Target(Landmark.TACKLE, far=True), sent_left) == 2.6


def test_strokes_follow_each_other() -> None:
    assert corners(Up(Depth(5)), Break(Lateral.IN, 3), Up(Depth(12))) == [(10, 5), (7, 5), (7, 12)]


def test_a_settle_ends_the_route_and_moves_nobody() -> None:
    path = trace((Up(Depth(5)), Settle()), 0, runner())
    assert path == Path(Point(10, 0), path.legs, Ending.SETTLE)
    assert len(path.legs) == 1
    assert trace((Up(Depth(5)),), 0, runner()).ending is Ending.RUN
    assert trace((Settle(),), 0, runner()).legs == ()


def test_a_stroke_to_where_he_is_makes_no_leg() -> None:
    assert corners(Up(Depth(0)), Up(Depth(5)), Up(Depth(5))) == [(10, 5)]


def test_a_turn_up_to_60_degrees_is_run_at_speed_and_rounded() -> None:
    """Up to 45 degrees the turn is spread over about three steps (Yamashita and others,
    Frontiers in Sports and Active Living, 2025); the rest is common practice."""

    def reach(degrees: float, speed: bool = False) -> float:
        strokes = (Up(Depth(10)), Break(Lateral.IN, 5, degrees, speed))
        return trace(strokes, 0, runner()).legs[0].reach

    assert reach(30) == reach(45) == reach(60) == ROUNDED
    assert reach(61) == reach(90) == reach(135) == PLANTED
    assert reach(90, speed=True) == ROUNDED
    assert 2 <= ROUNDED <= 3


def test_the_last_leg_turns_nowhere() -> None:
    path = trace((Up(Depth(10)), Break(Lateral.IN, 5)), 0, runner())
    assert path.legs[-1].reach == 0


def test_a_turn_is_measured_the_short_way_round() -> None:
    strokes = (Break(Lateral.IN, 5, 170), Break(Lateral.OUT, 5, 170))
    assert trace(strokes, 0, runner()).legs[0].reach == ROUNDED


@pytest.mark.parametrize("x", [-32.5, -32.3, -20.0, -1.3, 0.0, 9.9, 31.9, 32.5])
@pytest.mark.parametrize("name", ["go", "9", "seam"])
def test_a_go_is_straight_up_his_own_line_also_at_the_sideline(x: float, name: str) -> None:
    path = trace(LIBRARY[name].strokes, 22, runner(x))
    assert {p.x for p in path.corners} == {x}


@pytest.mark.parametrize("side", Side)
def test_a_route_to_the_sideline_stops_inside_it(side: Side) -> None:
    by = runner(side.value * 30, 0, side)
    end = trace((Up(Depth(10)), Break(Lateral.OUT, 20)), 0, by).end
    assert end.x == side.value * (32.5 - SIDELINE_ROOM)
    assert end.y == pytest.approx(10)


@pytest.mark.parametrize(("depth", "called"), [(None, 12.0), (0.0, 0.0), (7.0, 7.0)])
def test_the_depth_called_or_the_routes_own(depth: float | None, called: float) -> None:
    assert called_depth(Route("dig", 12, ()), depth) == called

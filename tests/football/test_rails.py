"""A stem run up a line of the field stays on it until the break."""

from __future__ import annotations

from itertools import product

import pytest

from stemline.football.field import BallSpot, Field, Side
from stemline.football.offence.landmarks import Landmark, x_of
from stemline.football.offence.rails import Rail, on_by, railed, stem_of
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import Route, Target
from stemline.football.offence.tracing import ROUNDED, Runner, trace
from stemline.football.rulebook.codes import CODES
from stemline.geometry.paths import Path, Point, polyline

STEMMED = [route for route in LIBRARY.values() if stem_of(route.strokes, route.depth)]
FIELDS = [Field(CODES[key], spot, 9.0) for key in ("canadian amateur", "high school")
          for spot in BallSpot]  # fmt: skip


def run(route: str, rail: Rail, side: Side, field: Field, start: float) -> Path:
    named = LIBRARY[route]
    runner = Runner(Point(side.value * start, 0.0), side, field)
    return trace(railed(named.strokes, rail, named.depth), named.depth, runner)


@pytest.mark.parametrize("route", STEMMED, ids=lambda route: route.name)
def test_he_is_on_his_line_from_the_depth_said_to_the_break(route: Route) -> None:
    stem = stem_of(route.strokes, route.depth)
    assert stem is not None
    for field, side, by, outside in product(FIELDS, Side, (None, stem * 0.7), (-1.0, 2.0)):
        rail = Rail(Target(Landmark.NUMBERS, outside), by)
        x = x_of(Landmark.NUMBERS, side, field) + side.value * outside
        path = run(route.name, rail, side, field, abs(x) - 3.0)
        low, high = on_by(rail, stem) + ROUNDED, stem - ROUNDED
        met = [p for p in polyline(path) if low <= p.y <= high]
        corners = [p for p in path.corners if abs(p.x - x) < 1e-6]
        assert len(corners) >= 2 and corners[-1].y > corners[0].y
        assert all(abs(p.x - x) < 1e-6 for p in met)


@pytest.mark.parametrize("name", ["go", "post", "comeback", "out and up", "fade"])
def test_the_break_is_as_deep_as_without_a_line(name: str) -> None:
    field, route = FIELDS[0], LIBRARY[name]
    runner = Runner(Point(20.0, 0.0), Side.RIGHT, field)
    plain = trace(route.strokes, route.depth, runner)
    lined = run(name, Rail(Target(Landmark.NUMBERS), None), Side.RIGHT, field, 20.0)
    assert lined.end.y == pytest.approx(plain.end.y)
    assert lined.ending is plain.ending


def test_a_route_that_breaks_at_once_has_no_stem() -> None:
    assert {r.name for r in LIBRARY.values()} - {r.name for r in STEMMED} >= {
        "shoot",
        "swing",
        "now",
    }

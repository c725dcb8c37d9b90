"""Paths against shapely: lengths, points along them, mirrors, and where two routes meet."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import LineString, hausdorff_distance
from shapely.affinity import scale

from stemline.football.field import BallSpot, Field, Side
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.tracing import Runner, trace
from stemline.football.rulebook.codes import CANADIAN_AMATEUR
from stemline.geometry.paths import (
    Curve,
    Leg,
    Path,
    Point,
    along,
    length,
    polyline,
    segments,
)

HERE = Field(CANADIAN_AMATEUR, BallSpot.MIDDLE, 10)
numbers = st.floats(-30, 30).map(lambda x: round(x, 2))
points = st.builds(Point, numbers, numbers)
legs = st.lists(
    st.builds(Leg, points, st.sampled_from([0.0, 0.5, 2.0])), min_size=1, max_size=5
).map(tuple)
paths = st.builds(Path, points, legs).filter(lambda p: length(p.corners) > 0.1)
routes = st.builds(
    lambda name, x, y: trace(
        LIBRARY[name].strokes,
        LIBRARY[name].depth,
        Runner(Point(x, y), Side.RIGHT if x > 0 else Side.LEFT, HERE),
    ),
    st.sampled_from(sorted(LIBRARY)),
    st.floats(-25, 25).filter(lambda x: abs(x) > 1).map(lambda x: round(x, 2)),
    st.sampled_from([0.0, -1.0, -5.0]),
)


def line(drawn: tuple[Point, ...]) -> LineString:
    return LineString([(p.x, p.y) for p in drawn])


@given(paths)
def test_length(path: Path) -> None:
    drawn = polyline(path)
    assert length(drawn) == pytest.approx(line(drawn).length)


@given(paths, st.floats(0, 1.2))
def test_a_point_along_a_path(path: Path, part: float) -> None:
    drawn = polyline(path)
    distance = length(drawn) * part
    mine, theirs = along(drawn, distance), line(drawn).interpolate(distance)
    assert (mine.x, mine.y) == pytest.approx((theirs.x, theirs.y), abs=1e-6)


@given(routes, st.floats(0, 1))
def test_a_point_along_a_route_lies_on_it(path: Path, part: float) -> None:
    drawn = polyline(path)
    assume(len(drawn) > 1)
    at = along(drawn, length(drawn) * part)
    assert line(drawn).distance(line((at, at))) < 1e-6


@given(paths)
def test_a_mirror(path: Path) -> None:
    """shapely turns the line over about x = 0."""
    mine = line(polyline(path.mirrored()))
    theirs = scale(line(polyline(path)), xfact=-1, origin=(0, 0))
    assert hausdorff_distance(mine, theirs) < 1e-9


@given(routes)
def test_a_mirrored_route_is_as_long_as_the_route(path: Path) -> None:
    assert line(polyline(path.mirrored())).length == pytest.approx(line(polyline(path)).length)


# Rounded turns.


@given(paths)
def test_a_rounded_path_stays_by_its_corners(path: Path) -> None:
    """The turn leaves the corner by at most half its reach, and the line nowhere else."""
    reach = max((leg.reach for leg in path.legs), default=0)
    gap = hausdorff_distance(line(polyline(path)), line(path.corners))
    assert gap <= reach * math.sqrt(0.5) + 1e-6


@given(st.floats(20, 160), st.sampled_from([0.5, 2.0]))
def test_a_turn_is_a_parabola_that_touches_both_legs(degrees: float, reach: float) -> None:
    angle = math.radians(degrees)
    path = Path(
        Point(0, 0),
        (Leg(Point(0, 10), reach), Leg(Point(10 * math.sin(angle), 10 + 10 * math.cos(angle)))),
    )
    (before, curve, after) = segments(path)
    assert isinstance(curve, Curve)
    corner = Point(0, 10)
    assert curve.start.distance(corner) == pytest.approx(reach)
    assert curve.end.distance(corner) == pytest.approx(reach)
    legs = line(path.corners)
    assert legs.distance(line((before.end, before.end))) < 1e-9
    assert legs.distance(line((after.start, after.start))) < 1e-9
    # A quadratic Bezier passes half way between the corner and the middle of its ends.
    middle = (curve.start + curve.end).scaled(0.5)
    assert curve.at(0.5).distance((corner + middle).scaled(0.5)) < 1e-9


def test_the_drawn_turn_is_near_enough_to_the_curve() -> None:
    """Twelve pieces a turn: under a hundredth of a yard off, far below a pen's width on paper."""
    path = Path(Point(0, 0), (Leg(Point(0, 10), 2), Leg(Point(10, 10))))
    (_, curve, _) = segments(path)
    assert isinstance(curve, Curve)
    fine = line(tuple(curve.at(i / 600) for i in range(601)))
    drawn = line(tuple(p for p in polyline(path) if p.y >= 8 and p.x <= 2))
    assert hausdorff_distance(fine, drawn) < 0.01


# Where two routes meet.


def run(name: str, x: float, depth: float | None = None) -> LineString:
    route = LIBRARY[name]
    side = Side.RIGHT if x > 0 else Side.LEFT
    path = trace(
        route.strokes, route.depth if depth is None else depth, Runner(Point(x, 0), side, HERE)
    )
    return line(polyline(path))


@settings(max_examples=40)
@given(st.integers(5, 18), st.integers(5, 18))
def test_two_crossers_meet_near_the_ball_and_pass_a_yard_apart(left: int, right: int) -> None:
    """Common practice, no published source: one sets six yards, the other runs off his heels."""
    under, over = run("cross", -left), run("cross", right, 6)
    meet = under.intersection(over)
    # They pass each other in the middle, one yard apart in depth, without their paths meeting.
    near = [p for p in getattr(meet, "geoms", [meet]) if not p.is_empty and abs(p.x) < 2]
    assert near == []
    for x in (-2.0, 0.0, 2.0):
        cut = LineString([(x, -1), (x, 12)])
        assert over.intersection(cut).y - under.intersection(cut).y >= 0.1
    assert over.intersection(LineString([(0, 0), (0, 12)])).y > 5


@settings(max_examples=40)
@given(st.integers(5, 18), st.integers(5, 18))
def test_two_crossers_of_one_depth_run_into_each_other(left: int, right: int) -> None:
    under, over = run("cross", -left), run("cross", right, 5)
    assert under.intersects(over)


@settings(max_examples=40)
@given(st.integers(5, 18), st.integers(5, 18))
def test_two_returns_never_cross(left: int, right: int) -> None:
    assert not run("return", -left).intersects(run("return", right))


@settings(max_examples=40)
@given(st.integers(5, 9), st.integers(12, 20))
def test_a_post_and_a_corner_cross_once_above_both_breaks(slot: int, wide: int) -> None:
    """Common practice, no published source: the two cross deep and change places."""
    corner, post = run("corner", slot), run("post", wide)
    meet = corner.intersection(post)
    assume(not meet.is_empty)
    assert meet.geom_type == "Point"
    assert slot < meet.x < wide
    assert meet.y > 10


@pytest.mark.parametrize(
    ("one", "two", "at"),
    [
        (("dig", 20.0), ("go", 15.0), (15, 12)),
        (("out", 6.0), ("go", 10.0), (10, 10)),
        (("in", 12.0), ("seam", 8.0), (8, 10)),
    ],
)
def test_where_a_break_crosses_a_vertical(
    one: tuple[str, float], two: tuple[str, float], at: tuple[float, float]
) -> None:
    meet = run(*one).intersection(run(*two))
    assert (meet.x, meet.y) == pytest.approx(at, abs=0.01)


def test_a_wheel_crosses_nobody_who_clears_out_wide() -> None:
    assert not run("go", 20).intersects(run("wheel", 4))

"""Paths: corners, rounded turns, mirrors and points along them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemline.geometry.paths import (
    Curve,
    Ending,
    Leg,
    Line,
    Path,
    Point,
    along,
    length,
    polyline,
    segments,
)

SQUARE = Path(Point(0, 0), (Leg(Point(0, 10), 2), Leg(Point(8, 10))))
numbers = st.floats(-40, 40).map(lambda x: round(x, 3))
points = st.builds(Point, numbers, numbers)
legs = st.lists(st.builds(Leg, points, st.sampled_from([0.0, 0.5, 2.0, 9.0])), max_size=6)
paths = st.builds(Path, points, legs.map(tuple), st.sampled_from(list(Ending)))


def test_points_add_scale_and_turn_over() -> None:
    assert Point(1, 2) + Point(3, 4) == Point(4, 6)
    assert Point(1, 2) - Point(3, 4) == Point(-2, -2)
    assert Point(1, 2).scaled(3) == Point(3, 6)
    assert Point(3, 4).distance(Point(0, 0)) == 5
    assert Point(3, 4).mirrored() == Point(-3, 4)
    assert str(Point(0, 4).mirrored().x) == "0.0"


def test_a_square_cut_with_its_turn_rounded() -> None:
    assert segments(SQUARE) == (
        Line(Point(0, 0), Point(0, 8)),
        Curve(Point(0, 8), Point(0, 10), Point(2, 10)),
        Line(Point(2, 10), Point(8, 10)),
    )


@given(st.builds(Curve, points, points, points), st.integers(1, 16))
def test_the_places_between_the_steps_of_a_turn_are_on_it(turn: Curve, count: int) -> None:
    assert turn.between(count) == [turn.at(i / count) for i in range(1, count)]


def test_a_planted_turn_is_a_corner() -> None:
    path = Path(Point(0, 0), (Leg(Point(0, 10)), Leg(Point(8, 10))))
    assert segments(path) == (
        Line(Point(0, 0), Point(0, 10)),
        Line(Point(0, 10), Point(8, 10)),
    )
    assert polyline(path) == (Point(0, 0), Point(0, 10), Point(8, 10))


def test_a_turn_takes_at_most_half_of_a_short_leg() -> None:
    path = Path(Point(0, 0), (Leg(Point(0, 2), 9), Leg(Point(8, 2))))
    (line, curve, rest) = segments(path)
    assert isinstance(line, Line) and line.end == Point(0, 1)
    assert isinstance(curve, Curve) and curve.end == Point(1, 2)
    assert isinstance(rest, Line)


def test_a_path_of_nothing() -> None:
    path = Path(Point(3, 4), ())
    assert path.end == path.start
    assert segments(path) == ()
    assert polyline(path) == (Point(3, 4),)
    assert length(polyline(path)) == 0
    assert along(polyline(path), 5) == Point(3, 4)


@pytest.mark.parametrize(
    ("yards", "at"),
    [(0, (0, 0)), (4, (0, 4)), (10, (0, 10)), (12, (2, 10)), (18, (8, 10)), (30, (8, 10))],
)
def test_a_point_along_a_line(yards: float, at: tuple[float, float]) -> None:
    corners = (Point(0, 0), Point(0, 10), Point(8, 10))
    assert along(corners, yards) == Point(*at)


@given(paths)
def test_a_drawn_path_hangs_together(path: Path) -> None:
    pieces = segments(path)
    at = path.start
    for piece in pieces:
        assert piece.start.distance(at) < 1e-6
        at = piece.end
    assert at.distance(path.end) < 1e-6
    assert polyline(path)[0] == path.start
    assert polyline(path)[-1].distance(path.end) < 1e-6


@given(paths)
def test_rounding_never_makes_a_path_longer(path: Path) -> None:
    assert length(polyline(path)) <= length(path.corners) + 1e-6


@given(paths)
def test_a_mirror_twice_is_the_path(path: Path) -> None:
    assert path.mirrored().mirrored() == path
    assert path.mirrored().end.x == pytest.approx(-path.end.x)
    assert length(polyline(path.mirrored())) == pytest.approx(length(polyline(path)))


@given(paths, st.floats(0, 1))
def test_a_point_along_a_path_is_between_its_ends(path: Path, part: float) -> None:
    drawn = polyline(path)
    whole = length(drawn)
    at = along(drawn, whole * part)
    assert at.distance(path.start) <= whole * part + 1e-6
    assert at.distance(path.end) <= whole * (1 - part) + 1e-6

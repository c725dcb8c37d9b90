"""Points, boxes and distances: against shapely's."""

from __future__ import annotations

from itertools import pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString
from shapely import Point as Spot

from geometry.test_cutting import lines, spots
from stemline.geometry.box import Box
from stemline.geometry.curves import far_from, points_of, stop_short, turn_angle
from stemline.geometry.cutting import crossings, measure, part
from stemline.geometry.paths import Curve, Leg, Line, Path, Point, Segment, crossing, length


@given(st.lists(spots, min_size=2, max_size=5), spots)
def test_the_nearest_place_of_a_line_is_as_far_as_shapely_says(
    points: list[Point], p: Point
) -> None:
    line = LineString([(q.x, q.y) for q in points])
    assert far_from(points, p) == pytest.approx(line.distance(Spot(p.x, p.y)), abs=1e-9)


@given(lines(), st.floats(0.1, 0.9))
def test_a_part_of_no_length_has_no_piece(pieces: tuple[Segment, ...], share: float) -> None:
    line = measure(pieces)
    at = line.length * share
    assert part(line, (at, at)) == ()


def test_a_turn_is_followed_by_points_close_together() -> None:
    turn = Curve(Point(0, 0), Point(0, 4), Point(4, 4))
    along = points_of((turn,))
    assert (along[0], along[-1]) == (turn.start, turn.end)
    assert max(a.distance(b) for a, b in pairwise(along)) < length(along) / 7


def test_a_turn_is_crossed_anywhere_on_its_way() -> None:
    turn = (Curve(Point(0, 0), Point(0, 4), Point(4, 4)),)
    for t in (0.1, 0.5, 0.9):
        at = turn[0].at(t)
        across = (Line(at + Point(-2, 2), at + Point(2, -2)),)
        (found,) = crossings(measure(turn), measure(across))
        assert found.at.distance(at) < 0.02


def test_who_runs_straight_on_turns_by_nothing() -> None:
    """Whose cosine is a little over one, as rounding has it, too."""
    for x, y in product(range(1, 9), repeat=2):
        turn = turn_angle(Point(0, 0), Point(x, y), Point(2 * x, 2 * y))
        assert turn == pytest.approx(0, abs=1e-5)
        back = turn_angle(Point(0, 0), Point(x, y), Point(0, 0))
        assert back == pytest.approx(180, abs=1e-5)


def test_a_line_is_stopped_so_far_before_its_end() -> None:
    """As the crow flies: also where the stop lies on the piece before the last."""
    one, two = Line(Point(0, 0), Point(0, 8)), Line(Point(0, 8), Point(3, 8))
    assert stop_short((), 1) == ()
    assert stop_short((one, two), 0) == (one, two)
    assert stop_short((one, two), 2)[-1].end.distance(Point(1, 8)) < 0.01
    assert stop_short((one, two), 5)[-1].end.distance(Point(0, 4)) < 0.01


def test_a_box_is_as_high_as_it_is_and_holds_itself() -> None:
    box = Box(1, 2, 4, 9)
    assert (box.width, box.height, box.centre) == (3, 7, Point(2.5, 5.5))
    assert box.holds(box) and box.union(Box(0, 3, 2, 4)).holds(box)
    assert box.grown(0.1).holds(box) and not box.grown(-0.1).holds(box)
    assert (box.overlap(Box(3, 0, 9, 4)), box.overlap(Box(4, 0, 9, 4))) == (2, 0)


def test_a_path_crosses_the_depth_of_its_corner_there() -> None:
    path = Path(Point(1, -3), (Leg(Point(2, 0)), Leg(Point(6, 4))))
    assert crossing(path, 0) == 2 and crossing(path, -3) == 1
    assert crossing(path, 4) is None

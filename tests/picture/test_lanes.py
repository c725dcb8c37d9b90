"""Paths on one line are drawn side by side."""

from __future__ import annotations

from picture.sample_plays import path
from stemline.geometry.paths import Point
from stemline.picture.ways.lanes import spread, turn_back


def test_a_turn_straight_back_opens_into_a_loop_nearer_the_line() -> None:
    opened = turn_back(path((0, 6), (4, 6), (0, 6)), 0.5)
    assert opened.corners == (Point(0, 6), Point(4, 6), Point(4, 5.5), Point(0, 5.5))


def test_a_long_way_back_slants_to_its_true_end() -> None:
    opened = turn_back(path((0, 6), (2, 6), (-9, 6)), 0.5)
    assert opened.end == Point(-9, 6)
    assert opened.corners[2] == Point(2, 5.5)


def test_a_comeback_at_an_open_angle_stays_as_it_is() -> None:
    comeback = path((0, 0), (0, 14), (3, 12))
    assert turn_back(comeback, 0.5) == comeback


def test_the_later_of_two_paths_on_one_line_moves_a_lane() -> None:
    first = path((-8, 0), (-4, 5), (6, 5))
    second = path((8, 0), (4, 5), (-6, 5))
    laid = spread((first, second), 0.5)
    assert laid[0] == first
    assert [round(p.y, 6) for p in laid[1].corners[1:]] == [4.5, 4.5]
    assert laid[1].start == second.start


def test_a_path_a_little_above_another_moves_up_not_across_it() -> None:
    laid = spread((path((0, 5), (9, 5)), path((9, 0), (7, 5.1), (1, 5.1))), 0.5)
    assert round(laid[1].end.y, 6) == 5.5


def test_paths_that_cross_or_run_apart_are_left_alone() -> None:
    paths = (path((0, 0), (9, 9)), path((9, 0), (0, 9)), path((0, 3), (9, 3)))
    assert spread(paths, 0.5) == paths


def test_two_paths_that_would_cross_at_a_small_angle_cross_in_one_step() -> None:
    first, second = path((0, 2), (30, 5)), path((0, 4.6), (30, 4.6))
    laid = spread((first, second), 0.5)
    assert laid[0] == first
    _, before, after, end = laid[1].corners
    assert end == second.end
    assert 0.9 < after.x - before.x < 1.2, "two lanes along the field"
    for side, at in ((1, before), (-1, after)):
        assert 0.2 < side * (at.y - 2 - at.x / 10) < 0.4, "half a lane above, then below"

"""Words find a place of their own."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from shapely import LineString, box
from shapely import Point as ShapelyPoint

from stemline.geometry.box import Box
from stemline.geometry.paths import Point
from stemline.picture.labels.labels import Placed, Trouble, Wanted, place
from stemline.picture.scene.ink import Ink

FRAME = Box(-20, -20, 20, 20)
UP = Point(0, 1)


def wanted(x: float, y: float, toward: Point = UP) -> Wanted:
    return Wanted(Point(x, y), 2.0, 1.0, 0.4, toward, 1.8)


def test_a_label_with_room_lies_where_it_would_rather_lie() -> None:
    (above,) = place((wanted(0, 0),), Ink(0.2), FRAME, 0.5, 0.1)
    (right,) = place((wanted(0, 0, Point(1, 0)),), Ink(0.2), FRAME, 0.5, 0.1)
    assert above.box.bottom > 0 and above.leader is None
    assert right.box.left > 0


def test_a_label_leaves_a_line_alone() -> None:
    ink = Ink(0.2)
    ink.line((Point(-9, 1), Point(9, 1)))
    (placed,) = place((wanted(0, 0),), ink, FRAME, 0.5, 0.1)
    assert ink.under(placed.box)[0] == 0
    assert placed.box.top < 1


def test_two_labels_of_one_place_do_not_overlap() -> None:
    first, second = place((wanted(0, 0), wanted(0, 0)), Ink(0.2), FRAME, 0.5, 0.1)
    assert first.box.overlap(second.box) == 0


def test_a_label_stays_in_the_frame() -> None:
    (placed,) = place((wanted(0, 19.8),), Ink(0.2), FRAME, 0.5, 0.1)
    assert FRAME.holds(placed.box)


def test_a_label_that_had_to_go_far_gets_a_leader_from_its_place() -> None:
    ink = Ink(0.2)
    ink.solid(Box(-2.4, -1.8, 2.4, 1.8))
    (placed,) = place((wanted(0, 0),), ink, FRAME, 0.5, 0.1)
    assert not ink.covers(placed.box)
    assert placed.leader is not None and placed.leader[0] == Point(0, 0)


def test_a_label_does_not_stand_beside_another_labels_place() -> None:
    left, right = place((wanted(-1.4, 0, Point(1, 0)), wanted(1.4, 0)), Ink(0.2), FRAME, 0.5, 0.1)
    assert left.box.centre.x < 0 < right.box.centre.x


def test_a_leader_does_not_run_through_another_label() -> None:
    ink = Ink(0.2)
    for side in (-1.3, 1.3):
        ink.solid(Box(side - 1.2, -1.6, side + 1.2, 0.3))
    ink.solid(Box(-2.4, -1.8, 2.4, 0.4))
    first, second = place((wanted(0, 0), wanted(0, 0)), ink, FRAME, 0.5, 0.1)
    for own, other in ((first, second), (second, first)):
        if own.leader is not None:
            start, end = own.leader
            for part in range(1, 20):
                at = start + (end - start).scaled(part / 20)
                assert not other.box.holds(Box(at.x, at.y, at.x, at.y))
    assert first.box.overlap(second.box) == 0


def test_a_label_goes_to_another_of_its_places_when_the_first_has_no_room() -> None:
    ink = Ink(0.2)
    ink.solid(Box(-3, -3, 3, 3))
    (placed,) = place((replace(wanted(0, 0), also=(Point(8, 0),)),), ink, FRAME, 0.5, 0.1)
    assert placed.box.left > 5 and placed.leader is None
    (first,) = place((replace(wanted(0, 0), also=(Point(8, 0),)),), Ink(0.2), FRAME, 0.5, 0.1)
    assert first.box.left < 0 < first.box.right


def test_a_place_tells_what_it_costs_and_for_what() -> None:
    (free,) = place((wanted(0, 0),), Ink(0.2), FRAME, 0.5, 0.1)
    assert free.cost == 0
    ink = Ink(0.2)
    for row in range(-80, 81):
        ink.line((Point(-20, row / 4), Point(20, row / 4)))
    (struck,) = place((wanted(0, 0),), ink, FRAME, 0.5, 0.1)
    assert struck.trouble is Trouble.LINE and struck.cost > 10
    ink.solid(Box(-20, -20, 20, 20))
    (covered,) = place((wanted(0, 0),), ink, FRAME, 0.5, 0.1)
    assert covered.trouble is Trouble.SYMBOL
    small = Box(-1.1, -0.6, 1.1, 1.6)
    one, two = place((wanted(0, 0), wanted(0, 0)), Ink(0.2), small, 0.5, 0.1)
    assert {one.trouble, two.trouble} <= {Trouble.LABEL, Trouble.EDGE}
    (outside,) = place((wanted(0, 0),), Ink(0.2), Box(0, 0, 0.1, 0.1), 0.5, 0.1)
    assert outside.trouble is Trouble.EDGE


def test_two_labels_in_room_for_one_name_each_other() -> None:
    ink = Ink(0.2)
    small = Box(-1.1, 0.3, 1.1, 1.6)
    one, two = place((wanted(0, 0), wanted(0, 0)), ink, small, 0.5, 0.1)
    assert (one.trouble, one.other, two.trouble, two.other) == (Trouble.LABEL, 1, Trouble.LABEL, 0)


def test_a_label_stands_clearly_nearer_to_its_own_place_than_to_another() -> None:
    """The two would like to lie to the right of their places; the left one gives way, alone."""
    right = Point(1, 0)
    pair = (wanted(-1.4, 0, right), wanted(1.4, 0, right))
    ours, theirs = place(pair, Ink(0.2), FRAME, 0.5, 0.1)
    (alone,) = place(pair[:1], Ink(0.2), FRAME, 0.5, 0.1)

    def far(label: Placed, want: Wanted) -> float:
        own = box(label.box.left, label.box.bottom, label.box.right, label.box.top)
        return own.distance(ShapelyPoint(want.at.x, want.at.y))

    assert far(alone, pair[0]) == pytest.approx(far(alone, pair[1])), "where it would rather lie"
    assert 1.5 * far(ours, pair[0]) < far(ours, pair[1])
    assert 1.5 * far(theirs, pair[1]) < far(theirs, pair[0])


@pytest.mark.parametrize("way", [20, 30, 60])
def test_leaders_do_not_cross_where_another_place_is_as_near(way: int) -> None:
    """Each of two labels would rather lie on the other one's side, and both must go far."""
    ink = Ink(0.2)
    ink.solid(Box(-2, -1, 2, 1))
    over = Point(math.cos(math.radians(way)), math.sin(math.radians(way)))
    pair = (wanted(-0.3, 0, over), wanted(0.3, 0, Point(-over.x, over.y)))
    lines = [placed.leader for placed in place(pair, ink, FRAME, 0.5, 0.1)]
    one, two = (LineString([(p.x, p.y) for p in line or ()]) for line in lines)
    assert one.length > 2 and two.length > 2
    assert not one.crosses(two)

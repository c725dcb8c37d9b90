"""Words find a place of their own."""

from __future__ import annotations

from stemline.draw.ink import Ink
from stemline.draw.labels import Wanted, place
from stemline.draw.scene import Box
from stemline.paths import Point

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

"""Paths end beside men, not in them."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from picture.sample_plays import path
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Ending, Path, Point, polyline
from stemline.picture.ways.detours import Round, detour
from stemline.picture.ways.landing import Tip, land

MAN = Round(Point(10, -1), 1.5, 1.1)
TIP = Tip(1.0, 0.4, 0.1)
BUBBLE = path((5, -1), (6.5, -2.2, 2), (11.4, -1))


def head(way: Path) -> tuple[Point, Point, Point]:
    """The three corners of an arrowhead on a path's end, by the last yard of its line."""
    before = [p for p in polyline(way) if p.distance(way.end) >= TIP.long * 0.9][-1]
    far = before.distance(way.end)
    ahead = (way.end - before).scaled(1 / far)
    back = way.end - ahead.scaled(TIP.long)
    across = Point(-ahead.y, ahead.x).scaled(TIP.half)
    return way.end, back + across, back - across


def test_a_path_whose_end_is_clear_ends_there() -> None:
    flat = path((0, -8), (20, -5))
    assert land(flat, (MAN,), TIP, 2.0) is flat
    past = path((5, -1), (20, -1))
    assert land(past, (MAN,), TIP, 2.0) == detour(past, (MAN,), 2.0)


def test_a_bubble_ends_clear_of_the_man_it_goes_behind() -> None:
    ended = land(BUBBLE, (MAN,), TIP, 2.0)
    assert far_from(polyline(ended), MAN.at) > MAN.hard + TIP.line
    assert min(MAN.at.distance(p) for p in head(ended)) > MAN.hard


def test_it_stays_behind_him_and_is_not_shorter() -> None:
    ended = land(BUBBLE, (MAN,), TIP, 2.0)
    under = min(polyline(ended), key=lambda p: abs(p.x - MAN.at.x))
    assert under.y < MAN.at.y - MAN.hard
    assert ended.end.x > BUBBLE.end.x - 0.5


def test_an_end_beside_a_man_of_the_line_needs_no_hook_round_him() -> None:
    wide = path((0, -7.6), (4.4, -1.8, 1.2), (6.0, 0.8))
    end = Round(Point(4.7, 0), 1.7, 1.3)
    ended = land(wide, (end,), TIP, 2.0)
    corners = ended.corners
    assert all(b.x > a.x and b.y > a.y for a, b in pairwise(corners))
    assert min(end.at.distance(p) for p in head(ended)) > end.hard


def test_a_dot_and_a_bar_are_kept_off_as_wide_as_they_are() -> None:
    for ending in (Ending.SETTLE, Ending.BLOCK):
        way = path((5, -5), (11, -2.3), ending=ending)
        ended = land(way, (MAN,), Tip(1.0, 0.8, 0.1), 2.0)
        assert ended.ending is ending
        assert MAN.at.distance(ended.end) > MAN.hard + (0.8 if ending is Ending.SETTLE else 0.0)


@settings(deadline=None)
@given(st.floats(6, 14), st.floats(-5, 2))
def test_left_and_right_land_alike(x: float, y: float) -> None:
    way = path((5, -6), (x, y))
    ended = land(way, (MAN,), TIP, 2.0)
    other = Round(MAN.at.mirrored(), MAN.radius, MAN.hard)
    turned = land(way.mirrored(), (other,), TIP, 2.0)
    assert turned.end.distance(ended.end.mirrored()) < 1e-6


SMALL = Tip(1.27, 0.5, 0.14)
"""An arrowhead of a small picture, in which a man is more than a yard wide."""


def test_a_bubble_of_a_small_picture_keeps_its_bow_and_ends_past_the_man_before_it() -> None:
    third = Round(Point(9.6, -1), 1.82, 1.37)
    ended = land(path((5.6, -1), (7.1, -2.2, 2), (11.6, -1)), (third,), SMALL, 2.1)
    assert ended.corners[1] == Point(7.1, -2.2)
    assert ended.end.x > third.at.x + third.hard + 0.8 * SMALL.long


def test_an_arrow_points_the_way_he_runs() -> None:
    second = Round(Point(11.6, -1), 1.82, 1.37)
    ended = land(path((6.6, -1), (8.1, -2.2, 2), (13.47, -1)), (second,), SMALL, 2.1)
    assert ended.end.y > ended.corners[-2].y, "up the field, as the bubble does"


def test_a_path_between_two_men_is_not_led_past_either_on_the_other_side() -> None:
    end, wing = Round(Point(5.02, 0), 2.07, 1.56), Round(Point(7.21, -2.55), 2.07, 1.56)
    ended = land(path((0, -7.4), (4.4, -1.8, 1.2), (6, 0.8)), (end, wing), SMALL, 2.1)
    for p in polyline(ended):
        assert p.y < end.at.y or p.x > end.at.x, "not inside the tight end"


def test_a_turn_behind_the_line_makes_room_for_the_bend() -> None:
    slot = Round(Point(-7.6, -1), 1.82, 1.37)
    lead = path((-1.3, 0), (-1.3, -1.3), (-4.5, -1.4, 1), (-9.4, -0.5), ending=Ending.BLOCK)
    ended = land(lead, (slot,), SMALL, 2.1)
    assert Point(-4.5, -1.4) not in ended.corners and Point(-1.3, -1.3) in ended.corners

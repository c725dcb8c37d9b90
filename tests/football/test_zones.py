"""Zones lie in the field, in order from the ball outward."""

from __future__ import annotations

import pytest
from lineup.look_sets import every_book, shipped

from stemline.football.defence.zones import zone_point
from stemline.football.defenders import DutyKind
from stemline.football.field import BallSpot, Side
from stemline.football.offence.landmarks import Landmark, x_of
from stemline.resolve.expand import field_of


@every_book
@pytest.mark.parametrize("spot", BallSpot, ids=lambda s: s.value)
def test_zones_lie_in_the_field_and_in_order(book: str, spot: BallSpot) -> None:
    """From the ball outward: hole, hook, curl; the flat at the numbers; deep zones behind them."""
    made = shipped(book).book
    assert made is not None
    field = field_of(made, spot)
    for side in Side:
        kinds = (DutyKind.HOLE, DutyKind.HOOK, DutyKind.CURL)
        points = [zone_point(kind, side, field) for kind in kinds]
        away = [p.x * side.value for p in points]
        assert away == sorted(away) and len(set(away)) == 3
        assert zone_point(DutyKind.FLAT, side, field).x == x_of(Landmark.NUMBERS, side, field)
        low = zone_point(DutyKind.FLAT, side, field).y
        deep = [zone_point(k, side, field) for k in (DutyKind.HALF, DutyKind.THIRD)]
        assert all(p.y > 11 > low for p in deep)
        for p in (*points, *deep):
            assert field.sideline(Side.LEFT) < p.x < field.sideline(Side.RIGHT)
    left, right = (zone_point(DutyKind.THIRD, s, field).x for s in Side)
    middle = zone_point(DutyKind.THIRD, None, field).x
    assert middle - left == pytest.approx(right - middle)

"""A man whose symbol stands aside of his place runs straight up from there all the same."""

from __future__ import annotations

import pytest

from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.picture.ways.starts import begun_at


@pytest.mark.parametrize("legs", [(22.0,), (6.0, 22.0)])
def test_a_line_straight_up_does_not_lean(legs: tuple[float, ...]) -> None:
    path = Path(Point(3.9, 0.0), tuple(Leg(Point(3.9, y)) for y in legs))
    begun = begun_at(path, Point(4.3, -0.1))
    assert begun.legs[0].to.x == 4.3 and (len(legs) > 1 or begun.end == Point(4.3, 22.0))


def test_a_block_still_ends_at_its_man() -> None:
    path = Path(Point(3.9, 0.0), (Leg(Point(3.9, 4.0)),), Ending.BLOCK)
    assert begun_at(path, Point(4.3, 0.0)).end == Point(3.9, 4.0)

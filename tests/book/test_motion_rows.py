"""The rows of a motion's page say which way each man goes, as it happens."""

from __future__ import annotations

import pytest

from stemline.book.content.kinds.motion_page import as_it_happens, moves
from stemline.football.play import Motion
from stemline.geometry.paths import Leg, Path, Point
from stemline.source import NOWHERE


def motion(*places: tuple[float, float], words: str = "Trade, set") -> Motion:
    start, *to = (Point(*place) for place in places)
    way = Path(start, tuple(Leg(point) for point in to))
    return Motion("Trade", way, False, 0.0, words, span=NOWHERE)


@pytest.mark.parametrize(
    ("places", "words"),
    [
        (((6, 0), (4, -3), (-6, 0)), "across the ball, set"),
        (((12, -1), (16, -1)), "out 4 yards, set"),
        (((-12, -1), (-8, -1)), "in 4 yards, set"),
        (((12, 0), (12, -1)), "off the line, set"),
        (((12, -1), (12, 0)), "up to the line, set"),
        (((12, 0), (14, -1)), "out 2 yards and off the line, set"),
        (((12, -1), (6, -3), (12, -1)), "in, then out, set"),
    ],
)
def test_a_row_says_which_way_he_goes(places: tuple[tuple[float, float], ...], words: str) -> None:
    assert as_it_happens(motion(*places), "Trade") == words
    mirrored = [(-x, y) for x, y in places]
    assert as_it_happens(motion(*mirrored), "Trade") == words


def test_a_motion_that_says_its_way_keeps_its_words() -> None:
    told = motion((12, -6), (12, -1), words="Trade from 6 deep, running")
    assert as_it_happens(told, "Trade") == "from 6 deep, running"


def test_who_stands_there_already_does_not_move() -> None:
    assert not moves(motion((12, 0), (12, 0)))
    assert moves(motion((12, 0), (12, -1)))

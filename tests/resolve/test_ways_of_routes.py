"""`runs hook field`: whoever stands out wide turns that way, whichever side he stands on; a man
behind the ball runs out to it."""

from __future__ import annotations

from itertools import pairwise

import pytest

from resolve.texts import THREE_TWO, TWELVE, compiled, said
from stemline.football.field import BallSpot, Side
from stemline.session import Session

CONCEPT = """
concept Ways
    a is strong #1
    a runs {route} {way}
    b is weak #1
    b runs {route} {way}
    d is back
    d runs angle {way}
    feet 3
    read a on 3

dress Ways
    in Three Two
"""
SIX = """
playbook Six
    code six-man

formation Spread
    X at away, 12 outside ball, on line
    Z at call, 12 outside ball, on line
    R at call, 2 outside ball, 4 deep
    W at away, 4 outside ball, off line
    Q at ball, 4 deep

concept Ways
    a is centre
    a runs {route} {way}
    feet 3
    read a on 3

dress Ways
    in Spread
"""


def last_turn(session: Session, call: str, man: str, spot: BallSpot) -> float:
    """Yards to the right that a man's last leg to a side goes."""
    play, _ = session.play(session.calls.by_name[call], spot)
    assert play is not None, said(session.diagnostics)
    path = play.assignment(man).path
    assert path is not None
    return [b.x - a.x for a, b in pairwise(path.corners) if abs(b.x - a.x) > 0.05][-1]


@pytest.mark.parametrize(("way", "right"), [("field", True), ("boundary", False)])
@pytest.mark.parametrize("route", ["hook", "slant", "out", "over", "return"])
def test_a_split_man_turns_the_way_that_is_said(route: str, way: str, right: bool) -> None:
    text = CONCEPT.format(route=route, way=way)
    session = compiled(TWELVE, THREE_TWO, text)
    for spot, side in ((BallSpot.LEFT_HASH, Side.RIGHT), (BallSpot.RIGHT_HASH, Side.LEFT)):
        goes = side if right else side.other
        for man in "XZ":
            assert last_turn(session, "Three Two Right Ways", man, spot) * goes.value > 0
        # Out to the side that is said, and in again.
        assert last_turn(session, "Three Two Right Ways", "R", spot) * goes.value < 0


@pytest.mark.parametrize("way", ["left", "right"])
@pytest.mark.parametrize("route", ["hook", "slant", "out", "cross"])
def test_the_centre_turns_the_way_that_is_said(route: str, way: str) -> None:
    session = compiled(SIX.format(route=route, way=way))
    turned = last_turn(session, "Spread Right Ways", "C", BallSpot.MIDDLE)
    assert (turned > 0) is (way == "right")

"""Whom a lead and a pull take where nobody is named: the nearest free man in the ball's way.

The edge, then the linebackers from the hole, a deep safety last. Common practice, no published
source.
"""

from __future__ import annotations

from functools import cache

import pytest

from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.session import Session
from stemline.source import Source

JET = """
playbook Herons
    code canadian amateur

formation Three Two
    X at away, numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, 5 outside H, off line
    Z at call, numbers, on line
    R at call, 2 outside ball, 5 deep
    Q at ball, 5 deep

motion Jet
    W moves to away, 1 outside ball, 3 deep
    snap running 7

run Jet Sweep
    carrier is W
    carrier aims outside the end
    back blocks lead
    line blocks reach or climb
    everyone else blocks stalk

dress Jet Sweep
    in Three Two motion Jet to both

look Base
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    M in 10, strong
    W in 30, weak
    S at strong #3 or apex, strong, 5 deep
    H at strong #2, 8 deep
    D at weak #2 or apex, weak, 8 deep
    C at strong #1, 8 deep
    B at weak #1, 8 deep
    F at middle, 13 deep

look Odd
    N in 0
    E in 5, strong
    J in 5, weak
    S at outside end, strong, 1 deep
    W at outside end, weak, 1 deep
    M in 30, strong
    L in 30, weak
    H at strong #2, 1 inside, 7 deep
    D at weak #2 or apex, weak, 7 deep
    C at strong #1, 7 deep
    B at weak #1, 7 deep
    F at middle, 13 deep
"""

TOSS = """
playbook Herons
    code eight-man

formation Eye
    X at away, 8 outside guard, on line
    Y at call, end, on line
    F at ball, 3 deep
    R at ball, 6 deep
    Q at ball, under centre

run Toss Sweep
    carrier is back
    carrier aims outside the end
    quarterback tosses to carrier
    playside guard blocks pull
    centre blocks reach
    backside guard blocks scoop
    playside end blocks reach
    fullback blocks lead
    everyone else blocks stalk

dress Toss Sweep
    in Eye to both

look Three Front
    E at outside end, strong, 1 deep
    N in 0
    J at outside end, weak, 1 deep
    M in 20, strong
    W in 20, weak
    C at strong #1, 3 outside, 5 deep
    B at weak #1, 5 deep
    F at middle, 10 deep

look Four Front
    E at outside end, strong, 1 deep
    T in 1, strong
    N in 1, weak
    J at outside end, weak, 1 deep
    M in 00
    C at strong #1, 3 outside, 5 deep
    B at weak #1, 5 deep
    F at middle, 10 deep
"""


@cache
def made(text: str) -> Session:
    return Session([Source("herons", text)], "unnamed", whole=True)


def against(text: str, call: str, look: str) -> Play:
    session = made(text)
    play, found = session.play(session.calls.by_name[call], BallSpot.MIDDLE, look_key=look)
    assert play is not None and not [d for d in found if d.is_error], found
    return play


@pytest.mark.parametrize("way", ["Right", "Left"])
def test_a_lead_takes_the_man_on_the_edge_and_not_the_safety(way: str) -> None:
    play = against(JET, f"Three Two {way} Jet Jet Sweep", "odd")
    assert [h.defender for h in play.assignment("R").hits] == ["S"]
    assert "S" not in play.unblocked


@pytest.mark.parametrize("look", ["three front", "four front"])
@pytest.mark.parametrize("way", ["Right", "Left"])
def test_a_pull_turns_up_on_the_linebacker_and_not_the_safety(way: str, look: str) -> None:
    play = against(TOSS, f"Eye {way} Toss Sweep", look)
    guard = "RG" if way == "Right" else "LG"
    assert [h.defender for h in play.assignment(guard).hits] == ["M"]
    assert play.unblocked == ("J",)

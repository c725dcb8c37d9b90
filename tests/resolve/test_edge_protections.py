"""Men at an edge: whom they take of an odd front, and what they are told.

Worked out by hand: a front of three with an end man on each side of it. Common practice, no
published source.
"""

from __future__ import annotations

import pytest

from resolve.test_protections import against, taken
from resolve.texts import compiled
from stemline.football.play import Play

ODD = """
look Odd
    E in 5, strong
    N in 0
    J in 5, weak
    O in 9, strong
    A in 9, weak
    M in 20, strong
    W in 20, weak
    C at strong #1, 7 deep
    B at weak #1, 7 deep
    D at strong, hash, 10 deep
    V at weak, hash, 10 deep
    O rushes contain, strong
    A covers flat, weak
    C, D covers quarter, strong
    V, B covers quarter, weak
    M covers hook, strong
    W covers hook, weak
"""

SPRINT = """
playbook Herons
    code high school

formation Ace
    X at away, numbers, on line
    H at away, 5 outside tackle, off line
    S at call, 4 outside tackle, off line
    Z at call, numbers, on line
    R at call, 2 outside ball, 5 deep
    Q at ball, 5 deep

protection Sprint Seal
    toward launch
    playside guard, {tackle}centre blocks reach
    backside guard, backside tackle blocks hinge
    seal is back
    seal blocks playside edge{more}

concept Sprint Out
    deep is strong #1
    deep runs comeback
    flat is strong #2
    flat runs flat
    feet sprint
    read flat on sprint > deep on sprint
    protect Sprint Seal

dress Sprint Out
    in Ace to both
    against Odd
"""

MAX = """
playbook Herons
    code high school

personnel Pro
    Q is quarterback
    R is back
    F is fullback
    Y is tight end
    X, Z is wideout

formation Eye
    people Pro
    X at away, numbers, on line
    Y at call, end, on line
    Z at call, numbers, off line
    F at ball, 4 deep
    R at ball, 7 deep
    Q at ball, under centre

protection Max Late
    line blocks big on big
    tight end blocks edge
    fullback blocks weak edge
    back blocks check then release

concept Double Post
    z is strong #1
    z runs post 14
    late is back
    late runs check then swing weak
    feet 7, hitch
    read z on 7 > late on hitch
    protect Max Late

dress Double Post
    in Eye to both
    against Odd
"""


def shown(text: str, side: str) -> Play:
    play, _ = against(compiled(text, ODD), "Odd", side)
    return play


@pytest.mark.parametrize(("right", "tackle"), [("Right", "RT"), ("Left", "LT")])
@pytest.mark.parametrize(
    ("named", "more"),
    [("playside tackle, ", ""), ("", "\n    playside tackle blocks man")],
    ids=["the tackle reaches", "the tackle is man"],
)
def test_a_helper_at_the_edge_has_the_end_man_and_the_tackle_his_five(
    right: str, tackle: str, named: str, more: str
) -> None:
    got = taken(shown(SPRINT.format(tackle=named, more=more), right))
    assert (got[tackle], got["R"]) == ("E", "O")
    assert got["C"] == "N"
    assert "RG" not in got or right == "Left"


@pytest.mark.parametrize(("side", "tackle"), [("Right", "RT"), ("Left", "LT")])
def test_a_tight_end_has_the_man_who_stands_on_him(side: str, tackle: str) -> None:
    play = shown(MAX, side)
    got = taken(play)
    assert (got[tackle], got["Y"], got["C"]) == ("E", "O", "N")
    assert play.unblocked == ()


def test_who_has_an_edge_is_told_which() -> None:
    result = compiled(MAX, ODD)
    season, _ = result.pictured()
    assert season is not None
    told = {a.man: a.job for a in season.plays[0].assignments}
    assert told["F"].startswith("Block the weak edge: ")
    assert told["Y"].startswith("Block the edge: ")

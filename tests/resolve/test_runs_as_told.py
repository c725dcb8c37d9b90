"""Runs of a coordinator's own: each man has whom his line names, and hears of the ball."""

from __future__ import annotations

from functools import cache

import pytest

from stemline.football.field import BallSpot, Way
from stemline.football.play import Play
from stemline.resolve.expand import Order, expand
from stemline.session import Session
from stemline.source import NOWHERE, Source

TEXT = """
playbook Herons
    code canadian amateur

formation Three Two
    X at away, numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, 5 outside H, off line
    Z at call, numbers, on line
    R at ball, 6 deep
    Q at ball, under centre

formation Spread
    X at away, numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, 5 outside H, off line
    Z at call, numbers, on line
    R at call, 2 outside ball, 5 deep
    Q at ball, 5 deep

run Crack Toss
    toward call
    carrier is back
    carrier aims outside the end
    quarterback tosses to carrier
    playside inside blocks crack end man on line
    playside tackle blocks pull to {force}
    playside guard blocks reach
    centre blocks reach
    backside guard blocks scoop
    backside tackle blocks cut off
    everyone else blocks stalk

run Bash
    toward call
    carrier is quarterback
    carrier aims playside C
    playside tackle blocks down or double with guard then far linebacker
    playside guard blocks down or on or double with tackle then far linebacker
    centre blocks back
    backside guard blocks kick end man on line
    backside tackle blocks wrap to near linebacker
    sweep is back
    sweep aims outside the end, backside
    key end man on line, backside
    {give} if he stays
    pull if he widens
    everyone else blocks stalk

look Over
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
    E in 5, strong
    N in 0
    J in 5, weak
    L in 50, strong
    M in 00
    W in 50, weak
    S at apex, strong, 5 deep
    D at apex, weak, 5 deep
    C at strong #1, 7 deep
    B at weak #1, 7 deep
    H at strong, hash, 12 deep
    F at weak, hash, 12 deep
"""


@cache
def drawn(
    run: str, formation: str, look: str, force: str = "force defender", give: str = "give to sweep"
) -> Play:
    text = TEXT.format(force=force, give=give)
    result = Session([Source("herons", text)], "told", whole=True)
    assert result.book is not None, result.definitions
    order = Order(formation, Way.RIGHT, "", run, (), "", NOWHERE, NOWHERE)
    play, found = expand(result.book, order, BallSpot.MIDDLE, (), look)
    assert play is not None and not [d for d in found if d.is_error], found
    return play


def taken(play: Play, man: str) -> list[str]:
    return [hit.defender for hit in play.assignment(man).hits]


@pytest.mark.parametrize("look", ["over", "odd"])
def test_a_crack_with_a_man_takes_that_man(look: str) -> None:
    play = drawn("crack toss", "three two", look)
    assert taken(play, "H") == ["E"]
    assert play.assignment("H").hits[0].how == "crack"


@pytest.mark.parametrize("force", ["force defender", "overhang"])
@pytest.mark.parametrize("look", ["over", "odd"])
def test_a_puller_meets_the_outer_man_off_the_line(look: str, force: str) -> None:
    assert taken(drawn("crack toss", "three two", look, force=force), "RT") == ["S"]


@pytest.mark.parametrize("give", ["give to sweep", "give"])
def test_who_may_be_given_the_ball_is_told_so_and_drawn_so(give: str) -> None:
    play = drawn("bash", "spread", "over", give=give)
    back, passer = play.assignment("R"), play.assignment("Q")
    assert "as if with the ball" not in back.job
    assert back.job.startswith("Take the ball if J stays: run to backside outside the end.")
    assert [branch.looks for branch in back.branches] == ["if he stays"]
    assert "give to R if he stays; pull if he widens" in passer.job
    assert passer.job.endswith("When you keep it: run to playside C gap.")

"""Runs of a coordinator's own: each man has whom his line names, and hears of the ball."""

from __future__ import annotations

from functools import cache

import pytest

from stemline.football.field import BallSpot, Way
from stemline.football.play import Play
from stemline.geometry.paths import crossing
from stemline.resolve.expand import expand
from stemline.resolve.order import Order
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

formation Wing
    X at away, numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 1 outside tackle, off line
    S at call, 8 outside tackle, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

personnel Lone
    Q is quarterback
    F is fullback
    A, B is slotback
    X, Z is wideout
    S is slotback

formation Lone
    people Lone
    X at away, numbers, on line
    Z at call, numbers, on line
    S at call, 8 outside tackle, off line
    A at call, 1 outside tackle, off line
    B at away, 1 outside tackle, off line
    F at ball, 4 deep
    Q at ball, under centre

formation End
    X at away, numbers, on line
    W at away, 5 outside tackle, off line
    Y at call, end, on line
    S at call, 8 outside tackle, off line
    Z at call, numbers, off line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

formation Away Wing
    X at away, numbers, on line
    W at away, 1 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, 8 outside tackle, off line
    Z at call, numbers, on line
    R at call, 2 outside ball, 5 deep
    Q at ball, 5 deep

run Arc
    toward call
    carrier is back
    carrier aims playside A
    line blocks on or climb
    wing blocks arc to overhang
    everyone else blocks stalk
    key end man on line, backside
    give if he stays
    pull if he chases

run Wham
    toward call
    carrier is back
    carrier aims playside A
    wham is wing
    wham blocks trap nose
    centre blocks leave to middle linebacker
    playside guard blocks leave or on or climb to near linebacker
    backside guard blocks leave or on or climb to far linebacker
    playside tackle, backside tackle blocks on or out
    everyone else blocks stalk

run Pull
    toward call
    carrier is back
    carrier aims outside the end
    playside tackle blocks kick force defender
    playside guard blocks pin or kick force defender or pull to near linebacker
    centre blocks on
    backside guard, backside tackle blocks scoop
    everyone else blocks stalk

run Midline
    toward call
    carrier is fullback
    carrier aims centre
    playside guard blocks leave to near linebacker
    playside tackle blocks out
    centre blocks on or back
    backside guard blocks on or scoop
    backside tackle blocks cut off
    key playside first man past centre
    give if he stays
    pull if he squeezes
    quarterback aims playside B
    everyone else blocks stalk

run Pin and Kick
    toward call
    carrier is back
    carrier aims outside the end
    playside end blocks pin or reach
    playside tackle blocks pin or kick end man on line
    playside guard blocks pin or pull to near linebacker
    centre blocks on
    backside guard, backside tackle blocks scoop
    everyone else blocks stalk

look Even
    E in 9 or 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    L at 0.5 outside tackle, strong, 4 deep
    M in 10, strong
    W in 30, weak
    C at strong #1, 7 deep
    B at weak #1, 7 deep
    D at 3 outside tackle, weak, 8 deep
    K at strong #2, 8 deep
    V at middle, 12 deep

look Middle
    E in 5, strong
    N in 0
    J in 5, weak
    M in 20, strong
    W in 20, weak
    O at 6 outside tackle, strong, 5 deep
    C at strong #1, 7 deep
    B at weak #1, 7 deep
    K at 6 outside tackle, weak, 8 deep
    D at weak, hash, 10 deep
    V at middle, 12 deep
    G at weak #2, 8 deep

look Wide
    E in 5, strong
    N in 0
    J in 5, weak
    O in 9, strong
    M in 20, strong
    W in 20, weak
    C at strong #1, 7 deep
    B at weak #1, 7 deep
    A at apex, weak, 5 deep
    D at strong, hash, 10 deep
    V at weak, hash, 10 deep
    K at strong #2, 8 deep

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


def test_a_named_middle_linebacker_is_kept_and_the_far_one_is_the_farthest() -> None:
    play = drawn("wham", "wing", "even")
    assert taken(play, "C") == ["M"]
    assert taken(play, "LG") == ["W"]


def test_who_pulls_around_the_end_turns_back_in_to_nobody() -> None:
    """The force is kicked, and the nearest of the others is the safety over the ball."""
    play = drawn("pull", "wing", "middle")
    assert taken(play, "RT") == ["O"] and play.defence is not None
    (met,) = taken(play, "RG")
    assert play.defence.defender(met).at.x > play.man("RT").snap.x


def test_a_lone_fullback_is_the_fullback_and_the_read_names_the_keep() -> None:
    play = drawn("midline", "lone", "even")
    passer = play.assignment("Q")
    assert play.carrier == "F"
    assert (
        passer.job.startswith("Read T, ") and "give if he stays; pull if he squeezes" in passer.job
    )
    assert passer.job.endswith("When you keep it: run to playside B gap.")
    assert [branch.looks for branch in passer.branches] == ["if he squeezes"]


def test_a_kick_past_the_man_who_pins_goes_behind_him() -> None:
    play = drawn("pin and kick", "end", "wide")
    path = play.assignment("RT").path
    assert taken(play, "RT") == ["O"] and taken(play, "Y") == ["E"] and path is not None
    crosses = crossing(path, 0.0)
    assert crosses is not None and crosses > play.man("Y").snap.x


@pytest.mark.parametrize("look", ["over", "even"])
def test_a_wing_who_arcs_stays_on_his_side(look: str) -> None:
    play = drawn("arc", "away wing", look)
    wing, path = play.man("W"), play.assignment("W").path
    assert taken(play, "W") and path is not None and play.defence is not None
    assert all(leg.to.x < 0.0 for leg in path.legs) and wing.snap.x < 0.0
    assert all(play.defence.defender(each).at.x < 0.0 for each in taken(play, "W"))

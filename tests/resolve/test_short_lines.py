"""Ends of a short line, three yards out: where six or eight men play they are the ends of the line
for whoever blocks, kicks, aims or stands over them. Common practice, no published source."""

from __future__ import annotations

import pytest

from stemline.football.play import Play
from stemline.geometry.paths import crossing
from stemline.session import Session
from stemline.source import Source

SIX = """playbook Short
    code six-man

personnel All
    Q is quarterback
    R is back
    F is fullback
    X, Y is wideout

formation Tight
    X at away, {out} outside ball, on line
    Y at call, {out} outside ball, on line
    F at call, 1.5 outside ball, 3 deep
    R at away, 1.5 outside ball, 4 deep
    Q at ball, 4 deep

run Tried
    carrier is back
    carrier aims {aims}
    centre blocks on or climb
    playside end blocks {end}
    backside end blocks cut off or climb
    fullback blocks {fullback}
    quarterback blocks lead

dress Tried
    in Tight
    to right

look Front
    E at outside end, strong
    J at outside end, weak
    M in 00, 3 deep
    C at strong, {over} outside ball, 4 deep
    B at weak, {over} outside ball, 4 deep
    F at ball, 9 deep
"""


def only(text: str) -> Play:
    made = Session([Source("short.play", text)], "short")
    assert not [d for d in made.diagnostics if d.is_error]
    assert made.season is not None
    (play,) = made.season.plays
    return play


def six(aims: str, end: str, fullback: str, out: float = 3) -> Play:
    return only(SIX.format(aims=aims, end=end, fullback=fullback, out=out, over=out + 2))


def taken(play: Play) -> dict[str, str]:
    return {a.man: h.defender for a in play.assignments for h in a.hits[:1]}


def at_line(play: Play) -> float:
    path = play.assignment(play.carrier).path
    assert path is not None
    hole = crossing(path, 0.0)
    assert hole is not None
    return hole


@pytest.mark.parametrize("out", [1.3, 3, 3.5])
def test_a_sweep_goes_around_the_end_and_everybody_has_his_man(out: float) -> None:
    play = six("outside the end", "reach", "lead", out)
    assert at_line(play) > out
    assert taken(play) == {"X": "J", "C": "M", "Y": "E", "F": "C", "Q": "F"}
    assert not play.unblocked


def test_a_man_split_out_is_no_end_of_the_line() -> None:
    text = SIX.format(aims="outside the end", end="reach", fullback="lead", out=6, over=8)
    made = Session([Source("short.play", text)], "short")
    (told,) = [d.message for d in made.diagnostics if d.code == "W650"]
    assert told.endswith(": X, Y")


def test_the_end_man_is_kicked_out_past_the_end() -> None:
    play = six("playside A", "down or climb", "kick end man on line")
    assert taken(play)["F"] == "E"
    assert 0 < at_line(play) < 3


def test_the_end_is_aimed_at_where_he_stands() -> None:
    assert at_line(six("playside end", "climb", "lead")) == pytest.approx(3, abs=0.8)


EIGHT = """playbook Short
    code eight-man

personnel All
    Q is quarterback
    R is back
    X is wideout
    Y is tight end
    S is slot

formation Flexed
    X at away, numbers, on line
    Y at call, 3 outside guard, on line
    S at call, 4 outside Y, off line
    R at ball, 6 deep
    Q at ball, 3 deep

run Tried
    carrier is back
    carrier aims outside the end
    line blocks reach or climb
    strong #1 blocks crack
    everyone else blocks stalk

dress Tried
    in Flexed
    to right

look Front
    strength call
    E at outside end, strong
    N in 0
    J in 5, weak
    M in 20, strong
    W in 20, weak
    C at strong #1, 6 deep
    B at weak #1, 6 deep
    F at ball, 10 deep
"""


def test_an_end_of_eight_is_reached_around_and_cracked_for() -> None:
    """He blocks as the line does; the man outside him is the slot's, who stands outside of both."""
    play = only(EIGHT)
    assert at_line(play) > 4.3
    assert {m for m, d in taken(play).items() if d == "E"} == {"S"}
    assert play.assignment("Y").role == "playside end"

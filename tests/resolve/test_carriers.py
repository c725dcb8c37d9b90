"""Who has the ball: every run of both playbooks, and of three that play under centre.

A stated position decides before depth; `fullback` is the man of that position, else the one
nearest the line: the words of grammar/reference.md.
"""

from __future__ import annotations

import pytest

from resolve.shipped_books import shipped
from resolve.texts import ELEVEN, compiled, play, said
from stemline.diagnostics.render import render
from stemline.football.field import BallSpot
from stemline.football.play import Kind
from stemline.session import Session
from stemline.source import Source

HERONS = dict.fromkeys(
    ("Inside Zone", "Split Zone", "Outside Zone", "Power", "Counter", "Trap", "Duo", "Isolation",
     "Toss Sweep", "Draw", "Inside Veer"), "R") | {
    "Quarterback Power": "Q", "Sneak": "Q"}  # fmt: skip
LANTERNS = dict.fromkeys(
    ("Zone", "Split Zone", "Stretch", "Power", "Counter", "Trap", "Duo", "Isolation", "Buck Sweep",
     "Toss", "Draw", "Veer"), "B") | {"Quarterback Power": "Q", "Sneak": "Q"}  # fmt: skip


def carriers(result: Session) -> dict[str, set[str]]:
    """The men who carry each run, over all its calls that move nobody and that the quarterback
    takes."""
    assert result.book is not None
    found: dict[str, set[str]] = {}
    for order in result.calls.by_name.values():
        concept = result.book.concepts[order.concept]
        if concept.kind is not Kind.RUN or order.motion or order.formation == "wildcat":
            continue
        play, _ = result.play(order, BallSpot.MIDDLE)
        assert play is not None
        found.setdefault(concept.name, set()).add(play.carrier)
    return found


@pytest.mark.parametrize(
    ("team", "wanted"), [("saltmarsh-herons", HERONS), ("cedar-flats-lanterns", LANTERNS)]
)
def test_who_carries_in_the_bundled_playbooks(team: str, wanted: dict[str, str]) -> None:
    got = {name: men for name, men in carriers(shipped(team)).items() if name in wanted}
    assert got == {name: {man} for name, man in wanted.items()}


RUNS = """
run Sweep
    carrier is back
    carrier aims outside the end
    line blocks reach or climb
    outside, second, third is strong outside or nobody
    far, far second is weak outside or nobody
    outside, second, third, far, far second blocks stalk
    lead is fullback or nobody
    lead blocks lead

run Dive
    carrier is fullback
    carrier aims playside A
    line blocks on or climb
    outside, second, third is strong outside or nobody
    far, far second is weak outside or nobody
    outside, second, third, far, far second blocks stalk
    fake is back or nobody
    fake blocks lead

dress Sweep
    in Set

dress Dive
    in Set
"""
WING = """
playbook Wings
    version 1
    code high school

personnel All
    1 is quarterback
    2 is back
    3 is fullback
    4 is wing
    5 is tight end
    6 is wideout

formation Set
    6 at away, numbers, on line
    5 at call, end, on line
    4 at call, 1.5 outside 5, off line
    3 at ball, 4 deep
    2 at away, 2 outside ball, 3 deep
    1 at ball, under centre
"""
BONE = """
playbook Bone
    version 1
    code high school

personnel All
    Q is quarterback
    F is fullback
    H, B is back
    X is wideout
    Y is tight end

formation Set
    X at away, numbers, on line
    Y at call, end, on line
    F at ball, 4 deep
    H at call, 2 outside ball, 5 deep
    B at away, 2 outside ball, 6 deep
    Q at ball, under centre
"""
# Three backs and none of them a fullback by position: the nearest to the line is.
PLAIN = BONE.replace("    F is fullback\n", "    F is slot\n").replace("Bone", "Plain")
# ... also where he is a back by position, and so is counted before the others.
DEEPER = PLAIN.replace("F at ball, 4 deep", "F at ball, 5.5 deep").replace("Plain", "Deeper")
# Of two fullbacks by position the one nearest the line is.
TWO_FULL = BONE.replace("    F is", "    F, H is").replace("H, B is", "B is").replace("Bone", "Two")


@pytest.mark.parametrize(
    ("head", "sweep", "dive"),
    [
        (WING, "2", "3"),
        (BONE, "B", "F"),
        (PLAIN, "B", "F"),
        (DEEPER, "B", "H"),
        (TWO_FULL, "B", "F"),
        (BONE.replace("F at ball, 4 deep", "F at ball, 5.5 deep"), "B", "F"),
    ],
    ids=["wing", "bone", "plain", "deeper", "two", "fullback deeper"],
)
def test_who_carries_under_centre(head: str, sweep: str, dive: str) -> None:
    sources = [Source("head.play", head), Source("runs.play", RUNS)]
    result = Session(sources, "centre")
    errors = [d for d in result.diagnostics if d.is_error]
    assert not errors and result.book is not None, render(errors, {s.name: s for s in sources})
    assert carriers(result) == {"Sweep": {sweep}, "Dive": {dive}}


def test_where_position_and_depth_disagree_it_is_said() -> None:
    sources = [Source("head.play", WING), Source("runs.play", RUNS)]
    found = Session(sources, "wings").diagnostics
    (told,) = [d for d in found if d.code == "W860"]
    assert {"man", "other"} <= dict(told.values).keys()
    assert (dict(told.values)["man"], dict(told.values)["other"]) == ("2", "3")


ALONE = """
personnel Book
    Q is quarterback
{people}
formation Wing
    X at away, 8 outside tackle, on line
    Y at call, end, on line
    W at call, 1 outside end, off line
    A at away, 1 outside tackle, off line
    F at ball, 4 deep
    Q at ball, under centre

run Dive
    carrier is fullback
    carrier aims {aims}
    line blocks on or climb
    everyone else blocks stalk

dress Dive
    in Wing to right
"""


def alone(people: str = "", aims: str = "playside A") -> Session:
    return compiled(ELEVEN, ALONE.format(people=people, aims=aims))


def test_the_one_man_behind_the_ball_is_the_fullback_who_carries() -> None:
    made = alone()
    assert not [d for d in made.diagnostics if d.is_error], said(made.diagnostics)
    assert carriers(made) == {"Dive": {"F"}}


def test_one_who_is_a_back_by_position_is_no_fullback_and_his_line_is_offered() -> None:
    (told,) = [d for d in alone("    F is back\n").diagnostics if d.is_error]
    assert told.code == "E620"
    assert dict(told.values)["line"] == "carrier is fullback or back"


@pytest.mark.parametrize(
    ("aims", "pressed"),
    [
        ("playside end then backside A", "playside end: press it, then cut back to backside A gap"),
        ("playside D then playside A", "playside D gap: press it, then cut back to playside A gap"),
        ("backside A then playside B", ""),
        ("playside A then playside C", ""),
    ],
)
def test_who_cuts_back_presses_his_first_aim_to_the_heels_of_the_line(
    aims: str, pressed: str
) -> None:
    made = alone(aims=aims)
    task = play(made, "Wing Right Dive").assignment("F")
    assert task.path is not None
    turns = [leg.to for leg in task.path.legs[:-2]]
    assert (max(turn.y for turn in turns) > -1.8) is bool(pressed)
    assert pressed in task.job and ("press" in task.job) is bool(pressed)

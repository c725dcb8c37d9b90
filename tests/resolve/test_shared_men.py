"""Runs written over the starters: whom each man has where the text gives two men the same one, and
where he goes for it."""

from __future__ import annotations

from functools import cache
from pathlib import Path as File

import pytest

from resolve.texts import said
from stemline.football.play import Play
from stemline.session import Session
from stemline.source import Source

STARTERS = File(__file__).parents[2] / "grammar" / "starter"
SLICE = """
formation Hip extends Three Two
    H at call, 1 outside tackle, off line

run Slice
    carrier is back
    carrier aims playside A
    H blocks sift
    playside line blocks on or climb
    centre blocks on or double with backside guard then far linebacker
    backside guard blocks on or double with centre then far linebacker
    backside tackle blocks on or climb to far linebacker
    everyone else blocks stalk

dress Slice
    in Hip
"""
FLY = """
motion Fly
    S moves to call, 1 outside ball, 3 deep
    snap running

run Fly Sweep
    toward away
    carrier is S
    carrier aims outside the end
    back blocks lead
    line blocks reach or climb
    everyone else blocks stalk

dress Fly Sweep
    in Three Two motion Fly
"""
FLY_NAMED = FLY.replace("blocks lead", "blocks lead on overhang")
BELLY = """
run Belly
    carrier is back
    carrier aims playside B
    playside end blocks down or climb to far linebacker
    playside guard blocks kick end man on line
    centre blocks on or climb
    backside guard blocks cut off or climb to far linebacker
    fullback blocks lead on near linebacker
    everyone else blocks stalk

dress Belly
    in Pro
"""
BUCK = """
run Buck
    carrier is back
    carrier aims outside the end
    fullback aims playside A
    playside wing blocks down or climb to near linebacker
    playside end blocks down or climb to near linebacker
    playside tackle blocks down or climb to far linebacker
    playside guard blocks kick force defender
    centre blocks back or on
    backside guard blocks wrap to near linebacker
    line blocks cut off or climb
    everyone else blocks stalk

dress Buck
    in Wing
"""
BASE = """
run Base
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk
    fullback blocks lead

dress Base
    in Wing
"""


def made(starter: str, text: str) -> Play:
    return built(starter, text, text.split("\nrun ")[1].split("\n")[0])[0]


@cache
def built(starter: str, text: str, name: str) -> tuple[Play, frozenset[str]]:
    folder = STARTERS / starter
    sources = [Source(f.name, f.read_text("utf-8")) for f in sorted(folder.glob("*.play"))]
    session = Session([*sources, Source("own.play", text)], "starter")
    assert session.season is not None, said(session.diagnostics)
    play = next(p for p in session.season.plays if p.call.concept == name)
    return play, frozenset(d.code for d in session.diagnostics)


@pytest.mark.parametrize(
    ("starter", "text", "wanted"),
    [
        # The hip man has the end, so a guard and the centre are one man too many inside: "X's &
        # O's: Split Zone", American Football Coaches Association. The nearer the hole the sooner.
        ("canadian-amateur", SLICE, {"LT": "W", "C": "N M", "LG": "N", "H": "J"}),
        # A receiver stalks who is over him; who leads goes up inside of it: common practice.
        ("canadian-amateur", FLY, {"W": "D", "R": "F", "X": "B"}),
        # But whom the text gives to the lead is his, and the receiver runs off the next.
        ("canadian-amateur", FLY_NAMED, {"W": "F", "R": "D", "X": "B"}),
        # Who is nearer of two who are told the same linebacker: common practice.
        ("nine-man", BELLY, {"LG": "W", "F": "M", "C": "N", "RG": "E"}),
        # "How to Install Buck Sweep", coaching site: the kick is the first man outside the wing.
        ("wing-set", BUCK, {"RG": "C", "LG": "S", "A": "E", "Y": "M", "RT": "T"}),
        # A tight end is a man of the line: he does not run by the man on him.
        ("wing-set", BASE, {"Y": "E"}),
    ],
)
def test_whom_they_share(starter: str, text: str, wanted: dict[str, str]) -> None:
    play = made(starter, text)
    got = {m: " ".join(h.defender for h in play.assignment(m).hits) for m in wanted}
    assert got == wanted


def test_a_kick_goes_round_the_wing_who_blocks_inside() -> None:
    play = made("wing-set", BUCK)
    path, wing = play.assignment("RG").path, play.man("A").snap.x
    assert path is not None
    *_, behind, up, _ = path.corners
    assert behind.y < 0 and behind.x > wing
    assert up.y > 0 and up.x > wing + 0.5  # beside the ball, not back over whom he went round


POWER = """
run Power
    carrier is back
    carrier aims playside B
    fullback blocks kick end man on line
    playside end blocks down or climb to near linebacker
    centre blocks back or on
    backside guard blocks wrap to near linebacker
    line blocks down or on
    everyone else blocks stalk

dress Power
    in Pro
"""


def test_a_back_behind_his_man_kicks_him_out_from_inside() -> None:
    path = made("eight-man", POWER).assignment("F").path
    assert path is not None
    before, end = path.corners[-2:]
    assert before.x < end.x - 1 and before.y < 0


SCREEN = """
concept Throwback
    screen is back
    screen runs slow screen weak
    each #1 runs go
    feet roll strong, set
    read screen on set
    protect screen

dress Throwback
    in Three Two
"""


def test_a_throwback_screen_has_its_line_in_front_of_the_catch() -> None:
    """Not on the side that the quarterback rolls to; and that he throws back is no mistake."""
    play, told = built("canadian-amateur", SCREEN, "Throwback")
    assert "W862" not in told
    goes = [play.assignment(m).path for m in ("LG", "C", "RG")]
    ends = [path.end.x for path in goes if path is not None]
    catch = next(read.at.x for read in play.reads)
    assert catch < 0 and min(ends) < catch


STONE = """
formation Jumbo
    X at away, end, on line
    Y at call, end, on line
    F at ball, 3 deep
    R at ball, 5 deep
    Q at ball, under centre

run Plow
    toward call
    carrier is back
    carrier aims playside A
    fullback blocks lead on near linebacker
    line blocks on or climb

look Stone
    only for Jumbo
    T in 1, strong
    N in 1, weak
    E in inside end, strong
    J in inside end, weak
    M in 20, strong, 2 deep
    W in 20, weak, 2 deep
    C at outside end, strong, 1 deep
    B at outside end, weak, 1 deep

dress Plow
    in Jumbo to both
    against Stone
"""


def test_a_man_inside_the_end_of_a_short_line_has_the_gap_inside_him() -> None:
    folder = STARTERS / "eight-man"
    sources = [Source(f.name, f.read_text("utf-8")) for f in sorted(folder.glob("*.play"))]
    session = Session([*sources, Source("own.play", STONE)], "starter")
    order = session.calls.by_name["Jumbo Right Plow"]
    drawn, _ = session.drawn(order)
    assert drawn is not None
    play, _ = session.play(order, drawn.ball, look_key="stone")
    assert play is not None and play.defence is not None
    duty = {d.label: d.duty for d in play.defence.defenders}["E"]
    assert duty is not None and duty.to is not None
    assert abs(duty.to.x) < play.man("Y").snap.x


def test_a_draw_is_handed_off_after_the_drop() -> None:
    text = BASE.replace("Base", "Sucker").replace("in Wing", "in Pro")
    play = made("eight-man", text.replace("    line", "    feet 3\n    line"))
    assert play.passer is not None
    said = play.assignment(play.passer.label).job
    assert said.startswith("Three-step drop, hand the ball to ")

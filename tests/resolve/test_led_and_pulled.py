"""Lead blockers, pullers and cracks do what they are told: a lead goes where the ball is aimed, who
pulls kicks nobody, and a crack that finds nobody is said."""

from __future__ import annotations

import pytest
from lineup.look_texts import FRONT

from resolve.texts import THREE_TWO, TWELVE, compiled, dress
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.session import Session

SWEEP = """
run Sweep
    carrier is back
    carrier aims {aim}
    line blocks reach or climb
    {line}
    everyone else blocks stalk
"""


def made(line: str, aim: str = "outside the end") -> Session:
    run = SWEEP.format(line=line.replace("; ", "\n    "), aim=aim)
    return compiled(TWELVE, THREE_TWO, FRONT, run, dress("Three Two", concept="Sweep"))


def right(session: Session) -> Play:
    assert session.season is not None
    return next(p for p in session.season.plays if p.call.spoken == "Three Two Right Sweep")


@pytest.mark.parametrize(
    "line",
    [
        "lead is strong inside; lead blocks lead",
        "lead is strong inside; lead aims outside the end",
        "backside guard blocks pull lead",
        "backside guard blocks lead on near linebacker",
    ],
)
def test_a_lead_around_the_end_does_not_turn_back_in(line: str) -> None:
    play = right(made(line))
    who = "LG" if "guard" in line else "H"
    path = play.assignment(who).path
    assert path is not None and play.carrier == "R"
    end = max(m.snap.x for m in play.men if m.interior)
    crossed = [p for p in path.corners if p.y >= 0]
    assert min(p.x for p in crossed) > end or (crossed[0].y == 0 and path.end.x > end)
    assert min(p.x for p in path.corners) >= min(play.man(who).snap.x, end)


@pytest.mark.parametrize("line", ["pull", "pull to near linebacker", "pull lead"])
def test_who_pulls_kicks_nobody_out_unless_he_is_told_to(line: str) -> None:
    play = right(made(f"playside tackle blocks {line}"))
    hits = play.assignment("RT").hits
    assert hits and hits[0].how != "kick" and hits[0].defender != "E"
    assert "E" in play.unblocked
    told = right(made("playside tackle blocks pull or kick end man on line"))
    assert told.assignment("RT").hits[0].defender == "E"
    kicked = right(made("playside tackle blocks kick end man on line"))
    assert kicked.assignment("RT").hits[0].defender == "E"


@pytest.mark.parametrize(("who", "man", "cracks"), [("#1", "Z", False), ("#3", "H", True)])
def test_a_crack_that_finds_nobody_is_said_with_the_look(who: str, man: str, cracks: bool) -> None:
    session = made(f"strong {who} blocks crack")
    found = [str(d.message) for d in session.diagnostics if d.code == "W684"]
    assert bool(found) is not cracks and all("crack in Front" in said for said in found)
    order = session.calls.by_name["Three Two Right Sweep"]
    play, _ = session.play(order, BallSpot.LEFT_HASH, (), "front")
    assert play is not None
    task = play.assignment(man)
    assert ("Here nobody is inside you: stalk C." in task.job) is not cracks
    assert task.hits[0].how == ("crack" if cracks else "stalk")

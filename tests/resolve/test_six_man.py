"""Six-man: the centre goes out for passes, nobody is asked for linemen who are not there, and the
snap is handed on. A report on the six-player game has all six eligible; a Texas association's
Section 163 asks for an exchange before the ball is run over the line."""

from __future__ import annotations

import pytest

from stemline.book.content.job_table import role_players, rows
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Play
from stemline.geometry.paths import Ending
from stemline.picture.picture import picture
from stemline.session import Session
from stemline.source import Source
from stemline.theme import Size, load_theme

SET = """playbook Six
    code {code}

personnel All
    Q is quarterback
    R is back
    X, Z is wideout
    Y is tight end

formation Spread
    X at away, 6 outside tackle, on line
    Y at call, end, on line
    Z at call, 6 outside tackle, off line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

{block}

dress Tried
    in Spread
    to right
"""

PASS = """concept Tried
    {centre}
    out is strong #1
    out runs go
    end is strong #2
    end runs flat
    lone is weak #1
    lone runs hitch
    stay is back
    stay blocks inside out
    feet quick, hitch
    read {looked} on quick > lone on hitch
    protect five"""

RUN = """run Tried
    carrier is {carrier}
    carrier aims playside A
    centre blocks on or climb
    {more}"""


def compiled(block: str, code: str = "six-man") -> Session:
    return Session([Source("six.play", SET.format(code=code, block=block))], "six")


def only(made: Session) -> Play:
    assert made.season is not None
    (play,) = made.season.plays
    return play


def codes(made: Session) -> set[str]:
    return {d.code for d in made.diagnostics}


@pytest.mark.parametrize(
    ("centre", "role"),
    [
        ("centre runs hook 6", "centre"),
        ("center runs hook 6", "center"),
        ("dive is centre\n    dive runs hook 6", "dive"),
        ("dive is center\n    dive runs hook 6", "dive"),
    ],
)
def test_the_centre_runs_a_route_and_is_read(centre: str, role: str) -> None:
    made = compiled(PASS.format(centre=centre, looked=role))
    assert not {c for c in codes(made) if c.startswith("E")}
    play = only(made)
    task = play.assignment("C")
    assert (task.role, task.job) == (role, "Hook at 6.")
    assert task.path is not None and task.path.ending is Ending.SETTLE
    assert task.path.end.y > 4 and play.reads[0].men == ("C",)


def test_without_a_route_he_protects() -> None:
    play = only(compiled(PASS.format(centre='say "In."', looked="out")))
    assert play.assignment("C").job.startswith("Man:")


def test_where_he_may_not_catch_a_pass_he_runs_none() -> None:
    told = compiled(PASS.format(centre="centre runs hook 6", looked="out"), "eight-man")
    assert "E404" in codes(told)
    eight = SET.replace("    R at away", "    W at away, 3 outside tackle, off line\n    R at away")
    block = PASS.format(centre="dive is centre\n    dive runs hook 6", looked="out")
    made = Session([Source("s.play", eight.format(code="eight-man", block=block))], "s")
    (found,) = [d for d in made.diagnostics if d.code == "E620"]
    assert "may not catch a pass" in dict(found.values)["why"]


def test_no_lineman_is_asked_for_whom_the_code_does_not_have() -> None:
    assert "E679" not in codes(compiled(RUN.format(carrier="back", more="feet fake")))
    without = RUN.replace("    centre blocks on or climb\n", "").format(carrier="back", more="")
    (found,) = [d for d in compiled(without).diagnostics if d.code == "E679"]
    assert dict(found.values)["places"] == "centre"


@pytest.mark.parametrize(
    ("code", "missing"),
    [
        ("eight-man", "playside guard and backside guard"),
        ("high school", "playside guard, backside guard, playside tackle and backside tackle"),
    ],
)
def test_a_longer_line_is_asked_for_as_far_as_it_goes(code: str, missing: str) -> None:
    found = compiled(RUN.format(carrier="back", more=""), code).diagnostics
    assert [dict(d.values)["places"] for d in found if d.code == "E679"] == [missing]


@pytest.mark.parametrize(
    ("carrier", "more", "said"),
    [
        ("quarterback", "", True),
        ("back", "", False),
        ("back", "key end man on line, backside\n    give if he stays\n    pull if he comes", True),
    ],
)
def test_the_snap_is_handed_on_before_it_is_run(carrier: str, more: str, said: bool) -> None:
    block = RUN.format(carrier=carrier, more=more)
    assert ("W872" in codes(compiled(block))) is said
    line = block.replace("centre blocks", "line blocks")
    assert "W872" not in codes(compiled(line, "canadian six-man"))


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ("centre snaps to carrier", "carrier aims"),
        ("quarterback hands to carrier", ""),
    ],
)
def test_who_takes_the_snap_is_told_at_the_line_that_lets_him_run(more: str, said: str) -> None:
    made = compiled(RUN.format(carrier="back", more=more))
    lines = [d for d in made.diagnostics if d.code == "W872"]
    assert bool(lines) is bool(said)
    assert not lines or _line_of(made, lines[0]).startswith(said)


FLICKER = """concept Tried
    giver is back
    quarterback hands to giver
    giver tosses to quarterback at 5 deep, backside guard
    giver blocks inside out
    a is strong #1
    a runs post 14
    everyone else runs seam
    feet fake, set
    read a on set > run
"""


def test_a_ball_that_came_back_may_be_run() -> None:
    assert "W872" not in codes(compiled(FLICKER))
    made = compiled(
        FLICKER.replace("    giver tosses", "    // giver tosses", 1).replace(
            "    quarterback hands", "    // quarterback hands", 1
        )
    )
    (line,) = [d for d in made.diagnostics if d.code == "W872"]
    assert _line_of(made, line).startswith("read a on set")


def _line_of(made: Session, d: Diagnostic) -> str:
    (source,) = {tree.source.name: tree.source for tree, _ in made.trees}.values()
    return source.lines[d.span.line - 1].strip()


REVERSE = """run Tried
    toward away
    first is back
    first aims backside end
    carrier is {carrier}
    carrier aims playside end
    handoff first
    centre blocks on or climb"""


@pytest.mark.parametrize(
    ("carrier", "last", "words"),
    [
        ("call outside", "Z", "Take the ball from R. Run to playside end."),
        (
            "quarterback",
            "Q",
            "Hand the ball to R, take it back from R. Run to playside end.",
        ),
    ],
)
def test_the_ball_goes_through_the_hands_of_another_man(
    carrier: str, last: str, words: str
) -> None:
    """Q to R to Z; and back to Q, which six-man allows once R has had it."""
    made = compiled(REVERSE.format(carrier=carrier))
    play = only(made)
    assert (play.handoffs, play.carrier) == (("R",), last)
    assert play.assignment(last).job == words
    assert play.assignment("R").job == (
        f"Take the ball from Q, hand it to {last}. Run to backside end."
    )
    assert play.assignment("Q").job.startswith("Hand the ball to R")
    assert "W872" not in codes(made)


def test_each_exchange_is_marked_where_the_two_meet() -> None:
    play = only(compiled(REVERSE.format(carrier="call outside")))
    scene = picture(play, Size.FULL, load_theme())
    names = {getattr(item, "name", "") for item in scene.items}
    assert {"R-mesh-1", "R-mesh-2", "Z-mesh-1", "Z-mesh-2"} <= names


def test_a_role_that_is_not_there_has_no_ball() -> None:
    made = compiled(REVERSE.format(carrier="back").replace("handoff first", "handoff nobody man"))
    assert "E444" in codes(made)


def test_a_man_named_by_his_place_runs_in_six_man_too() -> None:
    text = PASS.format(centre="centre runs cross 5", looked="out")
    text = text.replace("    lone is weak #1\n    lone runs hitch\n", "    weak #1 runs hitch\n")
    made = compiled(text.replace(" > lone on hitch", ""))
    assert not {c for c in codes(made) if c.startswith("E")}
    assert only(made).assignment("X").role == "weak #1"


@pytest.mark.parametrize(("last", "said"), [("run", True), ("throw away", False)])
def test_who_has_the_snap_may_not_run_with_it_at_the_end_of_his_reads(
    last: str, said: bool
) -> None:
    block = PASS.format(centre='say "In."', looked="out").replace("on hitch", f"on hitch > {last}")
    assert ("W872" in codes(compiled(block))) is said


def test_a_centre_who_goes_out_is_told_with_the_receivers() -> None:
    """His row stands among theirs, and no line is told what he alone does."""
    play = only(compiled(PASS.format(centre="centre runs cross 5", looked="centre")))
    assert [row.men for row in rows((play,), (("Spread", play),)) if row.role == "centre"] == [
        ("C",)
    ]
    assert "C" in [a.man for a in role_players(play)]
    stays = PASS.format(centre="end runs seam", looked="end").replace("    end runs flat\n", "")
    play = only(compiled(stays))
    assert all("C" not in row.men for row in rows((play,), (("Spread", play),)))

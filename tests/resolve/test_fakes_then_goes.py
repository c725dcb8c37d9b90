"""A pass that joins a run: its carrier fakes where he would get the ball, then runs a route that is
said of him, by whatever words."""

from __future__ import annotations

import pytest

from resolve.texts import ELEVEN, THREE_TWO, TWELVE, codes, compiled, play
from stemline.book.content.job_table import formation_columns, rows
from stemline.describe.spoken_play import describe
from stemline.football.play import Play
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import HIGH_SCHOOL

RUN = """
run Dive
    toward {toward}
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk
"""
PASS = """
concept Show
    join run Dive
    {line}
    weak #1 runs post
    everyone else runs hitch
    feet fake, set
    read {who} on set
    {more}
"""
SPLIT = """
formation Split
    X at away, numbers, on line
    Y at call, end, on line
    Z at call, numbers, off line
    W at ball, 4 deep
    R at ball, 7 deep
    Q at ball, under centre
"""


def shown(
    line: str, who: str = "back", toward: str = "call", more: str = "family Fakes", tag: str = ""
) -> Play:
    text = PASS.format(line=line, who=who, more=more)
    dress = f"dress Show\n    in Three Two{' with Out' if tag else ''}\n"
    result = compiled(TWELVE, THREE_TWO, RUN.format(toward=toward), text, tag, dress)
    assert not [d for d in result.diagnostics if d.is_error], codes(result)
    return play(result, f"Three Two Right Show{' Out' if tag else ''}")


@pytest.mark.parametrize(
    ("line", "who"),
    [
        ("back runs wheel strong", "back"),
        ("R runs wheel strong", "R"),
        ("carrier runs wheel strong", "carrier"),
        ("a is back\n    a runs wheel strong", "a"),
    ],
)
def test_he_fakes_at_the_mesh_then_runs_his_route(line: str, who: str) -> None:
    made = shown(line, who)
    task = made.assignment("R")
    assert task.job == "Fake the run to playside A gap, then wheel strong."
    assert task.path is not None
    passer = made.man("Q").snap
    assert min(p.distance(passer) for p in task.path.corners[1:3]) < 1.0
    assert task.path.end.x > 5 and task.path.end.y > 15
    assert made.reads[0].men == ("R",)
    assert made.nobody == ()


def test_a_route_of_the_carrier_is_the_carriers_wherever_it_is_said() -> None:
    made = shown("carrier runs wheel strong", "carrier")
    assert made.assignment("R").role_said == made.as_said("R") == "carrier"
    assert made.runs("carrier") is made.assignment("R")
    assert "R as carrier" in describe(made)
    told = rows((made,), formation_columns((made,)))
    assert "carrier" in [row.role for row in told]
    assert not [row.role for row in told if "fake" in row.role]


def test_a_role_of_the_coach_may_be_called_fake() -> None:
    more = "family Fakes\n    fake is weak #2\n    fake runs cross"
    made = shown("carrier runs wheel strong", "carrier", more=more)
    assert made.assignment("R").role_said == "carrier"
    assert made.assignment("R").job.startswith("Fake the run")
    assert made.runs("fake") is not made.runs("carrier")


def test_the_fake_is_on_the_clock() -> None:
    """He comes to the end of his route later than who runs it at once."""
    faking = shown("back runs wheel strong")
    alone = compiled(
        TWELVE, THREE_TWO,
        PASS.format(line="back runs wheel strong", who="back", more="family Fakes").replace(
            "    join run Dive\n", ""
        ),
        "dress Show\n    in Three Two\n",
    )  # fmt: skip
    plain = play(alone, "Three Two Right Show")
    late, soon = (read_clock(made, HIGH_SCHOOL).men["R"].arrives for made in (faking, plain))
    assert late > soon + 0.1


def test_a_word_to_the_carrier_is_a_word_to_him() -> None:
    made = shown("back runs wheel strong", more='carrier says "Elbow up."')
    assert made.assignment("R").says == ("Elbow up.",)


def test_a_tag_may_send_out_who_fakes() -> None:
    tag = "tag Out for Show\n    back runs swing weak\n    read weak #1 on set\n"
    made = shown("strong #1 runs seam", "weak #1", tag=tag)
    task = made.assignment("R")
    assert task.job == "Fake the run to playside A gap, then swing weak."


def test_with_a_line_for_the_fullback_too_the_back_is_the_carrier() -> None:
    text = PASS.format(
        line="out is back\n    out runs swing strong\n    fullback runs flat weak",
        who="out", more="family Fakes",
    )  # fmt: skip
    result = compiled(ELEVEN, SPLIT, RUN.format(toward="call"), text, "dress Show\n    in Split\n")
    made = play(result, "Split Right Show")
    assert made.assignment("R").role == "out"
    assert made.assignment("W").job.startswith("Flat")


@pytest.mark.parametrize("who", ["carrier", "back"])
def test_a_joined_lead_is_not_sent_out_for_the_back(who: str) -> None:
    run = RUN.format(toward="call") + "    fullback blocks lead\n"
    text = PASS.format(line=f"{who} runs flat weak", who=who, more="family Fakes")
    result = compiled(ELEVEN, SPLIT, run, text, "dress Show\n    in Split\n")
    made = play(result, "Split Right Show")
    assert made.assignment("R").job.startswith("Fake the run to")
    assert made.assignment("R").role_said == who
    path = made.assignment("R").path
    assert path is not None and all(abs(p.x) > 3 for p in path.corners if -0.5 < p.y < 1)


def test_who_may_be_nobody_stays_nobody() -> None:
    made = shown("a is back or nobody\n    a runs wheel", "weak #1")
    assert made.nobody == ("a",)
    assert made.assignment("R").job == "Fake the run to playside A gap."


@pytest.mark.parametrize(
    "more",
    [
        "key unblocked man, backside\n    give if he drops\n    throw weak #1 if he comes up",
        "quarterback hands to carrier\n    carrier tosses to quarterback",
    ],
)
def test_who_gets_the_ball_runs_no_route_and_that_is_told(more: str) -> None:
    text = PASS.format(line="back runs wheel", who="weak #1", more=more)
    dress = "dress Show\n    in Three Two\n"
    result = compiled(TWELVE, THREE_TWO, RUN.format(toward="call"), text, dress)
    assert "W628" in codes(result)

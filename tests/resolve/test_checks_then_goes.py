"""Who checks goes out by the way that is said, looks for whom he is told to, and a man at the line
blocks a count first. What is meant is common practice; no published source.
"""

from __future__ import annotations

import pytest

from resolve.test_passes_as_coached import TIGHT, corners, drawn
from resolve.test_protections import against, made, taken
from resolve.texts import ELEVEN, codes, compiled, dress
from stemline.football.blocking.protecting import ProtectionRule
from stemline.football.offence.strokes import BLOCKS_FOR
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.men import timelines
from stemline.geometry.paths import Ending
from stemline.playbook.pass_block import PassBlock
from stemline.playbook.said import SideWord

HOOK = "    a is strong #1\n    a runs go\n"


def tight(words: str) -> str:
    return f"{HOOK}    Y runs {words}\n    back blocks inside out\n"


def test_who_checks_the_edge_looks_there_and_goes_on_outside() -> None:
    made_ = drawn(f"{HOOK}    b is back\n    b runs check edge weak\n")
    _, looks, out = corners(made_, "R")
    assert abs(looks.x) > 3 and looks.y < 0  # outside his tackle, behind the line
    assert abs(out.x) > abs(looks.x) and out.y == 4
    assert made_.assignment("R").job == "Check the edge, then out at 4 weak."


def test_from_the_edge_he_swings_and_does_not_go_back_behind_the_ball() -> None:
    made_ = drawn(f"{HOOK}    b is back\n    b runs check edge then swing weak\n")
    assert all(p.y >= -2 for p in corners(made_, "R")[1:])


def test_who_checks_the_edge_has_the_man_off_it_and_else_runs_his_route() -> None:
    """Against seven the edge comes: he has it and runs nothing. Against four nobody does."""
    result = made("protect five", "out is back", "out runs check edge then flat")
    assert codes(result) == []
    seven, _ = against(result, "Seven")
    assert taken(seven)["R"] == "R"
    path = seven.assignment("R").path
    assert path is not None and path.ending is Ending.BLOCK
    four, _ = against(result, "Four")
    path = four.assignment("R").path
    assert path is not None and path.ending is not Ending.BLOCK


@pytest.mark.parametrize(
    "words", ["check edge then release", "check weak edge then release", "check then release",
              "check near linebacker > far linebacker then release"],
)  # fmt: skip
def test_a_helper_of_a_protection_checks_and_releases(words: str) -> None:
    own = f"protection Own\n    line blocks slide\n    toward call\n    back blocks {words}\n"
    assert codes(made("protect Own", protections=own)) == []


@pytest.mark.parametrize("words", ["leak", "check then flat", "check edge then flat"])
def test_a_tight_end_blocks_a_count_before_he_goes(words: str) -> None:
    """The same man is out later by just that count than on a route that starts at the snap."""
    made_ = drawn(tight(words), ELEVEN, TIGHT, call="Tight Right Ways")
    assert made_.assignment("Y").waits == BLOCKS_FOR
    at_once = drawn(tight("flat"), ELEVEN, TIGHT, call="Tight Right Ways")
    assert at_once.assignment("Y").waits is None
    blocks, goes = (timelines(one, HIGH_SCHOOL)["Y"] for one in (made_, at_once))
    assert blocks.start == pytest.approx(goes.start + BLOCKS_FOR)
    assert blocks.arrives > goes.arrives + BLOCKS_FOR


@pytest.mark.parametrize("words", ["angle", "check then angle"])
def test_a_tight_end_stems_before_he_breaks_in(words: str) -> None:
    """Out and up, then in across the middle: no step along the line behind the rush."""
    made_ = drawn(tight(words), ELEVEN, TIGHT, call="Tight Right Ways")
    *_, stem, end = corners(made_, "Y")
    start = made_.man("Y").snap
    assert stem.y >= 3 and 0 < stem.x - start.x < 3
    assert end.x < start.x and end.y > stem.y


def test_both_ends_of_a_tight_set_go_out() -> None:
    text = (
        "concept Ends\n    each end blocks edge, then releases to flat\n"
        "    back blocks inside out\n"
        "    feet 3\n    read Y on 3\n"
    )
    formation = TIGHT.replace("X at away, numbers", "X at away, end").replace(
        "H at away, 4 outside tackle, off line", "H at call, 4 outside Z, off line"
    )
    result = compiled(ELEVEN, formation, text, dress("Tight", concept="Ends"))
    assert "E403" not in codes(result) and "E404" not in codes(result)


@pytest.mark.parametrize(
    ("runs", "said"),
    [("check near linebacker then flat", "Check the near linebacker, then flat at 4."),
     ("check inside out then flat", "Check inside out, then flat at 4.")],
)  # fmt: skip
def test_whom_he_checks_is_told_once_and_is_his_own_where_he_says(runs: str, said: str) -> None:
    result = made("protect five", "out is back", f"out runs {runs}")
    assert codes(result) == []
    four, _ = against(result, "Four")
    assert four.assignment("R").job.startswith(said), four.assignment("R").job


@pytest.mark.parametrize(
    ("side", "said"),
    [("weak", "weak edge"), ("call", "edge to the call"), ("away", "edge away from the call")],
)
def test_an_edge_is_said_one_way_whoever_checks_it(side: str, said: str) -> None:
    """By a concept and by a protection alike."""
    made_ = drawn(f"{HOOK}    b is back\n    b runs check {side} edge then swing\n")
    assert made_.assignment("R").job.startswith(f"Check the {said}, then ")
    assert PassBlock(ProtectionRule.EDGE, SideWord(side)).edge == said


@pytest.mark.parametrize("said", ["blocks down then", "blocks down, then", "blocks chip then"])
@pytest.mark.parametrize("route", ["leak", "corner 6", "flat 3"])
def test_who_blocks_down_or_chips_goes_out_a_count_later(said: str, route: str) -> None:
    """He hits the man inside him first: a step that way, then his route, a count behind who runs it
    at once, and no look for a rusher keeps him in."""
    words = tight("x").replace("Y runs x", f"Y {said} {route}")
    made_ = drawn(f"{words}    protect five\n", ELEVEN, TIGHT, call="Tight Right Ways")
    task = made_.assignment("Y")
    begins = "Chip the edge rusher" if "chip" in said else "Block down"
    assert task.job.startswith(f"{begins}, then {route.split()[0]}")
    assert task.path is not None and task.path.ending is not Ending.BLOCK
    assert task.path.corners[1].x < made_.man("Y").snap.x < task.path.end.x
    assert task.waits == BLOCKS_FOR
    at_once = drawn(tight(route), ELEVEN, TIGHT, call="Tight Right Ways")
    late, soon = (timelines(one, HIGH_SCHOOL)["Y"] for one in (made_, at_once))
    behind = 0.0 if route == "leak" else BLOCKS_FOR  # a leak has its count anyhow
    assert late.arrives >= soon.arrives + behind - 0.6


@pytest.mark.parametrize(
    ("who", "help_"), [("back", "`back runs check then flat`"), ("H", "`H runs flat`")]
)
def test_who_stands_at_no_end_of_the_line_blocks_nobody_down(who: str, help_: str) -> None:
    text = f"concept Ways\n{HOOK}    {who} blocks down then flat\n    feet 3\n    read a on 3\n"
    result = compiled(ELEVEN, TIGHT, text, "dress Ways\n    in Tight\n")
    (found,) = [d for d in result.diagnostics if d.is_error]
    assert found.code == "E478" and help_ in dict(found.said.values)["instead"]


@pytest.mark.parametrize(
    ("line", "instead"), [("down then leak", "down or climb"), ("chip then flat", "on or climb")]
)
def test_in_a_run_nobody_blocks_and_goes_out(line: str, instead: str) -> None:
    """And what is offered is right."""
    text = f"{TIGHT}    tight end blocks {line}\n"
    (found,) = [d for d in compiled(ELEVEN, text).diagnostics if d.is_error]
    assert found.code == "E479" and dict(found.said.values)["instead"] == instead
    offered = compiled(ELEVEN, text.replace(f"blocks {line}", f"blocks {instead}"))
    assert not [d for d in offered.diagnostics if d.is_error], codes(offered)


def test_a_back_chips_at_the_edge_and_goes_out_from_there() -> None:
    made_ = drawn(f"{HOOK}    b is back\n    b blocks chip then flat weak\n")
    _, edge, *_, end = corners(made_, "R")
    assert abs(edge.x) > 3 and -2 < edge.y < 0
    assert end.y == 4 and abs(end.x) > abs(edge.x)
    assert made_.assignment("R").job == "Chip the edge rusher, then flat at 4 weak."

"""A playbook without a look: its runs and protections are drawn whole, against a front of the code.

Common practice, no published source: four down to a line of five, the 3 technique to the tight end.
"""

from __future__ import annotations

import re

import pytest

from resolve.texts import ELEVEN, TWELVE, codes, compiled
from stemline.checks.blocks_find_men import MOST_FREE
from stemline.football.defenders import Level
from stemline.football.play import Play
from stemline.football.rulebook.codes import CODES, Code
from stemline.picture.picture import picture
from stemline.playbook.playbook import Playbook
from stemline.read.ready_looks import base_front
from stemline.resolve.concept_views import with_views
from stemline.resolve.sheets import with_sheets
from stemline.theme import Size, load_theme

SET = """
formation Doubles
    X at away, numbers, on line
    H at away, 4 outside tackle, off line
    Y at call, end, on line
    Z at call, numbers, off line
    {back} at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
{more}
"""
ELEVEN_SET = SET.format(back="B", more="")
TWELVE_SET = SET.format(back="R", more="    S at away, 9 outside tackle, off line").replace(
    "    Y at call, end", "    W at call, end"
)

POWER = """
run Power
    carrier is back
    carrier aims playside B
    playside end blocks kick
    playside tackle blocks down or double with guard then far linebacker
    playside guard blocks down or on or double with tackle then far linebacker
    centre blocks back or on
    backside guard blocks wrap
    backside tackle blocks hinge
    outside, second, third, fourth is strong outside or nobody
    outside, second, third, fourth blocks stalk
    far, far second, far third is weak outside or nobody
    far, far second, far third blocks stalk

dress Power
    in Doubles
"""
LOOK = """
look Mine
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    M at 20, strong
    W at 20, weak
    S at apex or outside end, strong, 5 deep
    C at strong #1, 8 deep
    B at weak #1, 8 deep
    F at middle, 12 deep
    R at hash, weak, 10 deep
    C covers half, strong
    B covers half, weak
"""
FENCE = """
protection Fence
    line blocks man
    helper is back
    helper blocks scan
"""


def power(text: str = ELEVEN, formation: str = ELEVEN_SET, more: str = "") -> Play:
    made = compiled(text, formation, POWER, more)
    assert made.season is not None
    assert not made.failed
    return next(p for p in made.season.plays if p.call.spoken == "Doubles Right Power")


@pytest.mark.parametrize(("text", "formation"), [(ELEVEN, ELEVEN_SET), (TWELVE, TWELVE_SET)])
def test_kick_and_puller_have_their_men_without_a_look(text: str, formation: str) -> None:
    play = power(text, formation)
    assert play.defence is not None
    assert len(play.defence.defenders) == play.field.code.players.value
    end = next(m.label for m in play.men if m.on_line and not m.interior and 0 < m.snap.x < 6)
    for man, whom in ((end, "E"), ("LG", "M"), ("RG", "T"), ("C", "N")):
        task = play.assignment(man)
        assert task.hits[0].defender == whom
        assert task.path is not None


PLAY_ACTION = """
concept Power Pass
    join run Power
    post is strong #1
    post runs post 12
    feet fake, hitch
    read post on hitch

dress Power Pass
    in Doubles
"""
SCREEN = """
protection Lure
    toward launch
    playside tackle, backside tackle blocks man
    centre, playside guard, backside guard blocks set and release

concept Slip
    screen is back
    screen runs slow screen strong
    clear is strong #1
    clear runs go
    feet 5, reset
    read screen on reset
    protect Lure

dress Slip
    in Doubles
"""


def drawn_pass(name: str, more: str) -> Play:
    made = compiled(ELEVEN, ELEVEN_SET, POWER, PLAY_ACTION, SCREEN, more)
    assert made.season is not None and not made.failed
    return next(p for p in made.season.plays if p.call.concept == name)


def test_the_line_of_a_play_action_is_drawn_without_a_look() -> None:
    play = drawn_pass("Power Pass", "")
    assert play.defence is not None and play.against == ()
    for man, whom in (("RG", "T"), ("C", "N"), ("LT", "J")):
        task = play.assignment(man)
        assert task.hits[0].defender == whom and task.path is not None


PULLS = (
    # the man who pulls, what the run has him do, where he ends: in the hole, or past the end
    ("LG", "backside guard blocks wrap", 2.0),
    ("LG", "backside guard blocks kick", 4.5),
    ("LG", "backside guard blocks pull", 5.1),
    ("LT", "backside tackle blocks wrap", 2.0),
)


@pytest.mark.parametrize(("man", "line", "end"), PULLS)
def test_a_pull_of_a_play_action_is_drawn_behind_the_line(man: str, line: str, end: float) -> None:
    """The guard shows the run by pulling, and no lineman goes up the field on a pass."""
    place = line.partition(" blocks")[0]
    kicks = "kick" in line  # one man kicks the end, and the other has nobody on the line
    run = re.sub(rf"{place} blocks .*", line, POWER)
    run = run.replace("playside end blocks kick", "playside end blocks down") if kicks else run
    made = compiled(ELEVEN, ELEVEN_SET, run, PLAY_ACTION)
    assert made.season is not None and not made.failed
    play = next(p for p in made.season.plays if p.call.spoken == "Doubles Right Power Pass")
    task = play.assignment(man)
    assert task.path is not None and not task.hits
    assert "stay behind the line" in task.job
    assert max(p.y for p in task.path.corners[1:]) < 0.0
    assert min(p.y for p in task.path.corners) <= -1.0
    assert abs(task.path.end.x - end) <= 0.8


def test_no_lineman_of_a_play_action_is_told_to_climb() -> None:
    run = re.sub(r"backside guard blocks .*", "backside guard blocks trap", POWER)
    run = run.replace("playside end blocks kick", "playside end blocks climb")
    made = compiled(ELEVEN, ELEVEN_SET, run, PLAY_ACTION)
    assert made.season is not None
    words = {
        p.call.concept: p.assignment("RG").job
        for p in made.season.plays
        if p.call.spoken.startswith("Doubles Right")
    }
    assert "climb" in words["Power"]
    assert words["Power Pass"] == "Show the run and stay at the line: help inside."


def test_a_screen_is_drawn_whole_without_a_look() -> None:
    play = drawn_pass("Slip", "")
    assert play.defence is not None and play.against == ()
    moving = {a.man for a in play.assignments if a.path is not None}
    assert {"LT", "LG", "C", "RG", "RT"} <= moving
    assert play.assignment("LT").hits[0].defender == "J"


@pytest.mark.parametrize("name", ["Power Pass", "Slip"])
def test_with_a_look_it_is_drawn_against_that_look(name: str) -> None:
    defence = drawn_pass(name, LOOK).defence
    assert defence is not None and defence.name == "Mine"


@pytest.mark.parametrize(("word", "drawn"), [("zone", False), ("when 3x1", True)])
def test_a_pass_with_a_route_that_the_look_decides_shows_both(word: str, drawn: bool) -> None:
    guard = word if word.startswith("when") else f"when {word}"
    more = f"    clear runs post 12 {guard}\n"
    text = SCREEN.replace("    clear runs go\n", "    clear runs go\n" + more)
    made = compiled(ELEVEN, ELEVEN_SET, POWER, PLAY_ACTION, text, LOOK)
    assert made.season is not None
    play = next(p for p in made.season.plays if p.call.concept == "Slip")
    assert (play.defence is not None) is drawn
    assert any(a.branches for a in play.assignments) is not drawn


def test_another_pass_is_drawn_without_a_defence() -> None:
    text = SCREEN.replace("centre, playside guard, backside guard blocks set and release", "")
    text = text.replace("playside tackle, backside tackle blocks man", "line blocks man")
    made = compiled(ELEVEN, ELEVEN_SET, text, LOOK)
    assert made.season is not None
    assert all(p.defence is None for p in made.season.plays if p.call.concept == "Slip")


def test_of_a_play_action_only_those_who_come_are_free() -> None:
    """A linebacker who covers is nobody's on a pass, so no mark of a free man stands over him."""
    play = drawn_pass("Power Pass", "")
    assert play.defence is not None
    levels = {play.defence.defender(label).level for label in play.unblocked}
    assert levels <= {Level.LINE}


def test_the_front_is_named_on_the_picture_and_in_its_words() -> None:
    scene = picture(power(), Size.FULL, load_theme())
    assert "Against Base Front. On the line:" in scene.description
    assert "against Base Front" in {getattr(item, "text", "") for item in scene.items}


def test_it_shows_no_coverage_and_no_run_is_judged_by_it() -> None:
    assert power().against == ()
    naked = re.sub(r"(tackle|guard|centre) blocks .*", r"\1 blocks arc", POWER)
    made = compiled(ELEVEN, ELEVEN_SET, naked)
    assert made.season is not None
    assert max(len(p.unblocked) for p in made.season.plays) > MOST_FREE
    assert not set(codes(made)) & {"W670", "W492", "W494"}


def test_a_look_of_the_playbook_takes_its_place() -> None:
    defence = power(more=LOOK).defence
    assert defence is not None
    assert defence.name == "Mine"


def test_a_look_that_cannot_be_read_is_not_replaced_in_silence() -> None:
    made = compiled(ELEVEN, ELEVEN_SET, POWER, LOOK.replace("at 3, strong", "at 3 strnog"))
    assert made.season is not None
    assert all(p.defence is None for p in made.season.plays)


def test_the_pages_of_runs_and_protections_have_it_and_no_page_is_its_own() -> None:
    made = compiled(ELEVEN, ELEVEN_SET, POWER, FENCE)
    assert isinstance(made.book, Playbook)
    assert made.season is not None
    season = with_sheets(made.book, with_views(made.book, made.calls, made.season))
    (protection,) = season.protections
    assert [v.defence.name if v.defence else "" for v in protection.views] == ["", "Base Front"]
    assert not season.looks
    assert [v.defence for v in season.concepts[0].views] == [None]


@pytest.mark.parametrize("code", CODES.values(), ids=list(CODES))
def test_every_code_has_a_front_of_its_own_number(code: Code) -> None:
    front = base_front(len(code.line), code.players.value, code.receivers)
    assert len(front.stands) == code.players.value


def test_the_front_is_even_in_eleven_and_twelve() -> None:
    for play in (power(), power(TWELVE, TWELVE_SET)):
        assert play.defence is not None
        down = [d for d in play.defence.defenders if d.level is Level.LINE]
        assert [d.technique for d in sorted(down, key=lambda d: d.at.x)] == ["5", "1", "3", "5"]

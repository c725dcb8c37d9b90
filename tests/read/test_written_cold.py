"""Texts as a coordinator writes them on his first evening, and what he means by them."""

from __future__ import annotations

from itertools import pairwise

import pytest
from corpus.mixing import compile_case
from resolve.texts import (
    DOUBLES_ELEVEN,
    ELEVEN,
    codes,
    compiled,
    dress,
    message,
    play,
    said,
)

from stemline.football.play import Assignment, Play
from stemline.geometry.paths import polyline
from stemline.results import timing_lines
from stemline.session import Session
from stemline.source import Source

FOUR = """
concept Test
    a is strong #1
    a runs {a}
    b is strong #2
    b runs hitch
    c is weak #1
    c runs hitch
    d is weak #2
    d runs hitch
    e is back
    e runs check
    feet 3
    read a on 3
"""


def made(*texts: str) -> Session:
    return compiled(ELEVEN, DOUBLES_ELEVEN, *texts)


def runs(words: str) -> tuple[Play, Assignment]:
    result = made(FOUR.format(a=words), dress("Doubles", concept="Test"))
    shown = play(result, "Doubles Right Test")
    return shown, next(a for a in shown.assignments if a.role == "a")


# A place on a vertical or a hook shapes the stem.


@pytest.mark.parametrize(
    ("words", "deep"),
    [
        ("go to 2 outside numbers at 16", 16.0),
        ("go to 2 outside numbers", 22.0),
        ("seam to hash at 18", 18.0),
        ("fade to 2 inside sideline at 20", 20.0),
        ("wheel to 2 inside sideline at 16", 16.0),
        ("out and up to 3 inside sideline at 18", 18.0),
    ],
)
def test_a_vertical_to_a_place_goes_up_all_the_way_and_ends_there(words: str, deep: float) -> None:
    _, a = runs(words)
    assert a.path is not None
    points = polyline(a.path)
    ups = [q.y - p.y for p, q in pairwise(points)]
    assert min(ups) >= -0.01, "he never comes back"
    assert a.path.end.y == pytest.approx(deep)
    last = [a.path.start, *a.path.corners][-2] if len(a.path.corners) < 2 else a.path.corners[-2]
    assert a.path.end.y - last.y > abs(a.path.end.x - last.x), "he ends upfield"


@pytest.mark.parametrize(
    ("words", "deep", "x"),
    [
        ("curl 12 to 2 inside numbers", 12.0, None),
        ("curl 12 to hash", 12.0, None),
        ("comeback 14 to 2 inside sideline", 14.0, None),
        ("hitch 6 to 1 outside numbers", 6.0, None),
    ],
)
def test_a_hook_to_a_place_turns_there_and_does_not_slide(
    words: str, deep: float, x: float | None
) -> None:
    _, a = runs(words)
    assert a.path is not None
    turn, end = a.path.corners[-2], a.path.end
    assert turn.y == pytest.approx(deep)
    assert turn.distance(end) < 3.5
    assert end.y < deep


def test_a_break_to_a_place_ends_there_without_another_leg() -> None:
    _, post = runs("post 12 to hash")
    _, plain = runs("post 12")
    assert post.path is not None and plain.path is not None
    assert len(post.path.corners) == len(plain.path.corners)
    assert post.path.end.y == pytest.approx(plain.path.end.y)


# Beside a man, without a depth.


def test_a_man_beside_another_stands_as_deep_as_he() -> None:
    sets = DOUBLES_ELEVEN.replace("R at away, 2 outside ball, 5 deep", "R at beside Q")
    assert sets != DOUBLES_ELEVEN
    result = compiled(ELEVEN, sets, FOUR.format(a="hitch"), dress("Doubles", concept="Test"))
    shown = play(result, "Doubles Right Test")
    assert shown.man("R").at.y == shown.man("Q").at.y == -5


WILDCAT = """
formation Direct
    X at away, 6 outside tackle, on line
    W at away, 3 outside tackle, off line
    Z at call, 6 outside tackle, on line
    S at call, 3 outside tackle, off line
    Q at call, 14 outside ball, 1 deep
    R at ball, 5 deep
"""
DIVE = """
run Dive
    toward call
    carrier is {who}
    carrier aims playside A
    line blocks on or climb
    others is strong #1
    others blocks stalk
"""


def test_a_direct_snap_is_not_handed_off_across_the_field() -> None:
    result = compiled(ELEVEN, WILDCAT, DIVE.format(who="back"), dress("Direct", concept="Dive"))
    shown = play(result, "Direct Right Dive")
    carrier = next(a for a in shown.assignments if a.role == "carrier")
    assert carrier.man == "R" and carrier.path is not None
    assert max(abs(p.x) for p in polyline(carrier.path)) < 4
    assert shown.assignment("Q").job == "Stand wide and still: the ball is snapped to R."


# Extends, and what a child says of a man.


def test_a_block_takes_the_place_of_an_inherited_route() -> None:
    child = "concept Kept extends Test\n    e blocks edge"
    result = made(FOUR.format(a="hitch"), child, dress("Doubles", concept="Kept"))
    assert "E420" not in codes(result) and "E421" not in codes(result), said(result.diagnostics)
    shown = play(result, "Doubles Right Kept")
    assert "Block the edge" in shown.assignment("R").job


# A call by its name, with its tags together.


def test_a_call_may_be_named_with_a_plus_between_its_tags() -> None:
    tags = "\n".join(
        f"tag {name} for Test\n    {man} runs {route}\n"
        for name, man, route in (("Deep", "a", "go"), ("Out", "b", "out"))
    )
    lines = ("with Deep + Out", "call Doubles Right Test Deep + Out as Comet")
    result = made(FOUR.format(a="hitch"), tags, dress("Doubles", *lines, concept="Test"))
    assert codes(result) == [], said(result.diagnostics)
    assert "Comet" in result.calls.by_name


# The centre and his letter.


def test_a_receiver_may_be_c_and_the_centre_is_sn() -> None:
    sets = DOUBLES_ELEVEN.replace("    S at", "    C at")
    people = ELEVEN.replace("H, S, W is slot", "H, C, W is slot")
    result = compiled(people, sets, FOUR.format(a="hitch"), dress("Doubles", concept="Test"))
    assert codes(result) == [], said(result.diagnostics)
    assert {"SN", "C"} <= {m.label for m in play(result, "Doubles Right Test").men}


@pytest.mark.parametrize("name", ["C", "SN"])
def test_a_line_that_is_written_out_has_its_centre_with_a_receiver_c(name: str) -> None:
    sets = DOUBLES_ELEVEN.replace("    S at", "    C at") + f"    line LT, LG, {name}, RG, RT\n"
    people = ELEVEN.replace("H, S, W is slot", "H, C, W is slot")
    result = compiled(people, sets, FOUR.format(a="hitch"), dress("Doubles", concept="Test"))
    assert codes(result) == [], said(result.diagnostics)
    centre = play(result, "Doubles Right Test").man("SN")
    assert centre.at.x == 0


def test_the_centre_has_one_label_in_every_formation_of_a_book() -> None:
    other = DOUBLES_ELEVEN.replace("formation Doubles", "formation Deuce")
    sets = DOUBLES_ELEVEN.replace("    S at", "    C at")
    result = compiled(
        ELEVEN, sets, other, FOUR.format(a="hitch"), dress("Doubles, Deuce", concept="Test")
    )
    assert codes(result) == [], said(result.diagnostics)
    for call in ("Doubles Right Test", "Deuce Right Test"):
        assert play(result, call).man("SN").at.x == 0


# A label in front of a verb is a name; but `key end is …` names a key.


@pytest.mark.parametrize("name", ["read man", "pitch man", "spot man", "pick man"])
def test_a_role_may_begin_with_the_word_of_a_label(name: str) -> None:
    text = (
        FOUR.format(a="hitch").replace("    a ", f"    {name} ").replace("read a", f"read {name}")
    )
    result = made(text, dress("Doubles", concept="Test"))
    assert codes(result) == [], said(result.diagnostics)


@pytest.mark.parametrize(
    "line",
    ["family Zone Runs And More", "say he runs off his heels", "give if he runs at the back"],
)
def test_words_of_a_coach_behind_a_label_stay_his_words(line: str) -> None:
    text = FOUR.format(a="hitch") + f"    {line}\n"
    found = codes(made(text, dress("Doubles", concept="Test")))
    assert not {"E450", "E220", "E224", "E403"} & set(found)


# Messages that say what is so.


def test_a_man_without_a_job_is_one_line_a_play_however_many_calls() -> None:
    few = "concept Test\n    a is strong #1\n    a runs hitch\n    feet 3\n    read a on 3\n"
    result = made(few, dress("Doubles", concept="Test"))
    lines = [d for d in result.diagnostics if d.code == "W650"]
    assert len(lines) == 1, said(lines)
    for man in ("X", "W", "S", "R"):
        assert man in message(lines[0])


def test_a_misspelt_man_is_told_each_role_once() -> None:
    lines = "    quarterback hands to e\n    e tosses to quarterbak\n    e is back\n"
    result = made(FOUR.format(a="hitch").replace("    e is back\n", lines))
    (unknown,) = [d for d in result.diagnostics if d.code == "E450"]
    choices = str(dict(unknown.values)["choices"]).replace(" or ", ", ").split(", ")
    assert "quarterback" in choices and len(set(choices)) == len(choices)


def test_no_landmark_at_all_is_not_called_nothing() -> None:
    sets = DOUBLES_ELEVEN.replace("Z at call, 6 outside tackle, on line", "Z at call")
    found = said(compiled(ELEVEN, sets).diagnostics)
    assert found and not any("`nothing`" in line for line in found), found


def test_a_broken_promise_of_the_clock_names_its_call() -> None:
    slow = "route Slow Wheel\n    stroke out 2 then in 5 then out 10 then up 18\n\n"
    tag = (
        "tag Wheel for Crossers\n    flat runs slow wheel away from settle\n    keeps read, feet\n"
    )
    out = compile_case("sample.play", slow + tag, clock=True)
    (broken,) = [d for d in out.found if d.code == "E666"]
    assert f"in {dict(broken.values)['call']} its look 1" in message(broken)
    assert "Three Two Right Crossers" in message(broken)


def test_how_long_men_have_been_still_is_never_nought_seconds() -> None:
    late = "motion Late\n    W moves to away, 6 outside tackle, off line\n    W starts 0.5\n"
    late += "    snap set\n"
    result = made(FOUR.format(a="hitch"), late, dress("Doubles motion Late", concept="Test"))
    (short,) = [d for d in result.diagnostics if d.code == "W542"]
    assert "has only just stopped at the snap" in message(short)
    assert "0.0" not in message(short)


@pytest.mark.parametrize("drawn", ["middle", "strength to field", "strength to boundary"])
def test_a_warning_of_the_clock_and_its_table_say_one_time(drawn: str) -> None:
    text = FOUR.format(a="comeback 20").replace("feet 3", "feet catch")
    text = text.replace("on 3", "on catch")
    people = ELEVEN.replace("    code high school", f"    code high school\n    picture {drawn}")
    texts = (people, DOUBLES_ELEVEN, text, dress("Doubles", concept="Test"))
    sources = [Source(f"{n}.play", f"{t}\n") for n, t in enumerate(texts)]
    result = Session(sources, "playbook")
    (early,) = [d for d in result.diagnostics if d.code == "W801"]
    assert result.season is not None
    table = "\n".join(timing_lines(result, result.season))
    values = dict(early.values)
    assert f"there {values['arrives']}" in table and f"early by {values['off']} s" in table
    apart = float(values["opens"]) - float(values["arrives"])
    assert float(values["off"]) == pytest.approx(apart), "as a reader takes it off"
    assert "Test, ball middle; " in table

"""Men whom lines name by where they stand: as subjects, called away by a tag, everyone else."""

from __future__ import annotations

import re

import pytest

from resolve.texts import CROSSERS, QUADS, THREE_TWO, TWELVE, codes, compiled, dress, play
from stemline.describe.spoken_play import describe
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.resolve.expand import expand
from stemline.session import Session

RUN = """
run Plunge
    carrier is back
    carrier aims playside A
    line blocks on
    {}
    feet fake
"""
GIVEN = """outside, second, third, fourth is playside outside or nobody
    outside, second, third, fourth blocks stalk
    far, far second is backside outside or nobody
    far, far second blocks stalk"""


def plunge(lines: str, name: str = "Three Two") -> Play:
    text = THREE_TWO if name == "Three Two" else QUADS
    result = compiled(TWELVE, text, RUN.format(lines), dress(name, concept="Plunge"))
    assert result.diagnostics == (), codes(result)
    return play(result, f"{name} Right Plunge")


def does(play: Play) -> dict[str, tuple[str, object]]:
    """What every man does, without the name of his role."""
    return {a.man: (a.job, a.path) for a in play.assignments}


@pytest.mark.parametrize("name", ["Three Two", "Quads"])
def test_everyone_else_is_every_receiver_whom_no_line_names(name: str) -> None:
    short, long = plunge("everyone else blocks stalk", name), plunge(GIVEN, name)
    assert does(short) == does(long)
    assert sum(a.role_said == "everyone else" for a in short.assignments) == 5


def test_everyone_else_on_one_side_leaves_the_other() -> None:
    made = plunge("everyone else weak blocks stalk\n    everyone else strong runs go")
    job = {a.man: a.job for a in made.assignments}
    assert {job[x] for x in "XW"} != {job[x] for x in "HSZ"}
    assert len({job[x] for x in "HSZ"}) == 1


def test_everyone_else_is_no_name_of_a_role_where_he_is_spoken() -> None:
    made = plunge("everyone else weak blocks stalk\n    everyone else strong runs go")
    assert "everyone else" not in describe(made)


def test_whoever_has_a_line_is_not_everyone_else() -> None:
    made = plunge("weak #1 runs go\n    everyone else blocks stalk")
    job = {a.man: a.job for a in made.assignments}
    assert job["X"] != job["W"] == job["Z"]


TWO_BACKS = THREE_TWO.replace(
    "Q at ball", "F at call, 2 outside ball, 4 deep\n    Q at ball"
).replace("    W at away, 5 outside tackle, off line\n", "")


def with_two_backs(text: str, concept: str = "Plunge", men: str = TWO_BACKS) -> tuple[Play, str]:
    """The play of a text with R and F behind the ball, and whom W624 names."""
    told = compiled(TWELVE, men, text, dress("Three Two", concept=concept))
    assert told.book is not None and not [d for d in told.diagnostics if d.is_error], codes(told)
    call = told.calls.by_name[f"Three Two Right {concept}"]
    made, found = expand(told.book, call, BallSpot.MIDDLE)
    assert made is not None
    return made, ", ".join(str(dict(d.values)["man"]) for d in found if d.code == "W624")


@pytest.mark.parametrize(("line", "named"), [("", "F"), ("every other back blocks lead", "")])
def test_men_behind_the_ball_are_said_apart(line: str, named: str) -> None:
    made, told = with_two_backs(RUN.format(f"everyone else blocks stalk\n    {line}"))
    lead = made.assignment("F")
    assert (lead.role_said, lead.job, told) == ("every other back", "Lead.", named)


def test_a_back_behind_the_carrier_stays_on_the_backside() -> None:
    text = RUN.replace("carrier is back", "carrier is fullback")
    deep = TWO_BACKS.replace("R at away, 2 outside ball, 5 deep", "R at ball, 7 deep")
    made, told = with_two_backs(text.format("everyone else blocks stalk"), men=deep)
    line = "everyone else blocks stalk\n    back blocks hinge"
    assert made.assignment("R").job == with_two_backs(text.format(line), men=deep)[0].assignment(
        "R"
    ).job  # fmt: skip
    assert told == "R"


PASS = """
concept Quick
    each #1 runs hitch
    everyone else runs seam
    {}
    feet quick
    read strong #1 on quick
"""


@pytest.mark.parametrize(
    ("line", "named"),
    [("protect five", "R and F"), ("protect seven", ""), ("quarterback tosses to back", "F")],
)
def test_a_back_whom_a_helper_or_the_ball_names_has_his_job(line: str, named: str) -> None:
    _, told = with_two_backs(PASS.format(line), "Quick")
    assert told == named


CONCEPT = """
concept Test
    {}
    feet 3
"""


def bound(*lines: str) -> dict[str, str]:
    text = CONCEPT.format("\n    ".join(lines))
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    made = play(result, "Three Two Right Test")
    return {a.role: a.man for a in made.assignments if a.role}


@pytest.mark.parametrize(
    ("subject", "men"),
    [
        ("weak #1", {"weak #1": "X"}),
        ("each #1", {"strong #1": "Z", "weak #1": "X"}),
        ("strong inside", {"strong inside": "H"}),
        ("the back", {"back": "R"}),
        ("strong #4", {}),
    ],
)
def test_a_subject_may_be_a_rule_and_means_whoever_stands_there(
    subject: str, men: dict[str, str]
) -> None:
    assert bound(f"{subject} runs go") == men


def test_a_name_that_a_line_gives_wins_over_the_rule() -> None:
    assert bound("back is strong #1", "back runs go") == {"back": "Z"}


def test_a_read_may_name_a_man_by_his_place() -> None:
    text = CONCEPT.format("weak #1 runs hitch 5\n    read weak #1 on 3")
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    assert [r.men for r in play(result, "Three Two Right Test").reads] == [("X",)]


# Tags that call a man.

POST = """
tag Postcard for {}
    weak #1 runs post
    keeps read, feet
"""


def crossers(tag: str, *lines: str, name: str = "Three Two") -> Session:
    text = "\n".join(["dress Crossers", f"    in {name}", *(f"    {line}" for line in lines)])
    return compiled(TWELVE, THREE_TWO if name == "Three Two" else QUADS, CROSSERS, tag, text)


def test_a_man_whom_a_tag_calls_leaves_his_role_and_the_order() -> None:
    tag = POST.format("any pass").replace("    keeps read, feet\n", "")
    result = crossers(tag, "with plain, Postcard")
    plain, called = (play(result, f"Three Two Right Crossers{t}") for t in ("", " Postcard"))
    assert plain.assignment("X").role == "dig"
    assert called.assignment("X").role == "weak #1"
    assert called.called_away == ("dig",)
    assert called.nobody == ("dig",)  # printed beside the read: nobody plays it
    assert "post" in called.assignment("X").job.casefold()
    assert {a.man: a.role for a in called.assignments if a.man != "X"} == {
        a.man: a.role for a in plain.assignments if a.man != "X"
    }


def test_what_is_left_of_the_order_is_what_a_called_man_lets_a_tag_promise() -> None:
    order = "    read flat on quick > dig on 3 > top on reset"
    read = re.sub(r"    read .*", order, CROSSERS, count=1)
    text = "dress Crossers\n    in Three Two\n    with plain, Postcard"
    result = compiled(TWELVE, THREE_TWO, read, POST.format("any pass"), text)
    assert not {"E661", "E662", "E663", "E664"} & set(codes(result)), codes(result)
    before, after = (play(result, f"Three Two Right Crossers{t}") for t in ("", " Postcard"))
    assert [r.target for r in after.reads] == [r.target for r in before.reads if r.target != "dig"]


def test_a_read_of_a_called_man_who_is_nobody_is_passed_over() -> None:
    tag = POST.format("any pass").replace("weak #1", "strong #4")
    tag = tag.replace("keeps read, feet", "read strong #4 on quick > rest")
    result = crossers(tag, "with plain, Postcard")
    assert codes(result) == []
    before, after = (play(result, f"Three Two Right Crossers{t}") for t in ("", " Postcard"))
    assert [r.target for r in after.reads] == [r.target for r in before.reads]
    assert after.nobody == ("strong #4",)


@pytest.mark.parametrize(("second", "why"), [("X", "is called as weak #1 already")])
def test_a_man_is_called_once(second: str, why: str) -> None:
    result = crossers("", f"with plain, weak #1 runs post + {second} runs fade")
    assert [dict(d.values)["why"] for d in result.diagnostics if d.code == "E625"] == [why]


def test_a_tag_goes_on_with_the_rest_of_the_order() -> None:
    tag = POST.format("any pass").replace("keeps read, feet", "read weak #1 on quick > rest")
    result = crossers(tag, "with plain, Postcard")
    before, after = (play(result, f"Three Two Right Crossers{t}") for t in ("", " Postcard"))
    assert [r.target for r in after.reads] == ["weak #1", *(r.target for r in before.reads)]


@pytest.mark.parametrize(
    ("what", "codes_said"),
    [
        ("any pass", []),
        ("any call", []),
        ("any run", ["E310"]),
        ("any pass but Crossers", ["E310"]),
        ("any passs", ["E472", "E310"]),
        ("any", ["E310", "E310"]),
        ("any pass but Crossers and Plunge", ["E310"]),
        ("Crossers, Nothing", ["E310"]),
    ],
)
def test_for_what_a_tag_is(what: str, codes_said: list[str]) -> None:
    tag = POST.format(what).replace("    keeps read, feet\n", "")
    tag += RUN.format("everyone else blocks stalk") + dress("Three Two", concept="Plunge")
    assert sorted(codes(crossers(tag, "with plain, Postcard"))) == sorted(codes_said)


@pytest.mark.parametrize("said", ["all pass", "every pass", "any passes", "all passes but Trap"])
def test_what_a_tag_is_for_is_told_its_form(said: str) -> None:
    (told,) = [d for d in crossers(POST.format(said), "").diagnostics if d.code == "E472"]
    assert told.nearest == ("any pass",)


def test_a_tag_for_many_that_a_concept_has_itself_is_said_with_both_lines() -> None:
    twice = crossers(POST.format("any pass").replace("Postcard", "Wheel"), "with plain")
    assert codes(twice) == ["E301"]
    assert len(twice.diagnostics[0].related) == 1


def test_a_tag_for_any_pass_that_no_call_has_is_not_proved() -> None:
    empties = "tag Home for any pass\n    each #1 runs hitch 3\n    each #2 runs hitch 3"
    assert codes(crossers(empties, "with plain")) == []


def test_a_carrier_cannot_be_called_away() -> None:
    tag = "tag Away for any run\n    back runs flat"
    text = "dress Plunge\n    in Three Two\n    with Away"
    run = RUN.format("everyone else blocks stalk")
    told = compiled(TWELVE, THREE_TWO, run, tag, text).diagnostics
    assert [dict(d.values)["why"] for d in told if d.code == "E625"] == ["carries the ball"]


# Called routes.


def test_a_route_is_called_for_one_man_by_letter_or_place() -> None:
    result = crossers("", "with plain, X runs hitch 5, weak #1 runs dig 14")
    assert list(result.calls.by_name) == [
        "Three Two Right Crossers",
        "Three Two Right Crossers X Hitch 5",
        "Three Two Right Crossers Weak #1 Dig 14",
    ]
    for name in ("X Hitch 5", "Weak #1 Dig 14"):
        assert play(result, f"Three Two Right Crossers {name}").called_away == ("dig",)


def test_a_called_route_for_nobody_names_the_letters() -> None:
    assert codes(crossers("", "with plain, K runs fade")) == ["E473"]


PAIR = """
concept Pair
    under is weak inside
    under runs cross
    over is strong inside
    over runs over
    deep is weak #1
    deep runs go
    everyone else runs go
    back runs swing strong
    feet 3
    read under with over on 3 > deep on 3

tag Postcard for any pass
    {} runs post
    keeps read, feet
"""


@pytest.mark.parametrize(
    ("man", "reads"),
    [
        ("weak inside", [("over", ""), ("deep", "")]),
        ("strong inside", [("under", ""), ("deep", "")]),
    ],
)
def test_a_look_at_two_keeps_the_one_who_still_runs_it(
    man: str, reads: list[tuple[str, str]]
) -> None:
    letter = "W" if man.startswith("weak") else "H"
    dressed = dress("Three Two", f"with Postcard, {letter} runs post", concept="Pair", sides=False)
    result = compiled(TWELVE, THREE_TWO, PAIR.format(man), dressed)
    assert codes(result) == []
    for name in ("Postcard", f"{letter} Post"):
        made = play(result, f"Three Two Right Pair {name}")
        assert [(r.target, r.partner) for r in made.reads] == reads


READ_OTHERS = """
concept Two
    curl is strong #1
    curl runs curl
    everyone else runs slant
    back blocks inside out
    feet 5, reset
    read curl on 5 > {} on reset
"""


@pytest.mark.parametrize(
    ("last", "man"),
    [("weak #2", "W"), ("weak #1", "X"), ("strong #3", "H"), ("away #2", "W"), ("call #2", "S")],
)
def test_a_man_of_everyone_else_is_read_by_his_place(last: str, man: str) -> None:
    made = compiled(TWELVE, THREE_TWO, READ_OTHERS.format(last), dress("Three Two", concept="Two"))
    assert codes(made) == []
    reads = play(made, "Three Two Right Two").reads
    assert [read.men for read in reads] == [("Z",), (man,)]


def test_where_no_line_says_what_the_others_run_nobody_is_read_by_his_place() -> None:
    text = READ_OTHERS.format("weak #2").replace("runs slant", "blocks stalk")
    assert "E464" in codes(compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Two")))

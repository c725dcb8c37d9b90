"""`when Quads`: a line that holds in calls from one formation, and in no others."""

from __future__ import annotations

import pytest

from resolve.texts import QUADS, THREE_TWO, TWELVE, codes, compiled, message, play, said, sound

RUN = """
run Test
    carrier is back
    carrier aims playside A
    {}
    line blocks on or climb
    everyone else blocks stalk
"""
PASS = """
concept Test
    each #1 runs go
    strong #2 runs corner 12
    {}
    everyone else runs curl 8
    back runs check
    feet 3
    read strong #2 on 3
"""
DRESS = "dress Test\n    in Three Two, Quads"
QUADS_ALONE = "dress Test\n    in Quads"

Does = dict[str, tuple[str, object]]


def does(text: str, line: str) -> dict[str, Does]:
    """What every man does from each formation, where the text has that line too."""
    result = compiled(TWELVE, THREE_TWO, QUADS, text.format(line), DRESS)
    assert not [d.code for d in result.diagnostics if d.is_error]
    plays = {name: play(result, f"{name} Right Test") for name in ("Three Two", "Quads")}
    return {
        name: {a.man: (a.job, a.path) for a in made.assignments} | {"": ("", str(made.feet))}
        for name, made in plays.items()
    }


@pytest.mark.parametrize(
    ("text", "old", "line"),
    [
        (PASS, "strong #2 runs corner 12", "strong #2 runs post 12"),
        (PASS, "feet 3", "feet 3, hitch"),
        (RUN, "carrier aims playside A", "carrier aims playside C"),
        (RUN, "line blocks on or climb", "line blocks reach or climb"),
        (RUN, "everyone else blocks stalk", "everyone else runs go"),
    ],
)
def test_a_line_holds_in_its_formation_and_the_other_line_elsewhere(
    text: str, old: str, line: str
) -> None:
    both, before = does(text, f"{line} when Quads"), does(text, "")
    after = does(text.replace(old, line), "")
    assert both == {"Three Two": before["Three Two"], "Quads": after["Quads"]}
    assert before["Quads"] != after["Quads"]
    assert does(text, f"{line} when quads or Three Two") == after


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("strong #2 runs post when Quads, Three Two", "E411"),
        ("strong #2 runs post when Quads or press", "E427"),
        ("strong #2 runs post when Quods", "E410"),
        ("strong #2 runs hook when 3x2\n    strong #2 runs post when Quads", "E421"),
    ],
)
def test_a_formation_that_cannot_be_asked_for(line: str, code: str) -> None:
    result = compiled(TWELVE, THREE_TWO, QUADS, PASS.format(line), DRESS)
    assert [d.code for d in result.diagnostics] == [code]


def test_a_formation_and_a_look_are_narrower_than_either() -> None:
    lines = "strong #2 runs post when Quads\n    strong #2 runs hook when Quads, press"
    result = sound(TWELVE, THREE_TWO, QUADS, PASS.format(lines), DRESS)
    assert result.book is not None
    jobs = result.book.concepts["test"].body.jobs["strong #2"]
    assert jobs[2].guard.refines(jobs[1].guard) and jobs[1].guard.refines(jobs[0].guard)


def test_a_condition_stays_one_where_a_formation_has_its_name() -> None:
    named = QUADS.replace("formation Quads", "formation Empty")
    text = PASS.format("feet 3, hitch when empty")
    result = compiled(TWELVE, THREE_TWO, named, text, "dress Test\n    in Three Two, Empty")
    assert result.book is not None
    guard = result.book.concepts["test"].body.feet[0].guard
    assert (guard.text, guard.formations) == ("empty", frozenset())


def test_the_rest_of_an_order_is_that_of_its_formation() -> None:
    """A tag that goes on with the concept's order takes the one of the formation that it is for."""
    orders = "read strong #2 on 3 > back on 3 when Three Two\n    read weak #1 on 3 when Quads"
    text = PASS.format("feet 3, hitch when Quads").replace("read strong #2 on 3", orders)
    tag = "tag Peek for Test\n    read strong #1 on 3 > rest when Quads\n"
    dressed = "dress Test\n    in Three Two, Quads with Peek"
    result = compiled(TWELVE, THREE_TWO, QUADS, text, tag, dressed)
    assert not [d.code for d in result.diagnostics if d.is_error], said(result.diagnostics)
    reads = {
        name: [read.target for read in play(result, f"{name} Right Test Peek").reads]
        for name in ("Three Two", "Quads")
    }
    assert reads == {"Three Two": [], "Quads": ["strong #1", "weak #1"]}


def test_a_sentence_for_one_formation_says_so_where_others_call_it_too() -> None:
    text = PASS.format('say "Only here." when Quads')
    for dressed, words in ((DRESS, "When Quads: Only here."), (QUADS_ALONE, "Only here.")):
        result = sound(TWELVE, THREE_TWO, QUADS, text, dressed)
        assert result.season is not None
        assert [sheet.says for sheet in result.season.concepts] == [(words,)]


def test_a_job_behind_the_ball_for_one_formation_leaves_the_usual_to_the_others() -> None:
    line = "every other back runs flat 4 when Quads"
    text = PASS.format(line).replace("    back runs check\n", "")
    result = compiled(TWELVE, THREE_TWO, QUADS, text, DRESS)
    assert codes(result) == ["W624"], said(result.diagnostics)


def test_what_is_asked_for_beside_a_formation_is_named() -> None:
    line = "strong #2 runs post when 3x1 or 2x2 or Quads"
    (found,) = compiled(TWELVE, THREE_TWO, QUADS, PASS.format(line), DRESS).diagnostics
    assert message(found) == "`Quads or 3x1` asks for two kinds of thing"

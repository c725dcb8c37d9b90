"""Guards: sets of worlds, so that "both can hold" and "one refines the other" are computed."""

from __future__ import annotations

import re
from itertools import permutations

import pytest
from resolve.texts import ELEVEN, THREE_TWO, TRIPS, TWELVE, compiled, dress, play, said

from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.football.play import Assignment
from stemline.geometry.paths import Ending
from stemline.session import Session


def runs(
    *lines: str, book: str = TWELVE, formation: str = THREE_TWO, name: str = "Three Two"
) -> Session:
    """A concept with one role, strong #1, and these lines of what he runs."""
    text = "\n".join(["concept Test", "    a is strong #1", *(f"    a runs {x}" for x in lines)])
    return compiled(book, formation, text, dress(name, concept="Test"))


def clashes(*lines: str) -> list[str]:
    return [d.code for d in runs(*lines).diagnostics if d.code in ("E420", "E421")]


def job(
    result: Session, *against: LookWord, spot: BallSpot = BallSpot.MIDDLE, name: str = "Three Two"
) -> Assignment:
    made = play(result, f"{name} Right Test", spot, against).runs("a")
    assert made is not None
    return made


@pytest.mark.parametrize(
    "lines",
    [
        ("post", "dig when 3x2"),
        ("post", "dig when 3x2", "out when 3x2, off"),
        ("post", "dig when off", "out when off, zone", "go when off, zone, 3x2"),
        ("post when zone", "dig when man"),
        ("post when press", "dig when off"),
        ("post when middle open", "dig when middle closed"),
        ("post when 3x2", "dig when 4x1"),
        ("post when empty", "dig when one back"),
        ("post when into field", "dig when into boundary", "go when ball in middle"),
        ("post", "dig when 3x2 or 4x1", "go when 3x2, zone"),
        # A shape settles how many backs there are, so it refines their count.
        ("post when one back", "dig when 3x2"),
        ("post when 3x2", "dig when 3x2, one back, zone"),
        ("post when 2x3", "dig when 4x1"),
    ],
    ids=" | ".join,
)
def test_guards_that_refine_or_exclude_each_other_live_together(lines: tuple[str, ...]) -> None:
    for order in permutations(lines):
        assert clashes(*order) == []


@pytest.mark.parametrize(
    ("lines", "shown"),
    [
        (("post when 3x2", "dig when zone"), ("3x2", "zone")),
        (("post when zone", "dig when off"), ("zone", "off")),
        (("post when 3x2 or 4x1", "dig when 4x1 or 2x2"), ("4x1",)),
        (("post when one back", "dig when middle open"), ("middle open",)),
        (("post when into field", "dig when 3x1"), ("3x1", "into field")),
        (("post", "dig when zone", "go when press"), ("zone", "press")),
    ],
    ids=lambda v: " | ".join(v) if isinstance(v, tuple) else None,
)
def test_two_guards_that_can_both_hold_are_shown_a_case(
    lines: tuple[str, ...], shown: tuple[str, ...]
) -> None:
    (found,) = [d for d in runs(*lines).diagnostics if d.code == "E421"]
    values = dict(found.values)
    for words in shown:
        assert words in values["world"].split(", ")
    assert len(found.related) == 1
    # Only looks that one of the two asks for are in the case shown.
    asked = " ".join(lines)
    for look in LookWord:
        assert (look.value in values["world"].split(", ")) <= (look.value in asked)


@pytest.mark.parametrize(
    ("first", "second", "offered"),
    [
        ("middle open", "into boundary", 2),
        ("3x2", "off", 1),
        ("zone", "press", 2),
        ("3x2, press", "press, into field", 1),
        ("3x2 or 4x1", "zone", 1),
    ],
)
def test_what_tells_two_lines_apart_is_offered_and_can_be_typed(
    first: str, second: str, offered: int
) -> None:
    lines = (f"post when {first}", f"dig when {second}")
    (found,) = [d for d in runs(*lines).diagnostics if d.code == "E421"]
    typed = re.findall("`(when [^`]+)`", dict(found.values)["apart"])
    assert len(typed) == offered
    for when in typed:
        assert clashes(lines[0], f"dig {when}") == []
        assert set(when.removeprefix("when ").split(", ")) >= set(second.split(", "))


def test_a_clash_in_any_order_of_lines_is_one_clash() -> None:
    lines = ("post", "dig when zone", "go when press")
    assert {tuple(clashes(*order)) for order in permutations(lines)} == {("E421",)}


@pytest.mark.parametrize(
    ("lines", "codes"),
    [
        (("post", "dig"), ["E420"]),
        (("post when 3x2", "dig when 3x2"), ["E420"]),
        (("post when zone, off", "dig when off, zone"), ["E420"]),
        (("post when 2x3", "dig when 3x2"), ["E420"]),
        (("post", "post"), []),
        (("post when zone, off", "post when off, zone"), []),
        (("shoot away from a", "shoot away from a"), []),
        (("post 10", "post 12"), ["E420"]),
    ],
    ids=lambda v: " | ".join(v),
)
def test_one_thing_said_twice(lines: tuple[str, ...], codes: list[str]) -> None:
    assert clashes(*lines) == codes


@pytest.mark.parametrize(
    "guard",
    [
        "zone, man",
        "3x1, empty",
        "3x2, 4x1",
        "into field, into boundary",
        "press, off",
        "3x3, one back, two backs",
    ],
)
def test_a_guard_that_can_never_hold(guard: str) -> None:
    found = runs("post", f"dig when {guard}").diagnostics
    assert [(d.code, dict(d.values)["guard"]) for d in found] == [("E411", guard)]


def test_a_guard_for_another_code_is_no_mistake() -> None:
    """One text serves both codes: 4x2 needs six receivers, and an 11-man book never asks."""
    lines = ("post", "dig when 4x2", "go when 3x3")
    result = runs(*lines, book=ELEVEN, formation=TRIPS, name="Trips")
    assert said(d for d in result.diagnostics if d.is_error) == []
    assert job(result, name="Trips").job == "Post at 12."


@pytest.mark.parametrize(
    ("line", "code"),
    [("dig when raining", "E410"), ("dig when 3x1x2", "E410"), ("dig when blitz", "E410")],
)
def test_an_unknown_condition(line: str, code: str) -> None:
    assert [d.code for d in runs("post", line).diagnostics] == [code]


def test_a_look_decides_no_alignment_and_no_binding() -> None:
    formation = THREE_TWO.replace(
        "Z at call, numbers, on line", "Z at call, numbers, on line when zone"
    )
    result = compiled(TWELVE, formation, "concept Test\n    a is strong #1 when man\n    a runs go")
    assert [(d.code, d.span.source) for d in result.diagnostics if d.is_error] == [
        ("E413", "two.play"),
        ("E413", "three.play"),
    ]


# What holds in one call: by shape, by ball spot, by look.


def test_the_shape_chooses() -> None:
    lines = ("post", "dig when 3x2", "go when 3x1")
    assert job(runs(*lines)).job == "Dig at 12."
    assert job(runs(*lines, book=ELEVEN, formation=TRIPS, name="Trips"), name="Trips").job == "Go."


def test_the_ball_spot_chooses() -> None:
    result = runs("post", "corner when into field", "out when into boundary")
    jobs = {spot: job(result, spot=spot).job for spot in BallSpot}
    assert jobs == {
        BallSpot.LEFT_HASH: "Corner at 10.",
        BallSpot.MIDDLE: "Post at 12.",
        BallSpot.RIGHT_HASH: "Out at 10.",
    }


def test_the_looks_branch_until_they_are_known() -> None:
    result = runs("post", "dig when 3x2", "out when 3x2, off", "go when 3x2, off, man")
    free = job(result)
    assert free.job == "Dig at 12."
    assert [(b.looks, b.job) for b in free.branches] == [
        ("off, man", "Go."),
        ("off", "Out at 10."),
    ]
    off = job(result, LookWord.OFF)
    assert off.job == "Out at 10."
    assert [(b.looks, b.job) for b in off.branches] == [("man", "Go.")]
    assert job(result, LookWord.OFF, LookWord.MAN).job == "Go."
    assert job(result, LookWord.OFF, LookWord.MAN).branches == ()
    assert job(result, LookWord.PRESS).job == "Dig at 12."
    assert job(result, LookWord.PRESS).branches == ()
    # Against man the plain `off` line is never the one that holds.
    man = job(result, LookWord.MAN)
    assert (man.job, [(b.looks, b.job) for b in man.branches]) == ("Dig at 12.", [("off", "Go.")])


def test_a_line_that_narrower_ones_hide_everywhere_is_not_drawn() -> None:
    free = job(runs("post", "curl when zone", "go when man"))
    assert free.job == "Curl at 12."
    assert [(b.looks, b.job) for b in free.branches] == [("man", "Go.")]


def test_where_every_line_waits_for_a_look_the_first_look_is_drawn_solid() -> None:
    result = runs("curl when zone", "post when man")
    free = job(result)
    assert free.job == "Curl at 12."
    assert [(b.looks, b.job) for b in free.branches] == [("man", "Post at 12.")]
    assert job(result, LookWord.MAN).job == "Post at 12."


def test_a_role_with_no_line_for_this_shape_is_named() -> None:
    result = runs("post when 4x1")
    (found, *_) = [d for d in result.diagnostics if d.code == "E622"]
    assert (dict(found.values)["role"], dict(found.values)["shape"]) == ("a", "3x2")


def test_everything_that_is_guarded_follows_the_shape() -> None:
    text = """
concept Test
    a is strong #1
    a runs sit 8 over ball
    b is strong #2
    b runs shoot
    b decides at 4
    b decides at 5 when 3x2
    feet 3
    feet 5, reset when 3x2
    read a > b
    read b > a when 3x2
    protect five
    protect six when 3x2
    pick field
    pick boundary when 3x2
    pressure a
    pressure b when 3x2
    spot low is low, weak
    spot low is low, strong when 3x2
"""
    made = play(
        compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test")),
        "Three Two Right Test",
    )
    assert [s.name for s in made.feet] == ["5", "reset"]
    assert [r.target for r in made.reads] == ["b", "a"]
    assert (made.protection, made.pick) == ("six", "boundary")
    assert [r.target for r in made.pressure] == ["b"]
    assert made.spots[0].at.x > 0
    shoot = made.runs("b")
    assert shoot is not None and shoot.job.endswith("Decide at 5.")
    other = play(compiled(ELEVEN, TRIPS, text, dress("Trips", concept="Test")), "Trips Right Test")
    assert [s.name for s in other.feet] == ["3"]
    assert [r.target for r in other.reads] == ["a", "b"]
    assert (other.protection, other.pick) == ("five", "field")
    assert [r.target for r in other.pressure] == ["a"]
    assert other.spots[0].at.x < 0


def test_against_proves_and_adds_no_call() -> None:
    """The look is proved: an off corner who takes the read away is found before Friday."""
    text = """
concept Test
    a is strong #1
    a runs dig
    a runs go when man, press
    spot low is 12 deep, strong, 2 outside tackle
    read low
"""
    lines = ("against zone, off", "against man, press")
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", *lines, concept="Test"))
    plain = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    assert len(result.calls.orders) == len(plain.calls.orders) == 2
    assert "E630" in [d.code for d in result.diagnostics]


@pytest.mark.parametrize(
    ("lines", "case"),
    [
        (("post when zone",), "3x2, man"),
        (("post when zone, off", "dig when man"), "3x2, zone, press"),
        (("post when middle open", "go when 3x1, middle closed"), "3x2, middle closed"),
    ],
)
def test_a_look_that_no_line_speaks_of_is_named(lines: tuple[str, ...], case: str) -> None:
    found = [d for d in runs(*lines).diagnostics if d.code == "E622"]
    assert [dict(d.values)["shape"] for d in found] == [case]
    assert dict(found[0].values)["role"] == "a"


def test_a_look_may_make_a_man_stay_in_or_let_him_go() -> None:
    def back(*lines: str) -> Assignment:
        text = "\n".join(["concept Test", "    a is back", *(f"    a {x}" for x in lines)])
        result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
        return job(result)

    goes = back("runs shoot", "blocks edge when press")
    assert goes.path is not None and goes.branches == ()
    assert goes.job == "Shoot. Against press: Block the edge: inside foot up, nobody outside you."
    stays = back("blocks edge", "runs shoot when off")
    assert stays.path is not None and stays.path.ending is Ending.BLOCK
    assert stays.job == "Block the edge: inside foot up, nobody outside you."
    (free,) = stays.branches
    assert (free.looks, free.job, free.leaves) == ("off", "Shoot.", free.path.start)


@pytest.mark.parametrize(
    ("guard", "holds"),
    [
        ("3 strong", True),
        ("2 strong", False),
        ("3 or more strong", True),
        ("2 or more strong", True),
        ("4 or more strong", False),
        ("2 weak", True),
        ("2 or more weak", True),
        ("3 or more weak", False),
        ("4 or more strong or 2 weak", True),
        ("4 strong or 3 or more strong", True),
        ("3 or more strong, 1 weak", False),
        ("3 or more strong, one back", True),
    ],
)
def test_receivers_counted_on_one_side(guard: str, holds: bool) -> None:
    job_ = job(runs("post", f"dig when {guard}"))
    assert (job_.job == "Dig at 12.") is holds


def test_a_count_of_one_side_is_wider_than_a_shape() -> None:
    assert clashes("post when 3 or more strong", "dig when 3x2") == []
    assert clashes("post when 3 or more strong", "dig when 2 or more weak") == ["E421"]
    assert clashes("post when 3 strong", "dig when 4 strong") == []


@pytest.mark.parametrize(
    ("guard", "code"),
    [
        ("3 or more", "E414"),
        ("3 or more wide", "E414"),
        ("3 stronk", "E414"),
        ("3 by 2", "E404"),
        ("2.5 strong", "E410"),
        ("7 strong", "E411"),
        ("4 strong, 3 weak", "E411"),
        ("3 strong weak", "E401"),
    ],
)
def test_a_count_that_cannot_be_read(guard: str, code: str) -> None:
    assert [d.code for d in runs("post", f"dig when {guard}").diagnostics] == [code]


def test_a_counted_guard_is_told_as_it_is_spoken() -> None:
    (found,) = runs("post when 3 or more strong", "dig when zone").diagnostics
    assert "`3 or more strong`" in said([found])[0]

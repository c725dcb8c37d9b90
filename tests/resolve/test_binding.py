"""Who plays which role: rules bound to men, in an order that the text's order never decides."""

from __future__ import annotations

from itertools import permutations

import pytest

from resolve.texts import (
    ELEVEN,
    EMPTY,
    THREE_TWO,
    TREY,
    TRIPS,
    TWELVE,
    compiled,
    dress,
    play,
    who,
)
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.session import Session


def concept(*rules: str) -> str:
    """A concept of these rules where everybody runs a go."""
    roles = dict.fromkeys(r.split(" is ")[0] for r in rules)
    lines = [*rules, *(f"{role} runs go" for role in roles)]
    return "\n".join(["concept Test", *(f"    {line}" for line in lines)])


def called(book: str, formation: str, name: str, *rules: str) -> Session:
    return compiled(book, formation, concept(*rules), dress(name, concept="Test"))


def bound(book: str, formation: str, name: str, *rules: str, side: str = "Right") -> dict[str, str]:
    """Roles by letter."""
    made = play(called(book, formation, name, *rules), f"{name} {side} Test")
    return {a.role: a.man for a in made.assignments if a.role}


def missing(book: str, formation: str, name: str, *rules: str) -> list[tuple[str, str]]:
    """Roles that found no man, and why."""
    found = called(book, formation, name, *rules).diagnostics
    values = [dict(d.values) for d in found if d.code == "E620"]
    return [(v["role"], v["why"]) for v in values]


@pytest.mark.parametrize(
    ("rule", "man"),
    [
        ("strong #1", "Z"),
        ("strong #2", "S"),
        ("strong #3", "H"),
        ("weak #1", "X"),
        ("weak #2", "W"),
        ("call #1", "Z"),
        ("away #2", "W"),
        ("right #2", "S"),
        ("left #1", "X"),
        ("strong inside", "H"),
        ("strong outside", "Z"),
        ("weak inside", "W"),
        ("weak outside", "X"),
        ("inside strong", "H"),
        ("outside weak side", "X"),
        ("back", "R"),
        ("the back", "R"),
        ("weak back", "R"),
        ("strong #4 or weak #1", "X"),
        ("strong back or strong #1", "Z"),
        ("tight end or strong #2", "S"),
        ("strong #2 or nobody", "S"),
    ],
)
def test_a_rule_finds_its_man(rule: str, man: str) -> None:
    assert bound(TWELVE, THREE_TWO, "Three Two", f"a is {rule}") == {"a": man}


@pytest.mark.parametrize(
    ("rule", "right", "left"),
    [
        ("strong #1", "Z", "Z"),
        ("call #1", "Z", "Z"),
        ("right #1", "Z", "X"),
        ("left #1", "X", "Z"),
        ("weak #2", "W", "W"),
    ],
)
def test_right_and_left_are_true_and_the_others_turn(rule: str, right: str, left: str) -> None:
    for side, man in (("Right", right), ("Left", left)):
        assert bound(TWELVE, THREE_TWO, "Three Two", f"a is {rule}", side=side) == {"a": man}


def test_the_field_side_is_the_strong_one_from_the_middle() -> None:
    assert bound(TWELVE, THREE_TWO, "Three Two", "a is field #1", "b is boundary #1") == {
        "a": "Z",
        "b": "X",
    }


@pytest.mark.parametrize("rule", ["tight end", "strong tight end"])
def test_the_tight_end(rule: str) -> None:
    assert bound(ELEVEN, TREY, "Trey", f"a is {rule}") == {"a": "Y"}


def test_a_tight_end_on_the_other_side_is_not_the_strong_one() -> None:
    text = TRIPS.replace("X at away, 5 outside tackle", "X at away, end")
    assert bound(ELEVEN, text, "Trips", "a is weak tight end") == {"a": "X"}
    assert bound(ELEVEN, text, "Trips", "a is tight end") == {"a": "X"}
    assert missing(ELEVEN, text, "Trips", "a is strong tight end") == [
        ("a", "no man stands as a tight end")
    ]


def test_two_tight_ends_strong_side_first() -> None:
    text = TREY.replace("X at away, 5 outside tackle", "X at away, end")
    assert bound(ELEVEN, text, "Trey", "a is tight end", "b is tight end") == {"a": "Y", "b": "X"}


def test_two_backs_the_one_by_position_first() -> None:
    text = TRIPS.replace(
        "X at away, 5 outside tackle, on line", "X at call, 1 outside ball, 7 deep"
    )
    assert bound(ELEVEN, text, "Trips", "a is back", "b is back") == {"a": "R", "b": "X"}
    assert bound(ELEVEN, text, "Trips", "a is weak back", "b is strong back") == {
        "a": "R",
        "b": "X",
    }


def test_a_back_right_behind_the_ball_is_on_both_sides() -> None:
    text = TRIPS.replace("R at away, 2 outside ball, 5 deep", "R at ball, 7 deep")
    for rule in ("back", "strong back", "weak back"):
        assert bound(ELEVEN, text, "Trips", f"a is {rule}") == {"a": "R"}


_EXACT = ("in is strong inside", "two is strong #2", "three is strong #3")
_LEANING = (
    "a is weak inside",
    "b is inside opposite a",
    "c is outside same side as b",
    "d is weak #1",
)
_OPTIONAL = (
    "extra is strong #3 or nobody",
    "first is strong inside",
    "one is strong #1",
    "two is strong #2",
)


@pytest.mark.parametrize(
    "rules", [_EXACT, _LEANING, _OPTIONAL], ids=["exact first", "leaning", "optional last"]
)
def test_the_order_of_lines_never_decides(rules: tuple[str, ...]) -> None:
    answers = set()
    for order in permutations(rules):
        result = called(TWELVE, THREE_TWO, "Three Two", *order)
        assert result.book is not None and not result.failed
        answers.add(tuple(sorted(who(play(result, "Three Two Right Test")).items())))
    assert len(answers) == 1


def test_exact_rules_bind_before_relative_ones() -> None:
    made = bound(TWELVE, THREE_TWO, "Three Two", "free is strong inside", "third is strong #3")
    assert made == {"free": "S", "third": "H"}


def test_men_who_must_exist_bind_before_those_who_may_be_nobody() -> None:
    made = bound(TWELVE, THREE_TWO, "Three Two", "a is strong #1 or nobody", "b is strong outside")
    assert made == {"b": "Z"}
    result = called(
        TWELVE, THREE_TWO, "Three Two", "a is strong #1 or nobody", "b is strong outside"
    )
    assert play(result, "Three Two Right Test").nobody == ("a",)


def test_a_relative_rule_waits_for_the_role_it_leans_on() -> None:
    made = bound(
        TWELVE, THREE_TWO, "Three Two",
        "b is inside opposite a", "a is weak #2", "c is outside across from b",
    )  # fmt: skip
    assert made == {"a": "W", "b": "H", "c": "X"}


def test_a_rule_by_side_of_a_back_uses_where_he_stands() -> None:
    made = bound(TWELVE, THREE_TWO, "Three Two", "a is back", "b is inside same side as a")
    assert made == {"a": "R", "b": "W"}


@pytest.mark.parametrize(
    ("rules", "why"),
    [
        (("a is strong #4",), "there is no strong #4: 3 receivers on the right"),
        (("a is weak #3",), "there is no weak #3: 2 receivers on the left"),
        (
            ("a is strong #2", "b is strong #2"),
            "strong #2 is taken: S already runs the a",
        ),
        (("a is back", "b is back"), "the back is taken: R already runs the a"),
        (("a is tight end",), "no man stands as a tight end"),
        (
            ("a is weak #1", "b is weak #2", "c is weak inside"),
            "weak #2 already runs the b, weak #1 already runs the a, nobody is left on the weak "
            "side",
        ),
        (
            ("a is strong #4 or weak #3",),
            "there is no strong #4: 3 receivers on the right; there is no weak #3: 2 receivers on "
            "the left",
        ),
        (
            ("a is strong #9 or nobody", "b is inside opposite a"),
            "a is nobody in this call, so it has no side",
        ),
    ],
    ids=lambda v: v[-1] if isinstance(v, tuple) else "",
)
def test_why_nobody_could_be_found(rules: tuple[str, ...], why: str) -> None:
    found = missing(TWELVE, THREE_TWO, "Three Two", *rules)
    # Called left, the same is said of the other side of the field.
    assert found[0] == (rules[-1].split(" is ")[0], why)


def test_no_back_and_no_receiver() -> None:
    assert missing(ELEVEN, EMPTY, "Empty", "a is back") == [("a", "no back is behind the ball")]
    text = TRIPS.replace("X at away, 5 outside tackle, on line", "X at call, end, on line")
    assert missing(ELEVEN, text, "Trips", "a is weak inside") == [
        ("a", "no receiver is on the weak side")
    ]


def test_roles_that_lean_on_each_other_are_a_circle() -> None:
    result = called(
        TWELVE, THREE_TWO, "Three Two", "a is inside opposite b", "b is inside same side as a"
    )
    found: list[Diagnostic] = [d for d in result.diagnostics if d.code == "E621"]
    values = [(dict(d.values)["role"], dict(d.values)["others"]) for d in found]
    # Once for the circle, at its first line.
    assert values == [("a", "b")]
    assert [d.span.line for d in found] == [2]


def test_a_role_that_only_leans_on_a_circle_is_not_blamed() -> None:
    rules = ("c is inside same side as a", "a is inside opposite b", "b is inside opposite a")
    result = called(TWELVE, THREE_TWO, "Three Two", *rules)
    found = [dict(d.values)["role"] for d in result.diagnostics if d.code == "E621"]
    assert found == ["a"]


def test_two_circles_are_two_mistakes() -> None:
    rules = (
        "a is inside opposite b", "b is inside opposite a",
        "c is inside opposite d", "d is inside opposite c",
    )  # fmt: skip
    result = called(TWELVE, THREE_TWO, "Three Two", *rules)
    assert [dict(d.values)["role"] for d in result.diagnostics if d.code == "E621"] == ["a", "c"]


def test_the_narrowest_rule_that_holds_is_taken() -> None:
    rules = ("a is strong #1", "a is strong #2 when 3x2", "a is strong #3 when 3x2, ball in middle")
    assert bound(TWELVE, THREE_TWO, "Three Two", *rules) == {"a": "H"}
    made = called(TWELVE, THREE_TWO, "Three Two", *rules)
    assert who(play(made, "Three Two Right Test")) == {"a": "strong #3"}
    assert bound(ELEVEN, TRIPS, "Trips", *rules) == {"a": "Z"}


def test_a_role_without_a_rule_for_this_shape_plays_no_part() -> None:
    made = play(
        called(ELEVEN, TRIPS, "Trips", "a is strong #1", "b is strong #2 when 3x2"),
        "Trips Right Test",
    )
    assert who(made) == {"a": "strong #1"}
    assert made.nobody == ()


def test_who_is_a_back_only_after_his_motion_is_said_to_be_one() -> None:
    """Men are asked for on the side that he has left."""
    motion = "motion Rocket\n    W moves to ball, 7 deep\n    snap running\n"
    text = "concept Test\n    b is weak #1\n    c is weak #3\n    b, c runs go\n"
    call = "dress Test\n    in Three Two motion Rocket\n"
    found = compiled(TWELVE, THREE_TWO, motion, text, call).diagnostics
    (told,) = [dict(d.values) for d in found if d.code == "E620"]
    assert "W stands behind the ball after his motion, a back" in told["why"]
    assert told["line"] == "c is weak #3 or back"
    mended = text.replace("c is weak #3", told["line"])
    assert not [d for d in compiled(TWELVE, THREE_TWO, motion, mended, call).diagnostics
                if d.code == "E620"]  # fmt: skip

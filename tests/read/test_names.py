"""Definitions by name: what extends what, what a tag lays over a concept, what is said twice."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from resolve.compact import write
from resolve.texts import (
    CONCEPT,
    RETURN,
    THREE_TWO,
    TWELVE,
    WHEEL,
    codes,
    compiled,
    dress,
    play,
    said,
)

from stemline.football.play import Play
from stemline.session import Session

BASE = """
concept Base
    a is strong #1
    a runs go
    a runs post when off
    b is strong #2
    b runs sit
    spot top is over ball
    feet 3
    read a > top
    say "Base says this."
"""


def tagging(*lines: str, base: str = BASE) -> Session:
    tag = "\n".join(["tag Over for Base", *(f"    {line}" for line in lines)])
    return compiled(
        TWELVE, THREE_TWO, f"{base}\n{tag}", dress("Three Two", "with Over", concept="Base")
    )


def jobs(made: Play) -> dict[str, str]:
    return {a.role: a.job for a in made.assignments if a.role}


# What extends what.


def child(*lines: str, parent: str = "Three Two", more: str = "") -> Session:
    header = f"formation Wide extends {parent}"
    text = "\n".join([header, *(f"    {line}" for line in lines)])
    return compiled(TWELVE, f"{text}\n{more}\n{THREE_TWO}", BASE, dress("Wide", concept="Base"))


def places(result: Session, formation: str = "Wide") -> dict[str, tuple[float, float]]:
    made = play(result, f"{formation} Right Base")
    return {m.label: (round(m.at.x, 2), m.at.y) for m in made.men if not m.interior}


def test_a_formation_takes_over_every_man_it_does_not_line_up_itself() -> None:
    base = places(
        compiled(TWELVE, THREE_TWO, BASE, dress("Three Two", concept="Base")), "Three Two"
    )
    wide = places(child("Z at call, 2 inside sideline, on line"))
    assert wide["Z"] == (30.5, 0)
    # S stands half way between H and Z, so he moves with him; nobody else does.
    assert {k for k in base if wide[k] != base[k]} == {"Z", "S"}


def test_a_line_of_the_child_replaces_every_line_about_the_same_man() -> None:
    """The parent's guarded line goes too: the child says where he stands."""
    two_lines = "\nformation Two extends Three Two\n" + (
        "    Z at call, numbers, on line\n"
        "    Z at call, 3 inside numbers, on line when ball in middle\n"
    )
    kept = places(child("X at away, numbers, on line", parent="Two", more=two_lines))
    assert (kept["Z"], kept["X"]) == ((19.5, 0), (-22.5, 0))
    replaced = places(child("Z at call, 1 inside numbers, on line", parent="Two", more=two_lines))
    assert replaced["Z"] == (21.5, 0)


def test_a_child_may_add_a_man() -> None:
    result = child("F at call, 2 outside ball, 5 deep")
    assert places(result)["F"] == (2, -5)
    assert "E510" in codes(result)  # Then he is one too many.


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("formation Wide extends Three Too\n    X at call, numbers", "E302"),
        ("formation Wide extends Wide\n    X at call, numbers", "E303"),
        ("formation Three Two\n    X at call, numbers", "E301"),
        ("formation three two\n    X at call, numbers", "E301"),
        ("concept Base\n    a is back", "E301"),
        ("tag Over for Bass\n    a runs go", "E310"),
    ],
)
def test_a_name_that_leads_nowhere_or_twice(text: str, code: str) -> None:
    result = compiled(TWELVE, THREE_TWO, BASE, text, dress("Three Two", concept="Base"))
    assert code in codes(result), said(result.diagnostics)


def test_a_wrong_name_gives_the_nearest() -> None:
    result = child("X at away, numbers, on line", parent="Three Too")
    (found,) = [d for d in result.diagnostics if d.code == "E302"]
    assert found.nearest == ("Three Two",)


def test_a_circle_through_two_is_said_once() -> None:
    text = "formation A extends B\n    X at call, end\nformation B extends A\n    Y at call, end"
    result = compiled(TWELVE, text)
    found = [dict(d.values)["path"] for d in result.diagnostics if d.code == "E303"]
    assert found == ["A extends B extends A"]


def test_two_names_in_two_files_are_told_apart_from_the_first() -> None:
    result = compiled(TWELVE, BASE, BASE)
    (found,) = [d for d in result.diagnostics if d.code == "E301"]
    assert found.span.source == "three.play"
    assert [r.span.source for r in found.related] == ["two.play"]


def test_the_order_of_definitions_means_nothing() -> None:
    tag = "tag Over for Base\n    a runs slant"
    texts = [TWELVE, THREE_TWO, f"{tag}\n{BASE}", dress("Three Two", "with Over", concept="Base")]
    before = play(compiled(*texts), "Three Two Right Base Over")
    after = play(compiled(*reversed(texts)), "Three Two Right Base Over")
    assert jobs(before) == jobs(after)
    assert before.reads[0].at == after.reads[0].at


def heir(*lines: str, parent: str = "Base", more: str = "") -> Play:
    """The play of a concept that extends another."""
    text = "\n".join([f"concept Heir extends {parent}", *(f"    {line}" for line in lines)])
    texts = (f"{text}\n{more}\n{BASE}", dress("Three Two", concept="Heir"))
    return play(compiled(TWELVE, THREE_TWO, *texts), "Three Two Right Heir")


def test_a_concept_takes_over_what_it_does_not_say_itself() -> None:
    made = heir("b runs sit 9", "feet 5")
    assert jobs(made) == {"a": "Go.", "b": "Sit at 9."}
    assert [s.name for s in made.feet] == ["5"]
    assert [r.target for r in made.reads] == ["a", "top"]
    assert [b.looks for b in made.assignment("Z").branches] == ["off"]


def test_a_line_of_an_heir_replaces_every_line_about_the_same_thing() -> None:
    made = heir("a runs slant")
    assert jobs(made)["a"] == "Slant at 4."
    assert made.assignment("Z").branches == ()
    made = heir("a is weak #1")
    assert {a.role: a.man for a in made.assignments if a.role} == {"a": "X", "b": "S"}
    assert jobs(made)["a"] == "Go."


def test_spots_of_an_heir_are_replaced_one_by_one() -> None:
    assert [s.name for s in heir("spot near is low, weak").spots] == ["top", "near"]
    assert [(s.name, s.at.y) for s in heir("spot top is 9 deep, over ball").spots] == [("top", 9)]


def test_extending_through_two() -> None:
    middle = "concept Middle extends Base\n    b runs sit 9\n    feet 5\n"
    made = heir("feet 7", parent="Middle", more=middle)
    assert jobs(made)["b"] == "Sit at 9."
    assert [s.name for s in made.feet] == ["7"]


def family(concept: str, formation: str) -> list[str]:
    lines = dress("Three Two", "with plain, Wheel + Return")
    result = compiled(TWELVE, formation, f"{concept}\n{WHEEL}\n{RETURN}", lines)
    assert result.diagnostics == ()
    return [write(play(result, call)) for call in result.calls.by_name]


@settings(max_examples=10, deadline=None)
@given(st.randoms(use_true_random=False))
def test_the_order_of_lines_means_nothing(random: Random) -> None:
    """Concept and formation with their lines shuffled: every call is what it was.

    Spots stand in the picture as they stand in the text, so their lines keep their order.
    """

    def shuffled(text: str) -> str:
        header, *lines = [line for line in text.splitlines() if line.strip()]
        spots = iter([line for line in lines if line.strip().startswith("spot ")])
        random.shuffle(lines)
        moved = [next(spots) if line.strip().startswith("spot ") else line for line in lines]
        return "\n".join([header, *moved])

    assert family(shuffled(CONCEPT), shuffled(THREE_TWO)) == family(CONCEPT, THREE_TWO)


# A tag laid over a concept.


def tagged(*lines: str) -> Play:
    return play(tagging(*lines), "Three Two Right Base Over")


def test_a_tag_replaces_what_it_says_and_leaves_the_rest() -> None:
    made = tagged("a runs corner")
    assert jobs(made) == {"a": "Corner at 10.", "b": "Sit at 8."}
    assert made.assignment("Z").branches == ()
    assert made.call.tags == ("Over",)


def test_a_tag_may_bring_a_role_a_spot_and_a_read_of_its_own() -> None:
    made = tagged(
        "c is weak #1",
        "c runs cross",
        "spot low is low, strong",
        "read low > c",
        "needs c within 20 of tackle",
    )
    assert {a.role: a.man for a in made.assignments if a.role} == {"a": "Z", "b": "S", "c": "X"}
    assert [r.target for r in made.reads] == ["low", "c"]
    assert [s.name for s in made.spots] == ["top", "low"]


def test_words_of_a_tag_come_after_those_of_the_concept() -> None:
    base = BASE + '    a says "First."\n'
    result = tagging('a says "Then."', base=base)
    made = play(result, "Three Two Right Base Over")
    assert made.assignment("Z").says == ("First.", "Then.")


def test_a_swap_changes_the_men_of_two_roles() -> None:
    made = tagged("swap a with b")
    assert {a.role: a.man for a in made.assignments if a.role} == {"a": "S", "b": "Z"}


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("swap a with v", "E444"),
        ("swap a", "E469"),
        ("keeps hope", "E470"),
        ("who runs go", "E450"),
    ],
)
def test_a_line_of_a_tag_that_cannot_be_read(line: str, code: str) -> None:
    assert code in codes(tagging(line))


# Words for a man by rule.


@pytest.mark.parametrize(
    ("rule", "code"),
    [
        ("V", "E453"),
        ("LT", "E453"),
        ("strong", "E455"),
        ("strong 2", "E404"),
        ("strong second", "E455"),
        ("receiver #2", "E451"),
        ("nobody or strong #1", "E452"),
        ("inside", "E454"),
        ("inside opposite v", "E444"),
        ("strong #2, weak #1", "E402"),
        ("strong #2 please", "E401"),
    ],
)
def test_a_rule_that_cannot_be_read(rule: str, code: str) -> None:
    text = f"concept Test\n    a is {rule}\n    a runs go"
    assert code in codes(compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test")))


def test_a_concept_with_an_unread_line_is_proved_no_further() -> None:
    """One mistake is said once: its calls are known by name, and not blamed for it."""
    text = BASE.replace("a runs go\n", "a runs goo\n")
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Base"))
    assert codes(result) == ["E442"]
    assert "Three Two Right Base" in result.calls.by_name
    assert result.season is not None and result.season.plays == ()


# The playbook block.


@pytest.mark.parametrize(
    ("book", "code"),
    [
        ("", "E305"),
        ("playbook A\n    code high school\n\nplaybook B\n    code high school", "E306"),
        ("playbook A\n    season 2026", "E307"),
        ("playbook A\n    version 2\n    code high school", "E308"),
        ("playbook A\n    code flag", "E309"),
        ("playbook A\n    code high school\n    house hash is 20", "E322"),
        ("playbook A\n    code high school\n    quarterback both", "E323"),
        ("playbook A\n    code high school\n    picture above", "E324"),
        ("playbook A\n    code high school\n    draw everything", "E324"),
        ("playbook A\n    code high school\n\npersonnel P\n    Wide is wideout", "E325"),
        ("playbook A\n    code high school\n\npersonnel P\n    W is receivr", "E326"),
        ("playbook A\n    code high school\n\npersonnel P\n    Q is quarterback, both", "E323"),
        (
            "playbook A\n    code high school\n\npersonnel P\n    W is slot\n    W is wideout",
            "E420",
        ),
    ],
)
def test_a_playbook_that_cannot_be_read(book: str, code: str) -> None:
    assert codes(compiled(book, "concept A\n    a is back\n    a runs go"))[0] == code


@pytest.mark.parametrize(
    ("picture", "right", "left"),
    [
        ("middle", "middle", "middle"),
        ("strength to field", "left hash", "right hash"),
        ("strength to boundary", "right hash", "left hash"),
    ],
)
def test_the_spot_that_pictures_are_drawn_from(picture: str, right: str, left: str) -> None:
    book = TWELVE.replace("version 1", f"version 1\n    picture {picture}")
    season = compiled(book, THREE_TWO, BASE, dress("Three Two", concept="Base")).season
    assert season is not None
    assert [p.ball.value for p in season.plays] == [right, left]


def test_what_a_concept_is_for_is_said_once_and_printed() -> None:
    idea = '    idea "One goes, one sits."\n'
    result = compiled(TWELVE, THREE_TWO, BASE + idea, dress("Three Two", concept="Base"))
    assert result.season is not None
    assert result.season.concepts[0].idea == "One goes, one sits."
    twice = compiled(TWELVE, THREE_TWO, BASE + idea + idea, dress("Three Two", concept="Base"))
    assert codes(twice)[0] == "E420"


def test_every_call_is_drawn_only_where_the_book_says_so() -> None:
    for line, asked in (("", False), ("\n    draw every call", True)):
        book = TWELVE.replace("version 1", f"version 1{line}")
        season = compiled(book, THREE_TWO, BASE, dress("Three Two", concept="Base")).season
        assert season is not None
        assert season.every_call is asked


def test_what_a_tag_says_and_warns_of_is_on_its_concepts_page() -> None:
    base = BASE + '    caution "Watch the middle."\n'
    result = tagging('say "Go deep."', 'caution "Nobody behind you."', base=base)
    assert result.season is not None
    (sheet,) = result.season.concepts
    assert sheet.says == ("Base says this.",)
    assert sheet.tags == (("Over", ("Go deep.",)),)
    assert sheet.cautions == ("Watch the middle.", "Nobody behind you.")

"""Looks from a text: where each line puts a man, what he does, and what the look shows."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from resolve.texts import THREE_TWO, TWELVE, codes, compiled, play, said
from together import together

from lineup.look_sets import offence, shipped
from lineup.look_texts import FRONT, against, look, man
from stemline.football.defence.zones import shown_words
from stemline.football.defenders import DutyKind, Level
from stemline.football.field import BallSpot, Side
from stemline.lineup.look_placed import line_up_defence
from stemline.playbook.look_definitions import Strength
from stemline.resolve.expand import expand


def test_the_front_makes_no_mistake() -> None:
    assert said(look().diagnostics) == []


@together(
    ("line", "x", "y"),
    [
        ("T at 2i, strong", 0.85, 1),
        ("T at outside guard, strong", 1.75, 1),
        ("T at B gap, strong", 1.95, 1),
        ("T at 3, strong, 1.5 deep", 1.75, 1.5),
        ("N at 0", 0, 1),
        ("W at 30, weak", -1.75, 4.5),
        ("W at over tackle, weak, 5 deep", -2.6, 5),
        ("W at 00, 7 deep", 0, 7),
        ("F at ball, 9 deep", 0, 9),
        ("F at hash, weak, 9 deep", -8.5, 9),
        ("F at 2 inside numbers, strong, 9 deep", 20.5, 9),
        ("F at numbers, strong, 2 inside, 9 deep", 20.5, 9),
        ("H at strong #2, 1 inside, 6 deep", 13.55, 6),
        ("H at over strong #2, 1 outside, 6 deep", 15.55, 6),
        ("H at #2, strong, 6 deep", 14.55, 6),
        ("H at strong, between #2 and #3, 6 deep", 10.575, 6),
        ("H at between tackle and strong #3, 6 deep", 4.6, 6),
        ("S at apex, strong, 4 deep", 4.6, 4),
        ("S at tight end, strong, 2 deep or strong #4, 3 deep or 50, strong", 3.05, 4.5),
        ("S at strong #4 or apex, weak, 3 deep", -5.1, 3),
        ("S at right side, apex, 3 deep", 4.6, 3),
        ("S at field #2, 3 deep", 14.55, 3),
    ],
)
def test_where_a_line_puts_a_man(line: str, x: float, y: float) -> None:
    """Right is strong; receivers stand 22.5, 14.55 and 6.6 strong, 7.6 and 20.5 weak."""
    found = man(look(line), line.partition(" ")[0])
    assert (found.at.x, found.at.y) == pytest.approx((x, y))


@pytest.mark.parametrize(
    ("line", "strong"),
    [
        ("strength weak", Side.LEFT),
        ("strength strong", Side.RIGHT),
        ("strength call", Side.RIGHT),
        ("strength left", Side.LEFT),
        ("strength field", Side.RIGHT),
        ("strength tight end", Side.RIGHT),
    ],
)
def test_the_strength_turns_the_whole_look(line: str, strong: Side) -> None:
    defence = against(look(line))
    assert defence.strong is strong
    assert defence.defender("T").at.x * strong.value > 0
    assert defence.defender("C").at.x * strong.value > 0 > defence.defender("B").at.x * strong.value


def test_field_and_boundary_strength_go_by_the_hash() -> None:
    for spot, side in ((BallSpot.LEFT_HASH, Side.RIGHT), (BallSpot.RIGHT_HASH, Side.LEFT)):
        assert against(look("strength field"), spot).strong is side
        assert against(look("strength boundary"), spot).strong is side.other


def test_tight_end_strength_is_his_side_and_else_the_passing_strength() -> None:
    book = "saltmarsh-herons"
    made = shipped(book).book
    assert made is not None
    tilted = replace(made.looks["over three"], strength=Strength.TIGHT_END)
    for ends, strong in (((Side.LEFT,), Side.LEFT), ((), Side.RIGHT), (tuple(Side), Side.RIGHT)):
        picture = offence(book, (18, 10, -16), ends=ends)
        defence, _ = line_up_defence(tilted, picture)
        assert defence is not None and defence.strong is strong


# Duties.


@together(
    ("line", "kind", "words"),
    [
        ("M covers hook, weak", DutyKind.HOOK, "hook, weak"),
        ("M covers weak hook", DutyKind.HOOK, "hook, weak"),
        ("M covers robber", DutyKind.ROBBER, "robber"),
        ("M covers deep middle", DutyKind.THIRD, "deep third, middle"),
        ("M covers middle third", DutyKind.THIRD, "deep third, middle"),
        ("M covers deep half, weak", DutyKind.HALF, "deep half, weak"),
        ("M covers man, strong #2", DutyKind.MAN, "man on #2 strong"),
        ("M covers man, #2, weak", DutyKind.MAN, "man on #2 weak"),
        ("M covers man, back", DutyKind.MAN, "man on the back"),
        ("M covers man, tight end or weak #3 or curl, strong", DutyKind.CURL, "curl, strong"),
        ("M rushes A, strong", DutyKind.RUSH, "rush A gap, strong"),
        ("M rushes weak B gap", DutyKind.RUSH, "rush B gap, weak"),
        ("M rushes contain, weak", DutyKind.RUSH, "rush, contain, weak"),
    ],
)
def test_what_a_line_gives_a_man_to_do(line: str, kind: DutyKind, words: str) -> None:
    duty = man(look(line), "M").duty
    assert duty is not None
    assert (duty.kind, duty.words) == (kind, words)
    assert (duty.to is None) == (kind is DutyKind.MAN) == bool(duty.man)


def test_a_man_defender_names_his_man() -> None:
    labels = {"strong #1": "Z", "strong #3": "H", "weak #1": "X", "weak #2": "W", "back": "R"}
    for words, label in labels.items():
        duty = man(look(f"M covers man, {words}"), "M").duty
        assert duty is not None and duty.man == label


def test_the_line_rushes_its_own_gaps() -> None:
    defence = against(look())
    gaps = {d.label: d.duty.gap for d in defence.rushers if d.duty is not None}
    assert gaps == {"E": "C strong", "T": "B strong", "N": "A weak", "J": "C weak"}


def test_either_gap_is_the_side_he_stands_on() -> None:
    for place, gap in (("10, weak", "A weak"), ("10, strong", "A strong")):
        duty = man(look(f"M at {place}", "M rushes A, either"), "M").duty
        assert duty is not None and duty.gap == gap


def test_a_duty_of_the_child_replaces_whatever_the_parent_says() -> None:
    result = look("M rushes A, strong", "N covers hook, weak")
    defence = against(result)
    assert codes(result) == []
    assert defence.defender("M").rushes and not defence.defender("N").rushes
    assert len(defence.rushers) == 4


def test_of_two_men_in_quarters_the_wider_has_the_outside_one() -> None:
    defence = against(look("C covers quarter, strong", "H covers quarter, strong"))
    outside, inside = (defence.defender(label).duty for label in "CH")
    assert outside is not None and inside is not None
    assert outside.words == "outside quarter, strong" and inside.words == "inside quarter, strong"
    assert outside.to is not None and inside.to is not None and outside.to.x > inside.to.x > 0


# What a look shows.


@together(
    ("lines", "shows"),
    [
        ((), ("zone", "off", "middle closed")),
        (("F covers half, strong", "D covers half, weak"), ("zone", "off", "middle open")),
        (("C at strong #1, 2 deep",), ("zone", "middle closed")),
        (
            ("C at strong #1, 2 deep", "B at weak #1, 3 deep"),
            ("zone", "press", "middle closed"),
        ),
        (("C at strong #1, 2 deep", "B at weak #1, 3.1 deep"), ("zone", "middle closed")),
        (
            (
                "C covers man, strong #1",
                "H covers man, strong #2",
                "S covers man, strong #3",
                "D covers man, weak #2",
                "B covers man, weak #1",
                "M covers man, back",
            ),
            ("man", "off", "middle closed"),
        ),
        # Four in man and four in zones: the corners decide.
        (
            (
                "C covers man, strong #1",
                "B covers man, weak #1",
                "H covers man, strong #2",
                "M covers man, back",
            ),
            ("man", "off", "middle closed"),
        ),
        # The same tie with one corner in each: neither word.
        (
            (
                "C covers man, strong #1",
                "S covers man, strong #3",
                "H covers man, strong #2",
                "M covers man, back",
            ),
            ("off", "middle closed"),
        ),
    ],
)
def test_what_a_look_shows(lines: tuple[str, ...], shows: tuple[str, ...]) -> None:
    assert against(look(*lines)).shows == shows


def test_a_look_with_nobody_deep_is_not_printed_as_one_with_two_safeties() -> None:
    none = ("C covers flat, strong", "F covers robber", "B covers flat, weak")
    assert shown_words(against(look(*none))) == ("zone", "off", "no deep help")
    two = ("F covers half, strong", "D covers half, weak")
    assert shown_words(against(look(*two))) == ("zone", "off", "middle open")


@pytest.mark.parametrize("line", ["M over centre", "M in 0"])
def test_a_linebacker_without_a_depth_on_a_man_of_the_line_is_offered_his_line(line: str) -> None:
    on = line.replace("M", "N")
    (told, *_) = look(on, line).diagnostics
    assert told.code == "E490"
    offered = dict(told.values)["deeper"].split("`")[1]
    assert offered in (f"{line}, 4.5 deep", "M at 0, 4.5 deep")
    assert codes(look(on, offered)) == []


def test_a_concept_knows_what_the_look_shows() -> None:
    """The option of a route that the look decides is settled by the look."""
    result = look()
    text = (
        "concept Choice\n    wide is strong #1\n    wide runs dig 12\n    wide runs out 10 when off"
    )
    result = compiled(TWELVE, THREE_TWO, FRONT, text, "dress Choice\n    in Three Two")
    assert result.book is not None
    order = result.calls.by_name["Three Two Right Choice"]
    shown, _ = expand(result.book, order, BallSpot.MIDDLE, look_key="front")
    plain = play(result, "Three Two Right Choice")
    assert shown is not None and shown.defence is not None
    assert (shown.runs("wide").job, len(plain.runs("wide").branches)) == (  # type: ignore[union-attr]
        plain.runs("wide").branches[0].job,  # type: ignore[union-attr]
        1,
    )
    assert shown.against == shown.defence.shows


# Levels and the line.


def test_levels_by_place_and_duty() -> None:
    defence = against(look())
    levels = {d.label: d.level for d in defence.defenders}
    assert {x for x, level in levels.items() if level is Level.LINE} == set("ETNJ")
    assert {x for x, level in levels.items() if level is Level.SECOND} == set("SMW")
    assert {x for x, level in levels.items() if level is Level.DEEP} == set("CHDBF")


def test_a_press_corner_is_of_the_secondary_and_a_mugged_linebacker_of_the_line() -> None:
    result = look("C at strong #1, 1 deep", "M at A gap, strong, 1.5 deep", "M rushes A, strong")
    assert man(result, "C").level is Level.DEEP
    assert man(result, "M").level is Level.LINE


@together(
    ("place", "level"),
    [
        ("tackle, weak, 1 deep", Level.LINE),
        ("tackle, weak, 2 deep", Level.LINE),
        ("tackle, weak, 2.1 deep", Level.SECOND),
        ("A gap, weak, 2 deep", Level.LINE),
        ("A gap, weak, 2.1 deep", Level.SECOND),
        ("tackle, weak, 4 deep", Level.SECOND),
        ("weak #2, 1 deep", Level.SECOND),
        ("weak #1, 1 deep", Level.DEEP),
        ("weak #2, 10 deep", Level.DEEP),
        ("5, weak, 4 deep", Level.SECOND),
    ],
)
def test_the_level_of_a_place(place: str, level: Level) -> None:
    result = look(f"W at {place}", "B at weak #1, 8 deep", "J at 3, weak")
    assert man(result, "W").level is level


def test_the_line_keeps_the_distance_of_its_code() -> None:
    assert {d.at.y for d in against(look()).defenders if d.level is Level.LINE} == {1.0}


def test_the_words_of_a_defender_and_of_a_look_are_kept() -> None:
    result = look('M says "Eyes up."', 'say "Base."')
    assert result.book is not None and result.book.looks["test"].says == ("Base.",)
    assert man(result, "M").says == ("Eyes up.",)


_WORDS = (
    "3", "2i", "00", "30", "strong", "weak", "field", "#2", "#9", "or", ",", "between", "and",
    "tackle", "numbers", "middle", "apex", "tight end", "over", "inside", "2", "deep", "man",
    "back", "second", "third", "hook", "contain", "A", "gap", "either", "when", "3x2", "empty",
    "then", "99",
)  # fmt: skip


@settings(max_examples=50, deadline=None)
@given(
    st.sampled_from(("at", "covers", "rushes", "strength")),
    st.lists(st.sampled_from(_WORDS), min_size=1, max_size=7),
)
def test_no_line_of_a_look_can_raise(verb: str, words: list[str]) -> None:
    """A line that makes no sense is a diagnostic; one that makes sense lines up or says why."""
    line = f"{verb} {' '.join(words)}" if verb == "strength" else f"M {verb} {' '.join(words)}"
    result = look(line)
    assert result.book is not None
    if not result.diagnostics:
        assert len(against(result).defenders) == 12


# A front and a coverage, each written once.

COVER = """look Cover
    C covers quarter, strong
    B covers quarter, weak
"""
PLACES = "\n".join(line for line in FRONT.splitlines() if " at " in line or "look" in line)
DUTIES = "look Duties\n" + "\n".join(x for x in FRONT.splitlines() if " covers " in x)


def test_a_front_and_a_coverage_make_the_look_that_says_both() -> None:
    whole = compiled(TWELVE, THREE_TWO, FRONT + "\nlook Test extends Front\n    M covers hole\n")
    parts = compiled(
        TWELVE, THREE_TWO, f"{PLACES}\n\n{DUTIES}\n\nlook Test extends Front, Duties\n"
    )
    assert codes(parts) == [], said(parts.diagnostics)
    assert parts.book is not None
    assert list(parts.book.looks) == ["test"]
    same = [(d.label, d.at, d.duty) for d in against(whole).defenders]
    assert [(d.label, d.at, d.duty) for d in against(parts).defenders] == same


@pytest.mark.parametrize("own", ["", "    C covers half, strong\n    B covers half, weak\n"])
def test_what_both_parents_say_is_for_the_look_to_settle(own: str) -> None:
    text = f"{FRONT}\n{COVER}\nlook Test extends Front, Cover\n{own}"
    found = compiled(TWELVE, THREE_TWO, text)
    assert codes(found) == ([] if own else ["E497", "E497"]), said(found.diagnostics)


def test_a_second_parent_stands_for_itself() -> None:
    text = f"{FRONT}\nlook A extends Front\n    C covers half, strong\n\nlook B extends Front, A\n"
    assert codes(compiled(TWELVE, THREE_TWO, text)) == ["E304"]

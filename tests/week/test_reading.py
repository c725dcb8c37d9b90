"""Weeks read, laid over each other and held against the playbook."""

from __future__ import annotations

import pytest
from corpus.mixing import base

from stemline.football.rulebook.codes import CODES
from stemline.football.situations import OPENERS, Situation, misfits, serves
from stemline.read.read_situations import pieces, read_situation
from stemline.session import Session
from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.week.planning import Planned

CALL, QUADS, WHEEL = (
    "Three Two Right Crossers", "Quads Right Tuck Crossers", "Three Two Right Crossers Wheel"
)  # fmt: skip


def situation(words: str) -> Situation:
    document, found = parse(Source("w.play", f"week 1 A\n    situation {words}\n        {CALL}\n"))
    assert not found
    return read_situation(pieces(document.blocks[0].facts[0].value))


def weeks(text: str) -> tuple[Planned, ...]:
    return Session((*base(), Source("week.play", text)), "book").weeks


def lists(planned: Planned) -> dict[str, list[str]]:
    assert planned.plan is not None, planned.found
    return {e.situation.words: [row.call for row in e.rows] for e in planned.plan.lists}


@pytest.mark.parametrize(
    ("said", "printed"),
    [
        ("2nd and 7 or more", "2nd and 7 or more"),
        ("2ND AND LONG", "2nd and 7 or more"),
        ("3rd and 2 to 1", "3rd and 1 to 2"),
        ("3rd and 3 or less", "3rd and 1 to 3"),
        ("1st and 10, left hash", "1st and 10, left hash"),
        ("their 40 to their 20", "their 40 to 20"),
        ("own 45 to their 45", "own 45 to their 45"),
        ("2-point convert", "2-point try"),
        ("2-point conversion", "2-point try"),
        ("trailing by 8 or less", "trailing by 1 to 8"),
        ("against the wind", "wind against"),
        ('"Wet Ball"', '"Wet Ball"'),
    ],
)
def test_one_meaning_has_one_head(said: str, printed: str) -> None:
    assert situation(said).words == printed


def test_situations_sort_as_a_caller_meets_them() -> None:
    said = (
        "wind with", "goal line", "3rd and 1", "own 1 to 10", "1st and 10", "2nd and 7 or more",
        '"Money"', "2nd and 1 to 3", "2-point try", "last 3 minutes", "1st and 10, left hash",
    )  # fmt: skip
    ordered = sorted([OPENERS, *map(situation, said)], key=lambda s: s.place_in(110))
    assert [s.words for s in ordered] == [
        "openers", "1st and 10", "1st and 10, left hash", "2nd and 1 to 3", "2nd and 7 or more",
        "3rd and 1", "own 1 to 10", "goal line", "2-point try", "wind with", "last 3 minutes",
        '"Money"',
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("have", "need", "there"),
    [
        ("goal line", "red zone", False), ("green zone", "red zone", True),
        ("coming out", "backed up", False), ("own 1 to 10", "backed up", True),
        ("their 25 to 5", "red zone", True), ("red zone", "goal line", True),
    ],
)  # fmt: skip
def test_a_part_of_the_field_is_there_for_another_by_half(
    have: str, need: str, there: bool
) -> None:
    assert serves(situation(have), situation(need), 100) is there


@pytest.mark.parametrize(
    ("code", "words", "wrong"),
    [
        ("canadian professional", "4th and 1", [True]),
        ("canadian amateur", "4th and 1", [False]),
        ("high school", "4th and 1", []),
        ("high school", "own 55", [True]),
        ("canadian amateur", "own 55", []),
        ("high school", "red zone, own 1 to 10", [True]),
        ("high school", "red zone, their 10 to 1", []),
        ("high school", "3rd and 10, goal line", [True]),
        ("canadian amateur", "2-point try from 3", [False]),
        ("high school", "2-point try from 3", []),
        ("professional", "2-point try from 3", [False]),
    ],
)
def test_a_code_is_asked(code: str, words: str, wrong: list[bool]) -> None:
    """Three downs and four; the length of the field; a try's spot, which is common practice."""
    assert [m.binding for m in misfits(situation(words), CODES[code])] == wrong


FIRST = (
    f"week 1 A\n    openers\n        {CALL}\n        {QUADS}\n"
    f"    situation red zone\n        {WHEEL}\n"
)


def test_drops_then_moves_then_additions_in_whatever_order_they_stand() -> None:
    second = (
        "\nweek 2 B from 1\n"
        f"    openers\n        Three Two Right Crossers Return, after {WHEEL}\n"
        f"    move {WHEEL} to openers after {QUADS}\n"
        f"    drop {CALL}\n"
    )
    assert [lists(p) for p in weeks(FIRST + second)] == [
        {"openers": [CALL, QUADS], "red zone": [WHEEL]},
        {"openers": [QUADS, WHEEL, "Three Two Right Crossers Return"]},
    ]


def test_a_week_over_a_week_over_a_week() -> None:
    """And a week that starts from the first again knows nothing of the second."""
    more = (
        "\nweek 2 B from 1\n    drop all from red zone\n"
        f"\nweek 3 C from 2 B\n    drop {QUADS}\n"
        '\nweek 4 D from 1\n    say "As in the first."\n'
    )
    first, second, third, fourth = map(lists, weeks(FIRST + more))
    assert third == {"openers": [CALL]}
    assert second == {"openers": [CALL, QUADS]}
    assert first == fourth == {"openers": [CALL, QUADS], "red zone": [WHEEL]}


@pytest.mark.parametrize(("said", "runs"), [
    ("Warm Run Team", "Warm Run Team Cool"),
    ("Run Team", "Warm Run Team Cool"),
    ("Team Warm Last", "Team Warm Last Cool"),
    ("Last", "Warm Team Cool Last"),
    ("Cool", "Warm Team Cool"),
])  # fmt: skip
def test_a_days_periods_run_as_they_are_said(said: str, runs: str) -> None:
    """Over last week's Warm, Team and Cool of Tuesday, with another day's between them."""

    def periods(names: str) -> str:
        return "".join(f"    period {n}, 10 minutes, air, Tuesday\n" for n in names.split())

    first = f"week 1 A\n{periods('Warm')}    period Film, 5 minutes, air, Monday\n"
    text = f"{first}{periods('Team Cool')}\nweek 2 B from 1\n{periods(said)}"
    _, planned = weeks(text)
    assert planned.plan is not None
    named = [p.name for p in planned.plan.periods if p.day == "Tuesday"]
    assert " ".join(named) == runs


def test_one_slip_in_an_opener_gives_one_message() -> None:
    text = f"week 1 A\n    opners\n        {CALL}\n        {QUADS}\n        {WHEEL}\n"
    _, found = parse(Source("w.play", text))
    assert [d.code for d in found] == ["E220"]
    assert found[0].nearest == ("openers",)
    text = f"week 1 A\n    period Team, , thud\n        {CALL}\n        {QUADS}\n    quiz H\n"
    document, found = parse(Source("w.play", text))
    assert [d.code for d in found] == ["E232"]
    assert [fact.key for fact in document.blocks[0].facts] == ["quiz"]


def test_a_calls_nearest_is_told() -> None:
    (planned,) = weeks("week 1 A\n    openers\n        Three Two Right Crosers\n")
    (found,) = planned.found
    assert found.code == "E602" and CALL in found.nearest and planned.plan is None


def test_what_a_broken_week_is_the_ground_of_is_not_planned() -> None:
    text = f"week 1 A\n    openers\n        {CALL}, quick\n\nweek 2 B from 1\n    drop {QUADS}\n"
    assert [(p.plan, p.found) for p in weeks(text)] == [(None, ()), (None, ())]


def test_a_lineman_is_asked_and_wears_a_band_by_the_letter_that_his_book_has() -> None:
    (week,) = weeks(
        f"week 1 A\n    openers\n        {CALL}\n    wristband Line for LG, rt\n"
        "    quiz LT on Thursday\n"
    )
    assert week.plan is not None, week.found
    assert week.plan.quizzes[0].men == ("LT",) and week.plan.bands[0].men == ("LG", "RT")

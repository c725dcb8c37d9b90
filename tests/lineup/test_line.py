"""The interior line: labels, sides, splits, and the landmarks that follow it."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from resolve.texts import compiled, said

from stemline.football.field import BallSpot, Field, Side
from stemline.football.line import SPLIT, LineMarks
from stemline.football.offence.landmarks import Landmark, x_of
from stemline.football.offence.strokes import RunTo, Target
from stemline.football.offence.tracing import Runner, trace
from stemline.football.play import Man
from stemline.football.players import Position, grouping
from stemline.football.rulebook.codes import EIGHT_MAN, HIGH_SCHOOL, SIX_MAN, Code
from stemline.geometry.paths import Point
from stemline.lineup.alignment import Alignment, line_up
from stemline.lineup.interior_line import called_to, interior
from stemline.playbook.formations import Formation, LineDef, Person
from stemline.resolve.expand import field_of
from stemline.source import NOWHERE

FIVE = ("LT", "LG", "C", "RG", "RT")
LABELS = ("LT", "LG", "RG", "RT", "ET", "EG", "ST", "QG")


def formation(*labels: str, split: float | None = None, men: tuple[str, ...] = ()) -> Formation:
    line = LineDef(labels, split, NOWHERE) if labels or split else None
    return Formation("Tried", dict.fromkeys(men, ()), (), NOWHERE, False, line)


def stood(made: Formation, called: Side, people: dict[str, Person] | None = None) -> list[str]:
    men, _ = interior(made, FIVE, people or {}, called)
    return [m.label for m in men]


def person(letter: str, position: Position) -> Person:
    return Person(letter, position, True, NOWHERE)


@pytest.mark.parametrize(
    ("labels", "left"),
    [
        (FIVE, FIVE),
        (("LG", "C", "RG", "RT", "LT"), ("RT", "LT", "LG", "C", "RG")),
        ((*FIVE, "ET"), ("ET", *FIVE)),
        (("LG", "C", "RG"), ("LG", "C", "RG")),
        # Men who are named by the side of the call change sides with it.
        (("QT", "QG", "C", "SG", "ST"), ("ST", "SG", "C", "QG", "QT")),
    ],
)
def test_a_line_called_left(labels: tuple[str, ...], left: tuple[str, ...]) -> None:
    assert stood(formation(*labels), Side.RIGHT) == list(labels)
    assert stood(formation(*labels), Side.LEFT) == list(left)


@given(st.lists(st.sampled_from(LABELS), unique=True, max_size=6), st.integers(0, 6))
def test_a_line_turned_twice_is_itself_and_loses_nobody(others: list[str], at: int) -> None:
    labels = (*others[:at], "C", *others[at:])
    turned = called_to(labels, Side.LEFT)
    assert called_to(turned, Side.LEFT) == labels
    assert sorted(turned) == sorted(labels)
    places = {s: interior(formation(*labels), FIVE, {}, s)[0] for s in Side}
    right = sorted(m.at.x for m in places[Side.RIGHT])
    assert sorted(-m.at.x + 0.0 for m in places[Side.LEFT]) == right
    assert all(round(b - a, 6) == SPLIT for a, b in pairwise(right))


@pytest.mark.parametrize("split", [0.5, 1.0, 2.0])
def test_splits(split: float) -> None:
    men, marks = interior(formation(split=split), FIVE, {}, Side.RIGHT)
    assert [m.at.x for m in men] == [-2 * split, -split, 0, split, 2 * split]
    assert (marks.tackle(1), marks.end(-1), marks.guard(1)) == (2 * split, -3 * split, split)


def test_a_lineman_lined_up_elsewhere_leaves_the_codes_line() -> None:
    assert stood(formation(men=("LT", "X")), Side.RIGHT) == ["LG", "C", "RG", "RT"]
    assert stood(formation(men=("T", "X")), Side.RIGHT) == list(FIVE)
    tackle = {"LT": person("LT", Position.TACKLE)}
    assert stood(formation(men=("LT",)), Side.RIGHT, tackle) == ["LG", "C", "RG", "RT"]


def test_the_centre_gives_his_letter_to_a_receiver() -> None:
    lined = formation(men=("C",))
    men, _ = interior(lined, FIVE, {}, Side.RIGHT)
    assert [(m.label, m.position) for m in men][2] == ("SN", Position.CENTRE)
    named = {"C": person("C", Position.SLOT)}
    assert stood(formation(), Side.RIGHT, named)[2] == "SN"
    centre = {"K": person("K", Position.CENTRE)}
    assert stood(formation("LG", "K", "RG"), Side.RIGHT, centre) == ["LG", "K", "RG"]


def test_a_man_of_the_personnel_in_the_line_is_interior_by_his_place() -> None:
    people = {"Y": person("Y", Position.TIGHT_END)}
    men, _ = interior(formation("LG", "C", "RG", "Y"), FIVE, people, Side.RIGHT)
    assert men[-1].position is Position.TIGHT_END and men[-1].interior


def place(code: Code, landmark: Landmark, side: Side, line: LineMarks | None) -> float:
    return x_of(landmark, side, Field(code, BallSpot.MIDDLE, 8, line))


@pytest.mark.parametrize(
    ("code", "tackle", "end"), [(HIGH_SCHOOL, 2.6, 3.9), (EIGHT_MAN, 1.3, 2.6), (SIX_MAN, 0, 1.3)]
)
def test_landmarks_of_a_codes_own_line(code: Code, tackle: float, end: float) -> None:
    for side in Side:
        assert place(code, Landmark.TACKLE, side, None) == side.value * tackle
        assert place(code, Landmark.END, side, None) == side.value * end


def test_landmarks_of_an_unbalanced_line() -> None:
    over = LineMarks(1.0, 1, 3)
    assert place(HIGH_SCHOOL, Landmark.TACKLE, Side.RIGHT, over) == 3
    assert place(HIGH_SCHOOL, Landmark.TACKLE, Side.LEFT, over) == -1
    assert place(HIGH_SCHOOL, Landmark.END, Side.LEFT, over) == -2
    assert place(HIGH_SCHOOL, Landmark.GUARD, Side.RIGHT, over) == 1


def test_a_route_runs_to_the_tackle_that_is_drawn() -> None:
    to_tackle = (RunTo(Target(Landmark.TACKLE, 0)),)
    for line, x in ((None, 2.6), (LineMarks(1.0, 1, 3), 3.0)):
        field = Field(HIGH_SCHOOL, BallSpot.MIDDLE, 8, line)
        assert trace(to_tackle, 0, Runner(Point(9, -1), Side.RIGHT, field)).end.x == x


BOOK = "playbook Tried\n    code high school\n"
REST = """    X at away, 10 outside tackle, on line
    H at away, 4 outside tackle, off line
    Y at call, end, on line
    Z at call, 10 outside tackle, off line
    B at ball, 7 deep
    Q at ball, under centre
"""


def lined_up(*lines: str, people: str = "") -> tuple[Alignment, dict[str, Man]]:
    text = "formation Set\n" + "".join(f"    {x}\n" for x in lines) + REST
    result = compiled(BOOK + people, text)
    assert not result.failed and result.book is not None, said(result.diagnostics)
    book = result.book
    at, men, _ = line_up(book, book.formations["set"], Side.RIGHT, field_of(book, BallSpot.MIDDLE))
    return at, {m.label: m for m in men}


def test_the_text_of_a_formation_with_its_own_line() -> None:
    at, men = lined_up("line LG, C, RG, RT, LT", "splits 1", 'Y says "Down block."')
    assert (men["LT"].at.x, men["LG"].at.x) == (3, -1)
    assert (men["Y"].at.x, men["X"].at.x) == (4, -11)
    assert men["Y"].says == ("Down block.",) and men["X"].says == ()
    assert at.field.line == LineMarks(1, 1, 3)


PEOPLE = """
personnel Base
    Q is quarterback, 12, right hand
    B is back, 24
    X, Z is wideout
    H is slot
    Y is tight end, 88
    LT is tackle, 71
"""


def test_numbers_stand_in_any_order_with_the_hand() -> None:
    _, men = lined_up("people base", people=PEOPLE)
    assert {k: m.number for k, m in men.items() if m.number is not None} == {
        "Q": 12, "B": 24, "Y": 88, "LT": 71,
    }  # fmt: skip


def test_the_formation_keeps_the_name_of_its_personnel() -> None:
    at, _ = lined_up("people base", people=PEOPLE)
    assert at.formation.people == "Base"
    assert lined_up()[0].formation.people == ""


def test_a_formation_takes_over_line_and_personnel_from_what_it_extends() -> None:
    text = f"formation Set\n    line LG, C, RG, RT, LT\n    splits 1\n    people Base\n{REST}"
    result = compiled(BOOK + PEOPLE, text, "formation Wide extends Set\n    splits 2")
    assert result.book is not None and not result.failed
    made = result.book.formations["wide"]
    assert made.people == "Base"
    assert made.line is not None and made.line.labels == ("LG", "C", "RG", "RT", "LT")
    assert made.line.split == 2


@pytest.mark.parametrize(
    ("second", "codes"),
    [
        ("Y is tight end, 88", []),
        ("Y is tight end", []),
        ("Y is tight end, 87", ["E420"]),
        ("Y is slot, 88", ["E420"]),
    ],
)
def test_a_number_is_one_in_all_groups(second: str, codes: list[str]) -> None:
    result = compiled(
        BOOK + PEOPLE + f"\npersonnel Other\n    {second}\n", f"formation Set\n{REST}"
    )
    assert [d.code for d in result.diagnostics] == codes


@pytest.mark.parametrize(
    ("positions", "players", "words"),
    [
        ([Position.BACK, Position.TIGHT_END, *[Position.WIDEOUT] * 3], 11, "11 personnel of 11"),
        ([Position.BACK, *[Position.TIGHT_END] * 2, Position.SLOT], 11, "12 personnel of 11"),
        ([Position.BACK, Position.FULLBACK, *[Position.SLOTBACK] * 4], 12, "20 personnel of 12"),
        ([Position.TACKLE, Position.QUARTERBACK], 12, "00 personnel of 12"),
    ],
)
def test_the_staffs_two_digits(positions: list[Position], players: int, words: str) -> None:
    assert grouping(positions, players) == words

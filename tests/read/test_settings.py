"""The playbook block: the league's figures, lowered warnings, the look to run at."""

from __future__ import annotations

from dataclasses import fields

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from together import together

from stemline.checks.discovered import wordings
from stemline.checks.warnings_lowered import lowered
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot, Field, Side
from stemline.football.rulebook.codes import CODES
from stemline.football.rulebook.rules import Certainty, Code, Known
from stemline.playbook.playbook import Settings
from stemline.read.league import FIGURES, JERSEYS, NAMES, SOURCE, league_words
from stemline.session import Session
from stemline.source import Source


def compiled(*lines: str, code: str = "canadian amateur", more: str = "") -> Session:
    text = "\n".join(["playbook Gulls", f"    code {code}", *(f"    {line}" for line in lines)])
    return Session([Source("book.play", f"{text}\n\n{more}")], "gulls")


def read(*lines: str, code: str = "canadian amateur", more: str = "") -> Settings:
    made = compiled(*lines, code=code, more=more)
    assert made.book is not None
    return made.book.settings


def codes(*lines: str, code: str = "canadian amateur", more: str = "") -> list[str]:
    return [d.code for d in compiled(*lines, code=code, more=more).diagnostics]


def only(*lines: str, code: str = "canadian amateur") -> Diagnostic:
    (found,) = compiled(*lines, code=code).diagnostics
    return found


def changed(code: Code, key: str) -> set[str]:
    """The figures that are not the code's own."""
    own = CODES[key]
    return {f.name for f in fields(code) if getattr(code, f.name) != getattr(own, f.name)}


# The league's figures.


SETTING: tuple[tuple[str, str, object], ...] = (
    ("players is 12", "players", 12),
    ("ineligible is 4", "ineligible", 4),
    ("length is 100", "length", 100),
    ("width is 60", "width", 60),
    ("width is 60 yards", "width", 60),
    ("end zone is 15", "end_zone", 15),
    ("hash is 22.5", "hash_from_sideline", 22.5),
    ("restraining is 0", "restraining", 0),
    ("on line is 6", "on_line", 6),
    ("On Line is 6 men", "on_line", 6),
    ("in backfield is 4", "in_backfield", 4),
    ("in backfield is no limit", "in_backfield", None),
    ("motion at snap is 1", "motion_most", 1),
    ("motion at snap is 1 man", "motion_most", 1),
    ("motion at snap is 0", "motion_most", 0),
    ("motion at snap is no limit", "motion_most", None),
    ("set time is 1.5", "motion_set", 1.5),
    ("set time is 1 second", "motion_set", 1),
    ("downfield is 3", "downfield", 3),
    ("downfield is no limit", "downfield", None),
    ("ineligible numbers is 40-69", "ineligible_numbers", ((40, 69),)),
    (
        "ineligible numbers is 90-99, 50-79, 7",
        "ineligible_numbers",
        ((7, 7), (50, 79), (90, 99)),
    ),
    ("ineligible numbers is none", "ineligible_numbers", ()),
)


@together(("line", "field", "value"), SETTING)
def test_a_league_figure_takes_the_place_of_the_codes(line: str, field: str, value: object) -> None:
    code = read(f"league {line}").code
    figure = getattr(code, field)
    assert figure.value == value
    assert (figure.certainty, figure.source) == (Certainty.HOUSE, SOURCE)
    assert figure.binding and figure.cited == "this playbook's league"
    also = {"also_ineligible"} if field == "ineligible_numbers" else set()
    assert changed(code, "canadian amateur") == {field} | also


@pytest.mark.parametrize(
    ("men", "line", "ineligible", "on_line", "back"),
    [(10, 5, 5, 7, 3), (9, 3, 3, 5, 4), (8, 3, 3, 5, 3), (7, 3, 3, 5, 2), (6, 1, 0, 3, 3)],
)
def test_a_league_plays_with_fewer_men(
    men: int, line: int, ineligible: int, on_line: int, back: int
) -> None:
    """What hangs on the number follows, and only warns: the league has not said it."""
    code = read(f"league players is {men}").code
    assert code.players == Known(men, Certainty.HOUSE, SOURCE) and len(code.line) == line
    follows = (code.ineligible, code.on_line, code.in_backfield)
    assert [f.value for f in follows] == [ineligible, on_line, back]
    assert all(f.certainty is Certainty.MEMORY for f in follows)
    assert code.title == f"Canadian amateur, {men} men"
    said = read("league on line is 4", f"league players is {men}").code
    assert said.on_line == Known(4, Certainty.HOUSE, SOURCE)


def test_every_name_has_been_tried_above() -> None:
    assert {line.casefold().partition(" is ")[0] for line, _, _ in SETTING} == set(NAMES)


def test_several_figures_in_any_order_and_before_the_code() -> None:
    text = "playbook Gulls\n    league hash is 20\n    code high school\n    league width is 50\n"
    made = Session([Source("book.play", text)], "gulls")
    assert made.book is not None and made.diagnostics == ()
    code = made.book.settings.code
    assert (code.width.value, code.hash_from_sideline.value) == (50, 20)
    assert changed(code, "high school") == {"width", "hash_from_sideline"}


def test_a_narrower_field_moves_its_sidelines_and_hashes() -> None:
    made = read("league width is 60", "league hash is 22")
    field = Field(made.code, BallSpot.LEFT_HASH, made.numbers)
    assert field.sideline(Side.LEFT) == -22
    assert field.sideline(Side.RIGHT) == 38


WIDE = """
formation Wide
    X at away, 25 outside tackle, on line
    W at away, 4 outside tackle, off line
    H at call, 6 outside tackle, off line
    S at call, 3 outside tackle, off line
    Z at call, numbers, on line
    R at beside Q, 5 deep
    Q at ball, 5 deep
"""


def test_a_man_goes_over_the_sideline_of_a_narrower_field() -> None:
    assert codes("league hash is 31", more=WIDE) == []
    narrow = compiled("league hash is 24", "league width is 53", more=WIDE).diagnostics
    assert {d.code for d in narrow} == {"E511"}


@together(
    ("line", "code", "nearest"),
    [
        ("widht is 60", "E328", ("width",)),
        ("on lne is 7", "E328", ("on line",)),
        ("folk is 10", "E328", ()),
        ("quarters is 12", "E328", ()),
        ("width of field is 60", "E401", ()),
        ("width is sixty", "E329", ()),
        ("width is 6", "E329", ()),
        ("width is 55-65", "E329", ()),
        ("width is none", "E329", ()),
        ("width is no limit", "E329", ()),
        ("width is 60, 65", "E329", ()),
        ("width is 60 feet", "E401", ()),
        ("width", "E329", ()),
        ("on line is 6.5", "E329", ()),
        ("on line is 13", "E329", ()),
        ("motion at snap is none", "E329", ()),
        ("set time is 60", "E329", ()),
        ("ineligible numbers is 79-50", "E329", ()),
        ("ineligible numbers is 50-79, lots", "E329", ()),
        ("ineligible numbers is 150", "E329", ()),
        ("ineligible numbers is 50.5", "E329", ()),
        ("ineligible numbers is 50 60", "E329", ()),
    ],
)  # fmt: skip
def test_a_wrong_league_line(line: str, code: str, nearest: tuple[str, ...]) -> None:
    """One error, and the code's own figure stands."""
    found = only(f"league {line}")
    assert (found.code, found.nearest) == (code, nearest)
    assert changed(read(f"league {line}").code, "canadian amateur") == set()


def test_the_men_of_the_side_bound_a_count() -> None:
    assert codes("league on line is 8", code="eight-man") == []
    found = only("league on line is 9", code="eight-man")
    assert dict(found.values)["wanted"] == "1 to 8 men"


@together("name", NAMES)
def test_the_help_beside_a_wrong_value_is_itself_right(name: str) -> None:
    help_line = dict(only(f"league {name} is many").values)["example"]
    assert codes(help_line) == []


def test_a_figure_is_set_once() -> None:
    found = only("league hash is 22", "league hash is 24")
    assert found.code == "E531" and len(found.related) == 1
    assert read("league hash is 22", "league hash is 24").code.hash_from_sideline.value == 22


@pytest.mark.parametrize(
    "lines",
    [
        ("league width is 40",),
        ("league hash is 33",),
        ("league width is 60", "league hash is 31"),
        ("house numbers is 33",),
        ("league width is 50", "house numbers is 26"),
    ],
)
def test_marks_past_the_middle_are_an_error_and_the_code_stands(lines: tuple[str, ...]) -> None:
    found = only(*lines)
    assert found.code == "E530" and found.span.line > 2
    made = read(*lines)
    assert changed(made.code, "canadian amateur") == set()
    assert made.numbers == 10


def test_a_hash_in_the_middle_itself_is_a_field() -> None:
    assert codes("league width is 48") == []


lengths = st.integers(40, 120)
widths = st.integers(48, 70)


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(sorted(CODES)), lengths, st.integers(0, 3))
def test_a_figure_set_to_any_value_is_read_back(key: str, length: int, motion: int) -> None:
    made = read(f"league length is {length}", f"league motion at snap is {motion}", code=key)
    assert (made.code.length.value, made.code.motion_most.value) == (length, motion)
    assert changed(made.code, key) == {"length", "motion_most"}


def test_the_table_names_fields_that_a_code_has() -> None:
    names = {f.name for f in fields(Code)}
    assert {figure.field for figure in FIGURES.values()} <= names
    assert JERSEYS not in FIGURES
    for figure in FIGURES.values():
        assert figure.most is None or figure.least < figure.most
        for code in CODES.values():
            value = getattr(code, figure.field).value
            inside = value is None or figure.least <= value <= (figure.most or code.players.value)
            assert inside, (code.key, figure.field)


def test_the_book_says_what_the_league_sets() -> None:
    made = read(
        "league hash is 22.5",
        "league in backfield is no limit",
        "league motion at snap is 1",
        "league ineligible numbers is 90-99, 7",
    )
    assert league_words(made.code) == (
        "hash 22.5 yards, in backfield no limit, motion at snap 1 man, "
        "ineligible numbers 7 and 90-99"
    )
    assert league_words(read("league ineligible numbers is none").code) == "ineligible numbers none"
    assert {league_words(code) for code in CODES.values()} == {""}


# Warnings that are lowered.


def test_lowered_codes_are_kept_in_order_and_once() -> None:
    assert lowered(read("lower W650, w974", "lower W650")) == ("W650", "W974")
    assert lowered(read()) == ()
    assert compiled("lower W650").lowered == ("W650",)


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("lower all", "E320"),
        ("lower warnings", "E320"),
        ("lower W999", "E320"),
        ("lower W", "E320"),
        ("lower W650 W974", "E320"),
        ("lower E510", "E321"),
        ("lower e510", "E321"),
    ],
)
def test_nothing_but_a_warning_by_its_code_is_lowered(line: str, code: str) -> None:
    assert only(line).code == code
    assert lowered(read(line)) == ()


def test_no_error_can_be_lowered_by_any_name() -> None:
    errors = [code for code in wordings() if code.startswith("E")]
    assert len(errors) > 100
    for some in (errors[0::2], errors[1::2]):  # a block of all would be too long
        lines = [f"lower {code}" for code in some]
        assert lowered(read(*lines)) == ()
        assert codes(*lines) == ["E321"] * len(some)


# The look that runs are drawn against.

LOOK = "look Even Three\n    T at 3, strong\n"


def test_the_look_to_run_at_is_found_by_name() -> None:
    made = compiled("against even three", more=LOOK)
    assert made.book is not None and made.book.settings.against == "even three"
    assert "E310" not in [d.code for d in made.diagnostics]


def test_a_look_that_is_not_there_is_said_with_the_nearest() -> None:
    made = compiled("against Evn Three", more=LOOK)
    (found,) = (d for d in made.diagnostics if d.code == "E310")
    assert found.nearest == ("Even Three",) and dict(found.values)["kind"] == "look"
    assert made.book is not None and made.book.settings.against == ""

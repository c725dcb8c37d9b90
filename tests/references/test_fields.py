"""The fields of the code table against the rule books and against sportypy's tables.

Where sources differ the test names the difference and which edition decides.
"""

from __future__ import annotations

import json
from importlib.metadata import version
from importlib.resources import files
from typing import cast

import pytest

from references.figures import HASHES, Hash
from stemline.football.field import BallSpot, Field, Side
from stemline.football.rulebook.codes import CANADIAN_AMATEUR, CODES, HIGH_SCHOOL, Certainty

Table = dict[str, float]
NEAREST = 1e-4
"""sportypy prints yards to four places."""


def sportypy(league: str) -> Table:
    text = files("sportypy").joinpath("data/surface_dimensions.json").read_text(encoding="utf-8")
    return cast(dict[str, dict[str, Table]], json.loads(text))["football"][league]


def hash_from_sideline(table: Table) -> float:
    return (table["field_width"] - table["inbound_cross_hashmark_separation"]) / 2


# US high school: sportypy has a table of its own.


def test_the_tables_are_those_of_the_version_named() -> None:
    assert version("sportypy").startswith("1.")
    assert "sportypy 1.0.0" in HIGH_SCHOOL.hash_from_sideline.source


def test_the_high_school_field_is_sportypys() -> None:
    table = sportypy("nfhs11")
    assert HIGH_SCHOOL.length.value == table["field_length"]
    assert HIGH_SCHOOL.width.value == pytest.approx(table["field_width"], abs=NEAREST)
    assert HIGH_SCHOOL.end_zone.value == table["endzone_length"]
    assert HIGH_SCHOOL.hash_from_sideline.value == pytest.approx(
        hash_from_sideline(table), abs=NEAREST
    )


def test_high_school_numbers_stand_from_seven_to_nine_yards() -> None:
    """A man on the numbers stands on their middle. NFHS 7-2-1: nine-yard marks where a field
    has no numbers, which is where the tops of the numbers are."""
    table = sportypy("nfhs11")
    bottom, height = table["sideline_to_bottom_of_numbers"], table["number_height"]
    assert (bottom, bottom + height) == (7, 9)
    assert HIGH_SCHOOL.numbers_from_sideline.value == bottom + height / 2


def test_the_high_school_hashes_part_the_field_in_three() -> None:
    here = Field(HIGH_SCHOOL, BallSpot.MIDDLE, 8)
    lanes = [
        here.hash_mark(Side.LEFT) - here.sideline(Side.LEFT),
        here.hash_mark(Side.RIGHT) - here.hash_mark(Side.LEFT),
        here.sideline(Side.RIGHT) - here.hash_mark(Side.RIGHT),
    ]
    assert lanes == pytest.approx([160 / 9] * 3)
    assert lanes[0] * 3 == pytest.approx(53 + 4 / 12)  # 53 ft 4 in


# Canadian amateur: sportypy has no table of it, and its Canadian table is an old one.


def test_sportypy_has_no_canadian_amateur_table() -> None:
    """If it ever gets one, it is to be laid beside ours."""
    text = files("sportypy").joinpath("data/surface_dimensions.json").read_text(encoding="utf-8")
    leagues = set(json.loads(text)["football"])
    assert leagues == {"cfl", "ncaa", "nfhs11", "nfhs9", "nfhs8", "nfhs6", "nfl"}


def test_the_canadian_field_is_as_large_for_amateurs_as_for_professionals() -> None:
    table = sportypy("cfl")
    assert CANADIAN_AMATEUR.length.value == table["field_length"] == 110
    assert CANADIAN_AMATEUR.width.value == table["field_width"] == 65
    assert CANADIAN_AMATEUR.end_zone.value == table["endzone_length"] == 20


def test_sportypys_canadian_hashes_are_those_from_before_2022() -> None:
    """Conflict: 17 yards apart in sportypy, 9 by the league's announcement of 27 April 2022.

    The announcement is later and decides for the professional code. The amateur book seen has
    24 and 17, nothing was found that amateurs followed, and so 24 stands for them: the same
    figure as sportypy's, from another source.
    """
    old, new = (h for h in HASHES if h.code == "canadian professional")
    table = sportypy("cfl")
    assert table["inbound_cross_hashmark_separation"] == old.apart != new.apart
    assert hash_from_sideline(table) == old.from_sideline != new.from_sideline
    assert CANADIAN_AMATEUR.hash_from_sideline.value == old.from_sideline
    assert "Amateur" in CANADIAN_AMATEUR.hash_from_sideline.source


def test_sportypys_other_canadian_figure_is_left_alone() -> None:
    """It also has 15.67 yards as a separation, without a source; no rule book seen has that."""
    assert sportypy("cfl")["inbound_hashmark_separation"] == pytest.approx(15.6667)
    assert 15.6667 not in {h.apart for h in HASHES}


@pytest.mark.parametrize("marks", HASHES, ids=lambda h: f"{h.code} {h.edition}")
def test_hashes_from_the_sideline_and_apart_make_up_the_width(marks: Hash) -> None:
    width = {"canadian": 65, "eight-man": 40}.get(marks.code.split()[0], 160 / 3)
    assert 2 * marks.from_sideline + marks.apart == pytest.approx(width)


@pytest.mark.parametrize(("league", "code"), [("ncaa", "college"), ("nfl", "professional")])
def test_the_other_american_hashes_agree(league: str, code: str) -> None:
    """The book's figure, the table's and ours are one."""
    (marks,) = (h for h in HASHES if h.code == code)
    table = sportypy(league)
    assert hash_from_sideline(table) == pytest.approx(marks.from_sideline, abs=NEAREST)
    assert table["inbound_cross_hashmark_separation"] == pytest.approx(marks.apart, abs=NEAREST)
    assert CODES[code].hash_from_sideline.value == pytest.approx(marks.from_sideline)


LEAGUES = {
    "canadian professional": "cfl",
    "high school": "nfhs11",
    "college": "ncaa",
    "professional": "nfl",
    "nine-man": "nfhs9",
    "eight-man": "nfhs8",
    "six-man": "nfhs6",
}
NEWER = {("canadian professional", "hash_from_sideline")}
"""Where the book is newer than the table and decides: 28 yards since 2022, and the table has 24."""


@pytest.mark.parametrize("key", LEAGUES)
def test_a_field_is_sportypys_but_where_a_newer_book_decides(key: str) -> None:
    code, table = CODES[key], sportypy(LEAGUES[key])
    middle_of_numbers = table["sideline_to_bottom_of_numbers"] + table["number_height"] / 2
    theirs = {
        "length": table["field_length"],
        "width": table["field_width"],
        "end_zone": table["endzone_length"],
        "hash_from_sideline": hash_from_sideline(table),
        "numbers_from_sideline": middle_of_numbers,
    }
    for name, value in theirs.items():
        mine = getattr(code, name)
        assert (mine.value == pytest.approx(value, abs=NEAREST)) == ((key, name) not in NEWER), name


@pytest.mark.parametrize(("key", "name"), sorted(NEWER))
def test_a_figure_that_differs_from_sportypys_is_published(key: str, name: str) -> None:
    mine = getattr(CODES[key], name)
    assert mine.certainty is Certainty.PUBLISHED and "2022" in mine.source


def test_a_figure_from_the_table_says_so() -> None:
    """And a code that sportypy does not hold has none."""
    for key, code in CODES.items():
        from_table = {
            n for n, v in vars(code).items() if getattr(v, "certainty", 0) is Certainty.TABLE
        }
        assert bool(from_table) == (key in LEAGUES)
        assert all("sportypy 1.0.0, " in getattr(code, name).source for name in from_table)


def test_the_hash_of_2022_is_of_the_professional_code_and_not_of_the_amateur_one() -> None:
    new = next(h for h in HASHES if h.edition == "2022 on")
    assert CODES["canadian professional"].hash_from_sideline.value == new.from_sideline == 28
    assert CANADIAN_AMATEUR.hash_from_sideline.value == 24


@pytest.mark.parametrize("code", CODES)
def test_the_ball_on_a_hash_is_the_printed_distance_from_its_sideline(code: str) -> None:
    rule = CODES[code]
    here = Field(rule, BallSpot.LEFT_HASH, rule.numbers_from_sideline.value)
    assert -here.sideline(Side.LEFT) == pytest.approx(rule.hash_from_sideline.value)
    assert here.sideline(Side.RIGHT) == pytest.approx(
        rule.width.value - rule.hash_from_sideline.value
    )

"""The fields of the code table against the rule books and against sportypy's tables.

Where sources differ the test names the difference and which edition decides.
"""

from __future__ import annotations

import json
from importlib.metadata import version
from importlib.resources import files
from typing import cast

import pytest

from references.figures import HASHES, PRINTED, TABLE, Hash, Printed
from stemline.football.codes import CANADIAN_AMATEUR, CODES, HIGH_SCHOOL, Certainty, Figure
from stemline.football.field import BallSpot, Field, Side

Table = dict[str, float]
NEAREST = 1e-4
"""sportypy prints yards to four places."""


def sportypy(league: str) -> Table:
    text = files("sportypy").joinpath("data/surface_dimensions.json").read_text(encoding="utf-8")
    return cast(dict[str, dict[str, Table]], json.loads(text))["football"][league]


def hash_from_sideline(table: Table) -> float:
    return (table["field_width"] - table["inbound_cross_hashmark_separation"]) / 2


def figure(code: str, name: str) -> Figure:
    made = getattr(CODES[code], name)
    assert isinstance(made, Figure)
    return made


@pytest.mark.parametrize("printed", PRINTED, ids=lambda p: f"{p.code} {p.figure}")
def test_the_code_table_is_as_printed(printed: Printed) -> None:
    mine = figure(printed.code, printed.figure)
    assert mine.value == pytest.approx(printed.value)
    wanted = Certainty.TABLE if printed.seen == TABLE else Certainty.PUBLISHED
    assert mine.certainty is wanted


def test_every_published_figure_of_the_table_is_checked_here() -> None:
    """A figure that calls itself published, or from a table, stands in the copied figures."""
    copied = {(p.code, p.figure) for p in PRINTED}
    for code in CODES.values():
        for name, mine in vars(code).items():
            sure = isinstance(mine, Figure) and mine.certainty in (
                Certainty.PUBLISHED,
                Certainty.TABLE,
            )
            if sure and name != "numbers_from_sideline":
                assert (code.key, name) in copied


def test_a_figure_from_memory_or_custom_calls_itself_so() -> None:
    """No rule text was seen for these: they are defaults and make no error by themselves."""
    assert CANADIAN_AMATEUR.numbers_from_sideline.certainty is Certainty.MEMORY
    assert CANADIAN_AMATEUR.restraining.certainty is Certainty.MEMORY


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
    width = 65 if marks.code.startswith("canadian") else 160 / 3
    assert 2 * marks.from_sideline + marks.apart == pytest.approx(width)


@pytest.mark.parametrize(("league", "code"), [("ncaa", "college"), ("nfl", "professional")])
def test_the_other_american_hashes_agree(league: str, code: str) -> None:
    """Codes that are not compiled yet, kept so that a new row starts from a checked figure."""
    (marks,) = (h for h in HASHES if h.code == code)
    table = sportypy(league)
    assert hash_from_sideline(table) == pytest.approx(marks.from_sideline, abs=NEAREST)
    assert table["inbound_cross_hashmark_separation"] == pytest.approx(marks.apart, abs=NEAREST)


@pytest.mark.parametrize("code", CODES)
def test_the_ball_on_a_hash_is_the_printed_distance_from_its_sideline(code: str) -> None:
    rule = CODES[code]
    here = Field(rule, BallSpot.LEFT_HASH, rule.numbers_from_sideline.value)
    assert -here.sideline(Side.LEFT) == pytest.approx(rule.hash_from_sideline.value)
    assert here.sideline(Side.RIGHT) == pytest.approx(
        rule.width.value - rule.hash_from_sideline.value
    )

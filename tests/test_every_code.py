"""Each code of the catalogue has something that causes it: a text of the corpus or of the page of
messages, or it is none that a text can cause."""

from __future__ import annotations

import re

import pytest
from errors_page import PAGE, doubted_only
from test_mistakes import CASES, MADE, STORED

from stemline.checks.discovered import rows, wordings
from stemline.diagnostics.catalogue.names import E302
from stemline.diagnostics.diagnostic import Mistake

OF_NO_SHORT_TEXT = {
    "a folder that its owner may not read": {"E109"},
    "a text as long as a bound": {"W104", "E140", "E141", "E142", "E143", "E144", "E145"},
    "what a command was asked for": {"E603", "E604", "E605", "E606"},
    "files of a theme": {"E905", "E907", *(f"E{n}" for n in range(911, 919))},
    "a week that fits on no page, or is worked out on paper": {
        *("E976", "E989", "W990", "E996", "W996", "E997"),
    },
    "the place where output goes": {f"E{n}" for n in range(951, 961)},
    "a rule that no text shows in doubt": doubted_only(),
}


def test_each_code_has_a_text_that_causes_it() -> None:
    """Those texts are compiled by the tests of the corpus and of the page."""
    caused = {code for case in CASES for code in case.codes}
    caused |= set(
        re.findall(r"^```(?:play|toml) fail (\w+)", PAGE.read_text("utf-8"), re.MULTILINE)
    )
    caused |= {code for codes in STORED.values() for code in codes}
    caused |= {code for _, code in MADE.values()}
    assert wordings().keys() - caused == set().union(*OF_NO_SHORT_TEXT.values())


def test_what_varies_or_is_listed_is_a_field() -> None:
    for row in rows():
        assert {*row.varies} - {"call"} <= set(row.fields), row
        assert not row.listed or row.listed in row.fields


def test_a_wording_asks_for_no_field_that_its_code_does_not_carry() -> None:
    for row in rows():
        carried = {*row.fields, *({"rules", "source"} if "resting" in row.fields else ())}
        for worded in row.worded().values():
            asked = re.findall(r"\{(\w+)\}", worded.message + worded.label + worded.help)
            assert set(asked) <= carried, row


@pytest.mark.parametrize("values", [{"kind": "look"}, {"kind": "look", "name": "A", "man": "M"}])
def test_a_code_is_not_made_with_a_field_too_few_or_too_many(values: dict[str, str]) -> None:
    """What the type checker says before, where it is run."""
    with pytest.raises(TypeError):
        E302(**values)


def test_a_code_is_frozen_and_equal_by_what_it_carries() -> None:
    one = E302(kind="look", name="A")
    assert one == E302(kind="look", name="A") != E302(kind="look", name="B")
    assert len({one, E302(kind="look", name="A")}) == 1
    with pytest.raises(AttributeError):
        one.name = "B"  # type: ignore[misc]


def test_a_row_that_rounds_a_field_itself_is_refused_where_it_is_written() -> None:
    with pytest.raises(TypeError, match=r"W999 wants \{got:.1f\}: a field is words"):

        class W999(Mistake):
            message = "{got:.1f} yards"

            got: float

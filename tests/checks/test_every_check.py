"""What holds of each check, whichever there are: its file says all of it."""

from __future__ import annotations

import re
from types import ModuleType

from together import together

import stemline.checks
from stemline.checks.discovered import files
from stemline.diagnostics.diagnostic import Mistake

CHECKS = [file for file in files(stemline.checks) if hasattr(file, "SAMPLES")]


@together("check", CHECKS, ids=lambda check: check.__name__)
def test_a_check_asks_says_why_and_what_to_write_instead(check: ModuleType) -> None:
    asks, _, why = (check.__doc__ or "").partition("\n\n")
    assert " ".join(asks.split()).endswith("?")
    assert len(why.split()) > 25


@together("check", CHECKS, ids=lambda check: check.__name__)
def test_a_check_has_a_sample_for_each_of_its_codes_and_no_other(check: ModuleType) -> None:
    own = [row for row in vars(check).values() if _is_row(row) and row.__module__ == check.__name__]
    codes = [code for row in own for code in row.worded()]
    assert re.findall(r"^### (\w+)$", check.SAMPLES, re.MULTILINE) == codes


def _is_row(value: object) -> bool:
    return isinstance(value, type) and issubclass(value, Mistake) and bool(value.title)

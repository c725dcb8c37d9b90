"""What holds of each check, whichever there are: its file says all of it."""

from __future__ import annotations

import re
from inspect import signature
from types import ModuleType

from errors_page import doubted
from together import together

import stemline.checks
from stemline.checks.asked import When
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
    """The warning of a rule that is an error elsewhere may go without."""
    own = [row for row in vars(check).values() if _is_row(row) and row.__module__ == check.__name__]
    codes = [code for row in own for code in row.worded()]
    told = re.findall(r"^### (\w+)$", check.SAMPLES, re.MULTILINE)
    assert told == [code for code in codes if code in told or code not in doubted()], (
        f"SAMPLES of {check.__file__} tells {told}, and wants a section `### CODE` for each of "
        f"{codes}"
    )


NO_CHECKS = {"asked", "called_in_time", "discovered", "legality", "proving", "snap"}
"""What the checks need, and the one that a week asks by itself."""
CHECKING = [f for f in files(stemline.checks) if f.__name__.rpartition(".")[2] not in NO_CHECKS]


GIVEN = {
    When.WRITTEN: "Settings",
    When.BOOK: "Playbook, Calls, Expander",
    When.TAUGHT: "Playbook, Calls",
    When.PLACED: "PlacedMen",
    When.STANDING: "Snap",
    When.MOVING: "Snap",
    When.CALLED: "Play",
    When.PROVED: "ProvedCall",
    When.THROWN: "Play, PlayingLevel",
}
CHOICES = "\n".join(f"    When.{one.name}, given {GIVEN[one]}: {one.value}" for one in When)


@together("check", CHECKING, ids=lambda check: check.__name__)
def test_a_check_is_asked(check: ModuleType) -> None:
    """A file that lacks one of these is never asked, and nobody would hear of it; one that takes
    what it is not given fails somewhere else."""
    name = check.__name__.rpartition(".")[2]
    when, asked = getattr(check, "WHEN", None), getattr(check, f"check_{name}", None)
    assert isinstance(when, When), (
        f"{check.__file__} wants a WHEN; a helper stands in NO_CHECKS of this test:\n{CHOICES}"
    )
    assert asked is not None, f"{check.__file__} wants a function check_{name}, by the file's name"
    takes = ", ".join(one.annotation for one in signature(asked).parameters.values())
    assert takes == GIVEN[when], f"check_{name} takes {takes}, asked {when}:\n{CHOICES}"


def _is_row(value: object) -> bool:
    return isinstance(value, type) and issubclass(value, Mistake) and bool(value.title)

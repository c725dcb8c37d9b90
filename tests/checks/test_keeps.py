"""What a tag promises of the quarterback's job, held against what it changes."""

from __future__ import annotations

import pytest
from resolve.texts import CROSSERS, THREE_TWO, TWELVE, compiled


def told(*tags: str, called: str) -> dict[str, dict[str, str]]:
    """What is wrong with Crossers called with tags: the values of each code."""
    text = f"dress Crossers\n    in Three Two\n    with {called}"
    blocks = (tag.replace("; ", "\n    ") for tag in tags)
    found = compiled(TWELVE, THREE_TWO, CROSSERS, *blocks, text).diagnostics
    return {d.code: dict(d.values) for d in found}


@pytest.mark.parametrize(
    ("lines", "codes"),
    [
        ("flat blocks edge; feet quick, 5, reset; keeps read, feet", {"E631", "E660", "E664"}),
        ("flat blocks edge; under runs return; keeps read", {"E664", "E663"}),
        ("read flat on quick > near on 3 > far on reset; keeps read", {"E661"}),
        ("read flat on quick > near on 3 > far on reset; keeps feet", set()),
        ("flat blocks edge; keeps feet, spots", {"E630"}),
        ("flat blocks edge; under runs return; keeps spots", {"E630", "E663"}),
        ("settle runs sit 14 over ball; spot top is 14 deep, over ball; keeps spots", {"E662"}),
    ],
)
def test_a_broken_promise_is_told_with_what_else_is_wrong(lines: str, codes: set[str]) -> None:
    assert told(f"tag Tried for Crossers; {lines}", called="Tried").keys() == codes


@pytest.mark.parametrize(
    ("order", "differs"),
    [
        ("near with dig on 3 > top on reset", ("4", "far on reset", "nothing")),
        ("near with dig on 3 > top on reset > far on reset > settle on reset",
         ("5", "nothing", "settle on reset")),
        ("near on 3 > top on reset > far on reset", ("2", "near with dig on 3", "near on 3")),
    ],
)  # fmt: skip
def test_the_first_look_that_differs_is_named(order: str, differs: tuple[str, ...]) -> None:
    lines = f"read flat on quick > {order}; keeps read"
    values = told(f"tag Tried for Crossers; {lines}", called="Tried")["E661"]
    assert (values["number"], values["before"], values["after"]) == differs


def test_a_promise_is_not_broken_by_another_tag_that_makes_none() -> None:
    free = "tag Free for Crossers; feet quick, 5, reset; read flat on quick > near on 5"
    firm = "tag Firm for Crossers; flat runs flat; keeps read, feet"
    assert told(free, firm, called="Free + Firm") == {}
    assert told(free + "; keeps feet", firm, called="Free + Firm").keys() == {"E660"}

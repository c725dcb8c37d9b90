"""A route that ends on the next man: what is offered is a line that a coach can type."""

from __future__ import annotations

import pytest
from football.timed import texts
from resolve.texts import ELEVEN, THREE_TWO, TWELVE

from stemline.diagnostics.diagnostic import Diagnostic

NEAR = "formation Near extends Three Two\n    S at call, 5 inside numbers, off line\n"
HITCH_FLAT = """
concept Hitch Flat
    a is strong #1
    a runs hitch
    b is strong #2
    {line}
    everyone else runs go
    back runs swing weak
    feet 3, hitch
    read b on 3 > a on hitch

dress Hitch Flat
    in Near
"""
CHECKED = """
protection Checked
    toward call
    line blocks slide
    helper is back
    helper blocks check edge then flat
"""
CURLS = """
formation Doubles
    X at away, numbers, on line
    H at away, 5 outside tackle, off line
    Y at call, end, on line
    Z at call, numbers, off line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

concept Curls
    everyone else runs hitch
    weak #1 runs hitch
    {line}
    feet 3
    read weak #1 on 3

dress Curls
    in Doubles
    to right
"""


def told(*parts: str) -> Diagnostic:
    result = texts(*parts)
    assert not [d for d in result.diagnostics if d.is_error], result.diagnostics
    (found,) = [d for d in result.diagnostics if d.code == "W807"]
    return found


@pytest.mark.parametrize(
    ("book", "text", "does"),
    [
        ((TWELVE, THREE_TWO, NEAR), HITCH_FLAT, "b runs flat"),
        ((TWELVE, THREE_TWO, NEAR), HITCH_FLAT, "b runs flat at 4"),
        ((ELEVEN,), CURLS, "back runs flat"),
        ((ELEVEN,), CURLS, "back runs check then flat"),
        ((ELEVEN,), CURLS, "back blocks chip then flat"),
        ((ELEVEN,), CURLS, "back blocks edge then flat"),
    ],
)
def test_the_line_that_is_offered_keeps_what_he_does_first(
    book: tuple[str, ...], text: str, does: str
) -> None:
    found = told(*book, text.format(line=does))
    offered = dict(found.values)["line"].split("`")[1]
    first = " then " in does
    assert dict(found.values)["line"].endswith("at the end of his line") is first
    line = f"{does} {offered}" if first else offered
    result = texts(*book, text.format(line=line))
    assert not [d for d in result.diagnostics if d.is_error or d.code == "W807"]


def test_of_a_route_that_the_protection_says_no_line_is_offered() -> None:
    text = CURLS.format(line="protect Checked")
    found = told(ELEVEN, CHECKED, text)
    assert dict(found.values)["line"] == ""
    assert text.splitlines()[found.span.line - 1].strip() == "protect Checked"

"""An end who has contain in one look and slants inside in the next leaves the edge to nobody.
Common practice, no published source."""

from __future__ import annotations

import pytest

from resolve.test_protections import LOOKS
from resolve.texts import DOUBLES_ELEVEN, ELEVEN, compiled
from stemline.session import Session

CONTAIN = LOOKS.partition("look Five")[0] + "    J rushes contain, weak\n"


def made(*lines: str) -> Session:
    child = "\nlook Slant extends Four\n" + "".join(f"    {line}\n" for line in lines)
    go = "\nconcept Go\n    a is strong #1\n    a runs go\n\ndress Go\n    in Doubles\n"
    return compiled(ELEVEN, DOUBLES_ELEVEN, CONTAIN + child + go)


def told(*lines: str) -> list[str]:
    found = made(*lines).diagnostics
    assert not [d for d in found if d.is_error]
    return [dict(d.values)["who"] for d in found if d.code == "W429"]


@pytest.mark.parametrize("line", ["J rushes B, weak", "J slants in", "J slants inside"])
def test_contain_that_comes_inside_is_told_with_who_may_have_it(line: str) -> None:
    assert told(line) == ["R"]


@pytest.mark.parametrize(
    "lines",
    [
        ("J slants in", "W rushes contain, weak"),
        ("J slants in", "W rushes contain, either"),
        ("E slants in",),
        ("J covers flat, weak",),
    ],
)
def test_an_edge_that_somebody_has_is_not(lines: tuple[str, ...]) -> None:
    assert told(*lines) == []


@pytest.mark.parametrize(("man", "gap"), [("J", "B"), ("E", "B"), ("T", "A"), ("N", "A")])
def test_a_slant_in_is_the_gap_inside_of_his_own(man: str, gap: str) -> None:
    book = made(f"{man} slants in").book
    assert book is not None
    (said,) = book.looks["slant"].duties[man]
    assert said.value.words[0].startswith(gap)

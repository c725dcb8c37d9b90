"""Two men who are both read and whose ways end in one place."""

from __future__ import annotations

import re

import pytest
from football.timed import texts
from resolve.texts import THREE_TWO, TWELVE, dress

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.session import Session

LEAK = """
concept Leaks
    over is strong inside
    over runs {over}
    flat is back
    flat runs {flat}
    settle is strong #2
    settle runs sit 8 over ball
    everyone else runs go
    feet 3, reset, reset
    read {read}
"""
THREE = "flat on 3 > over on reset > settle on reset"


def compiled(over: str = "cross 6", flat: str = "leak weak", read: str = THREE) -> Session:
    text = LEAK.format(over=over, flat=flat, read=read)
    return texts(TWELVE, THREE_TWO, text, dress("Three Two", concept="Leaks"))


def told(result: Session) -> list[Diagnostic]:
    return [d for d in result.diagnostics if d.code == "W808"]


def test_two_reads_that_end_in_one_place_are_told_at_the_second() -> None:
    (found,) = told(compiled())
    values = dict(found.values)
    assert (values["target"], values["other"]) == ("over", "flat")
    assert float(values["apart"]) < 2
    assert found.span.column == len(f"    read {THREE.partition(' > ')[0]} > ") + 1


def test_each_line_that_is_offered_mends_it() -> None:
    (found,) = told(compiled())
    (line,) = re.findall("`flat runs ([^`]+)`", str(dict(found.values)["instead"]))
    assert told(compiled(flat=line)) == []
    assert told(compiled(read="flat with over on 3 > settle on reset")) == []


@pytest.mark.parametrize(
    ("over", "flat", "read"),
    [
        ("cross 6", "leak 2 weak", THREE),
        ("cross 6", "leak weak", "flat on 3 > settle on reset"),
        ("post", "leak weak", THREE),
    ],
    ids=["another depth", "one is no read", "elsewhere"],
)
def test_men_who_end_apart_or_of_whom_one_is_not_read_are_not(
    over: str, flat: str, read: str
) -> None:
    assert told(compiled(over, flat, read)) == []


def test_two_whom_the_ball_finds_side_by_side_are_told_once() -> None:
    result = compiled(over="sit 8 over ball")
    codes = [d.code for d in result.diagnostics]
    assert codes.count("W804") + codes.count("W808") <= 2 and "W808" not in codes

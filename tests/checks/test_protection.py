"""Free rushers: who is told, and when a throw answers for him."""

from __future__ import annotations

import pytest
from resolve.test_protections import THROW, concept
from resolve.texts import DOUBLES_ELEVEN, ELEVEN, compiled, dress, said

from stemline.session import Session

LOOK = """
look Storm
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    M at 20, strong
    W at 20, weak
    C at strong #1, 8 deep
    B at weak #1, 8 deep
    S at apex, strong, 6 deep
    R at apex, weak, 6 deep
    F at middle, 13 deep
    M rushes A, strong
    W rushes B, weak
    C covers third, strong
    B covers third, weak
    F covers third, middle
    S covers flat, strong
    R covers flat, weak

look Flood extends Storm
    R rushes contain, weak
"""
OUT = ("out is back", "out runs swing")


def called(*lines: str, look: str, more: str = "", sides: bool = True) -> Session:
    """One concept against one look of the book."""
    calls = dress("Doubles", f"against {look}", concept="Throw", sides=sides)
    return compiled(ELEVEN, DOUBLES_ELEVEN, LOOK, more, concept(*OUT, *lines), calls)


def told(result: Session) -> list[str]:
    return said(d for d in result.diagnostics if d.code in ("W691", "W692"))


def test_a_free_rusher_without_an_answer_is_told_by_name() -> None:
    assert told(called("protect five", look="Storm", sides=False)) == [
        "W691 2: against Storm one more comes than five blocks: [W] is free from the weak side, "
        "and nothing is thrown for him (Doubles Right Throw)"
    ]


def test_a_pressure_order_is_an_answer() -> None:
    assert told(called("protect five", "pressure a on quick", look="Storm")) == []


def test_a_hot_line_of_the_protection_is_an_answer() -> None:
    own = "protection Wall\n    line blocks man\n    hot nearest slant\n"
    assert told(called("protect Wall", look="Storm", more=own)) == []
    cold = own.replace("    hot nearest slant\n", "")
    assert len(told(called("protect Wall", look="Storm", more=cold))) == 1


def test_nobody_is_free_where_enough_stay_in() -> None:
    stay = concept("help is back", "help blocks inside out", "protect six")
    calls = dress("Doubles", "against Storm", concept="Throw")
    assert told(compiled(ELEVEN, DOUBLES_ELEVEN, LOOK, stay, calls)) == []


def test_two_free_rushers_are_told_whatever_is_thrown() -> None:
    (line,) = told(called("protect five", "pressure a on quick", look="Flood", sides=False))
    assert line.startswith("W692 2: against Flood two more come than five blocks: ")
    assert " or " not in line


def test_calls_that_fail_alike_are_told_once() -> None:
    (line,) = told(called("protect five", look="Storm"))
    assert "(Doubles Right Throw and 1 more call)" in line


@pytest.mark.parametrize("line", ["", "against zone", "against man, press"])
def test_without_a_look_nothing_is_told(line: str) -> None:
    calls = dress("Doubles", *([line] if line else []), concept="Throw")
    text = concept(*OUT, "protect five")
    assert told(compiled(ELEVEN, DOUBLES_ELEVEN, LOOK, text, calls)) == []


def test_a_concept_without_a_protection_is_not_judged() -> None:
    assert "protect" not in THROW
    assert told(called(look="Storm")) == []

"""What is wrong with a look is said once, with the formations that show it."""

from __future__ import annotations

import pytest
from lineup.look_texts import FRONT, look
from resolve.texts import ELEVEN, THREE_TWO, TWELVE, codes, compiled, message, said

from stemline.checks import looks_line_up
from stemline.checks.looks_line_up import check_looks_line_up
from stemline.resolve.expand import Expander


def test_eleven_men_are_refused_by_a_twelve_man_code() -> None:
    text = "\n".join(line for line in FRONT.splitlines() if not line.startswith("    D "))
    result = compiled(TWELVE, THREE_TWO, text)
    assert codes(result) == ["E480"]
    assert "Front has 11 defenders, and 12 play" in message(result.diagnostics[0])
    assert "Canadian amateur" in message(result.diagnostics[0])


def test_the_same_eleven_are_right_for_an_eleven_man_code() -> None:
    text = "\n".join(line for line in FRONT.splitlines() if not line.startswith("    D "))
    assert codes(compiled(ELEVEN, text)) == []


def test_a_cause_is_said_once_for_all_formations_sides_and_spots() -> None:
    text = THREE_TWO + THREE_TWO.replace("Three Two", "Four Wide").replace(
        "W at away, 5 outside", "W at call, 2 outside"
    )
    child = "look Test extends Front\n    D at weak #2, 8 deep\n"
    result = compiled(TWELVE, text, f"{FRONT}\n{child}")
    assert [d.code for d in result.diagnostics if d.code.startswith(("E4", "W48"))] == ["W489"]
    found = next(d for d in result.diagnostics if d.code == "W489")
    assert message(found).endswith(
        "[D] has no place against Four Wide: there is no weak #2; drawn outside the end man"
    )


def test_a_motion_that_leaves_a_defender_without_his_man_is_found() -> None:
    motion = "motion Over\n    away #2 moves to call, 2 outside tackle\n    snap set"
    text = "concept Deep\n    one is strong #1\n    one runs go"
    child = "look Test extends Front\n    D covers man, weak #2\n"
    still = compiled(TWELVE, THREE_TWO, f"{FRONT}\n{child}")
    assert codes(still) == []
    moved = compiled(
        TWELVE, THREE_TWO, f"{FRONT}\n{child}", motion, text,
        "dress Deep\n    in Three Two motion Over",
    )  # fmt: skip
    found = [d for d in moved.diagnostics if d.code == "W492"]
    assert [message(d) for d in found] == [
        "in Test, [D] covers nobody against Three Two with Over: there is no weak #2"
    ]


def test_pairs_that_are_too_many_are_not_tried_and_counted(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    text = THREE_TWO + THREE_TWO.replace("Three Two", "Four Wide")
    monkeypatch.setattr(looks_line_up, "MOST_PAIRS", 1)
    found = [d for d in compiled(TWELVE, text, FRONT).diagnostics if d.code == "W104"]
    assert [message(d) for d in found] == [
        "the looks and formations of this playbook make 2 pairs, of which 1 were tried"
    ]
    monkeypatch.setattr(looks_line_up, "MOST_PAIRS", 2)
    assert "W104" not in codes(compiled(TWELVE, text, FRONT))


def test_a_broken_look_is_lined_up_by_nobody() -> None:
    result = look("M at nowhere, 4 deep")
    assert codes(result) == ["E481"]
    assert result.book is not None and result.book.looks["test"].broken
    assert not result.book.looks["front"].broken
    assert "E481" not in [
        d.code for d in check_looks_line_up(result.book, result.calls, Expander(result.book))
    ]


@pytest.mark.parametrize(
    ("line", "wrong"),
    [("", False), ("against Front", False), ("against Test", True), ("against man", True)],
)
def test_a_call_is_proved_against_a_look_by_name(line: str, wrong: bool) -> None:
    """Against man the only man read runs past his spot: nobody comes there."""
    covers = ("C", "strong #1"), ("H", "strong #2"), ("S", "strong #3"), ("D", "weak #2")
    free = "".join(f"    {who} covers man, {whom}\n" for who, whom in (*covers, ("B", "weak #1")))
    concept = (
        "concept Sit",
        "wide is strong #1",
        "wide runs hitch",
        "wide runs go when man",
        "spot out is low, over numbers, strong",
        "read out",
    )
    result = compiled(
        TWELVE,
        THREE_TWO,
        f"{FRONT}\nlook Test extends Front\n{free}    M covers man, back\n",
        "\n    ".join(concept),
        f"dress Sit\n    in Three Two\n    {line}",
    )
    assert ("E630" in codes(result)) == wrong, said(result.diagnostics)
    assert not {"E412", "E480", "W492", "W493"} & set(codes(result))


def test_a_fault_of_a_look_is_not_said_again_for_each_call() -> None:
    look = FRONT + "\nlook Test extends Front\n    D covers man, weak #3\n"
    concept = "concept Sit\n    wide is strong #1\n    wide runs dig 12"
    dress = "dress Sit\n    in Three Two\n    to right, left\n    against Test"
    result = compiled(TWELVE, THREE_TWO, look, concept, dress)
    assert codes(result).count("W492") == 1

"""Down and distance as on a coach's call sheet: each is answered with the line that is read."""

from __future__ import annotations

import pytest
from corpus.mixing import base

from stemline.diagnostics.catalogue.football import E404
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.read.situation_lines import head_line
from stemline.session import Session
from stemline.source import Source

HEADS = [
    ("2nd and 7+", "2nd and 7 or more"),
    ("3rd & 7", "3rd and 7"),
    ("2nd&7+", "2nd and 7 or more"),
    ("2nd & long", "2nd and long"),
    ("1st & goal", "1st and goal"),
    ("2nd and 4-6, left hash", "2nd and 4 to 6, left hash"),
    ("2nd & 4 - 6", "2nd and 4 to 6"),
    ("third and 1", "3rd and 1"),
    ("3rd/2", "3rd and 2"),
    ("3rd-and-2", "3rd and 2"),
    ("2nd and 10 plus", "2nd and 10 or more"),
    ("2nd and <3", "2nd and 2 or less"),
    ("2nd and <= 3", "2nd and 3 or less"),
]


@pytest.mark.parametrize(("said", "meant"), HEADS)
def test_it_is_said_as_the_notation_has_it(said: str, meant: str) -> None:
    assert head_line(f"situation {said}") == f"situation {meant}"


@pytest.mark.parametrize("meant", [*(meant for _, meant in HEADS), "red zone", "own 1 to 10"])
def test_what_is_right_has_no_other_line(meant: str) -> None:
    assert head_line(f"drop all from {meant}") == ""


def test_each_is_answered_once_and_what_is_told_is_read() -> None:
    """In a head, in what a wristband holds, in a script and in what is dropped."""
    lines = [
        "    situation 2nd & 4-6", "        holds 3rd & 1, 2nd and 7+", "        2nd and 7 plus",
        "    drop all from 3rd & 1",
    ]  # fmt: skip
    call = "        Three Two Right Crossers\n"
    text = (
        f"week 1 Larch Bay\n    situation 2nd and 7 or more\n{call}    situation 3rd and 1\n{call}"
        f"{lines[0]}\n{call}    wristband Skill for Q\n{lines[1]}\n"
        f"    period Team, 10 minutes, air\n{lines[2]}\n"
        f"week 2 Ember Ridge from 1 Larch Bay\n    drop wristband Skill\n{lines[3]}\n"
    )
    found = _errors(text)
    told = {}
    for d in found:
        assert isinstance(d.said, E404), d.message
        told[text.splitlines()[d.span.line - 1]] = d.said.answer.removeprefix("write ").strip("`")
    assert sorted(told) == sorted(lines) and len(found) == len(lines)
    for line, answer in told.items():
        text = text.replace(line, line[: len(line) - len(line.lstrip())] + answer)
    assert _errors(text) == []


def _errors(text: str) -> list[Diagnostic]:
    asked = Session((*base(), Source("week.play", text)), "book")
    found = [*asked.definitions, *(d for week in asked.weeks for d in week.found)]
    return [d for d in found if d.is_error]

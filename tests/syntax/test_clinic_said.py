"""Whole lines as they are said at a clinic are the lines that the notation writes."""

from __future__ import annotations

import pytest

from stemline.source import Source
from stemline.syntax.parser import parse
from syntax.said_lines import read

SAID = {
    "concept": (
        ("back stays in", "back blocks inside out"),
        ("strong #3 stays in to protect", "strong #3 blocks inside out"),
        ("quarterback rolls weak", "feet roll weak, set"),
        ("QB boots to the right", "feet boot right, set"),
        ("quarterback sprints out", "feet sprint, set"),
        ("fake to B", "quarterback fakes to B"),
        ("hot strong #3", "pressure strong #3"),
    ),
    "run": (
        ("playside guard leaves and climbs", "playside guard blocks leave"),
        ("playside guard leaves and climbs to far linebacker",
         "playside guard blocks leave to far linebacker"),
        ("guards climb", "each guard blocks climb"),
        ("R carries the ball", "carrier is R"),
        ("playside guard and playside tackle block down",
         "playside guard, playside tackle blocks down"),
    ),
    "protection": (
        ("back stays in", "back blocks scan"),
        ("backside guard pulls around the end", "backside guard blocks playside edge"),
        ("line slides to the right", "line blocks slide right"),
        ("tight end checks and releases", "tight end blocks check then release"),
    ),
    "look": (
        ("E drops to hook, field", "E covers hook, field"),
        ("M, W drop into the hook", "M, W covers hook"),
        ("F plays centre field", "F covers deep middle"),
        ("F plays the deep middle", "F covers deep middle"),
        ("C takes third", "C covers third"),
        ("C, B man", "C, B covers man"),
        ("N over centre", "N in over centre"),
        ("T over the guard, strong", "T in over guard, strong"),
        ("C over strong #1, 5 deep", "C at strong #1, 5 deep"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("kind", SAID)
def test_it_is_read_as_the_notation_writes_it(kind: str) -> None:
    for said, line in SAID[kind]:
        assert read(kind, said) == read(kind, line) == line


@pytest.mark.parametrize(
    ("kind", "line"),
    [
        ("concept", "back stays outside"),
        ("concept", "quarterback rolls his shoulders"),
        ("concept", "hot slant if two come"),  # a protection's own line
        ("run", "tackle leaves early"),
        ("look", "S drops"),
        ("look", "Mike over centre"),  # no letter: a man of the look has one
    ],
)
def test_what_is_not_known_to_be_said_so_is_not_read(kind: str, line: str) -> None:
    _, found = parse(Source("t.play", f"{kind} A\n    {line}\n"))
    assert [d for d in found if d.code.startswith("E2")]

"""Lines with the small words of a talk are the lines that the notation writes."""

from __future__ import annotations

import pytest

from syntax.said_lines import read

SAID = {
    "concept": (
        ("join Dive", "join run Dive"),
        ("back blocks", "back blocks inside out"),
        ("the back and fullback block", "the back, fullback blocks inside out"),
        ("both backs stay in", "back, fullback blocks inside out"),
        ("weak side runs fades", "everyone else weak runs fades"),
        ("weak slot runs slant", "weak inside runs slant"),
        ("slots are each #2", "slots is each #2"),
        ("back sets up then slow screen weak", "back runs slow screen weak"),
        ("high-low dig above near on corner", "claims high-low dig above near on corner"),
        ('coaching point "See his hips."', 'say "See his hips."'),
        ("X and Y run seams", "X, Y runs seams"),
        ("read flat, then snag, then corner", "read flat > snag > corner"),
        ("read back or throw it at his feet", "read back > throw away"),
        ("read back > run or throw away", "read back > run or throw away"),
    ),
    "protection": (
        ("the back scans inside out", "back blocks scan inside out"),
        ("the line is big on big", "line blocks big on big"),
        ("playside reaches", "playside line blocks reach"),
        ("tight end stays in on the edge", "tight end blocks edge"),
        ("if both come, hot slant", "hot slant if both come"),
        ("slide to the call", "line blocks slide call"),
        ("point Mike", "point middle linebacker"),
    ),
    "motion": (
        ("S goes in motion across to away, 4 outside tackle, off line",
         "S moves to away, 4 outside tackle, off line"),
        ("Y trades to away, end, on line", "Y moves to away, end, on line"),
        ("Z moves behind the quarterback to call, 4 outside tackle, 2 deep",
         "Z moves to ball, 7 deep then to call, 4 outside tackle, 2 deep"),
        ("H, S start 8 yards deep", "H, S moves from 8 deep"),
        ("snap on the run", "snap running"),
    ),
    "dress": (
        ("in Quads with motion Zip", "in Quads motion Zip"),
        ("to right only", "to right"),
        ("not in Trips to left", "never in Trips to left"),
        ("X runs dig", "with X runs dig"),
        ("Trips Right Stick is Viper", "call Trips Right Stick as Viper"),
        ("Trips Right Stick is called Viper", "call Trips Right Stick as Viper"),
    ),
    "formation": (
        ("Q in the gun", "Q at ball"),
        ("Q under center", "Q at ball, under centre"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("kind", SAID)
def test_it_is_read_as_the_notation_writes_it(kind: str) -> None:
    for said, line in SAID[kind]:
        assert read(kind, said) == read(kind, line) == line


@pytest.mark.parametrize(
    ("kind", "line"),
    [
        ("motion", "say he runs across to the far side, hard"),
        ("motion", "Z moves to ball, 7 deep then to call, end, on line"),
        ("dress", "say Trips Right is his, and to right only"),
        ("concept", "join run Run Game"),
        ("protection", "line blocks slide call"),
    ],
)
def test_a_line_that_is_read_already_is_left_alone(kind: str, line: str) -> None:
    assert read(kind, line) == line

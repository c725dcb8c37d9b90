"""A pass that joins a run: `everyone else` of the pass is for its receivers, whom the run blocks
with, too."""

from __future__ import annotations

import pytest
from lineup.look_texts import FRONT

from resolve.texts import THREE_TWO, TWELVE, compiled, dress, said

RUN = """
run Sweep
    carrier is back
    carrier aims outside the end
    line blocks reach or climb
    lead is strong inside
    lead blocks lead
    pin is strong #2
    pin blocks climb to overhang or stalk
    everyone else blocks stalk
"""
PASS = """
concept Sweep Pass
    join run Sweep
    slant is strong #1
    slant runs slant
    {}
    feet fake, 3
    read slant on 3
"""


@pytest.mark.parametrize(
    ("line", "runs", "blocks"),
    [
        ("everyone else runs go", "WXHS", ""),
        ("everyone else strong runs go", "HS", ""),
        ("everyone else weak runs go", "WX", "HS"),
        ("go is weak #1\n    go runs go", "X", "HS"),
    ],
)
def test_receivers_keep_the_pass(line: str, runs: str, blocks: str) -> None:
    session = compiled(
        TWELVE, THREE_TWO, FRONT, RUN, PASS.format(line), dress("Three Two", concept="Sweep Pass")
    )
    assert session.season is not None, said(session.diagnostics)
    play = next(p for p in session.season.plays if p.call.spoken == "Three Two Right Sweep Pass")
    for label in runs:
        task = play.assignment(label)
        assert task.job == "Go." and not task.hits and task.path is not None
    assert all(play.assignment(label).hits for label in blocks)

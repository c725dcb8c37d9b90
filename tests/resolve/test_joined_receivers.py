"""A pass that joins a run: `everyone else` of the pass is for its receivers, whom the run blocks
with, too."""

from __future__ import annotations

import pytest
from lineup.look_texts import FRONT

from resolve.texts import CROSSERS, THREE_TWO, TWELVE, codes, compiled, dress, said

TIGHT = (
    THREE_TWO.replace("Three Two", "Tight")
    .replace("4 outside tackle, off", "end, on")
    .replace("S at call, between H and Z, off line", "S at away, 2 outside W, off line")
    .replace("Z at call, numbers, on", "Z at call, numbers, off")
)
RUN = """
run Sweep
    carrier is back
    carrier aims outside the end
    line blocks reach or climb
    lead is strong inside
    lead blocks lead
    pin is strong #2
    pin blocks climb to overhang or stalk
    playside end blocks reach or climb
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


@pytest.mark.parametrize(("does", "job"), [("runs seam", "Seam."), ("blocks stalk", None)])
def test_a_tight_end_leaves_the_runs_line_only_for_a_route(does: str, job: str | None) -> None:
    text = PASS.format(f"everyone else {does}")
    session = compiled(TWELVE, TIGHT, FRONT, RUN, text, dress("Tight", concept="Sweep Pass"))
    assert session.season is not None, said(session.diagnostics)
    play = next(p for p in session.season.plays if p.call.spoken == "Tight Right Sweep Pass")
    task = play.assignment("H")
    assert (task.job == job) is bool(job)
    assert bool(task.hits) is (job is None)


def test_a_route_for_a_man_whom_the_run_has_block_is_not_told_twice() -> None:
    """The run speaks of the wing by his side, the pass without one."""
    wing = THREE_TWO.replace("Three Two", "Wing").replace("4 outside tackle", "1 outside tackle")
    run = RUN + "    playside wing blocks climb to overhang\n"
    session = compiled(TWELVE, wing, run, PASS.format("wing runs post"),
                       dress("Wing", concept="Sweep Pass"))  # fmt: skip
    assert "W627" not in {d.code for d in session.diagnostics}, said(session.diagnostics)
    assert session.season is not None
    assert session.season.plays[0].assignment("H").job == "Post at 12."


def test_a_run_that_a_called_pass_joins_is_called_with_it() -> None:
    """Nobody is told to dress it, nor that its roles are nobody's in the pass."""
    run = RUN.replace("lead is strong inside", "lead is back")
    call = dress("Three Two", concept="Sweep Pass")
    session = compiled(TWELVE, THREE_TWO, FRONT, run, PASS.format("everyone else runs go"), call)
    assert "W710" not in codes(session)
    assert session.season is not None and {p.nobody for p in session.season.plays} == {()}
    alone = compiled(TWELVE, THREE_TWO, FRONT, CROSSERS, run, dress("Three Two"))
    assert "W710" in codes(alone)

"""Who pulls to seal or log an end goes to that one, whichever side he stands on, and around him.
Common practice, no published source."""

from __future__ import annotations

import pytest
from syntax.said_lines import read

from resolve.test_checks_then_goes import TIGHT
from resolve.test_protections import against
from resolve.texts import ELEVEN, codes, compiled
from stemline.football.play import Play

LOOK = """
look Front
    strength call
    J in {edge}, weak
    N in 1, weak
    T in 3, strong
    E in 9, strong
    W in 30, weak
    M in 10, strong
    S at outside end, strong, 5 deep
    C at strong #1, 7 deep
    K at weak #1, 7 deep
    V at hash, strong, 12 deep
    A at hash, weak, 12 deep
"""
ZONE = """
run Zone
    carrier is back
    carrier aims {aims}
    line blocks reach or climb
    {run}
    everyone else blocks stalk

concept Boot
    join run Zone
    a is strong #1
    a runs corner
    {boot}
    feet fake, boot weak
    read a on boot

dress {called}
    in Tight
    against Front
"""


def shown(called: str, line: str, edge: str = "5") -> Play:
    run, boot = (line, "a decides at 5") if called == "Zone" else ("feet fake", line)
    aims = "outside the end" if called == "Zone" else "playside A"
    text = ZONE.format(aims=aims, run=run, boot=boot, called=called)
    text = text.replace("    a decides at 5\n", "")
    result = compiled(ELEVEN, TIGHT.partition("run Plunge")[0], LOOK.format(edge=edge), text)
    assert not [d for d in result.diagnostics if d.is_error], codes(result)
    return against(result, "Front")[0]


@pytest.mark.parametrize("edge", ["5", "9"])
@pytest.mark.parametrize(
    "line",
    ["playside guard blocks pull to backside end man on line",
     "playside guard pulls to seal the far edge", "playside guard pulls and logs the backside end"],
)  # fmt: skip
def test_on_a_boot_the_playside_guard_goes_to_the_far_end_and_around_him(
    line: str, edge: str
) -> None:
    play = shown("Boot", line, edge)
    task = play.assignment("RG")
    assert [hit.defender for hit in task.hits] == ["J"]
    assert task.path is not None
    end = play.defence.defender("J").at.x if play.defence is not None else 0.0
    assert min(p.x for p in task.path.corners) < end < 0  # outside of him, to the left


def test_on_a_run_the_backside_guard_seals_the_end_of_the_playside() -> None:
    play = shown("Zone", "backside guard pulls and seals the end")
    task = play.assignment("LG")
    assert [hit.defender for hit in task.hits] == ["E"]
    assert task.path is not None and play.defence is not None
    assert max(p.x for p in task.path.corners) > play.defence.defender("E").at.x


def test_where_nobody_is_at_the_far_end_he_shows_his_pull_there() -> None:
    """Behind a protection of its own nobody is known for him; his way is drawn all the same."""
    text = "playside guard blocks pull to backside overhang"
    path = shown("Boot", text).assignment("RG").path
    assert path is not None and path.end.x < -2.6


@pytest.mark.parametrize(
    ("said", "line"),
    [("backside guard pulls and seals the end", "backside guard blocks pull to end man on line"),
     ("playside guard pulls to log the far edge",
      "playside guard blocks pull to backside end man on line"),
     ("backside guard blocks seal the edge", "backside guard blocks pull to end man on line"),
     ("backside guard pulls and seals the linebacker", "backside guard blocks wrap to linebacker")],
)  # fmt: skip
def test_a_seal_is_read_by_whom_it_is_on(said: str, line: str) -> None:
    assert read("run", said) == line

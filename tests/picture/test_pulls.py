"""Two pulls that run along each other are drawn one below the other."""

from __future__ import annotations

from picture.close_board import on_paper
from picture.sample_runs import EVEN, PRO, blocks, run
from stemline.football.play import Play
from stemline.geometry.paths import Point
from stemline.picture.men.pulls import in_lanes
from stemline.theme import Size


def buck() -> Play:
    tasks = (
        blocks("LG", EVEN, ((-1.35, 0), (-0.7, -1.5, 0.9), (4.4, -1.5, 0.9), (5.0, 0.2)),
               ("M", "wrap")),
        blocks("RG", EVEN, ((1.35, 0), (1.9, -1.0, 0.9), (5.4, -1.0, 0.9)), ("S", "kick")),
    )  # fmt: skip
    return run("Sweep", EVEN, PRO, tasks, carrier="")


def behind(play: Play, man: str) -> list[Point]:
    path = play.assignment(man).path
    assert path is not None
    return [p for p in path.corners if p.y < -0.3]


def test_a_guard_who_runs_along_a_pull_runs_below_it() -> None:
    play, symbols, on = on_paper(buck(), Size.THUMB)
    made = in_lanes(play, symbols, on)
    upper = min(p.y for p in behind(made, "LG"))
    lower = max(p.y for p in behind(made, "RG"))
    assert upper - lower > on.mark("pull_lane") - 1e-6
    end = symbols["Y"]
    assert lower < -(end.edge + on.mark("clear") / 2 + on.weight("block"))


def test_a_pull_by_itself_stays_as_deep_as_it_is() -> None:
    play, symbols, on = on_paper(buck(), Size.THUMB)
    alone = run("Sweep", EVEN, PRO, (play.assignment("RG"),), carrier="")
    assert in_lanes(alone, symbols, on).assignment("RG").path == play.assignment("RG").path

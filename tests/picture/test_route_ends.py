"""What is drawn on a route, and how heavy it is, is kept off men as well as its line."""

from __future__ import annotations

from dataclasses import replace

import pytest

from picture.sample_plays import man, path, quads, task
from stemline.football.play import Assignment, Man, Play
from stemline.football.players import Position
from stemline.geometry.box import Box
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Ending, polyline
from stemline.picture.frame.board import board, shot
from stemline.picture.lines.route_lines import CARRY, LineRun, plan_runs
from stemline.picture.men.symbols import place_men
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.theme import Size, load_theme

THEME = load_theme()
WIDE = (16.0, 20.0, 24.0, 28.0)


def planned(play: Play, size: Size, wide: float) -> tuple[LineRun, dict[str, Symbol], Board]:
    """The only run of a play in a picture that shows ``wide`` yards to each side."""
    on = board(Box(-wide, -9.0, wide, 10.0), shot(play, size), size, THEME)
    symbols = place_men(play, on)
    (run,) = plan_runs(play, symbols, on)
    return run, symbols, on


def with_men(step: Assignment, *men: Man) -> Play:
    line = (m for m in quads().men if m.interior or m.label in "XZ")
    return replace(quads(), men=(*line, *men), assignments=(step,), reads=(), claims=())


@pytest.mark.parametrize("size", tuple(Size))
def test_the_bar_of_a_block_of_half_a_yard_stands_past_his_own_edge(size: Size) -> None:
    short = task("U", "wing", "", path((5.0, -1.0), (5.3, -0.6), ending=Ending.BLOCK))
    run, symbols, on = planned(with_men(short, man("U", Position.SLOT, 5.0, -1.0)), size, WIDE[0])
    own = symbols["U"]
    assert own.at.distance(run.path.end) >= own.edge + on.weight("bar") / 2


@pytest.mark.parametrize("size", tuple(Size))
@pytest.mark.parametrize("wide", WIDE)
def test_a_dot_is_kept_off_men_by_its_own_size(wide: float, size: Size) -> None:
    screen = path((3.9, 0), (1.3, -3.5, 2), (5.6, -3), ending=Ending.SETTLE)
    men = (
        man("Y", Position.TIGHT_END, 3.9, 0),
        man("H", Position.SLOT, 5.4, -1),
        man("Q", Position.QUARTERBACK, 0, -4),
    )
    run, symbols, on = planned(with_men(task("Y", "screen", "", screen), *men), size, wide)
    for name in "HQ":
        far = symbols[name].at.distance(run.path.end)
        assert far >= symbols[name].edge + on.mark("dot") - 1e-6


@pytest.mark.parametrize("size", tuple(Size))
@pytest.mark.parametrize("wide", WIDE[:-1])
def test_a_carrier_goes_through_a_gap_by_the_weight_of_his_line(wide: float, size: Size) -> None:
    men = (man("R", Position.BACK, 0, -7), man("Q", Position.QUARTERBACK, 0, -4))
    step = task("R", "carrier", "", path((0, -7), (0.65, -0.6, 1.2), (1.05, 5)))
    play = replace(with_men(step, *men), carrier="R")
    run, symbols, on = planned(play, size, wide)
    assert run.pen == CARRY
    for name, symbol in symbols.items():
        if name != "R":
            far = far_from(polyline(run.path), symbol.at)
            assert far >= symbol.edge + on.weight(CARRY) / 2 - 1e-6, name

"""Moves before the snap go round men, and the ring where a man stood is off his own route."""

from __future__ import annotations

from dataclasses import dataclass, replace

import pytest

from picture.sample_plays import man, path, quads, task
from stemline.football.play import Motion, Play
from stemline.football.players import Position
from stemline.geometry.box import Box
from stemline.geometry.curves import far_from, points_of
from stemline.geometry.paths import Path, Point, polyline
from stemline.picture.frame.board import board, frame_of, shot
from stemline.picture.lines.motions import draw_motions
from stemline.picture.men.symbols import place_men
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.picture import picture
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Disc, Stroke
from stemline.picture.ways.starts import ghosts_of
from stemline.theme import Size, load_theme

THEME = load_theme()
SIZES = tuple(Size)


def moving(moves: Path, runs: Path | None = None) -> Play:
    """A slot man in motion, a back beside the quarterback, one slot man each side of him."""
    slot = man("S", Position.SLOT, moves.end.x, moves.end.y)
    men = tuple(m for m in quads().men if m.interior or m.label in "XQR")
    motion = Motion("Slide", moves, True, 4.0, "Slide, running")
    step = task("S", "slot", "", runs, motion=motion)
    others = (replace(slot, at=moves.start), man("H", Position.SLOT, 7.6, -1))
    return replace(quads(), men=(*men, *others), assignments=(step,), reads=(), claims=())


def laid(play: Play, size: Size) -> tuple[dict[str, Symbol], Board]:
    on = board(frame_of((play,), size), shot(play, size), size, THEME)
    return place_men(play, on), on


def across(to: float) -> Path:
    """Level behind the line, before the quarterback, and up to a place beside the tackle."""
    low = (-5.9, -3.7, 1.5), (to - 3.5, -3.7, 1.5), (to - 1.5, -2.5, 1.5)
    return path((-7.6, -1), *low, (to, -2.5))


def moved(play: Play, size: Size, wide: float, ink: tuple[Point, ...] = ()) -> Drawn:
    """The motion in a picture that shows ``wide`` yards to each side, over some ink."""
    on = board(Box(-wide, -6.5, wide, 10.0), shot(play, size), size, THEME)
    symbols, paper = place_men(play, on), Ink(on.yards(1.5))
    paper.line(ink)
    (found,) = draw_motions(play, symbols, paper, on, None)
    (line,) = [i for i in found.items if isinstance(i, Stroke) and i.style == "motion"]
    return Drawn(line, symbols, on)


@dataclass(frozen=True)
class Drawn:
    line: Stroke
    symbols: dict[str, Symbol]
    on: Board

    @property
    def points(self) -> tuple[Point, ...]:
        return points_of(self.line.segments)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("wide", [14.0, 20.0, 26.0, 30.0])
@pytest.mark.parametrize("to", [3.6, 4.6])
def test_a_motion_and_its_arrow_go_round_the_men_of_the_backfield(
    to: float, wide: float, size: Size
) -> None:
    drawn = moved(moving(across(to)), size, wide)
    for name in "QRH":
        at, keep = drawn.symbols[name].at, drawn.symbols[name].edge
        assert far_from(drawn.points, at) > keep + drawn.on.weight("motion") / 2
        assert far_from(drawn.line.head, at) > keep


def test_a_man_who_goes_before_the_passer_is_not_drawn_behind_him_to_save_ink() -> None:
    for size in (Size.THUMB, Size.QUARTER):
        ink = (Point(-3.0, -3.2), Point(-1.0, -1.5))
        drawn = moved(moving(across(3.6)), size, 22.0, ink)
        passer = drawn.symbols["Q"].at
        by = min(drawn.points, key=lambda p: abs(p.x - passer.x))
        assert by.y > passer.y


def test_a_motion_runs_straight_into_its_end() -> None:
    """A last leg shorter than an arrow has no corner of its own."""
    drawn = moved(moving(path((-20, 0), (-18, -1.2), (-9, -1.2), (-6.6, 0))), Size.QUARTER, 28.0)
    last = drawn.line.segments[-1]
    assert last.start.distance(last.end) > drawn.on.mark("head")


def test_the_ring_stands_beside_the_route_that_comes_back_over_it_where_he_left_it() -> None:
    bounce = path((7.6, -1), (3.6, -2.5), (7.6, -2.5))
    for side in (1.0, -1.0):
        moves = bounce if side > 0 else bounce.mirrored()
        play = moving(moves, path((7.6 * side, -2.5), (7.6 * side, 10)))
        play = replace(play, men=tuple(m for m in play.men if m.label != "H"))
        for size in (Size.FULL, Size.QUARTER):
            symbols, on = laid(play, size)
            at = ghosts_of(play, symbols, on)["S"]
            scene = picture(play, size, THEME)
            rings = [i for i in scene.items if isinstance(i, Disc) and i.style == "ghost"]
            assert [ring.centre for ring in rings] == [at]
            assert at.y == -1 and at.x * side < 7.6
            far = far_from(polyline(path((7.6 * side, -2.5), (7.6 * side, 10))), at)
            assert far > on.mark("ghost") + on.weight("route") / 2


def test_a_ring_off_his_route_stands_where_he_stood() -> None:
    across = path((-7.6, -1), (4.6, -2.5))
    play = moving(across, path((4.6, -2.5), (4.6, 10)))
    symbols, on = laid(play, Size.FULL)
    assert ghosts_of(play, symbols, on) == {"S": Point(-7.6, -1)}

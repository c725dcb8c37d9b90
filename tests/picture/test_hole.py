"""The carrier's hole has room for all who go through it, and his way is clear of everybody."""

from __future__ import annotations

from dataclasses import replace

import pytest

from picture.close_board import on_paper, opened
from picture.sample_plays import man, path
from picture.sample_runs import EVEN, PRO, blocks, job, power, run
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Ending, Leg, Path, Point, crossing, polyline
from stemline.picture.lines.leading import crossed, led
from stemline.picture.men.hole import find_hole
from stemline.picture.men.leaders import band
from stemline.picture.men.symbols import place_men
from stemline.picture.ways.at_hole import DrawnHole
from stemline.picture.ways.gaps import gap_of
from stemline.theme import Size


def crowded() -> Play:
    """Two men lead the back between the tackle and the end, outside whom stands a wing."""
    tasks = (
        blocks("LG", EVEN, ((-1.35, 0), (-0.6, -1.2, 0.6), (3.4, -1.0, 0.6)), ("S", "wrap")),
        blocks("F", EVEN, ((1.4, -4.2), (3.4, -0.8, 0.6)), ("M", "lead")),
        job("R", "Follow them", path((0, -7), (3.4, -0.6, 1), (3.7, 9))),
    )
    return run("Lead", EVEN, (*PRO, man("H", Position.WING, 5.4, -1.0)), tasks)


def dive() -> Play:
    """Past a quarterback under centre, into the gap beside him."""
    back = job("R", "Dive", path((0, -7), (0.65, -0.6, 1), (1.0, 9)))
    return run("Dive", EVEN, PRO, (back,))


def sweep(wing: bool) -> Play:
    """Around the end, a guard ahead of the ball; with or without a wing outside the end."""
    men = (*PRO, man("H", Position.WING, 5.3, -1.0)) if wing else PRO
    tasks = (
        blocks("LG", EVEN, ((-1.35, 0), (-0.6, -1.2, 0.6), (5.0, -1.2, 0.8), (5.6, 0.2, 0.8)),
               ("M", "wrap")),
        job("R", "Sweep", path((0, -7), (4.6, -1.8, 1), (6.2, 0.8, 1), (6.6, 9))),
    )  # fmt: skip
    return run("Sweep", EVEN, men, tasks)


@pytest.mark.parametrize("size", Size)
def test_an_opened_hole_has_room_for_the_carrier_and_his_leaders(size: Size) -> None:
    play, symbols, on = opened(crowded(), size)
    hole = find_hole(play, symbols, on)
    assert hole is not None and set(hole.lanes) == {"LG", "F"}
    gap = gap_of(hole.path, [s for s in symbols.values() if s.man.label != "R"])
    assert gap is not None
    low, high = band(hole.lanes, on)
    left, right = gap
    white = right.at.x - right.edge - left.at.x - left.edge - (high - low)
    assert white > on.mark("gap") - 1e-6


def test_men_outside_a_narrow_hole_move_out_together_and_nobody_inside_it() -> None:
    before, after = on_paper(crowded(), Size.THUMB)[1], opened(crowded(), Size.THUMB)[1]
    moved = {name: after[name].at.x - before[name].at.x for name in after}
    outside = {moved["Y"], moved["H"]}
    assert min(outside) > 0 and max(outside) - min(outside) < 1e-9
    assert all(by == 0 for name, by in moved.items() if name not in ("Y", "H"))


@pytest.mark.parametrize("scale", [4.6, 5.2, 5.8, 6.4, 7.0])
def test_a_dive_is_clear_of_the_quarterback_by_the_whole_width_of_its_line(scale: float) -> None:
    """On a page the scale is the widest picture's: the smaller, the nearer he is to the gap."""
    play, _, on = on_paper(dive(), Size.THUMB)
    on = replace(on, scale=scale)
    symbols = place_men(play, on)
    hole = find_hole(play, symbols, on)
    assert hole is not None
    passer = symbols["Q"]
    assert far_from(polyline(hole.path), passer.at) > passer.edge + on.weight("carry") / 2


@pytest.mark.parametrize("size", Size)
def test_a_sweep_goes_outside_a_wing_and_its_leader_between_the_two(size: Size) -> None:
    play, symbols, on = opened(sweep(wing=True), size)
    hole = find_hole(play, symbols, on)
    assert hole is not None and hole.wing is not None
    wing = hole.wing
    lead = play.assignment("LG").path
    assert lead is not None
    guard = polyline(led(lead, "LG", hole, on))
    assert far_from(guard, wing.at) > wing.edge + on.weight("block") / 2
    for y in (wing.at.y, 0.0, 0.7):
        ball = crossing(hole.path, y)
        assert ball is not None and ball > wing.at.x + wing.edge
    assert far_from(guard, Point(wing.at.x, -9.0)) > far_from(polyline(hole.path), Point(0.0, -9.0))


@pytest.mark.parametrize("size", Size)
def test_past_the_wing_a_sweep_leans_back_in_where_it_does(size: Size) -> None:
    """Inside of a man who is kicked out: what is moved round the wing comes back to its end."""
    play, _, _ = opened(sweep(wing=True), size)
    back = job("R", "Sweep", path((0, -7), (4.6, -1.8, 1), (6.2, 0.8, 1), (5.4, 9)))
    play = replace(play, assignments=(play.assignment("LG"), back))
    symbols, on = opened(play, size)[1:]
    hole = find_hole(play, symbols, on)
    assert hole is not None and hole.wing is not None
    assert abs(hole.path.end.x - 5.4) < 0.3
    assert (crossing(hole.path, 0.7) or 0.0) > hole.wing.at.x + hole.wing.edge


def test_without_a_wing_a_sweep_keeps_its_aim() -> None:
    play, symbols, on = opened(sweep(wing=False), Size.FULL)
    hole = find_hole(play, symbols, on)
    assert hole is not None and hole.wing is None
    assert abs((crossing(hole.path, 0.0) or 0.0) - (crossing(hole.aim, 0.0) or 0.0)) < 0.5


def test_a_climb_along_the_carrier_crosses_him_at_once() -> None:
    _, _, on = on_paper(power(), Size.THUMB)
    up = path((0, -5), (0, 9))
    hole = DrawnHole(up, {}, up)
    along = Path(Point(-0.1, 0.8), (Leg(Point(0.6, 6.0)),), Ending.BLOCK)
    white = (on.weight("carry") + on.weight("climb")) / 2
    after = [p for p in crossed(along, hole, on).corners if p.y > 1.6]
    assert all(p.x > white for p in after) and len(after) > 0
    assert crossed(along, hole, on).corners[1].y < 1.6
    square = replace(along, legs=(Leg(Point(5.0, 2.0)),))
    beside = replace(along, start=Point(-2.0, 0.8), legs=(Leg(Point(-1.0, 6.0)),))
    assert crossed(square, hole, on) == square and crossed(beside, hole, on) == beside

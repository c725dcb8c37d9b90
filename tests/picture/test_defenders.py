"""Letters near the top of a small picture: behind one another where there is room, else beside."""

from __future__ import annotations

import math
from dataclasses import replace

from picture.close_board import THEME, opened
from picture.sample_plays import path
from picture.sample_runs import PRO, Row, blocks, front, job, run
from stemline.football.play import Play
from stemline.geometry.box import Box
from stemline.geometry.curves import points_of
from stemline.picture.lines.blocks import _free_touch
from stemline.picture.lines.close_runs import _at_hole, _letters_off
from stemline.picture.lines.letters_aside import beside_lines
from stemline.picture.lines.route_lines import BLOCK, CLIMB, LineRun
from stemline.picture.men.defender_letters import place_letters
from stemline.picture.men.hole import find_hole
from stemline.picture.paper.letter import Letter, free_mark
from stemline.picture.paper.surface import Board
from stemline.picture.picture import picture
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Point, Polygon, Stroke
from stemline.picture.ways.at_hole import DrawnHole
from stemline.source import NOWHERE
from stemline.theme import Size

FRONT: tuple[Row, ...] = (
    ("E", 3.2, 0.8), ("T", 1.8, 0.8), ("N", -0.45, 0.8), ("J", -3.2, 0.8),
    ("M", 0.6, 5.2), ("F", 0.5, 12.0), ("C", 18, 6),
)  # fmt: skip


def deep_block() -> Play:
    """The safety stands behind a linebacker whom nobody has, and a receiver comes for him."""
    look = front("Over", *FRONT)
    tasks = (
        blocks("Y", look, ((4.05, 0),), ("F", "climb")),
        job("R", "Dive", path((0, -7), (2.0, -0.6, 1), (2.4, 9))),
    )
    return run("Dive", look, PRO, tasks, unblocked=("M",))


def placed(play: Play, size: Size) -> tuple[dict[str, Letter], Board]:
    cut, symbols, on = opened(play, size)
    return place_letters(cut, symbols, on, True, find_hole(cut, symbols, on)), on


def wedge(letter: Letter, on: Board) -> Box:
    points = free_mark(letter, on).points
    xs, ys = [p.x for p in points], [p.y for p in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def test_a_safety_stands_beside_a_wedge_that_leaves_no_room_behind_it() -> None:
    letters, on = placed(deep_block(), Size.THUMB)
    over, safety = wedge(letters["M"], on), letters["F"].box
    assert on.frame.holds(over) and on.frame.holds(safety)
    assert safety.overlap(over) == 0 and safety.overlap(letters["M"].box) == 0


def test_bars_and_wedges_at_the_top_are_inside_the_picture() -> None:
    for size in Size:
        scene = picture(deep_block(), size, THEME)
        points = [
            p
            for item in scene.items
            if (isinstance(item, Stroke) and item.style == "bar")
            or (isinstance(item, Polygon) and item.style == "free")
            for p in (points_of(item.segments) if isinstance(item, Stroke) else item.points)
        ]
        assert points
        assert all(scene.frame.holds(Box(p.x, p.y, p.x, p.y)) for p in points)


def test_the_depth_of_a_man_at_the_edge_is_written_where_no_line_runs() -> None:
    letters, on = placed(deep_block(), Size.FULL)
    safety = letters["F"]
    assert safety.deep
    play = replace(deep_block(), assignments=(), unblocked=())
    sides = []
    for side in (1.0, -1.0):
        ink = Ink(on.yards(1.5))
        x = safety.at.x + side * (safety.half_width + on.yards(5.0))
        ink.line(path((x, safety.at.y - 2.0), (x, safety.at.y + 2.0)).corners)
        sides.append(beside_lines({"F": safety}, play, {}, ink, on)["F"].left)
    assert sides == [True, False]


def test_a_letter_that_steps_off_a_line_keeps_its_wedge_in_the_picture() -> None:
    letters, on = placed(deep_block(), Size.THUMB)
    free = letters["M"]
    low = Point(free.at.x, on.frame.top - free.half_height - free.over - on.yards(0.6))
    free = replace(free, at=low)
    ink = Ink(on.yards(1.5))
    for below in (0.1, 0.3, 0.5):
        ink.line((low + Point(-3.0, -below), low + Point(3.0, -below)))
    made = beside_lines({"M": free}, deep_block(), {}, ink, on)["M"]
    assert on.frame.holds(wedge(made, on))


def test_a_bar_at_the_top_of_the_picture_turns_until_it_is_inside() -> None:
    letters, on = placed(deep_block(), Size.THUMB)
    safety = letters["F"]
    at = Point(safety.at.x, on.frame.top - 1.1 * safety.reach)
    touch = _free_touch(replace(safety, at=at), math.pi / 2, (), (), on)
    half = on.mark("hit_bar")
    thick = on.weight("bar") / 2 * abs(touch.facing.y)
    assert touch.at.y + half * abs(touch.facing.x) + thick <= on.frame.top


def test_a_leader_keeps_off_the_letters_of_the_line() -> None:
    letters, on = placed(deep_block(), Size.THUMB)
    tackle = letters["T"]
    lead = LineRun("F", path((2, -4), (2.5, 6)), None, NOWHERE, BLOCK, leads=True)
    (kept,) = _letters_off(lead, [tackle], (), on)
    assert kept.hard > 0.8 * max(tackle.half_width, tackle.half_height)
    assert kept.radius >= max(tackle.half_width, tackle.half_height) + on.weight("block")


def test_a_climb_along_the_ball_is_brought_over_it() -> None:
    cut, symbols, on = opened(deep_block(), Size.THUMB)
    up = path((0, -5), (0, 9))
    climb = LineRun("RT", path((-0.1, 0.8), (0.6, 6)), None, NOWHERE, CLIMB)
    assert _at_hole(climb, DrawnHole(up, {}, up), symbols, on).path != climb.path
    assert cut.carrier == "R"

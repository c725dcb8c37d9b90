"""Drops and men covered: no line of a look's duty runs into anybody else."""

from __future__ import annotations

from dataclasses import replace

from picture.sample_plays import man, quads
from picture.sample_runs import front
from stemline.football.players import Position
from stemline.geometry.box import Box
from stemline.geometry.curves import far_from, points_of
from stemline.geometry.paths import Point
from stemline.picture.frame.board import board, frame_of, shot
from stemline.picture.lines.defender_lines import drop_items, man_items
from stemline.picture.men.symbols import place_men
from stemline.picture.paper.letter import Letter, letter_of
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.scene import Stroke
from stemline.picture.ways.detours import Round
from stemline.theme import Size, load_theme

THEME = load_theme()


def small() -> Board:
    play = quads()
    return board(frame_of((play,)), shot(play, Size.THUMB), Size.THUMB, THEME)


def letter(label: str, x: float, y: float, on: Board) -> Letter:
    return letter_of(front("One", (label, x, y)).defenders[0], on)


def test_a_drop_ends_clear_of_the_man_who_stands_in_its_ground() -> None:
    on = small()
    stands = letter("D", -9.0, 7.6, on)
    hard = max(stands.half_width, stands.half_height)
    keep = (Round(stands.at, hard + 0.2, hard),)
    for to in (Point(-9.0, 8.4), Point(-8.4, 8.2), Point(-9.6, 7.4)):
        (line,) = drop_items(letter("W", -1.0, 4.5, on), to, on, keep)
        assert isinstance(line, Stroke)
        assert far_from(points_of(line.segments), stands.at) > hard
        assert min(stands.at.distance(p) for p in line.head) > hard


def test_the_bar_at_a_man_who_is_covered_is_cut_short_beside_another() -> None:
    on = small()
    men = (
        *(m for m in quads().men if m.label not in "YH"),
        man("Y", Position.TIGHT_END, 3.9, 0),
        man("H", Position.SLOT, 5.4, -1),
    )
    symbols = place_men(replace(quads(), men=men), on)
    covers = letter("N", symbols["H"].at.x - 0.6, 6.0, on)

    def bar(keep: tuple[Round, ...]) -> Stroke:
        items = man_items(covers, symbols["H"], on, keep, list(symbols.values()))
        assert len(items) == 2 and isinstance(items[1], Stroke)
        return items[1]

    free = bar(())
    assert abs(wide(free) - 2 * on.mark("tick")) < 1e-6
    assert reaches(free, symbols["Y"]), "it would lie on the tight end"
    cut = bar((Round(symbols["Y"].at, symbols["Y"].edge + 0.05, symbols["Y"].edge),))
    assert wide(cut) < wide(free) and not reaches(cut, symbols["Y"])


def wide(stroke: Stroke) -> float:
    return stroke.segments[0].start.distance(stroke.segments[0].end)


def reaches(stroke: Stroke, symbol: Symbol) -> bool:
    return far_from(points_of(stroke.segments), symbol.at) < symbol.edge


def test_a_man_covered_behind_the_quarterback_is_reached_round_him() -> None:
    backs = (man("F", Position.FULLBACK, 0, -4), man("Q", Position.QUARTERBACK, 0, -1))
    men = (*(m for m in quads().men if m.interior or m.label in "XZ"), *backs)
    play = replace(quads(), men=men, assignments=(), reads=(), claims=())
    near = Box(-14.0, -9.0, 14.0, 12.0)
    on = board(near, shot(play, Size.FULL), Size.FULL, THEME, True)
    symbols = place_men(play, on)
    white = 0.5 * on.mark("clear")
    keep = [Round(s.at, s.edge + white, s.edge) for n, s in symbols.items() if n != "F"]
    for other in (letter("W", -0.5, 1.9, on), letter("M", 1.1, 1.9, on)):
        hard = max(other.half_width, other.half_height)
        keep.append(Round(other.at, hard + white, hard))
    line = [s for name, s in symbols.items() if name != "F"]
    way, _ = man_items(letter("F", 0.0, 9.0, on), symbols["F"], on, keep, line)
    assert isinstance(way, Stroke)
    for o in keep:
        assert far_from(points_of(way.segments), o.at) > o.hard + on.weight("man") / 2

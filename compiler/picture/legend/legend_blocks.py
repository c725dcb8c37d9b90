"""The small pictures that explain runs, protections and looks."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.defenders import Defender, Level
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.curves import left_of, unit
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.picture.lines.defender_lines import drop_items, ellipse, man_items, rush_items
from stemline.picture.lines.field_lines import break_items
from stemline.picture.lines.handoff import mesh_items
from stemline.picture.lines.route_lines import (
    BLOCK,
    CARRY,
    CLIMB,
    FAKE,
    HELD,
    SET,
    LineRun,
    draw_run,
)
from stemline.picture.men.symbols import men_items
from stemline.picture.paper.letter import Letter, depth_words, free_mark, key_mark, letter_of
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, centred
from stemline.picture.scene.scene import Item, Line, Stroke, TextRun
from stemline.source import NOWHERE


def _close(board: Board) -> Board:
    return replace(board, close=True)


def _letter(board: Board, label: str, x: float, y: float) -> Letter:
    man = Defender(label, Point(x, y), Level.LINE, "", None, NOWHERE)
    letter = letter_of(man, _close(board))
    return replace(letter, at=Point(x, y))


def _word(letter: Letter, board: Board, style: str = "defender") -> TextRun:
    return centred(letter.man.label, letter.at, style, board, NOWHERE)


def _symbol(board: Board, label: str, position: Position, at: Point) -> Symbol:
    man = Man(label, position, at, at, True, None, NOWHERE)
    kind = "lineman" if position.interior else "man"
    radius = board.mark("close_lineman" if position.interior else "man")
    return Symbol(man, at, radius, radius + board.yards(board.look.grounds[kind].edge_weight / 2))


def _men(board: Board, *symbols: Symbol) -> tuple[Item, ...]:
    return men_items({str(i): s for i, s in enumerate(symbols)}, _close(board), None)


def _line(
    board: Board,
    symbol: Symbol,
    pen: str,
    ending: Ending,
    *corners: tuple[float, float, float],
    facing: Point | None = None,
) -> tuple[Item, ...]:
    """A line from a symbol; corners are x, y and the reach of the turn there."""
    legs = tuple(Leg(Point(x, y), reach) for x, y, reach in corners)
    run = LineRun("X", Path(symbol.at, legs, ending), None, NOWHERE, pen, facing)
    return draw_run(run, {"X": symbol}, _close(board), False).items


def _block(board: Board, symbol: Symbol, letter: Letter, pen: str = BLOCK) -> tuple[Item, ...]:
    facing = unit(symbol.at, letter.at)
    at = letter.at - facing.scaled(letter.reach)
    return _line(board, symbol, pen, Ending.BLOCK, (at.x, at.y, 0), facing=facing)


def defender(board: Board) -> tuple[Item, ...]:
    here, behind = _letter(board, "M", -1.2, 0), _letter(board, "M", 1.2, 0)
    return (_word(here, board), _word(behind, board, "defender-behind"))


def block(board: Board) -> tuple[Item, ...]:
    symbol = _symbol(board, "LG", Position.GUARD, Point(-1.8, -0.9))
    letter = _letter(board, "T", 1.4, 0.7)
    return (*_block(board, symbol, letter), *_men(board, symbol), _word(letter, board))


def double(board: Board) -> tuple[Item, ...]:
    """Two linemen on one letter; the right one goes on to the next."""
    left = _symbol(board, "LG", Position.GUARD, Point(-3.0, -0.85))
    right = _symbol(board, "RG", Position.GUARD, Point(-0.9, -0.85))
    first, second = _letter(board, "N", -1.95, 0.8), _letter(board, "M", 2.6, 0.9)
    start = first.at - unit(right.at, first.at).scaled(first.reach)
    way = unit(start, second.at)
    end = second.at - way.scaled(second.reach)
    climb = LineRun("X", Path(start, (Leg(end),), Ending.BLOCK), None, NOWHERE, CLIMB, way)
    return (
        *draw_run(climb, {"X": right}, _close(board), False).items,
        *_block(board, left, first),
        *_block(board, right, first),
        *_men(board, left, right),
        _word(first, board),
        _word(second, board),
    )


def mesh(board: Board) -> tuple[Item, ...]:
    back = _symbol(board, "R", Position.BACK, Point(-3.0, 0.5))
    passer = _symbol(board, "Q", Position.QUARTERBACK, Point(-0.2, -0.7))
    line = _line(board, back, CARRY, Ending.RUN, (3.4, 0.5, 0))
    fake = _line(board, passer, FAKE, Ending.RUN, (3.2, -1.1, 0))
    met = Point(-0.2, 0.5)
    strokes = mesh_items(met, Point(1, 0), board, NOWHERE)
    parts = [part for item in line for part in _from(item, met)]
    return (*fake, *parts, *strokes, *_men(board, back, passer))


def _from(item: Item, met: Point) -> tuple[Item, ...]:
    """A straight line heavy from where the ball is met, and thin before it."""
    if not isinstance(item, Stroke):
        return (item,)
    start, end = item.segments[0].start, item.segments[-1].end
    before = replace(item, segments=(Line(start, met),), style="route", head=())
    return before, replace(item, segments=(Line(met, end),))


def pitch(board: Board) -> tuple[Item, ...]:
    passer = _symbol(board, "Q", Position.QUARTERBACK, Point(-2.6, 0.85))
    back = _symbol(board, "A", Position.BACK, Point(-2.6, -0.87))
    fake = _line(board, passer, FAKE, Ending.RUN, (0.2, 0.85, 0))
    line = _line(board, back, "", Ending.RUN, (3.2, -0.87, 0))
    ball = Stroke((Line(Point(0.2, 0.85), Point(1.2, -0.87)),), "pitch", (), NOWHERE)
    return (*fake, *line, ball, *_men(board, passer, back))


def flight(board: Board) -> tuple[Item, ...]:
    back = _symbol(board, "R", Position.BACK, Point(-3.0, 0.85))
    passer = _symbol(board, "Q", Position.QUARTERBACK, Point(2.8, -0.75))
    line = _line(board, back, HELD, Ending.STAND, (0.2, 0.85, 0))
    start = Point(0.2, 0.85)
    end = passer.at - unit(start, passer.at).scaled(passer.edge + 0.12)
    across = left_of(unit(start, end)).scaled(board.mark("mesh"))
    ball = Stroke((Line(start, end),), "flight", (), NOWHERE)
    bar = Stroke((Line(end - across, end + across),), "mesh", (), NOWHERE)
    return (*line, ball, bar, *_men(board, back, passer))


def read_or_free(board: Board) -> tuple[Item, ...]:
    read, left = _letter(board, "E", -1.6, -0.3), _letter(board, "J", 1.6, -0.3)
    return (key_mark(read, board), _word(read, board), free_mark(left, board), _word(left, board))


def deep(board: Board) -> tuple[Item, ...]:
    letter = replace(_letter(board, "F", -0.4, 0), deep=14.0)
    return (_word(letter, board), depth_words(letter, board))


def pass_set(board: Board) -> tuple[Item, ...]:
    symbol = _symbol(board, "LT", Position.TACKLE, Point(-1.2, 0.7))
    line = _line(
        board, symbol, SET, Ending.BLOCK, (-1.6, -0.8, 0), facing=unit(Point(1, -2), Point(0, 0))
    )
    return (*line, *_men(board, symbol))


def eyes(board: Board) -> tuple[Item, ...]:
    symbol = _symbol(board, "R", Position.BACK, Point(-3.2, -0.8))
    letter = _letter(board, "M", 3.2, 0.8)
    facing = unit(symbol.at, letter.at)
    bar = symbol.at + facing.scaled(1.8)
    line = _line(board, symbol, BLOCK, Ending.BLOCK, (bar.x, bar.y, 0), facing=facing)
    start, end = bar + facing.scaled(0.3), letter.at - facing.scaled(letter.reach)
    dots = Stroke((Line(end, start),), "eyes", (), NOWHERE)
    return (*line, dots, *_men(board, symbol), _word(letter, board))


def rush(board: Board) -> tuple[Item, ...]:
    letter = _letter(board, "T", 0, 1.2)
    left = _symbol(board, "LG", Position.GUARD, Point(-0.9, 0.15))
    right = _symbol(board, "LT", Position.TACKLE, Point(0.9, 0.15))
    return (*rush_items(letter, Point(0, 0.15), board), *_men(board, left, right),
            _word(letter, board))  # fmt: skip


def drop(board: Board) -> tuple[Item, ...]:
    letter = _letter(board, "W", -2.9, -0.9)
    middle = Point(1.4, 0.5)
    ground = ellipse(middle, 2.4, 1.0, NOWHERE)
    return (ground, *drop_items(letter, middle, board), _word(letter, board))


def man(board: Board) -> tuple[Item, ...]:
    letter = _letter(board, "C", -2.8, 0.8)
    symbol = _symbol(board, "Z", Position.WIDEOUT, Point(2.8, -0.7))
    return (*man_items(letter, symbol, board), *_men(board, symbol), _word(letter, board))


def break_(board: Board) -> tuple[Item, ...]:
    left, right, half = board.frame.left, board.frame.right, board.mark("break_apart") / 2
    return (
        Stroke((Line(Point(left, 0), Point(-half, 0)),), "line-of-scrimmage", (), NOWHERE),
        Stroke((Line(Point(half, 0), Point(right, 0)),), "line-of-scrimmage", (), NOWHERE),
        *break_items(0.0, board),
    )


ENTRIES = (
    ("A defender; pale where he stands behind routes", defender),
    ("A block: the bar stands at the man who is blocked", block),
    ("Two on one man; short dashes: he goes on to the next", double),
    ("The man with the ball, heaviest, from the strokes where he gets it; thin: the fake", mesh),
    ("The ball may be pitched to this man", pitch),
    ("He gives it on: dashed, the ball in the air; caught at the bar", flight),
    ("Nobody blocks him: boxed, he is read; under a wedge, he is free", read_or_free),
    ("Deeper than the picture: his yards past the line", deep),
    ("He sets for the pass and faces his rusher", pass_set),
    ("He takes this man if he comes", eyes),
    ("A rusher and his gap", rush),
    ("Zone: he drops to this ground", drop),
    ("Man: this receiver is his", man),
    ("Field left out: he stands wider than drawn", break_),
)

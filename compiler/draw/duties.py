"""What each man of a look is there for: a ground to drop to, a man to follow, a gap to rush."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from stemline.draw.blocks import set_facing
from stemline.draw.board import Board
from stemline.draw.curves import Pieces, leave, left_of, reverse, unit
from stemline.draw.defenders import Letter
from stemline.draw.drops import ground_of
from stemline.draw.routes import arrowed
from stemline.draw.scene import Item, Line, Point, Polygon, Stroke, TextRun
from stemline.draw.symbols import Symbol
from stemline.football.defence import DutyKind
from stemline.football.play import Play
from stemline.source import Span

_CORNERS = 36
_MET = 2.6
"""Points of white between a rusher's arrow and the bar that meets him."""
_STRAIGHT = 0.3
"""Yards aside within which a rusher goes straight at the man who meets him."""
_SHORT = 1.6
"""Yards: a drop or a rush shorter than this has no line of its own."""


@dataclass(frozen=True)
class Duties:
    """Duties on paper: ``ground`` under everything, ``lines`` over the field, ``words`` last."""

    ground: tuple[Item, ...]
    lines: tuple[Item, ...]
    words: tuple[TextRun, ...]


def draw_duties(
    play: Play,
    letters: Mapping[str, Letter],
    symbols: Mapping[str, Symbol],
    board: Board,
    rush_only: bool,
) -> Duties:
    """Every duty of the look; with ``rush_only`` those of the rushers.

    The small picture leaves out the words, and the rush of a man who is met.
    """
    ground: list[Item] = []
    lines: list[Item] = []
    words: list[TextRun] = []
    met = bars(play, board)
    for letter in letters.values():
        duty, span = letter.man.duty, letter.man.span
        if duty is None:
            continue
        if duty.kind is DutyKind.RUSH:
            if board.full or letter.man.label not in met:
                lines += rush_items(letter, duty.to, board, met.get(letter.man.label))
        elif rush_only:
            continue
        elif duty.kind is DutyKind.MAN and duty.man in symbols:
            lines += man_items(letter, symbols[duty.man], board)
        elif (box := ground_of(duty)) is not None:
            middle = Point(box.centre.x, min(box.centre.y, board.frame.top - box.height / 2))
            ground.append(ellipse(middle, box.width / 2, box.height / 2, span))
            lines += drop_items(letter, middle, board)
            if board.full:
                words.append(_word(duty.kind.value, middle, board, span))
    return Duties(tuple(ground), tuple(lines), tuple(words))


def ellipse(middle: Point, wide: float, tall: float, span: Span) -> Polygon:
    """A pale ground; half its width and half its height in yards."""
    turns = (i * 2 * math.pi / _CORNERS for i in range(_CORNERS))
    points = tuple(
        Point(middle.x + wide * math.cos(t), middle.y + tall * math.sin(t)) for t in turns
    )
    return Polygon(points, "zone", span)


def drop_items(letter: Letter, to: Point, board: Board) -> tuple[Item, ...]:
    """A dashed line from the letter to the middle of his ground."""
    if letter.at.distance(to) < _SHORT:
        return ()
    pieces = leave((Line(letter.at, to),), letter.at, letter.reach)
    return _arrow(pieces, "drop", board, letter.man.span)


def man_items(letter: Letter, symbol: Symbol, board: Board) -> tuple[Item, ...]:
    """A thin line from the letter to the man he has, with a bar short of him."""
    pieces = leave((Line(letter.at, symbol.at),), letter.at, letter.reach)
    if not pieces:
        return ()
    pieces = reverse(leave(reverse(pieces), symbol.at, symbol.edge + board.yards(1.6)))
    if not pieces:
        return ()
    across = left_of(unit(letter.at, symbol.at)).scaled(board.mark("tick"))
    end = pieces[-1].end
    span = letter.man.span
    return (
        Stroke(pieces, "man", (), span),
        Stroke((Line(end - across, end + across),), "man", (), span),
    )


def bars(play: Play, board: Board) -> dict[str, Point]:
    """Where each rusher is met: just in front of the bar of the first man who has him."""
    met: dict[str, Point] = {}
    for task in play.assignments:
        facing = set_facing(task, play)
        if facing is not None and task.path is not None:
            end = task.path.end + facing.scaled(board.yards(_MET))
            met.setdefault(task.hits[0].defender, end)
    return met


def rush_items(
    letter: Letter, to: Point | None, board: Board, met: Point | None = None
) -> tuple[Item, ...]:
    """An arrow from the letter through his gap, to where he is ``met`` or a little behind the
    line."""
    if to is None:
        return ()
    gap = Point(to.x, max(to.y, 0.0) + board.yards(2.0))
    line: Pieces
    if met is not None:
        line = (Line(letter.at, met),)
        if abs(letter.at.x - gap.x) > _STRAIGHT and abs(met.x - gap.x) < abs(met.x - letter.at.x):
            line = (Line(letter.at, gap), Line(gap, met))
    else:
        through = Point(to.x, min(to.y, 0.0) - board.mark("rush"))
        line = (Line(letter.at, gap), Line(gap, through))
    pieces = leave(line, letter.at, letter.reach)
    casing = (Stroke(pieces, "casing", (), letter.man.span),) if pieces else ()
    return (*casing, *_arrow(pieces, "rush", board, letter.man.span))


def _arrow(pieces: Pieces, style: str, board: Board, span: Span) -> tuple[Item, ...]:
    if not pieces:
        return ()
    line, head = arrowed(pieces, board)
    return (Stroke(line, style, head, span),)


def _word(text: str, middle: Point, board: Board, span: Span) -> TextRun:
    """The word of a ground, low in it, under the arrow that ends at its middle."""
    room = board.extent(text, "words")
    y = middle.y + board.yards(2.4)
    return TextRun(text, Point(middle.x - room.width / 2, y), "words", span)

"""Letters of defenders moved off the lines, the least that takes them off, and drawn."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from stemline.football.play import Play
from stemline.geometry.box import Box, square
from stemline.geometry.paths import Point
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.letter import (
    Letter,
    depth_room,
    depth_words,
    free_mark,
    key_mark,
    touched,
)
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, centred
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item

_STEPS = (0.35, 0.7, 1.05)
"""Yards that a letter may step aside from a line, the least first."""
_WAYS = 8
_FARTHER = 2.2
"""A man who is read may step aside so many times as far: a box stands round his letter."""
_DOTS = 0.75
"""Points: half the way between two dots of a line's ink, by which its end may miss a box."""
_YARD = 7.0
"""Points: where a yard is shorter, letters behind routes are moved by parts of this instead."""
_FAR = 0.3
"""What a step of a yard costs, against ink."""


def beside_lines(
    letters: Mapping[str, Letter],
    play: Play,
    symbols: Mapping[str, Symbol],
    ink: Ink,
    board: Board,
) -> dict[str, Letter]:
    """The letters, each moved the least that takes it off the lines; where blocks are drawn, only
    those with whom nobody has to do."""
    made: dict[str, Letter] = {}
    still = touched(play) - set(play.unmet) if board.close else set()
    keep = [square(s.at, s.edge) for s in symbols.values()]
    for name, letter in letters.items():
        if name in still:
            made[name] = letter
            continue
        others = [*keep, *(o.box for n, o in made.items())]
        others += [o.box for n, o in letters.items() if n not in made and n != name]
        read = any(key.man == name for key in play.keys)
        white = board.mark("gap") + (board.mark("key_room") + board.yards(1.0) if read else 0.0)
        farther = _FARTHER if read else 1.0
        if letter.style == "defender-behind":
            white += board.yards(_DOTS)
            farther *= max(1.0, board.yards(_YARD))
        made[name] = _cheapest(letter, farther, others, ink, white, board)
    return {name: _written(letter, ink, board) for name, letter in made.items()}


def _cheapest(
    old: Letter, farther: float, others: Sequence[Box], ink: Ink, white: float, board: Board
) -> Letter:
    """The letter at the first of the cheapest steps; one that is too far to be it costs nothing to
    look at."""
    best, least = old, math.inf
    for step in _steps(farther):
        at = old.at + step
        if round(_FAR * at.distance(old.at), 6) >= least:
            continue
        new = replace(old, at=at)
        cost = _cost(new, old, others, ink, white, board)
        if cost < least:
            best, least = new, cost
    return best


def _written(letter: Letter, ink: Ink, board: Board) -> Letter:
    """The letter with its depth, if it has one, on the side where it lies on fewer lines."""
    if not letter.deep or not board.shows(Detail.EDGE_DEPTHS):
        return letter
    sides = (letter, replace(letter, left=not letter.left))
    return min(sides, key=lambda each: round(ink.under(depth_room(each, board))[0], 6))


def _steps(farther: float) -> Sequence[Point]:
    turns = [i * 2 * math.pi / _WAYS for i in range(_WAYS)]
    around = [
        Point(farther * r * math.cos(t), farther * r * math.sin(t)) for r in _STEPS for t in turns
    ]
    return (Point(0.0, 0.0), *around)


def _cost(
    new: Letter, old: Letter, others: Sequence[Box], ink: Ink, white: float, board: Board
) -> float:
    box = new.box.grown(white)
    box = replace(box, top=box.top + new.over)
    cost = ink.under(box)[0] + _FAR * new.at.distance(old.at)
    blocked = ink.covers(box) or any(box.overlap(other) > 0 for other in others)
    if blocked or not board.frame.holds(box):
        cost += 1000.0
    return round(cost, 6)


def letter_items(letters: Mapping[str, Letter], play: Play, board: Board) -> tuple[Item, ...]:
    """The letters; a box round a key, a wedge over a man whom nobody blocks."""
    keys = {key.man for key in play.keys}
    items: list[Item] = []
    for name, letter in letters.items():
        span = letter.man.span
        if name in keys:
            items.append(key_mark(letter, board))
        elif name in play.unmet:
            items.append(free_mark(letter, board))
        items.append(centred(name, letter.at, letter.style, board, span))
        if letter.deep and board.shows(Detail.EDGE_DEPTHS):
            items.append(depth_words(letter, board))
    return tuple(items)

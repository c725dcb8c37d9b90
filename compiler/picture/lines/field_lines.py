"""The field under a play: yard lines, hashes, sidelines, the line of scrimmage, where in frame."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace

from stemline.football.field import Field, Side
from stemline.football.play import Play
from stemline.geometry.box import Box
from stemline.geometry.paths import Line, Point, Segment
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.scene.scene import Item, Stroke, TextRun
from stemline.source import NOWHERE

_EVERY = 5
"""Yards between two lines across the field."""
GOAL_LINE, YARD_LINE, HASH = "goal-line", "yard-line", "hash"
AGAINST = "against "
"""What a look's name stands behind in the corner of a picture."""
_APART = 0.5
"""Yards: a depth this near to the goal line has no line of its own."""


def field_items(field: Field, board: Board) -> tuple[Item, ...]:
    """Lines of the field in ``board``'s frame, the faintest first."""
    frame = board.frame
    left, right = _ends(field, board)
    items: list[Item] = []
    goal: float = field.goal if field.goal is not None else math.inf
    end: float = field.end if field.end is not None else math.inf
    top = min(frame.top, end)
    for y in _lines(board):
        if y != 0 and y < end and abs(y - goal) > _APART:
            items.append(_line(Point(left, y), Point(right, y), YARD_LINE))
    half = board.mark("hash")
    for side in Side:
        x = board.fold.x(field.hash_mark(side))
        if frame.left < x < frame.right and not board.fold.hides(field.hash_mark(side)):
            marks = (y for y in _lines(board) if y < goal)
            items += [_line(Point(x, y - half), Point(x, y + half), HASH) for y in marks]
    items += _scrimmage(left, right, board)
    ink = board.weight("sideline") / 2  # at the very edge the line stands a hair further in
    for side in Side:
        x = board.fold.x(field.sideline(side))
        if frame.left < x < frame.right:
            x = min(max(x, frame.left + ink), frame.right - ink)
            items.append(_line(Point(x, frame.bottom), Point(x, top), "sideline"))
    thick = board.weight(GOAL_LINE) / 2
    for far, style in ((goal, GOAL_LINE), (end, "sideline")):
        if far + thick < frame.top:
            items.append(_line(Point(left, far), Point(right, far), style))
    return tuple(items)


def broken_at(items: Iterable[Item], boxes: Sequence[Box]) -> tuple[Item, ...]:
    """The field's lines, those across it broken where one of ``boxes`` stands on them and without
    the hashes that it covers: on a copy a defender's letter is as black as a line through it."""
    broken = (_broken_stroke(item, boxes) if isinstance(item, Stroke) else item for item in items)
    return tuple(item for item in broken if not isinstance(item, Stroke) or item.segments)


def _broken_stroke(line: Stroke, boxes: Sequence[Box]) -> Stroke:
    if line.style in (GOAL_LINE, YARD_LINE):
        return replace(line, segments=_broken(line, boxes))
    if line.style != HASH:
        return line
    low, high = _ends_of(line)
    under = (b.left < low.x < b.right and b.bottom < high.y and low.y < b.top for b in boxes)
    return replace(line, segments=()) if any(under) else line


def _ends_of(line: Stroke) -> tuple[Point, Point]:
    return line.segments[0].start, line.segments[-1].end


def _broken(line: Stroke, boxes: Sequence[Box]) -> tuple[Segment, ...]:
    start, end = _ends_of(line)
    on = sorted((box for box in boxes if box.bottom < start.y < box.top), key=lambda box: box.left)
    pieces, at = [], start.x
    for box in on:
        if box.left > at:
            pieces.append(Line(Point(at, start.y), Point(box.left, start.y)))
        at = max(at, box.right)
    return (*pieces, Line(Point(at, start.y), end)) if at < end.x else tuple(pieces)


def field_words(play: Play, board: Board) -> tuple[TextRun, ...]:
    """Depths at the frame's edge, the wide side and the look, where the size shows them."""
    field, against = play.field, _against(play, board.duties)
    runs: list[TextRun] = []
    pad = board.yards(2.0)
    left, right = _ends(field, board)
    if against and board.shows(Detail.FIELD_WORDS):
        text = f"{AGAINST}{against}"
        top = board.frame.top - board.extent(text, "corner").rise - board.yards(3.0)
        runs.append(TextRun(text, Point(left + 2 * pad, top), "corner", NOWHERE))
    for y in _lines(board) if board.shows(Detail.YARDS) else ():
        text = str(y)
        room = board.extent(text, "yards")
        if y <= 0 or y + pad + room.rise > board.frame.top or _past(y, field):
            continue
        runs.append(TextRun(text, Point(left + pad, y + pad / 2), "yards", NOWHERE))
        runs.append(TextRun(text, Point(right - pad - room.width, y + pad / 2), "yards", NOWHERE))
    if field.goal is not None and board.shows(Detail.FIELD_WORDS):
        room = board.extent("goal line", "corner")
        at = Point(right - board.yards(20.0) - room.width, field.goal + pad)
        if at.y + room.rise < board.frame.top:
            runs.append(TextRun("goal line", at, "corner", NOWHERE))
    wide = field.wide_side
    if wide is not None and board.shows(Detail.FIELD_WORDS):
        foot = board.frame.bottom + board.yards(4.0)
        for side in Side:
            text = "field" if side is wide else "boundary"
            room = board.extent(text, "corner")
            x = left + 2 * pad if side is Side.LEFT else right - 2 * pad - room.width
            runs.append(TextRun(text, Point(x, foot), "corner", NOWHERE))
    return tuple(runs)


def _past(y: float, field: Field) -> bool:
    """Whether a depth is past the end line, or its number would stand on it."""
    return field.end is not None and y > field.end - 1


def _against(play: Play, duties: bool) -> str:
    """The look that the picture is drawn against, or those that the play is for."""
    if play.defence is None:
        return ", ".join(play.against)
    alone = duties and not any(task.path for task in play.assignments)
    return "" if alone else play.defence.name  # a look's own page has its name on top


def _ends(field: Field, board: Board) -> tuple[float, float]:
    """Where a line across the field starts and ends in the frame."""
    left = max(board.frame.left, board.fold.x(field.sideline(Side.LEFT)))
    right = min(board.frame.right, board.fold.x(field.sideline(Side.RIGHT)))
    return left, right


def _scrimmage(left: float, right: float, board: Board) -> list[Item]:
    """The line of scrimmage, with a break where field is closed up."""
    items: list[Item] = []
    half = board.mark("break_apart") / 2
    for middle in board.fold.breaks:
        items.append(_line(Point(left, 0.0), Point(middle - half, 0.0), "line-of-scrimmage"))
        items += break_items(middle, board)
        left = middle + half
    return [*items, _line(Point(left, 0.0), Point(right, 0.0), "line-of-scrimmage")]


def break_items(x: float, board: Board) -> tuple[Item, ...]:
    """Two slanted strokes: the field goes on farther than it is drawn."""
    half, apart = board.mark("break"), board.mark("break_apart") / 2
    lean = half / 2
    places = (x - apart, x + apart)
    return tuple(_line(Point(p - lean, -half), Point(p + lean, half), "break") for p in places)


def _lines(board: Board) -> range:
    """The lines of which a whole hash mark is in frame, by their depth."""
    room = board.frame.grown(-board.mark("hash"))
    first = math.ceil(room.bottom / _EVERY) * _EVERY
    return range(first, math.floor(room.top) + 1, _EVERY)


def _line(a: Point, b: Point, style: str) -> Stroke:
    return Stroke((Line(a, b),), style, (), NOWHERE)

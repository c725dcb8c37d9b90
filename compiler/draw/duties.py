"""What each man of a look is there for: a ground to drop to, a man to follow, a gap to rush."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.draw.blocks import set_facing
from stemline.draw.board import Board
from stemline.draw.curves import (
    Pieces,
    far_from,
    heading,
    leave,
    left_of,
    points_of,
    reverse,
    unit,
)
from stemline.draw.defenders import Letter
from stemline.draw.detail import Detail
from stemline.draw.detours import Round, detour
from stemline.draw.drops import ground_of
from stemline.draw.gaps import clear, gap_at, through_gaps
from stemline.draw.routes import arrowed
from stemline.draw.scene import Item, Line, Point, Polygon, Stroke, TextRun
from stemline.draw.symbols import Symbol, square
from stemline.football.defence import DutyKind
from stemline.football.field import Side
from stemline.football.play import Play
from stemline.paths import Leg, Path, segments
from stemline.source import Span

_CORNERS = 36
_BEFORE = 3.6
"""Points past the line at which a rusher turns into his gap: clear of the centre's corners."""
_MET = 2.6
"""Points of white between a rusher's arrow and the bar that meets him."""
_STRAIGHT = 0.3
"""Yards aside within which a rusher goes straight at the man who meets him."""
_NARROW = 0.5
"""Part of the white round a symbol that the line of a man who covers keeps."""
_EVERY = 5
"""Yards between two hash marks of a row."""
_SLANT = 0.7
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
            if board.shows(Detail.MET_RUSH) or letter.man.label not in met:
                rushed = met.get(letter.man.label)
                lines += rush_items(
                    letter, duty.to, board, rushed, tuple(symbols.values()), tuple(letters.values())
                )
        elif rush_only:
            continue
        elif duty.kind is DutyKind.MAN and duty.man in symbols:
            keep = _kept_off(letter, letters, symbols, board)
            line = [s for name, s in symbols.items() if name != duty.man]
            lines += man_items(letter, symbols[duty.man], board, keep, line)
        elif (box := ground_of(duty)) is not None:
            middle = Point(box.centre.x, min(box.centre.y, board.frame.top - box.height / 2))
            ground.append(ellipse(middle, box.width / 2, box.height / 2, span))
            lines += drop_items(letter, middle, board, _kept_off(letter, letters, {}, board))
            if board.shows(Detail.ZONE_WORDS):
                words.append(_off_hash(_word(duty.kind.value, middle, board, span), play, board))
    return Duties(tuple(ground), tuple(lines), tuple(words))


def ellipse(middle: Point, wide: float, tall: float, span: Span) -> Polygon:
    """A pale ground; half its width and half its height in yards."""
    turns = (i * 2 * math.pi / _CORNERS for i in range(_CORNERS))
    points = tuple(
        Point(middle.x + wide * math.cos(t), middle.y + tall * math.sin(t)) for t in turns
    )
    return Polygon(points, "zone", span)


def drop_items(
    letter: Letter, to: Point, board: Board, keep: Sequence[Round] = ()
) -> tuple[Item, ...]:
    """A dashed line from the letter to the middle of his ground, round the letters that it must
    ``keep`` off."""
    if letter.at.distance(to) < _SHORT:
        return ()
    path = detour(Path(letter.at, (Leg(to),)), keep, board.mark("turn"))
    pieces = leave(segments(path), letter.at, letter.reach)
    return _arrow(pieces, "drop", board, letter.man.span)


def man_items(
    letter: Letter,
    symbol: Symbol,
    board: Board,
    keep: Sequence[Round] = (),
    line: Sequence[Symbol] = (),
) -> tuple[Item, ...]:
    """A thin line from the letter to the man he has, with a bar short of him, round what it must
    ``keep`` off and between the men of the ``line``.

    The small picture leaves it out where it could only run over somebody.
    """
    path = detour(Path(letter.at, (Leg(symbol.at),)), keep, board.mark("turn"))
    path = through_gaps(path, line, board.weight("man"))
    pieces = leave(segments(path), letter.at, letter.reach)
    pieces = reverse(leave(reverse(pieces), symbol.at, symbol.edge + board.yards(1.6)))
    if not pieces:
        return ()
    half = board.weight("man") / 2
    points = points_of(pieces)
    if not board.full and any(far_from(points, o.at) < o.hard + half for o in keep):
        return ()
    across = left_of(heading(pieces, board.mark("head"))).scaled(board.mark("tick"))
    end = pieces[-1].end
    span = letter.man.span
    return (
        Stroke(pieces, "man", (), span),
        Stroke((Line(end - across, end + across),), "man", (), span),
    )


def _kept_off(
    letter: Letter, letters: Mapping[str, Letter], symbols: Mapping[str, Symbol], board: Board
) -> list[Round]:
    """What the line of a man who covers another must go round."""
    man = letter.man.duty.man if letter.man.duty is not None else ""
    white = board.mark("clear") * _NARROW
    kept = [Round(s.at, s.edge + white, s.edge) for name, s in symbols.items() if name != man]
    for other in letters.values():
        if other is not letter:
            hard = max(other.half_width, other.half_height)
            kept.append(Round(other.at, hard + white, hard))
    return kept


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
    letter: Letter,
    to: Point | None,
    board: Board,
    met: Point | None = None,
    symbols: Sequence[Symbol] = (),
    others: Sequence[Letter] = (),
) -> tuple[Item, ...]:
    """An arrow from the letter through his gap, to where he is ``met`` or a little behind the
    line; where the gap is too narrow for it, an arrow that ends short of the line."""
    if to is None:
        return ()
    wide = board.mark("head_half")
    x = gap_at(to.x, symbols, wide)
    gap = Point(x, max(to.y, 0.0) + board.yards(_BEFORE))
    line: Pieces
    if met is not None:
        line = (Line(letter.at, met),)
        if abs(letter.at.x - gap.x) > _STRAIGHT and abs(met.x - gap.x) < abs(met.x - letter.at.x):
            line = (Line(letter.at, gap), Line(gap, met))
    else:
        through = Point(x, min(to.y, 0.0) - board.mark("rush"))
        line = (Line(letter.at, gap), Line(gap, through))
        tip = (through + Point(0.0, board.mark("head")), through)
        thin = clear(points_of(line), symbols, board.weight("rush") / 2)
        if not thin or not clear(tip, symbols, wide):
            return _short_rush(letter, gap, symbols, others, board)
    pieces = leave(line, letter.at, letter.reach)
    casing = (Stroke(pieces, "casing", (), letter.man.span),) if pieces else ()
    return (*casing, *_arrow(pieces, "rush", board, letter.man.span))


def _short_rush(
    letter: Letter,
    gap: Point,
    symbols: Sequence[Symbol],
    others: Sequence[Letter],
    board: Board,
) -> tuple[Item, ...]:
    """A short arrow under the letter, toward his gap, or as near to that as there is room."""
    white, start = board.yards(0.4), letter.half_height + board.yards(0.8)
    half = board.mark("rush_head_half")
    best = Line(letter.at, letter.at)
    boxes = [o.box.grown(half) for o in others if o is not letter]
    side = _SLANT if gap.x >= letter.at.x else -_SLANT
    slants = (Point(side, -_SLANT), Point(-side, -_SLANT))
    for way in (unit(letter.at, gap), Point(0.0, -1.0), *slants):
        far = start
        while far < start + board.mark("rush_short"):
            far += board.yards(0.3)
            tip = letter.at + way.scaled(far)
            if not clear((letter.at + way.scaled(start), tip), symbols, white + half / 2):
                break
            if any(box.overlap(square(tip, half / 2)) > 0 for box in boxes):
                break
        far -= board.yards(0.3)
        if far - start > best.start.distance(best.end) + board.yards(0.6):
            best = Line(letter.at + way.scaled(start), letter.at + way.scaled(far))
    if best.start.distance(best.end) < board.yards(1.0):
        return ()
    line, head = arrowed((best,), board, "rush_head")
    return (Stroke(line, "rush", head, letter.man.span),)


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


def _off_hash(word: TextRun, play: Play, board: Board) -> TextRun:
    """The word of a ground moved beside a hash mark on which it would stand."""
    room, half, white = board.extent(word.text, word.style), board.mark("hash"), board.yards(1.5)
    low, high = word.at.y - room.fall - half, word.at.y + room.rise + half
    if math.floor(high / _EVERY) * _EVERY < low:
        return word
    for side in Side:
        x = board.fold.x(play.field.hash_mark(side))
        if word.at.x - white < x < word.at.x + room.width + white:
            right = x >= word.at.x + room.width / 2
            at = x - white - room.width if right else x + white
            return replace(word, at=Point(at, word.at.y))
    return word

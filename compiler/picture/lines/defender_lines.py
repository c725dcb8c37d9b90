"""What each man of a look is there for: a ground to drop to, a man to follow, a gap to rush."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise, product

from stemline.football.defenders import DutyKind
from stemline.football.field import Side
from stemline.football.play import Play
from stemline.geometry.box import Box, square
from stemline.geometry.curves import (
    Pieces,
    far_from,
    heading,
    leave,
    left_of,
    points_of,
    reverse,
    unit,
)
from stemline.geometry.paths import Leg, Path, polyline, segments
from stemline.picture.lines.going_round import late_word, stopped_short, stunt_way
from stemline.picture.lines.route_lines import arrowed
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.drops import ground_of
from stemline.picture.paper.letter import Letter
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item, Line, Point, Polygon, Stroke, TextRun
from stemline.picture.ways.detours import Round, detour
from stemline.picture.ways.gaps import clear, gap_at, gap_of, through_gaps
from stemline.picture.ways.landing import Tip, land
from stemline.picture.ways.set_facing import set_facing
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
_TICK = 0.5
"""Part of its length to which the bar at a man who is covered is cut beside another man."""
_EVERY = 5
"""Yards between two hash marks of a row."""
_BESIDE = 0.4
"""Points of white between the line of a man who covers and a rusher's arrow."""
_WORD = 2.4
"""Points from the middle of a ground up to its word."""
_UP, _ASIDE = (_WORD, 3.6, -3.6, 4.8, -4.8, 6.0, -6.0), (0.0, 4.0, -4.0, 8.0, -8.0, 12.0, -12.0)
"""Points from the middle of a ground up to its word, or down to its word's top, and to the side:
the first place without a line is taken."""
_WHITE = 0.6
"""Points of white round the word of a ground."""
_STEP = 0.5
"""Points between two dots of the lines that these words keep off."""
_SLANT = 0.7
_SHORT = 1.6
"""Yards: a drop or a rush shorter than this has no line of its own."""


@dataclass(frozen=True)
class DefenderLines:
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
) -> DefenderLines:
    """Every duty of the look; with ``rush_only`` those of the rushers.

    The small picture leaves out the words, and the rush of a man who is met.
    """
    ground: list[Item] = []
    lines: list[Item] = []
    words: list[tuple[str, Point, Span]] = []
    late: list[Letter] = []
    met = bars(play, board)
    rushed = _gaps(letters, tuple(symbols.values()), board)
    for letter in letters.values():
        duty, span = letter.man.duty, letter.man.span
        if duty is None:
            continue
        if duty.kind is DutyKind.RUSH:
            if board.shows(Detail.MET_RUSH) or letter.man.label not in met:
                bar = met.get(letter.man.label)
                if duty.after and board.shows(Detail.ZONE_WORDS):
                    late.append(letter)
                lines += rush_items(
                    letter, duty.to, board, bar, tuple(symbols.values()), tuple(letters.values()),
                    letters.get(duty.behind),
                )  # fmt: skip
        elif rush_only:
            continue
        elif duty.kind is DutyKind.MAN and duty.man in symbols:
            keep = _kept_off(letter, letters, symbols, board)
            line = [s for name, s in symbols.items() if name != duty.man]
            lines += man_items(letter, symbols[duty.man], board, keep, line, rushed)
        elif (box := ground_of(duty)) is not None:
            middle = Point(box.centre.x, min(box.centre.y, board.frame.top - _above(box, board)))
            ground.append(ellipse(middle, box.width / 2, box.height / 2, span))
            lines += drop_items(letter, middle, board, _kept_off(letter, letters, {}, board))
            if board.shows(Detail.ZONE_WORDS):
                words.append((duty.kind.value, middle, span))
    ink = _ink(lines, board)
    placed = [_word(text, middle, ink, play, board, span) for text, middle, span in words]
    placed += [late_word(letter, letters.values(), ink, board) for letter in late]
    return DefenderLines(tuple(ground), tuple(lines), tuple(word for word in placed if word))


def _above(box: Box, board: Board) -> float:
    """Yards that a ground, and the word in it, take above its middle."""
    tall = box.height / 2 + board.yards(board.look.grounds["zone"].edge_weight / 2)
    if not board.shows(Detail.ZONE_WORDS):
        return tall
    word = board.yards(_WORD + 1.0) + board.extent("H", "words").rise
    return max(tall, word)


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
    ``keep`` off; none where a large letter leaves less of it than its head."""
    if letter.at.distance(to) < _SHORT:
        return ()
    tip = Tip(board.mark("head"), board.mark("head_half"), board.weight("drop") / 2)
    path = land(Path(letter.at, (Leg(to),)), keep, tip, board.mark("turn"))
    pieces = leave(segments(path), letter.at, letter.reach)
    if pieces and pieces[0].start.distance(pieces[-1].end) < board.mark("head"):
        return ()
    return _arrow(pieces, "drop", board, letter.man.span)


def man_items(
    letter: Letter,
    symbol: Symbol,
    board: Board,
    keep: Sequence[Round] = (),
    line: Sequence[Symbol] = (),
    rushed: Sequence[float] = (),
) -> tuple[Item, ...]:
    """A thin line from the letter to the man he has, with a bar short of him, round what it must
    ``keep`` off and between the men of the ``line``; ``rushed`` are x of the gaps that are rushed.

    The bar is shorter where another man stands beside it. The small picture leaves the line out
    where it could only run over somebody.
    """
    # it comes straight through the line of scrimmage, whoever stands close behind it
    path = detour(Path(letter.at, (Leg(symbol.at),)), keep, board.mark("turn"), slanting=False)
    path = _beside_rush(through_gaps(path, line, board.weight("man")), line, rushed, board)
    path = _past_near_men(path, keep, line, board)
    pieces = leave(segments(path), letter.at, letter.reach)
    pieces = reverse(leave(reverse(pieces), symbol.at, symbol.edge + board.yards(1.6)))
    if not pieces:
        return ()
    half = board.weight("man") / 2
    points = points_of(pieces)
    over = any(far_from(points, o.at) < o.hard + half for o in keep)
    if not board.full and over:
        return ()
    end = pieces[-1].end
    room = min((end.distance(o.at) - o.hard - half for o in keep), default=math.inf)
    tick = max(min(board.mark("tick"), room), _TICK * board.mark("tick"))
    across = left_of(heading(pieces, board.mark("head"))).scaled(tick)
    span = letter.man.span
    return (
        Stroke(pieces, "man", (), span),
        Stroke((Line(end - across, end + across),), "man", (), span),
    )


def _past_near_men(path: Path, keep: Sequence[Round], line: Sequence[Symbol], board: Board) -> Path:
    """The path, straight through a gap, round the men whom it comes upon close to the line; with
    the turns of its own behind the line left out, where they would lead it over a lineman."""
    half = board.weight("man") / 2
    behind = [o for o in keep if o.at.y < -o.hard]
    front = [o for o in keep if o.at.y > o.hard]
    through = next((i for i, leg in enumerate(path.legs) if leg.to.y < 0), len(path.legs))
    bare = replace(path, legs=(*path.legs[:-1][: through + 1], path.legs[-1]))
    ways = []
    for way in (path, bare):
        for off in (behind, front):
            way = detour(way, off, board.mark("turn"), slanting=False)
        if clear(polyline(way), line, half):
            return way
        ways.append(way)
    return ways[0]


def _gaps(
    letters: Mapping[str, Letter], symbols: Sequence[Symbol], board: Board
) -> tuple[float, ...]:
    """Where each rusher comes over the line of scrimmage."""
    duties = [letter.man.duty for letter in letters.values()]
    wide = board.mark("head_half")
    return tuple(
        gap_at(duty.to.x, symbols, wide)
        for duty in duties
        if duty is not None and duty.kind is DutyKind.RUSH and duty.to is not None
    )


def _beside_rush(path: Path, line: Sequence[Symbol], rushed: Sequence[float], board: Board) -> Path:
    """The path beside the arrow of a man who rushes where it comes over the line, on its end's
    side; through the same gap."""
    gap = gap_of(path, line)
    aside = (board.weight("rush") + board.weight("man")) / 2 + board.yards(_BESIDE)
    if gap is None or not _along(path.corners, rushed, aside):
        return path
    left, right = gap
    room = right.at.x - right.edge - left.at.x - left.edge
    middle = (left.at.x + right.at.x) / 2
    return through_gaps(path, line, room / 2, aside if path.end.x > middle else -aside)


def _along(points: Sequence[Point], rushed: Sequence[float], white: float) -> bool:
    """Whether a line comes over the line of scrimmage where a rusher does."""
    for a, b in pairwise(points):
        if a.y >= 0 > b.y:
            x = a.x + (b.x - a.x) * a.y / (a.y - b.y)
            return any(abs(x - gap) < white for gap in rushed)
    return False


def _kept_off(
    letter: Letter, letters: Mapping[str, Letter], symbols: Mapping[str, Symbol], board: Board
) -> list[Round]:
    """What the line of a man who covers another must go round."""
    man = letter.man.duty.man if letter.man.duty is not None else ""
    white, line = board.mark("clear") * _NARROW, board.weight("drop") / 2
    kept = [Round(s.at, s.edge + white, s.edge) for name, s in symbols.items() if name != man]
    for other in letters.values():
        if other is not letter:
            hard = max(other.half_width, other.half_height)
            kept.append(Round(other.at, hard + white, hard + line))
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
    first: Letter | None = None,
) -> tuple[Item, ...]:
    """An arrow from the letter through his gap, to where he is ``met`` or a little behind the
    line; where the gap is too narrow for it, an arrow that ends short of the line.

    A man of a stunt goes round the letter of him who goes ``first``."""
    if to is None:
        return ()
    wide = board.mark("head_half")
    x = gap_at(to.x, symbols, wide)
    gap = Point(x, max(to.y, 0.0) + board.yards(_BEFORE))
    if first is not None:
        end = met or Point(x, min(to.y, 0.0) - board.mark("rush"))
        path = stunt_way(letter, first, gap, end, others, board)
        short = stopped_short(path, symbols, board)
        pieces = leave(segments(short or path), letter.at, letter.reach)
        return _arrow(pieces, "rush", board, letter.man.span, "rush_head" if short else "head")
    if met is not None:
        return _met_rush(letter, gap, met, symbols, board)
    through = Point(x, min(to.y, 0.0) - board.mark("rush"))
    line: Pieces = (Line(letter.at, gap), Line(gap, through))
    tip = (through + Point(0.0, board.mark("head")), through)
    thin = clear(points_of(line), symbols, board.weight("rush") / 2)
    if not thin or not clear(tip, symbols, wide):
        return _short_rush(letter, gap, symbols, others, board)
    pieces = leave(line, letter.at, letter.reach)
    return _arrow(pieces, "rush", board, letter.man.span)


def _met_rush(
    letter: Letter, gap: Point, met: Point, symbols: Sequence[Symbol], board: Board
) -> tuple[Item, ...]:
    """An arrow from the letter to where he is ``met``: through his gap where that is on his way,
    round the men beside it, and with a smaller head where they leave no room for a whole one."""
    half = board.weight("rush") / 2
    path = Path(letter.at, (Leg(met),))
    if abs(letter.at.x - gap.x) > _STRAIGHT and abs(met.x - gap.x) < abs(met.x - letter.at.x):
        path = Path(letter.at, (Leg(gap), Leg(met)))
    if not clear(path.corners, symbols, half):
        white = half + board.yards(_BESIDE)
        keep = tuple(Round(s.at, s.edge + white, s.edge + half) for s in symbols)
        path = through_gaps(detour(path, keep, board.mark("turn") / 2), symbols, white)
    pieces = leave(segments(path), letter.at, letter.reach)
    head = arrowed(pieces, board)[1] if pieces else ()
    kind = "head" if clear((*head, *head[:1]), symbols, 0.0) else "rush_head"
    return _arrow(pieces, "rush", board, letter.man.span, kind)


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


def _arrow(
    pieces: Pieces, style: str, board: Board, span: Span, kind: str = "head"
) -> tuple[Item, ...]:
    if not pieces:
        return ()
    line, head = arrowed(pieces, board, kind)
    return (Stroke(line, style, head, span),)


def _ink(lines: Sequence[Item], board: Board) -> Ink:
    ink = Ink(board.yards(_STEP))
    for line in lines:
        if isinstance(line, Stroke):
            ink.line(points_of(line.segments))
            ink.line((*line.head, *line.head[:1]))
    return ink


def _word(
    text: str, middle: Point, ink: Ink, play: Play, board: Board, span: Span
) -> TextRun | None:
    """The word of a ground: over the arrow that ends at its middle, or as near to that as it is on
    no line; None where it would be on one everywhere."""
    room = board.extent(text, "words")
    for up, aside in product(_UP, _ASIDE):
        y = middle.y + board.yards(up) if up > 0 else middle.y + board.yards(up) - room.rise
        at = Point(middle.x - room.width / 2 + board.yards(aside), y)
        word = _off_hash(TextRun(text, at, "words", span), play, board)
        x, low, high = word.at.x, word.at.y - room.fall, word.at.y + room.rise
        box = Box(x, low, x + room.width, high).grown(board.yards(_WHITE))
        lined = up != _WORD and math.floor(box.top / _EVERY) * _EVERY >= box.bottom
        if not lined and ink.under(box)[0] == 0:
            return word
    return None


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

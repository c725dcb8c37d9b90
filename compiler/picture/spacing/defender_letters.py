"""Where each defender's letter stands on paper, and the marks that single one out.

A letter stands at the defender's yards. It gives way to the offence's symbols by moving up the
field, so that a block between two men always has room to be seen; on a picture of routes it steps
aside from a line. A man too deep for the picture stands at its edge with his depth beside him.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise

from stemline.football.defenders import Defender, DutyKind, Level
from stemline.football.play import Play
from stemline.geometry.box import Box, square
from stemline.geometry.paths import Point, polyline
from stemline.picture.frame.board import Board
from stemline.picture.frame.detail import Detail
from stemline.picture.men.symbols import Symbol, centred
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item, Plate, Polygon, TextRun
from stemline.picture.spacing.hole import DrawnHole

_ROUNDS = 20
_STEPS = (0.35, 0.7, 1.05)
"""Yards that a letter may step aside from a line, the least first."""
_WAYS = 8
_FARTHER = 2.2
"""A man who is read may step aside so many times as far: a box stands round his letter."""
_DOTS = 0.75
"""Points: half the way between two dots of a line's ink, by which its end may miss a box."""
_YARD = 7.0
"""Points: where a yard is shorter, letters behind routes are moved by parts of this instead."""
_ASIDE = 1.5
"""Yards beside a man from which his blocker's bar would lie on words at that side of him."""
_DEAD_ON = 0.1
"""Yards: a letter this near the middle of the carrier's way is passed on its outside."""
_BEHIND = 1.5
"""Yards deeper than another from which a man's letter stays behind the other's."""
_FAR = 0.3
"""What a step of a yard costs, against ink."""


@dataclass(frozen=True)
class Letter:
    """A defender on paper. ``reach`` is how near a bar may come to ``at``, the letter's middle;
    ``deep`` his depth where he stands at the picture's edge instead of at his place, else 0, and
    ``left`` tells that it is written on his left. ``over`` is the room that a wedge takes above the
    letter; ``hit`` tells that a bar stands at him."""

    man: Defender
    at: Point
    half_width: float
    half_height: float
    reach: float
    style: str
    deep: float = 0.0
    left: bool = False
    over: float = 0.0
    hit: bool = False

    @property
    def box(self) -> Box:
        w, h = self.half_width, self.half_height
        return Box(self.at.x - w, self.at.y - h, self.at.x + w, self.at.y + h)


def place_letters(
    play: Play,
    symbols: Mapping[str, Symbol],
    board: Board,
    bold: bool,
    hole: DrawnHole | None = None,
) -> dict[str, Letter]:
    """Every defender's letter by label, none on a symbol, none on another and none on the
    carrier's way through his ``hole``; ``bold`` where the picture is about them, paler behind
    routes.

    A small picture leaves out whom it is not about: of a run the deep men with whom nobody has to
    do, of routes the men on the line.
    """
    if play.defence is None:
        return {}
    hit = {hit.defender for task in play.assignments for hit in task.hits}
    near = touched(play) if board.close else set()
    routes = any(task.path for task in play.assignments)
    made: dict[str, Letter] = {}
    for man in play.defence.defenders:
        dropped = man.level is (Level.DEEP if board.close else Level.LINE)
        leaves_out = not board.shows(Detail.BYSTANDERS) and (routes or board.close)
        if dropped and leaves_out and man.label not in near:
            continue
        key = any(key.man == man.label for key in play.keys)
        letter = letter_of(man, board, bold, key, man.label in play.unblocked)
        barred = man.label in hit and board.close
        made[man.label] = replace(letter, left=_from_right(man, play), hit=barred)
    return _apart(made, symbols, hit, hole, board)


def touched(play: Play) -> set[str]:
    """Defenders who are blocked, read or left free."""
    hit = {hit.defender for task in play.assignments for hit in task.hits}
    return hit | {key.man for key in play.keys} | set(play.unblocked)


def _from_right(man: Defender, play: Play) -> bool:
    """Whether somebody comes from the right to block him."""
    before = (
        task.path.corners[-2]
        for task in play.assignments
        if task.path is not None and task.path.legs
        for hit in task.hits[:1]
        if hit.defender == man.label
    )
    return any(at.x > man.at.x + _ASIDE for at in before)


def letter_of(
    man: Defender, board: Board, bold: bool = True, key: bool = False, free: bool = False
) -> Letter:
    """One letter at its defender's place, or at the top of the frame below its mark."""
    style = "defender" if bold else "defender-behind"
    room = board.extent(man.label, style)
    half_width, half_height = room.width / 2, room.rise / 2
    reach = max(half_width, half_height) + board.mark("letter_room")
    if key:
        reach += board.mark("key_room")
    wedge = board.yards(1.6) + 1.3 * board.mark("free") if free else 0.0
    top = board.frame.top - half_height - board.yards(3.5) - max(0.0, wedge - board.yards(2.5))
    at = Point(man.at.x, min(man.at.y, top))
    deep = man.at.y if man.at.y > top + 1.0 else 0.0
    return Letter(man, at, half_width, half_height, reach, style, deep, over=wedge)


def _apart(
    letters: Mapping[str, Letter],
    symbols: Mapping[str, Symbol],
    hit: set[str],
    hole: DrawnHole | None,
    board: Board,
) -> dict[str, Letter]:
    made = dict(letters)
    way = polyline(hole.path) if hole is not None else ()
    sides = {name: _side_of(letter, way) for name, letter in letters.items()} if way else {}
    for _ in range(_ROUNDS):
        moved = False
        for name, side in sides.items():
            by = _on_way(made[name], way, side, hole, board)
            if by > 1e-6:
                made[name] = replace(made[name], at=made[name].at + Point(side * by, 0.0))
                moved = True
        for name, letter in made.items():
            for symbol in symbols.values():
                clear = _room_for(letter, name in hit, board) + symbol.edge
                at = _above(letter.at, symbol.at, clear)
                if at.y > letter.at.y + 1e-6:
                    letter, moved = replace(letter, at=at), True
            made[name] = letter
        for a, b in combinations(made, 2):
            by = _overlap(made[a], made[b], board)
            if by > 1e-6 and abs(made[a].man.at.y - made[b].man.at.y) > _BEHIND:
                front, back = (a, b) if made[a].man.at.y < made[b].man.at.y else (b, a)
                was = made[back].at.x
                made[back] = _behind(made[back], made[front], by, board)
                if way and made[back].at.x != was:
                    sides[back] = 1.0 if made[back].at.x > was else -1.0
                moved = True
            elif by > 1e-6:
                left, right = (a, b) if made[a].at.x <= made[b].at.x else (b, a)
                for name, half in ((left, -0.5), (right, 0.5)):
                    made[name] = replace(made[name], at=made[name].at + Point(half * by, 0.0))
                moved = True
        made = {name: _inside(letter, board) for name, letter in made.items()}
        if not moved:
            break
    return made


def _room_for(letter: Letter, hit: bool, board: Board) -> float:
    """Yards from a letter's middle to the nearest symbol: room for a block, or for the short
    arrow of a rush."""
    duty = letter.man.duty
    if board.duties and not board.full and duty is not None and duty.kind is DutyKind.RUSH:
        return letter.half_height + board.mark("rush_short") + board.yards(1.8)
    return letter.reach + (board.mark("stub") if hit and board.close else 0.0)


def _side_of(letter: Letter, way: Sequence[Point]) -> float:
    """On which side of the carrier's way a letter belongs; his outside, when it is dead on."""
    near = min(way, key=lambda p: p.distance(letter.at))
    aside = letter.at.x - near.x
    if abs(aside) < _DEAD_ON:
        return 1.0 if letter.at.x < 0 else -1.0
    return 1.0 if aside > 0 else -1.0


def _on_way(
    letter: Letter, way: Sequence[Point], side: float, hole: DrawnHole | None, board: Board
) -> float:
    """Yards by which a letter is too near the way of the carrier and of those who lead him,
    measured across."""
    lanes = [side * lane for lane in hole.lanes.values()] if hole is not None else []
    lead = max([0.0, *lanes])
    white = board.mark("gap")
    room = max(board.weight("carry") / 2, lead + board.weight("block") / 2 if lead else 0.0) + white
    low, high = letter.at.y - letter.half_height - white, letter.at.y + letter.half_height + white
    head = way[-1].y - board.mark("carry_head")
    if high > head:
        room = max(room, board.mark("carry_head_half") + white / 2)
    need, short = letter.half_width + room, 0.0
    for a, b in pairwise(way):
        bottom, top = min(a.y, b.y), max(a.y, b.y)
        if top < low or bottom > high:
            continue
        for y in (max(bottom, low), min(top, high)):
            part = (y - a.y) / (b.y - a.y) if abs(b.y - a.y) > 1e-6 else 0.0
            x = a.x + (b.x - a.x) * part
            short = max(short, need - side * (letter.at.x - x))
    return short if short < 2 * need else 0.0


def _behind(back: Letter, front: Letter, by: float, board: Board) -> Letter:
    """The letter of a man who stands behind another, behind him on paper too; beside him by the
    ``by`` yards it takes where that would be outside the picture."""
    raised = _raised(back, front, board)
    if _inside(raised, board) == raised:
        return raised
    aside = back.at.x - front.at.x
    side = aside if abs(aside) > _DEAD_ON else -back.at.x
    return replace(back, at=back.at + Point(by if side > 0 else -by, 0.0))


def _raised(back: Letter, front: Letter, board: Board) -> Letter:
    """The letter of a man who stands behind another, straight up the field until it is clear."""
    tall = _stack(front, back, board)
    return replace(back, at=Point(back.at.x, max(back.at.y, front.at.y + tall)))


def _stack(front: Letter, back: Letter, board: Board) -> float:
    """Yards between the middles of two letters one above the other."""
    under = back.reach + board.weight("bar") if back.hit else back.half_height
    return front.half_height + front.over + _boxed(front, board) + under + board.mark("gap")


def _boxed(letter: Letter, board: Board) -> float:
    """Yards from a letter to the box round it, if he is read; else 0."""
    room = letter.reach - max(letter.half_width, letter.half_height) - board.mark("letter_room")
    return max(0.0, room)


def _inside(letter: Letter, board: Board) -> Letter:
    """The letter brought down to where it and its wedge are in the frame."""
    top = board.frame.top - letter.half_height - letter.over - board.yards(0.5)
    return letter if letter.at.y <= top else replace(letter, at=Point(letter.at.x, top))


def _above(at: Point, other: Point, room: float) -> Point:
    """The place straight up the field from ``at`` that is ``room`` from ``other``."""
    across = at.x - other.x
    if at.distance(other) >= room or abs(across) >= room:
        return at
    return Point(at.x, max(at.y, other.y + math.sqrt(room * room - across * across)))


def _overlap(a: Letter, b: Letter, board: Board) -> float:
    """Yards by which two letters are too near, measured across; 0 when one is above the other."""
    gap = board.mark("gap")
    front, back = (a, b) if a.at.y <= b.at.y else (b, a)
    if back.at.y - front.at.y >= _stack(front, back, board) - 1e-9:
        return 0.0
    wide = board.mark("free") if front.over else front.half_width
    return max(0.0, max(wide, front.half_width) + back.half_width + gap - abs(a.at.x - b.at.x))


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
    still = touched(play) - set(play.unblocked) if board.close else set()
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
    return min(sides, key=lambda each: round(ink.under(_depth_room(each, board))[0], 6))


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
        elif name in play.unblocked:
            items.append(free_mark(letter, board))
        items.append(centred(name, letter.at, letter.style, board, span))
        if letter.deep and board.shows(Detail.EDGE_DEPTHS):
            items.append(depth_words(letter, board))
    return tuple(items)


def key_mark(letter: Letter, board: Board) -> Plate:
    """A box round the letter of a man who is read."""
    box = letter.box.grown(board.mark("key_room"))
    return Plate(box, board.mark("tile_corner"), "key", letter.man.span)


def free_mark(letter: Letter, board: Board) -> Polygon:
    """A solid wedge over the letter, pointing the way he comes."""
    size = board.mark("free")
    y = letter.box.top + board.yards(1.6)
    x = letter.at.x
    points = (Point(x, y), Point(x - size, y + 1.3 * size), Point(x + size, y + 1.3 * size))
    return Polygon(points, "free", letter.man.span)


def depth_words(letter: Letter, board: Board) -> TextRun:
    """How deep a man stands who is drawn at the picture's edge."""
    text = f"{round(letter.deep)}"
    room = board.extent(text, "words")
    gap = board.yards(2.0) + _boxed(letter, board)
    x = letter.box.left - gap - room.width if letter.left else letter.box.right + gap
    at = Point(x, letter.at.y - room.rise / 2)
    return TextRun(text, at, "words", letter.man.span)


def _depth_room(letter: Letter, board: Board) -> Box:
    """The room that the depth of a man at the picture's edge takes."""
    words = depth_words(letter, board)
    room = board.extent(words.text, words.style)
    return Box(words.at.x, words.at.y, words.at.x + room.width, words.at.y + room.rise)


def solids(letters: Mapping[str, Letter], play: Play, board: Board) -> list[Box]:
    """The boxes that no word may lie on: the letters with their marks."""
    keys = {key.man for key in play.keys}
    boxes: list[Box] = []
    for name, letter in letters.items():
        box = letter.box.grown(board.mark("key_room") if name in keys else board.yards(0.8))
        if name in play.unblocked:
            top = max(point.y for point in free_mark(letter, board).points)
            box = box.union(Box(box.left, box.bottom, box.right, top))
        if letter.deep and board.shows(Detail.EDGE_DEPTHS):
            words = _depth_room(letter, board)
            box = box.union(replace(words, bottom=box.bottom, top=box.top))
        boxes.append(box)
    return boxes

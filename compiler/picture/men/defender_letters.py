"""Where each defender's letter stands on paper, and the marks that single one out.

A letter stands at the defender's yards. It gives way to the offence's symbols by moving up the
field, so that a block between two men always has room to be seen; on a picture of routes it steps
aside from a line. A man too deep for the picture stands at its edge with his depth beside him.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import combinations, pairwise

from stemline.football.defenders import Defender, DutyKind, Level
from stemline.football.play import Play
from stemline.geometry.box import Box
from stemline.geometry.paths import Point, polyline
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.letter import Letter, boxed, depth_room, letter_of, touched
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.ways.at_hole import DrawnHole

_ROUNDS = 20
_ASIDE = 1.5
"""Yards beside a man from which his blocker's bar would lie on words at that side of him."""
_DEAD_ON = 0.1
"""Yards: a letter this near the middle of the carrier's way is passed on its outside."""
_BEHIND = 1.5
"""Yards deeper than another from which a man's letter stays behind the other's."""


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
        letter = letter_of(man, board, bold, key, man.label in play.unmet)
        barred = man.label in hit and board.close
        made[man.label] = replace(letter, left=_from_right(man, play), hit=barred)
    return _told_apart(_apart(made, symbols, hit, hole, board), board)


def _told_apart(letters: Mapping[str, Letter], board: Board) -> dict[str, Letter]:
    """Depths at the edge on that side of their men where no other letter stands."""
    made = dict(letters)
    for name, letter in letters.items():
        others = [other.box for each, other in made.items() if each != name]
        turned = replace(letter, left=not letter.left)
        if letter.deep and _meets(letter, others, board) and not _meets(turned, others, board):
            made[name] = turned
    return made


def _meets(letter: Letter, others: Sequence[Box], board: Board) -> bool:
    room = depth_room(letter, board).grown(board.yards(1.0))
    return any(room.overlap(other) > 0 for other in others)


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
    return front.half_height + front.over + boxed(front, board) + under + board.mark("gap")


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

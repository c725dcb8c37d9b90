"""Moves before the snap: dashed, from a dashed ring where he stood to the symbol where he is.

A motion along the line of scrimmage, or under a path, would be lost there. So it is drawn at a
few drops below its true place and the first one with the least ink on it is taken.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from stemline.football.play import Assignment, Play
from stemline.geometry.box import square
from stemline.geometry.curves import (
    Pieces,
    far_from,
    heading,
    leave,
    left_of,
    points_of,
    reverse,
    stop_short,
    unit,
)
from stemline.geometry.paths import Leg, Line, Path, Point, along, length, segments
from stemline.picture.lines.laid import LaidLines
from stemline.picture.lines.paces import motion_name
from stemline.picture.lines.route_lines import arrowed
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, centred
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Disc, Item, Stroke
from stemline.picture.ways.detours import Round, detour
from stemline.picture.ways.landing import side_of
from stemline.picture.ways.starts import ghosts_of, keep_off
from stemline.source import Span

_DROPS = (0.0, 1.0, 1.7, 2.4)
"""Times the theme's drop. Never past the line of scrimmage: no man may go there before the snap."""
_ON_LINE = 0.45
"""Yards from the line of scrimmage within which a dashed line is lost on it."""
_NEAR = 2.5
"""Points: a dashed line this near another line is lost in it."""
_LINE_COST = 2.0
_THROUGH = 50.0
"""Ink that running over a man is worth."""
_OTHER_SIDE = 15.0
"""Ink that passing a man on the other side is worth: before or behind the passer is football."""
_ASIDE = (15.0, -15.0, 30.0, -30.0, 45.0, -45.0, 60.0, -60.0)
"""Degrees by which a motion may come to its man's symbol from another side."""
_LEAST, _STEP = 0.4, 1.0
"""A motion is not cut to less than this part of its length; points that it is cut by at a time."""
_DROP_COST = 1.5
"""A drop farther down the list must save this much ink."""


@dataclass(frozen=True)
class Moved:
    """A motion on paper. ``middle`` is where its words belong, ``man`` who moves."""

    items: tuple[Item, ...]
    points: tuple[Point, ...]
    middle: Point
    words: str
    span: Span
    man: str = ""


def lay_motions(now: LaidLines, under: Iterable[Item]) -> tuple[tuple[Moved, ...], Ink]:
    """Every man's motion, kept off the lines and what lies ``under`` them; and the ink with all of
    it."""
    ink = now.ink.copy()
    ink.lay(under)
    moved = draw_motions(now.play, now.symbols, ink, now.on, now.only)
    for item in (item for move in moved for item in move.items):
        if isinstance(item, Disc):
            ink.solid(square(item.centre, item.radius))
    return moved, ink


def draw_motions(
    play: Play, symbols: Mapping[str, Symbol], ink: Ink, board: Board, only: str | None
) -> tuple[Moved, ...]:
    """Every man's motion, laid on ``ink`` as it is drawn."""
    made: list[Moved] = []
    ghosts = ghosts_of(play, symbols, board)
    for task in play.assignments:
        if task.motion is None or not task.motion.path.legs:
            continue
        obstacles = keep_off(symbols, ghosts, task.man, board)
        path = replace(
            task.motion.path,
            start=ghosts.get(task.man, task.motion.path.start),
            legs=(*task.motion.path.legs[:-1], Leg(symbols[task.man].at)),
        )
        path = _best(path, symbols[task.man], obstacles, ink, board)
        tone = "" if only in (None, task.man) else "-pale"
        ghost = task.man in ghosts
        moved = _draw(task, path, symbols[task.man], obstacles, ghost, tone, board)
        made.append(moved)
        ink.line(moved.points)
    return tuple(made)


def _draw(
    task: Assignment,
    path: Path,
    symbol: Symbol,
    obstacles: Sequence[Round],
    ghost: bool,
    tone: str,
    board: Board,
) -> Moved:
    motion = task.motion
    assert motion is not None
    ring = board.mark("ghost")
    pieces = _up_to(symbol, path, board)
    if ghost:
        pieces = leave(pieces, path.start, ring)
    if motion.running:
        pieces = _short_of(pieces, obstacles, board)
    if not pieces:
        return Moved((), (), path.start, "", task.span, task.man)
    name = motion_name(task.man)
    items: list[Item] = []
    if motion.running:
        line, head = _arrowed(pieces, obstacles, board)
        items.append(Stroke(line, f"motion{tone}", head, task.span, name))
    else:
        across = left_of(heading(pieces, board.mark("head"))).scaled(board.mark("tick"))
        end = pieces[-1].end
        items.append(Stroke(pieces, f"motion{tone}", (), task.span, name))
        items.append(Stroke((Line(end - across, end + across),), f"tick{tone}", (), task.span))
    if ghost:
        items.append(Disc(path.start, ring, f"ghost{tone}", task.span))
        items.append(centred(task.man, path.start, f"ghost{tone}", board, task.span))
    points = points_of(pieces)
    middle = along(points, length(points) / 2)
    return Moved(tuple(items), points, middle, motion.words, task.span, task.man)


def _up_to(symbol: Symbol, path: Path, board: Board) -> Pieces:
    """The path as drawn, to the edge of its man's symbol."""
    return reverse(leave(reverse(segments(path)), symbol.at, symbol.edge + board.yards(0.6)))


def _best(path: Path, symbol: Symbol, obstacles: Sequence[Round], ink: Ink, board: Board) -> Path:
    """The path at the drop with the least ink on it, over no man and on its own side of each."""
    near, room = board.yards(_NEAR), symbol.edge + 2 * board.mark("head")
    best, best_cost = path, math.inf
    for index, tried in enumerate(_tries(path, symbol, room, board)):
        if index == len(_DROPS) and best_cost < _THROUGH:
            break
        cost = index * _DROP_COST
        if cost >= best_cost - 1e-6:
            continue  # whatever is added, it is not the cheapest
        bent = detour(tried, obstacles, board.mark("turn"))
        points, pieces = points_of(segments(bent)), _up_to(symbol, bent, board)
        cost += sum(_THROUGH for o in obstacles if _over(pieces, o, board))
        cost += sum(_OTHER_SIDE for o in obstacles if side_of(path, o) * side_of(bent, o) < 0)
        for at in _walk(points, near):
            if cost >= best_cost - 1e-6:
                break
            cost += _LINE_COST if abs(at.y) < _ON_LINE else 0.0
            cost += ink.under(square(at, near))[0]
        if cost < best_cost - 1e-6:
            best, best_cost = bent, cost
    return best


def _tries(path: Path, symbol: Symbol, room: float, board: Board) -> Iterable[Path]:
    """The path at each drop; then, for one that would still be over somebody, with its last steps
    to its man's symbol from other sides."""
    for times in _DROPS:
        yield _dropped(path, times * board.mark("drop"), room)
    back = unit(symbol.at, path.corners[-2])
    outward = 1.0 if symbol.at.x >= 0 else -1.0
    for degrees in _ASIDE:
        turn = math.radians(outward * degrees)
        c, s = math.cos(turn), math.sin(turn)
        way = Point(c * back.x - s * back.y, s * back.x + c * back.y)
        corner = Leg(symbol.at + way.scaled(room), board.mark("turn") / 2)
        yield replace(path, legs=(*path.legs[:-1], corner, path.legs[-1]))


def _over(pieces: Pieces, o: Round, board: Board) -> bool:
    """Whether a motion drawn so, or its arrowhead, lies on another man."""
    if not pieces:
        return False
    half = board.weight("motion") / 2
    head = _arrowed(pieces, (o,), board)[1]
    return far_from(points_of(pieces), o.at) < o.hard + half or _on(head, o)


def _short_of(pieces: Pieces, obstacles: Sequence[Round], board: Board) -> Pieces:
    """The pieces ended before two men who leave no room between them, if there are any such: the
    arrow shows between whom he goes."""
    half = board.weight("motion") / 2
    cut = pieces
    while cut and length(points_of(cut)) > _LEAST * length(points_of(pieces)):
        head, points = _arrowed(cut, obstacles, board)[1], points_of(cut)
        if not any(far_from(points, o.at) < o.hard + half or _on(head, o) for o in obstacles):
            return cut
        cut = stop_short(cut, board.yards(_STEP))
    return pieces


def _arrowed(
    pieces: Pieces, obstacles: Iterable[Round], board: Board
) -> tuple[Pieces, tuple[Point, ...]]:
    """The pieces up to inside an arrowhead, and the head: a smaller one between two men who leave
    no room for a whole one."""
    whole = arrowed(pieces, board)
    tight = any(_on(whole[1], o) for o in obstacles)
    return arrowed(pieces, board, "rush_head") if tight else whole


def _on(head: Sequence[Point], o: Round) -> bool:
    return far_from((*head, *head[:1]), o.at) < o.hard


def _dropped(path: Path, by: float, room: float) -> Path:
    """The path, drawn ``by`` yards nearer the offence except at its two ends. The last leg runs
    along the others, unless it is shorter than the ``room`` that its end takes up."""
    if by == 0:
        return path
    points = path.corners
    lead = min(2.5 * by, points[0].distance(points[1]) / 3)
    tail = min(2.5 * by, points[-2].distance(points[-1]) / 3)
    down = Point(0.0, -by)
    first = points[0] + unit(points[0], points[1]).scaled(lead) + down
    last = points[-1] - unit(points[-2], points[-1]).scaled(tail) + down
    inner = [Leg(leg.to + down, leg.reach) for leg in path.legs[:-1]]
    level = [Leg(last, tail / 2)] if points[-2].distance(points[-1]) > room else []
    return replace(path, legs=(Leg(first, lead / 2), *inner, *level, path.legs[-1]))


def _walk(points: tuple[Point, ...], step: float) -> Iterable[Point]:
    for a, b in pairwise(points):
        count = max(1, round(a.distance(b) / step))
        yield from (a + (b - a).scaled(i / count) for i in range(count))

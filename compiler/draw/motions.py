"""Moves before the snap: dashed, from a dashed ring where he stood to the symbol where he is.

A motion along the line of scrimmage, or under a path, would be lost there. So it is drawn at a
few drops below its true place and the first one with the least ink on it is taken.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

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
from stemline.draw.detours import Round, detour
from stemline.draw.ink import Ink
from stemline.draw.landing import side_of
from stemline.draw.paces import motion_name
from stemline.draw.routes import arrowed
from stemline.draw.scene import Box, Disc, Item, Stroke
from stemline.draw.symbols import Symbol, centred
from stemline.draw.ways import ghosts_of, keep_off
from stemline.football.play import Assignment, Play
from stemline.paths import Leg, Line, Path, Point, along, length, segments
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
        moved = _draw(task, path, symbols[task.man], task.man in ghosts, tone, board)
        made.append(moved)
        ink.line(moved.points)
    return tuple(made)


def _draw(
    task: Assignment, path: Path, symbol: Symbol, ghost: bool, tone: str, board: Board
) -> Moved:
    motion = task.motion
    assert motion is not None
    ring = board.mark("ghost")
    pieces = _up_to(symbol, path, board)
    if ghost:
        pieces = leave(pieces, path.start, ring)
    if not pieces:
        return Moved((), (), path.start, "", task.span, task.man)
    name = motion_name(task.man)
    items: list[Item] = []
    if motion.running:
        line, head = arrowed(pieces, board)
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
    for index, times in enumerate(_DROPS):
        dropped = _dropped(path, times * board.mark("drop"), room)
        bent = detour(dropped, obstacles, board.mark("turn"))
        points = points_of(segments(bent))
        cost = index * _DROP_COST
        cost += sum(_THROUGH for o in obstacles if _over(bent, symbol, o, board))
        cost += sum(_OTHER_SIDE for o in obstacles if side_of(path, o) * side_of(bent, o) < 0)
        for at in _walk(points, near):
            cost += _LINE_COST if abs(at.y) < _ON_LINE else 0.0
            cost += ink.under(Box(at.x - near, at.y - near, at.x + near, at.y + near))[0]
        if cost < best_cost - 1e-6:
            best, best_cost = bent, cost
    return best


def _over(path: Path, symbol: Symbol, o: Round, board: Board) -> bool:
    """Whether a motion or its arrowhead lies on another man."""
    pieces = _up_to(symbol, path, board)
    if not pieces:
        return False
    half = board.weight("motion") / 2
    head = arrowed(pieces, board)[1]
    return far_from(points_of(pieces), o.at) < o.hard + half or far_from(head, o.at) < o.hard


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

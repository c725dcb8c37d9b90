"""Men between whom another man runs stand far enough apart on paper to let his path through.

Symbols are larger than men, so a gap on the field may be none on paper: a back who steps up beside
the quarterback would have to go all the way round the backfield, and a guard who pulls between the
end and a wing round the wing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations, pairwise

from stemline.football.play import Play
from stemline.geometry.curves import dot, left_of
from stemline.geometry.paths import Path
from stemline.picture.men.symbols import apart
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.ways.set_facing import set_facing
from stemline.picture.ways.starts import begun_at, behind_passer

_WHITE = 0.7
"""Part of the white around a symbol that is left on each side of a path between two of them."""
_TRUE = 0.4
"""Yards between two men on the field below which nobody runs between them: they are one."""


def let_through(play: Play, symbols: Mapping[str, Symbol], board: Board) -> dict[str, Symbol]:
    """The symbols, those with a path between them moved apart until there is room for it."""
    room = board.weight("route") + 2 * _WHITE * board.mark("clear")
    pairs = list(_close(symbols, room, board))
    gaps: dict[frozenset[str], float] = {}
    for man, path in _paths(play, symbols, board):
        for a, b in pairs:
            if man not in (a, b) and _between(path, symbols[a], symbols[b]):
                gaps[frozenset((a, b))] = room
    return apart(symbols, board.mark("gap"), gaps) if gaps else dict(symbols)


def _close(symbols: Mapping[str, Symbol], room: float, board: Board) -> Iterator[tuple[str, str]]:
    """The pairs of men too close for a path between them."""
    for a, b in combinations(symbols, 2):
        one, two = symbols[a], symbols[b]
        inside = (one.man.interior, two.man.interior)
        if any(inside) if board.close else all(inside):
            continue
        close = one.at.distance(two.at) < one.edge + two.edge + room
        if close and one.man.snap.distance(two.man.snap) > _TRUE:
            yield a, b


def _paths(play: Play, symbols: Mapping[str, Symbol], board: Board) -> Iterator[tuple[str, Path]]:
    """The paths as they begin on paper, with their men: those of linemen, who pull, on a close
    picture, else those of all others."""
    for task in play.assignments:
        shown = board.shows(Detail.SETS) or set_facing(task, play) is None
        inside = symbols[task.man].man.interior
        if task.path is not None and task.path.legs and shown and inside == board.close:
            path = begun_at(task.path, symbols[task.man].at)
            yield task.man, behind_passer(path, symbols, task.man, board)


def _between(path: Path, one: Symbol, two: Symbol) -> bool:
    """Whether a path crosses the line between two men, and leaves them on either side."""
    a, b = one.at, two.at
    way = b - a
    across = left_of(way)
    for c, d in pairwise(path.corners):
        from_, to = dot(c - a, across), dot(d - a, across)
        if (from_ < 0) == (to < 0):
            continue
        at = c + (d - c).scaled(from_ / (from_ - to))
        if 0 < dot(at - a, way) < dot(way, way):
            return True
    return False

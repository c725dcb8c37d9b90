"""Where each man's symbol stands on paper, and the symbols themselves.

Men stand at their real yards as long as the paper has room. Where two symbols would touch, they
are pushed apart along the line between them until a little white shows: a lineman stays, the
other man moves; of two who stand one behind the other the deeper one moves, of two beside each
other each goes half the way. The picture is made deeper where its deepest man needs it.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from itertools import combinations, pairwise
from types import MappingProxyType

from stemline.football.play import Play
from stemline.football.players import Position
from stemline.geometry.box import square
from stemline.geometry.curves import unit
from stemline.geometry.paths import Path, Point
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, centred
from stemline.picture.scene.scene import Disc, Item, Plate
from stemline.theme import Size

_ROUNDS = 60
"""Pushes at most; three men in a knot settle within twenty."""
_STACKED = 0.8
"""Two men stand one behind the other where the line between them is as steep as this part of it."""
_LEVEL = 0.05
"""Yards within which two men stand equally deep."""
_SQUARE = 0.91
"""Half the centre's square is at most this part of a lineman's radius: they look equally large."""
_USUAL = re.compile("[LRE]?[LRE]?[TGC]")
"""Letters of linemen who need no letter: they are known by their place."""
_TIGHTEST = 0.4
_THROUGH = {Size.FULL: 0.28, Size.QUARTER: 0.25, Size.THUMB: 0.24}
"""A lineman's radius is at most this part of the gap to his neighbour, and this part where a man
runs through between the two, or may rush."""


_NO_WIDER: Mapping[frozenset[str], float] = MappingProxyType({})


def place_men(play: Play, board: Board) -> dict[str, Symbol]:
    """Every man's symbol by label, at the snap, none touching another."""
    line = _lineman_radius(play, board)
    made: dict[str, Symbol] = {}
    for man in play.men:
        radius = line if man.interior else board.mark("man")
        style = "lineman" if man.interior else "man"
        edge = radius + board.look.grounds[style].edge_weight / 2 / board.scale
        made[man.label] = Symbol(man, man.snap, radius, edge)
    return apart(made, board.mark("gap"))


def with_room(board: Board, symbols: Mapping[str, Symbol]) -> Board:
    """The board, deeper where a man was pushed below it."""
    low = min(s.at.y - s.edge for s in symbols.values()) - board.yards(board.look.margin / 2)
    if low >= board.frame.bottom:
        return board
    return replace(board, frame=replace(board.frame, bottom=low))


def _lineman_radius(play: Play, board: Board) -> float:
    line = [m.snap for m in play.men if m.interior]
    gaps = [a.distance(b) for a, b in combinations(line, 2)]
    most = board.mark("close_lineman" if board.close else "lineman")
    through = (board.duties and board.full) or any(
        _passes(task.path, line) for task in play.assignments
    )
    part = _THROUGH[board.size] if through else _TIGHTEST
    edge = board.look.grounds["lineman"].edge_weight / 2 / board.scale
    return min([most, *(min(part * gap, gap / 2 - edge) for gap in gaps if gap > 0)])


def _passes(path: Path | None, line: Sequence[Point]) -> bool:
    """Whether a path crosses the line of scrimmage between two men of the line."""
    xs = [at.x for at in line]
    return path is not None and any(
        a.y < 0 < b.y and min(xs) < a.x + (b.x - a.x) * a.y / (a.y - b.y) < max(xs)
        for a, b in pairwise(path.corners)
    )


def apart(
    symbols: Mapping[str, Symbol], gap: float, wider: Mapping[frozenset[str], float] = _NO_WIDER
) -> dict[str, Symbol]:
    """The symbols pushed apart until ``gap`` yards of white show between any two, and more
    between the pairs named in ``wider``."""
    at = {name: symbol.at for name, symbol in symbols.items()}
    pairs = [
        (a, b)
        for a, b in combinations(symbols, 2)
        if not (symbols[a].man.interior and symbols[b].man.interior)
    ]
    for _ in range(_ROUNDS):
        moved = False
        pushes: dict[str, list[Point]] = {}
        for a, b in pairs:
            white = wider.get(frozenset((a, b)), gap)
            need = symbols[a].edge + symbols[b].edge + white
            short = need - at[a].distance(at[b])
            if short <= 1e-6:
                continue
            moved = True
            away = _away(at[a], at[b])
            for name, other, sign in ((a, b, -1.0), (b, a, 1.0)):
                if not symbols[name].man.interior:
                    share = _share(symbols[name], symbols[other], away)
                    pushes.setdefault(name, []).append(away.scaled(sign * short * share))
        if not moved:
            break
        for name, by in pushes.items():
            at[name] += _together(by, symbols[name].man.on_line)
    return {
        name: Symbol(symbol.man, at[name], symbol.radius, symbol.edge)
        for name, symbol in symbols.items()
    }


def _together(pushes: Sequence[Point], on_line: bool) -> Point:
    """What several pushes at once come to: two the same way push no farther than one. A man of
    the line of scrimmage stays on it."""
    xs, ys = [0.0, *(p.x for p in pushes)], [0.0, *(p.y for p in pushes)]
    return Point(max(xs) + min(xs), 0.0 if on_line else max(ys) + min(ys))


def _share(own: Symbol, other: Symbol, away: Point) -> float:
    """What part of a push a man takes: all of it from a lineman and from a man in front of him,
    none from a man behind, half from one beside him."""
    if other.man.interior:
        return 1.0
    deeper = own.man.snap.y - other.man.snap.y
    if abs(away.y) < _STACKED or abs(deeper) < _LEVEL:
        return 0.5
    return 1.0 if deeper < 0 else 0.0


def _away(a: Point, b: Point) -> Point:
    """From a to b; straight downfield for two men given one place."""
    return unit(a, b) if a.distance(b) > 1e-6 else Point(0.0, 1.0)


def men_items(
    symbols: Mapping[str, Symbol], board: Board, only: str | None, solid: Collection[str] = ()
) -> tuple[Item, ...]:
    """The symbols as shapes and letters; with ``only``, that man's is solid and every other pale:
    on a hard copy, where nothing is pale, he is told by it. Those of ``solid`` are so too, and
    make nobody pale."""
    items: list[Item] = []
    for symbol in symbols.values():
        own = symbol.man.label == only or symbol.man.label in solid
        tone = "-own" if own else "" if only is None else "-pale"
        items += _symbol(symbol, board, tone)
    return tuple(items)


def _symbol(symbol: Symbol, board: Board, tone: str) -> list[Item]:
    man, at, r, span = symbol.man, symbol.at, symbol.radius, symbol.man.span
    lineman = "man-own" if tone == "-own" else "lineman"
    if man.position is Position.CENTRE:
        half = min(board.mark("close_centre" if board.close else "centre"), _SQUARE * r)
        return [Plate(square(at, half), 0.0, lineman, span, man.label)]
    if man.interior:
        named = board.shows(Detail.LINEMEN) and not _USUAL.fullmatch(man.label) and tone != "-own"
        letter = [centred(man.label, at, "lineman", board, span)] if named else []
        return [Disc(at, r, lineman, span, man.label), *letter]
    ring = Disc(at, r, f"man{tone}", span, man.label)
    return [ring, centred(man.label, at, f"letter{tone}", board, span)]

"""Where a path begins on paper, and what it may not touch on its way."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import pairwise

from stemline.draw.board import Board
from stemline.draw.detail import Detail
from stemline.draw.detours import Round
from stemline.draw.symbols import Symbol
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.paths import Leg, Path, Point

_STRAIGHT = 0.2
"""Yards aside within which a first leg goes straight up the field."""
_HARD = 0.35
"""Part of the white around a symbol that even a lineman keeps."""
_BESIDE = 1.5
"""Yards beside a quarterback under centre within which a turn is brought behind him."""
_MIDDLE = 0.5
"""Part of a symbol's radius: a path that ends nearer to his middle is meant to end on him."""
_UNDER, _SHALLOW = 0.8, 2.4
"""Yards beside the ball and behind the line within which a quarterback stands under centre."""


def begun_at(path: Path, start: Point) -> Path:
    """The path begun where its man's symbol stands; a stem straight up stays straight up."""
    first = path.legs[0]
    by = start.x - path.start.x
    if len(path.legs) > 1 and abs(first.to.x - path.start.x) < _STRAIGHT and by:
        moved = replace(first, to=Point(first.to.x + by, first.to.y))
        return replace(path, start=start, legs=(moved, *path.legs[1:]))
    return replace(path, start=start)


def ghosts_of(play: Play, symbols: Mapping[str, Symbol], board: Board) -> dict[str, Point]:
    """Where a ring shows the place a man moved from before the snap."""
    if not board.shows(Detail.GHOSTS):
        return {}
    ring = board.mark("ghost")
    return {
        task.man: task.motion.path.start
        for task in play.assignments
        if task.motion is not None
        and task.motion.path.start.distance(symbols[task.man].at) > symbols[task.man].edge + ring
    }


def keep_off(
    symbols: Mapping[str, Symbol], ghosts: Mapping[str, Point], man: str, board: Board
) -> tuple[Round, ...]:
    """The symbols that ``man``'s path may not touch; linemen stand close and keep less white."""
    clear, ring = board.mark("clear"), board.mark("ghost")
    kept = [
        Round(s.at, s.edge + clear * (_HARD if s.man.interior else 1.0), s.edge)
        for name, s in symbols.items()
        if name != man
    ]
    kept += [Round(at, ring + clear * _HARD, ring) for name, at in ghosts.items() if name != man]
    return tuple(kept)


def behind_passer(path: Path, symbols: Mapping[str, Symbol], man: str, board: Board) -> Path:
    """The path of a man from the backfield who would cross between the centre and a quarterback
    under him, brought round behind the quarterback."""
    passer = next(
        (
            s
            for s in symbols.values()
            if s.man.position is Position.QUARTERBACK
            and abs(s.at.x) < _UNDER
            and s.man.snap.y > -_SHALLOW
        ),
        None,
    )
    if passer is None or passer is symbols[man] or path.start.y > passer.at.y - passer.edge:
        return path
    x, floor = passer.at.x, passer.at.y - passer.edge - 1.2 * board.mark("clear")
    for index, (a, b) in enumerate(pairwise(path.corners)):
        if (a.x - x) * (b.x - x) >= 0:
            continue
        y = a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)
        if not floor < y <= 0:
            continue
        legs = [_lowered(leg, x, floor) for leg in path.legs[:index]]
        corner = Leg(Point(x, floor), board.mark("turn") / 2)
        return replace(path, legs=(*legs, corner, *path.legs[index:]))
    return path


def _lowered(leg: Leg, x: float, floor: float) -> Leg:
    """A turn beside the quarterback, brought down to where the path passes behind him."""
    if abs(leg.to.x - x) > _BESIDE or leg.to.y < floor:
        return leg
    return replace(leg, to=Point(leg.to.x, floor))


def ends_clear(path: Path, keep: Iterable[Round], room: float) -> Path:
    """The path with its end ``room`` clear of a man on whom its arrow or bar would lie: moved
    straight away from him, or back along the path where it ends in his middle."""
    before, end = path.corners[-2], path.end
    for o in keep:
        far, need = o.at.distance(end), o.hard + room
        if far >= need:
            continue
        if far > _MIDDLE * o.hard:
            end = o.at + (end - o.at).scaled(need / far)
        elif before.distance(o.at) > need + room:
            end = o.at + (before - o.at).scaled(need / before.distance(o.at))
    if end == path.end:
        return path
    return replace(path, legs=(*path.legs[:-1], replace(path.legs[-1], to=end)))

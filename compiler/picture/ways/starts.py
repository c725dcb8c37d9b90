"""Where a path begins on paper, and what it may not touch on its way."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import pairwise

from stemline.football.play import Assignment, Play
from stemline.football.players import Position
from stemline.geometry.curves import dot, left_of, nearest, unit
from stemline.geometry.paths import Ending, Leg, Path, Point, polyline
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.ways.detours import Round

_STRAIGHT = 0.2
"""Yards aside within which a first leg goes straight up the field."""
_HARD = 0.35
"""Part of the white around a symbol that even a lineman keeps."""
_BARE = 0.05
"""Points of white that a line of any weight keeps."""
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
    goes_on = len(path.legs) > 1 or path.ending is Ending.RUN  # a block ends at its man
    if goes_on and abs(first.to.x - path.start.x) < _STRAIGHT and by:
        moved = Leg(Point(first.to.x + by, first.to.y), first.reach)
        return Path(start, (moved, *path.legs[1:]), path.ending)
    return Path(start, path.legs, path.ending)


def ghosts_of(play: Play, symbols: Mapping[str, Symbol], board: Board) -> dict[str, Point]:
    """Where a ring shows the place a man moved from before the snap: where there is room for it
    beside the men and the rings before it. Else his dashed line alone tells where he came from."""
    if not board.shows(Detail.GHOSTS):
        return {}
    edge = board.look.grounds["ghost"].edge_weight / 2 / board.scale
    ring = board.mark("ghost") + edge
    kept: dict[str, Point] = {}
    for task in play.assignments:
        if task.motion is None:
            continue
        at = _off_route(task, symbols[task.man].at, ring, board)
        men = all(at.distance(s.at) > s.edge + ring for s in symbols.values())
        if men and all(at.distance(other) > 2 * ring for other in kept.values()):
            kept[task.man] = at
    return kept


def _off_route(task: Assignment, start: Point, ring: float, board: Board) -> Point:
    """The place he moved from; where his own route comes back over it, as far beside the route as
    it must be, on the side to which he left."""
    assert task.motion is not None
    at = task.motion.path.start
    if task.path is None or not task.path.legs or not task.motion.path.legs:
        return at
    need = ring + board.weight("route") / 2 + board.mark("clear") * _HARD
    pieces = pairwise(polyline(begun_at(task.path, start)))
    far, near, a, b = min(
        ((spot.distance(at), spot, a, b) for a, b in pieces for spot in [nearest(a, b, at)[0]]),
        key=lambda found: found[0],
    )
    if far >= need:
        return at
    across = left_of(unit(a, b))
    left = dot(task.motion.path.legs[0].to - at, across)
    side = across if left > 0 else across.scaled(-1)
    return near + side.scaled(need)


def keep_off(
    symbols: Mapping[str, Symbol], ghosts: Mapping[str, Point], man: str, board: Board
) -> tuple[Round, ...]:
    """The symbols that ``man``'s path may not touch; linemen stand close and keep less white."""
    clear = board.mark("clear")
    # heavy lines need more than that to be beside a man at all
    pen = board.weight("block" if board.close else "route")
    tight = max(clear * _HARD, pen / 2 + board.yards(_BARE))
    ring = board.mark("ghost") + board.look.grounds["ghost"].edge_weight / 2 / board.scale
    kept = [
        Round(s.at, s.edge + (tight if s.man.interior else clear), s.edge)
        for name, s in symbols.items()
        if name != man
    ]
    kept += [Round(at, ring + tight, ring) for name, at in ghosts.items() if name != man]
    return tuple(kept)


def past_own(path: Path, own: Symbol, bar: float) -> Path:
    """A block so short that its ``bar`` would lie under the man's own symbol, brought out past its
    edge the way he goes."""
    need = own.edge + bar
    if path.ending is not Ending.BLOCK or own.at.distance(path.end) >= need:
        return path
    end = own.at + unit(own.at, path.end).scaled(need)
    return replace(path, legs=(*path.legs[:-1], replace(path.legs[-1], to=end)))


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

"""The carrier's way through his hole, and those who lead him through it beside him.

On paper the hole is as wide as the white between two symbols; a man who leads the carrier through
it is drawn in a lane beside him, the two of them in the middle of it. A defender's letter that
stands in the way is moved aside by `defenders`, so the way must be known before the letters are.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from stemline.football.blocking.carrying import same_hole
from stemline.football.play import Kind, Play
from stemline.geometry.curves import far_from, left_of, turn_angle, unit
from stemline.geometry.paths import Ending, Leg, Path, Point, along, crossing, length, polyline
from stemline.picture.frame.board import Board
from stemline.picture.men.pulls import in_lanes
from stemline.picture.men.symbols import Symbol
from stemline.picture.spacing.leaders import HOLE, SHALLOW, band, lanes_of, near
from stemline.picture.ways.detours import Round, detour
from stemline.picture.ways.gaps import gap_of, through_gaps
from stemline.picture.ways.starts import begun_at, behind_passer, ghosts_of, keep_off

_PAST = 1.9
"""Yards past the line where a man who leads through the hole leaves it for his block."""
_EARLY = 0.5
"""The same for a block at the line: past the men of his own line."""
_BELOW = -0.8
"""Yards from the line where a man from the backfield is in his lane, at the latest."""
_LEVEL = 0.2
"""Yards past the line where each of two who lead on one side is in his own lane, when the carrier
comes to the hole from the side."""
_ACROSS = 0.1
"""Yards aside from the line to there by which he does."""
_TURN = 0.5
_BEHIND = 0.6
"""Yards from the line of scrimmage where men stand whom the way to the hole must go round again."""
_NARROW = 0.3
_BESIDE = 2.0
"""Yards: a man no farther from the one inside him moves out with him when the hole is opened."""
_UP = 2.5
"""Yards from the line of scrimmage within which men move out with the line."""
_STEP = 0.1
"""Yards by which his way is searched for where he comes into the carrier's line."""


@dataclass(frozen=True)
class DrawnHole:
    """The carrier's path, and how far to the right of it each man leads him through the line.

    ``aim`` is his path as it was before it was fitted to the paper: by it is known who leads.
    ``wing`` is a man outside whom they all go.
    """

    path: Path
    lanes: Mapping[str, float]
    aim: Path
    wing: Symbol | None = None


def find_hole(play: Play, symbols: Mapping[str, Symbol], board: Board) -> DrawnHole | None:
    """The carrier's hole; None where nobody carries the ball on a close picture."""
    if not board.close or play.kind is not Kind.RUN or not play.carrier:
        return None
    aim = play.assignment(play.carrier).path
    if aim is None or not aim.legs:
        return None
    aim = begun_at(aim, symbols[play.carrier].at)
    aim = behind_passer(aim, symbols, play.carrier, board)
    lanes = lanes_of(in_lanes(play, symbols, board), aim, board)
    others = [s for name, s in symbols.items() if name != play.carrier]
    wing = _wing(aim, others, board)
    path = _round_wing(aim, wing, lanes, board) if wing is not None else aim
    keep = keep_off(symbols, ghosts_of(play, symbols, board), play.carrier, board)
    path = detour(path, keep, board.mark("turn"))
    aside = -(max([0.0, *lanes.values()]) + min([0.0, *lanes.values()])) / 2
    white = board.weight("carry") / 2 + board.mark("gap") / 2 + abs(aside)
    through = through_gaps(path, others, white, aside)
    path = _shifted(path, aside) if through == path else through
    behind = [narrow(o, board.weight("carry") / 2) for o in keep if abs(o.at.y) > _BEHIND]
    return DrawnHole(_not_back(detour(path, behind, board.mark("turn"))), lanes, aim, wing)


def _wing(path: Path, others: Sequence[Symbol], board: Board) -> Symbol | None:
    """A man off the line whom a carrier would meet on his way outside it."""
    here = crossing(path, 0.0)
    if here is None or gap_of(path, others) is not None:
        return None
    if any(s.man.on_line and abs(here - s.at.x) < s.edge for s in others):
        return None  # he runs off the hip of a man of the line, not outside it
    out = 1.0 if here > 0 else -1.0
    met = [
        s
        for s in others
        if not s.man.on_line
        and -_UP < s.at.y < 0
        and abs(here - s.at.x) < s.edge + board.mark("clear") + _BESIDE / 2
        and out * s.at.x > 0
    ]
    return max(met, key=lambda s: out * s.at.x, default=None)


def _round_wing(path: Path, wing: Symbol, lanes: Mapping[str, float], board: Board) -> Path:
    """The carrier's path outside a wing and behind him: he blocks inward, and the wall that the
    ball goes round ends with him."""
    out = 1.0 if wing.at.x > 0 else -1.0
    low, high = band(lanes, board)
    inward = -low if out > 0 else high
    clear = wing.edge + board.mark("clear") + inward
    edge, under = wing.at.x + out * clear, wing.at.y - clear
    legs = tuple(_moved_out(leg, out, edge, under) for leg in path.legs)
    return replace(path, legs=legs)


def _moved_out(leg: Leg, out: float, edge: float, under: float) -> Leg:
    at = leg.to
    if at.y < -_UP:
        return leg
    y = min(at.y, under) if at.y < 0 else at.y
    return replace(leg, to=Point(out * max(out * at.x, out * edge), y))


def open_hole(play: Play, symbols: Mapping[str, Symbol], board: Board) -> dict[str, Symbol]:
    """The symbols with the hole as wide as the carrier and all who lead him through it need.

    The man outside it moves out, and with him those who stand next to him.
    """
    made = dict(symbols)
    hole = find_hole(play, symbols, board)
    gap = gap_of(hole.path, [s for n, s in symbols.items() if n != play.carrier]) if hole else None
    if hole is None or gap is None:
        return made
    left, right = gap
    low, high = band(hole.lanes, board)
    short = high - low + board.mark("gap") - (right.at.x - right.edge - left.at.x - left.edge)
    if short <= 0:
        return made
    out = 1.0 if left.at.x + right.at.x > 0 else -1.0
    last = right if out > 0 else left
    beyond = sorted(
        (s for s in symbols.values() if abs(s.at.y) < _UP and out * (s.at.x - last.at.x) >= 0),
        key=lambda s: out * s.at.x,
    )
    for symbol in beyond:
        if out * (symbol.at.x - last.at.x) > _BESIDE:
            break
        at = symbol.at + Point(out * short, 0.0)
        made[symbol.man.label], last = replace(symbol, at=at), symbol
    return made


def narrow(o: Round, half: float) -> Round:
    """A man with less white round him, so that a turn in the hole is not moved out of it; never
    less than ``half`` the width of the carrier's line."""
    hard = o.hard + half
    return Round(o.at, hard + _NARROW * (o.radius - o.hard), hard)


def _shifted(path: Path, by: float) -> Path:
    """The path with its part from the hole on moved aside."""
    if not by:
        return path
    legs = tuple(
        replace(leg, to=leg.to + Point(by, 0.0)) if leg.to.y > -HOLE else leg for leg in path.legs
    )
    return replace(path, legs=legs)


def led(path: Path, man: str, hole: DrawnHole, board: Board) -> Path:
    """The path of a man who leads, kept beside the carrier's line, bend for bend, until he is past
    the defenders in the hole: the lane is clear of them, so his own turns in it are left out."""
    aside = hole.lanes[man]
    legs = path.legs[:-1]
    leads = (i for i, leg in enumerate(legs) if near(leg.to, hole.aim, board.mark("lead")))
    enters = next(leads, None)
    if enters is None:
        return path
    entry = legs[enters].to
    low = min(entry.y, _BELOW) if path.start.y < -HOLE else entry.y
    leaves = _PAST if path.end.y > _PAST + 1.0 else _EARLY
    beyond = crossing(hole.path, leaves) if path.end.y > 0 else None
    lane = _beside(low, leaves, man, hole, board)
    if beyond is not None:
        lane.append(Leg(Point(beyond + aside, leaves), _TURN))
    before = legs[:enters]
    if low >= 0:
        before = _squared(before, path.start, lane[0].to.x, aside, hole)
    return replace(path, legs=(*before, *lane, path.legs[-1]))


def _squared(
    legs: tuple[Leg, ...], start: Point, x: float, aside: float, hole: DrawnHole
) -> tuple[Leg, ...]:
    """The legs of a pull to a lane beyond the carrier, with its last turn behind the line right
    below the lane: at a slant he would run along the carrier."""
    last = legs[-1] if legs else None
    beyond = aside * (x - start.x) > 0 and hole.wing is None
    if last is None or not beyond or start.y < -HOLE or last.to.y >= 0:
        return legs
    return (*legs[:-1], replace(last, to=Point(x, last.to.y)))


def _beside(low: float, high: float, man: str, hole: DrawnHole, board: Board) -> list[Leg]:
    """A leader's lane from one depth to another. Below the line it is that of the hole: he is
    there first, wherever the carrier still is."""
    aside, reach = hole.lanes[man], board.mark("lead") / 2
    here = crossing(hole.path, max(low, 0.0)) or hole.path.end.x
    if low < 0 and hole.wing is not None:
        made = _under_wing(here + aside, aside, hole.wing, board)
    else:
        made = [Leg(Point(here + aside, low), reach)]
    level = crossing(hole.path, _LEVEL)
    across = low < 0 and level is not None and abs(level - here) > _ACROSS
    if level is not None and across and hole.wing is None and _beside_another(man, hole):
        made.append(Leg(Point(level + aside, _LEVEL), reach))
    for a, b in pairwise(polyline(hole.path)):
        if made[-1].to.y + _LEVEL < b.y < high - _LEVEL and b.y > _LEVEL and b.y > a.y:
            made.append(Leg(b - left_of(unit(a, b)).scaled(aside), reach))
    return made


def _beside_another(man: str, hole: DrawnHole) -> bool:
    """Whether another leads on the same side of the carrier."""
    return any(other != man and hole.lanes[man] * hole.lanes[other] > 0 for other in hole.lanes)


def crossed(path: Path, hole: DrawnHole, board: Board) -> Path:
    """The path of a climb that would cross the carrier at a small angle, brought over to the side
    where it ends at once: the two do not run up the field on one line."""
    start, end = path.start, path.end
    here, there = crossing(hole.path, start.y), crossing(hole.path, end.y)
    if end.y >= hole.path.end.y:
        there = hole.path.end.x
    white = (board.weight("carry") + board.weight("climb")) / 2 + board.mark("lead_gap")
    if here is None or there is None:
        return path
    if (start.x - here) * (end.x - there) >= 0 and abs(start.x - here) >= white:
        return path
    ahead = Point(start.x + there - here, end.y)
    if 180.0 - turn_angle(end, start, ahead) > SHALLOW:
        return path
    side = 1.0 if end.x > there else -1.0
    y = min(start.y + abs(start.x - here) + white, end.y)
    over = Point((crossing(hole.path, y) or there) + side * white, y)
    after = [leg for leg in path.legs[:-1] if leg.to.y > y and side * (leg.to.x - over.x) >= 0]
    return replace(path, legs=(Leg(over, _TURN), *after, path.legs[-1]))


def _under_wing(x: float, aside: float, wing: Symbol, board: Board) -> list[Leg]:
    """The way of a leader behind a wing and up outside him, as far from him as his lane is."""
    out = 1.0 if wing.at.x > 0 else -1.0
    reach = board.mark("turn") / 2
    y = wing.at.y - out * (x - wing.at.x)
    return [Leg(Point(wing.at.x - out * wing.edge, y), reach), Leg(Point(x, y), reach)]


def followed(path: Path, hole: DrawnHole, board: Board, symbols: Iterable[Symbol]) -> Path:
    """The path of a man who only follows the carrier through his hole, ended where he comes into
    his line and clear of the other men."""
    if path.ending is not Ending.RUN or not same_hole(path, hole.aim):
        return path
    whole, way, lane = polyline(path), polyline(hole.path), board.mark("lane")
    points = [along(whole, n * _STEP) for n in range(math.ceil(length(whole) / _STEP))]
    joins = next((i for i, p in enumerate(points) if far_from(way, p) < lane), len(points))
    if joins in (0, len(points)):
        return path
    others = [(s.at, s.edge + board.mark("clear")) for s in symbols]
    while joins > 1 and any(points[joins].distance(at) < near for at, near in others):
        joins -= 1
    legs = [leg for leg in path.legs[:-1] if _index(points, leg.to) < joins]
    return replace(path, legs=(*legs, Leg(_past(points[joins], path.start, others))))


def _past(end: Point, start: Point, others: Sequence[tuple[Point, float]]) -> Point:
    """The end, or a place beside it where a man stands straight between it and the start: his line
    goes round that man, and would come back into him."""
    for at, room in others:
        if start.y < at.y < end.y and abs(at.x - start.x) < room and abs(at.x - end.x) < room:
            side = 1.0 if end.x >= at.x else -1.0
            return Point(at.x + side * room, end.y)
    return end


def _index(points: Sequence[Point], at: Point) -> int:
    """Which point is nearest to a place."""
    return min(range(len(points)), key=lambda i: points[i].distance(at))


def _not_back(path: Path) -> Path:
    """The carrier's path without a hook: once bent outward past the line he stays outside."""
    outward = 1.0 if path.end.x > 0 else -1.0
    past = [i for i, leg in enumerate(path.legs[:-1]) if leg.to.y > 0]
    if not past:
        return path
    widest = max(past, key=lambda i: outward * path.legs[i].to.x)
    corner = path.legs[widest].to
    if outward * corner.x <= outward * path.end.x:
        return path
    end = Leg(Point(corner.x, path.end.y))
    return replace(path, legs=(*path.legs[: widest + 1], end))

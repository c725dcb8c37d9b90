"""The carrier's way through his hole, and those who lead him through it beside him.

On paper the hole is as wide as the white between two symbols; a man who leads the carrier through
it is drawn in a lane beside him, the two of them in the middle of it. A defender's letter that
stands in the way is moved aside by `place_letters`, so the way must be known before the letters
are.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from stemline.football.play import Kind, Play
from stemline.geometry.paths import Leg, Path, Point, crossing
from stemline.picture.men.leaders import band, lanes_of
from stemline.picture.men.pulls import in_lanes
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.ways.at_hole import HOLE, DrawnHole
from stemline.picture.ways.detours import detour, narrow
from stemline.picture.ways.gaps import gap_of, through_gaps
from stemline.picture.ways.starts import begun_at, behind_passer, ghosts_of, keep_off

_BEHIND = 0.6
"""Yards from the line of scrimmage where men stand whom the way to the hole must go round again."""
_BESIDE = 2.0
"""Yards: a man no farther from the one inside him moves out with him when the hole is opened."""
_UP = 2.5
"""Yards from the line of scrimmage within which men move out with the line."""


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
    made = detour(path, behind, board.mark("turn"))
    leans = abs(aim.end.x) < abs(aim.corners[-2].x)
    return DrawnHole(made if leans else _not_back(made), lanes, aim, wing)


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
    *legs, last = (_moved_out(leg, out, edge, under) for leg in path.legs)
    if out * path.end.x < out * path.corners[-2].x:
        last = path.legs[-1]  # past the wing he leans back in, inside of a man who is kicked out
    return replace(path, legs=(*legs, last))


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


def _shifted(path: Path, by: float) -> Path:
    """The path with its part from the hole on moved aside."""
    if not by:
        return path
    legs = tuple(
        replace(leg, to=leg.to + Point(by, 0.0)) if leg.to.y > -HOLE else leg for leg in path.legs
    )
    return replace(path, legs=legs)


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

"""A path that would run through another man's symbol is bent round him.

Each man in the way may be passed on either side; of all the ways round, the shortest and
straightest is taken, like a string pulled tight. Of two equal ones the path goes behind the man,
or round his outside when it runs up the field, so that a picture called to the other side is the
same picture. Where there is no room for a bend (between two linemen) the path stays as it is.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.geometry.curves import (
    dot,
    far_from,
    left_of,
    length_and_turn,
    nearest,
    passed,
    unit,
)
from stemline.geometry.paths import Leg, Path, Point, polyline

_WIDER = 1.18
"""A bend is rounded, so its corner is put this much farther out than the line must pass."""
_EASINGS = 6
_CLEAR = 0.6
_REST = 1 - _CLEAR
"""A rounded line may use up this much of the white around a man, no more."""
_REACH = 2.2
_OUTWARD = 0.12
"""Bends within this many radii of a man are moved out by this part of one, a few times."""
_MOST = 4
"""Men that one path goes round at most."""
_TAUGHT = 0.06
"""A piece within this slope of straight up or straight across is taught that way; it is bent
only near the man, and runs true before and after."""
_TURNING = 0.05
"""Yards of detour that a degree of turning is worth."""
_TIGHT = 3.0
"""Yards of detour that just touching a man is worth."""
_NARROW = 0.3
"""Part of the white round a man that is left where the carrier runs."""
_THROUGH = 40.0
"""Yards of detour that running through a man is worth."""
_ALIKE = 2e-6
"""Yards within which two ways may cost the same."""


@dataclass(frozen=True)
class Round:
    """A place to keep out of: ``radius`` takes in the white round the symbol, ``hard`` does not."""

    at: Point
    radius: float
    hard: float


def detour(path: Path, obstacles: Sequence[Round], turn: float, slanting: bool = True) -> Path:
    """The path bent round each obstacle; ``turn`` is how many yards a bend takes at most.

    ``slanting`` allows a piece that is taught straight to slant where there is no other way.
    """
    able = tuple(o for o in obstacles if o.at.distance(path.end) > o.hard)
    bent = _WayRound(able, turn, slanting).tightest(_corners_out(path, able), able)[1]
    return path if bent == path else _eased(bent, able)


def _eased(path: Path, obstacles: Sequence[Round]) -> Path:
    """The path with its bends moved out until its rounded line keeps clear of every obstacle, or
    until that helps no more: between two who stand close."""
    short = _short(path, obstacles)
    for _ in range(_EASINGS):
        if not short:
            break
        legs = list(path.legs)
        for o in short:
            for index, leg in enumerate(legs[:-1]):
                far = o.at.distance(leg.to)
                if 1e-6 < far < _REACH * o.radius:
                    out = (leg.to - o.at).scaled(_OUTWARD * o.radius / far)
                    legs[index] = Leg(leg.to + out, leg.reach)
        eased = path.by(legs)
        still = _short(eased, obstacles)
        if sum(still.values()) >= sum(short.values()):
            break
        path, short = eased, still
    return path


def _short(path: Path, obstacles: Sequence[Round]) -> dict[Round, float]:
    """By how many yards the rounded line is too near to whom."""
    drawn = polyline(path)
    xs, ys = [p.x for p in drawn], [p.y for p in drawn]
    left, right, low, high = min(xs), max(xs), min(ys), max(ys)
    found: dict[Round, float] = {}
    for o in obstacles:
        keep, at = _CLEAR * o.radius + o.hard * _REST, o.at
        if left - keep < at.x < right + keep and low - keep < at.y < high + keep:
            short = keep - far_from(drawn, at)
            if short > 0:
                found[o] = short
    return found


def _corners_out(path: Path, obstacles: Sequence[Round]) -> Path:
    """The path with every turn that lies inside an obstacle moved straight out of it."""
    legs: list[Leg] = []
    for leg in path.legs[:-1]:
        to = leg.to
        for o in obstacles:
            wide = o.radius * _WIDER
            if not -wide < o.at.x - to.x < wide or not -wide < o.at.y - to.y < wide:
                continue
            far = o.at.distance(to)
            if 1e-6 < far < wide:
                to = o.at + (to - o.at).scaled(o.radius * _WIDER / far)
        legs.append(leg if to is leg.to else Leg(to, leg.reach))
    return path.by((*legs, *path.legs[-1:]))


@dataclass(frozen=True)
class _WayRound:
    """What all ways of one path have in common: whom it passes, and how it may."""

    obstacles: tuple[Round, ...]
    turn: float
    slanting: bool

    def tightest(
        self,
        path: Path,
        still: tuple[Round, ...],
        most: int = _MOST,
        under: float = math.inf,
        bare: float | None = None,
    ) -> tuple[float, Path]:
        """The cheapest way past the obstacles ``still`` to be passed, and its cost; where none
        costs less than ``under``, an infinite cost or any that is no less. ``bare`` is what the
        path costs without any obstacle, where that is known.

        A corner more never makes a path shorter, nor turn less: what costs too much without any
        obstacle is not looked at.
        """
        if bare is None:
            far, degrees = length_and_turn(path)
            bare = far + _TURNING * degrees
        if bare > under + _ALIKE:
            return math.inf, path
        hit = _first(path, still) if most else None
        if hit is None:
            return bare + _through(path, self.obstacles), path
        index, obstacle = hit
        left = tuple(o for o in still if o is not obstacle)
        best, found = math.inf, path
        for side in _sides(path, index, obstacle):
            bends = list(_bends(path, index, obstacle, side, self.turn, self.obstacles))
            for number, bent in enumerate(bends):
                again = _passing(bent.corners, obstacle) < obstacle.hard
                rest, least = still if again else left, min(under, best)
                cost, end = self.tightest(bent, rest, most - 1, least)
                if cost >= _THROUGH > least and self.slanting and number + 1 < len(bends):
                    # the next bend is for one that is stopped
                    cost, end = self.tightest(bent, rest, most - 1, _THROUGH)
                if round(cost, 6) < round(best, 6):
                    best, found = cost, end
                if not self.slanting or cost < _THROUGH:
                    break
        # straight through him, which is taken of two ways that cost the same
        cost, end = self.tightest(path, left, most - 1, min(under, best), bare)
        return (cost, end) if round(cost, 6) <= round(best, 6) else (best, found)


def _through(path: Path, obstacles: Sequence[Round]) -> float:
    """What it costs to run through men, or to touch the white around them."""
    through, corners = 0.0, path.corners
    for o in _about(corners, obstacles):
        near = _passing(corners, o)
        if near < o.hard:
            through += _THROUGH
        elif near < o.radius:
            through += _TIGHT * (o.radius - near) / (o.radius - o.hard)
    return through


def _about(corners: Sequence[Point], obstacles: Sequence[Round]) -> list[Round]:
    """Those whose white comes into the box around a path."""
    xs, ys = [p.x for p in corners], [p.y for p in corners]
    left, right, low, high = min(xs), max(xs), min(ys), max(ys)
    return [
        o
        for o in obstacles
        if left - o.radius < o.at.x < right + o.radius and low - o.radius < o.at.y < high + o.radius
    ]


def _reached(corners: Sequence[Point], o: Round) -> Iterator[tuple[int, Point, Point]]:
    """The pieces, each with its number, whose box comes into the white around a man: all others are
    clear of him."""
    x, y, far = o.at.x, o.at.y, o.radius
    a = corners[0]
    for index in range(len(corners) - 1):
        b = corners[index + 1]
        left, right = (a.x, b.x) if a.x < b.x else (b.x, a.x)
        if left - far < x < right + far:
            low, high = (a.y, b.y) if a.y < b.y else (b.y, a.y)
            if low - far < y < high + far:
                yield index, a, b
        a = b


def _passing(corners: Sequence[Point], o: Round) -> float:
    """How near a path by these corners passes a man, where that is into his white."""
    best = math.inf
    for index, a, b in _reached(corners, o):
        far, way = passed(a, b, o.at)
        if far < best and not _at_an_end(way, index, len(corners) - 1):
            best = far
    return best


def _first(path: Path, obstacles: Sequence[Round]) -> tuple[int, Round] | None:
    """The first piece of the path that runs too near an obstacle, and the nearest such one."""
    corners = path.corners
    first: tuple[int, float, Round] | None = None
    for o in _about(corners, obstacles):
        for index, a, b in _reached(corners, o):
            if first is not None and index > first[0]:
                break
            near, way = passed(a, b, o.at)
            if near < o.radius * 0.99 and not _at_an_end(way, index, len(path.legs)):
                far = a.distance(nearest(a, b, o.at)[0])
                if first is None or (index, far) < first[:2]:
                    first = index, far, o
                break
    return (first[0], first[2]) if first is not None else None


def _at_an_end(way: float, index: int, legs: int) -> bool:
    """Whether the nearest place of a piece is the path's own start or end."""
    return (way <= 0 and index == 0) or (way >= 1 and index == legs - 1)


def _bends(
    path: Path,
    index: int,
    obstacle: Round,
    side: Point,
    turn: float,
    others: Sequence[Round],
) -> Iterator[Path]:
    """The path bent round one obstacle on its piece ``index``: true before and after it, and
    where that is on somebody, slanting after that. None where the bend itself is on somebody."""
    a, b = path.corners[index], path.corners[index + 1]
    at, _ = nearest(a, b, obstacle.at)
    ahead = unit(a, b)
    out = obstacle.at + side.scaled(_out(obstacle, side, others))
    true = min(abs(ahead.x), abs(ahead.y)) < _TAUGHT
    if not _free(out, others):
        return
    since, until = a.distance(at), b.distance(at)
    straight = [Leg(out, min(turn, since / 2, until / 2))]
    if true and since > 2 * turn:
        straight.insert(0, Leg(at - ahead.scaled(1.5 * turn), turn / 2))
    if true and until > 2 * turn:
        straight.append(Leg(at + ahead.scaled(1.5 * turn), turn / 2))
    free = [leg for leg in straight if _free(leg.to, others)]
    for legs in (straight, free) if len(free) < len(straight) else (straight,):
        yield path.by((*path.legs[:index], *legs, *path.legs[index:]))


def _free(at: Point, obstacles: Sequence[Round]) -> bool:
    """Whether a place is on nobody's symbol."""
    for o in obstacles:
        hard, dx, dy = o.hard, o.at.x - at.x, o.at.y - at.y
        if -hard < dx < hard and -hard < dy < hard and math.hypot(dx, dy) < hard:
            return False
    return True


def _out(obstacle: Round, side: Point, others: Sequence[Round]) -> float:
    """How far out a bend passes: clear of the white, or in the middle between the man and the
    next one on that side where the two stand closer."""
    out = obstacle.radius * _WIDER
    x, y, sx, sy = obstacle.at.x, obstacle.at.y, side.x, side.y
    for o in others:
        dx, dy = o.at.x - x, o.at.y - y
        along, aside = dx * sx + dy * sy, abs(dx * -sy + dy * sx)
        if along > 0 and aside < o.hard:
            edge = along - math.sqrt(o.hard * o.hard - aside * aside)
            if edge > obstacle.hard:
                out = min(out, (obstacle.hard + edge) / 2)
    return out


def _sides(path: Path, index: int, obstacle: Round) -> tuple[Point, Point]:
    """Both sides of the man across the path, the one to take of two equal ones first."""
    ahead = unit(path.corners[index], path.corners[index + 1])
    across = left_of(ahead)
    if abs(across.y) > 0.35:
        first = across if across.y < 0 else across.scaled(-1)
    else:
        outward = Point(1.0 if obstacle.at.x >= 0 else -1.0, 0.0)
        first = across if dot(across, outward) > 0 else across.scaled(-1)
    return first, first.scaled(-1)


def narrow(o: Round, half: float) -> Round:
    """A man with less white round him, so that a turn in the hole is not moved out of it; never
    less than ``half`` the width of the carrier's line."""
    hard = o.hard + half
    return Round(o.at, hard + _NARROW * (o.radius - o.hard), hard)

"""Where the blocks open the hole, and ways that go round the men who stand in them.

x in yards right of the ball, y past the line. A hole is aimed at a gap of the line; against a front
the ball goes through the clear space nearest to it, on the side from which men are blocked away.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from stemline.geometry.paths import Leg, Path, Point

# Yards; common practice, no published source.
BODY = 0.6
"""A runner whose middle passes a defender's middle nearer than this has run into him: half a man
with pads each."""
_WIDEST = 0.75
"""How far from the aim the hole may open: it stays between the two men of the line."""
_STEP = 0.05
_PUSHED = 0.75
"""What it costs, in yards, to run on the side to which a man is blocked."""
_BESIDE = 1.5
"""A man blocked no farther from the hole than this shuts or opens it."""
_AT_LINE = 2.5
"""Defenders up to this deep make the hole."""
_ROUND = 0.65
"""How far from a man's middle a way goes round him."""
_INSIDE_KICK = 0.9
"""So far inside of a man who is kicked out the carrier ends."""
_LAST_GAP = 1.3
"""How wide the gap outside the last man of the line is."""
_MOST = 8
"""Detours at most on one way."""


def opened(aim: float, bodies: Sequence[tuple[Point, float]]) -> float:
    """x of the hole: the nearest to ``aim`` that is clear of ``bodies``, each with the way it is
    blocked (-1 left, 1 right, 0 neither); ``aim`` itself where nothing near is clear."""
    line = [(at.x, way) for at, way in bodies if at.y <= _AT_LINE]
    steps = round(_WIDEST / _STEP)
    best: tuple[float, float] | None = None
    for n in range(-steps, steps + 1):
        x = aim + n * _STEP
        if any(abs(x - at) < BODY for at, _ in line):
            continue
        against = sum(way * (x - at) > 0 and abs(x - at) <= _BESIDE for at, way in line if way)
        cost = (round(abs(x - aim) + _PUSHED * against, 3), abs(x - aim))
        if best is None or cost < best[:2]:
            best = cost
            found = x
    return aim if best is None else round(found, 3)


def closed_on(aim: float, hole: float, bodies: Sequence[tuple[Point, float]], toward: int) -> bool:
    """Whether a man who is blocked down stands in the gap aimed at, and the hole would be inside
    of him: the ball goes outside the block instead. S. Davis, "Using the FAT Double Team to Block
    4i's in Gap Schemes", X&O Labs."""
    return any(
        at.y <= _AT_LINE and way * toward < 0
        and abs(at.x - aim) < BODY and (hole - at.x) * toward < 0
        for at, way in bodies
    )  # fmt: skip


def next_gap(aim: float, line: Sequence[float], toward: int) -> float:
    """The middle of the gap outside of the one at ``aim``, between men of the line at ``line``."""
    beyond = sorted(x * toward for x in line if (x - aim) * toward > 0)
    if not beyond:
        return aim
    after = beyond[1] if len(beyond) > 1 else beyond[0] + _LAST_GAP
    return toward * (beyond[0] + after) / 2


def moved_hole(path: Path, by: float) -> Path:
    """The carrier's path with its hole, the last corner but one, and what follows moved."""
    if len(path.legs) < 2 or not by:
        return path
    shift = Point(by, 0.0)
    late = tuple(replace(leg, to=leg.to + shift) for leg in path.legs[-2:])
    return replace(path, legs=path.legs[:-2] + late)


def run_clear(path: Path, men: Sequence[Point], toward: int, kicked: Sequence[Point] = ()) -> Path:
    """A carrier's path: past nobody who stands there, to a place where nobody does, and inside of
    those ``kicked`` out who stand outside his hole."""
    if not path.legs:
        return path
    end = path.end
    hole = path.legs[-2].to.x if len(path.legs) > 1 else end.x
    most = [at.x * toward - _INSIDE_KICK for at in kicked if (at.x - hole) * toward > 0]
    end = Point(toward * min([end.x * toward, *most]), end.y)
    steps = [
        n * _STEP * side for n in range(round(3 * _WIDEST / _STEP)) for side in (toward, -toward)
    ]
    ends = (Point(end.x + step, end.y) for step in steps)
    free = next((p for p in ends if all(p.distance(m) >= BODY for m in men)), end)
    last = replace(path.legs[-1], to=Point(round(free.x, 3), free.y))
    return round_men(replace(path, legs=(*path.legs[:-1], last)), men, toward)


def round_men(path: Path, men: Sequence[Point], toward: int) -> Path:
    """The path with corners round the men who stand in its way; as it is where that is no help.

    Men at its end or its start are left; ``toward`` is 1 or -1, the side to pass a man dead ahead.
    """
    legs = list(path.legs)
    for _ in range(_MOST):
        corners = [path.start, *(leg.to for leg in legs)]
        hit = _first(corners, men)
        if hit is None:
            return replace(path, legs=tuple(legs))
        n, man, near = hit
        away = near - man
        far = near.distance(man)
        if far < 0.05:
            a, b = corners[n], corners[n + 1]
            run = b - a
            side = toward if run.y >= 0 else -toward
            away, far = Point(side * run.y, -side * run.x), max(a.distance(b), 0.01)
        aside = man + away.scaled(_ROUND / far)
        if n < len(legs) - 1 and near.distance(legs[n].to) < _STEP:
            legs[n] = replace(legs[n], to=aside)
        else:
            legs.insert(n, Leg(aside, BODY))
    return path


def _first(corners: Sequence[Point], men: Sequence[Point]) -> tuple[int, Point, Point] | None:
    """The first piece that runs into somebody: its number, the man, and where it is nearest."""
    for n, (a, b) in enumerate(pairwise(corners)):
        for man in men:
            near = _nearest(a, b, man)
            ends = min(man.distance(corners[0]), man.distance(corners[-1])) < BODY
            if not ends and near.distance(man) < BODY - 0.01 and a.distance(b) > _STEP:
                return n, man, near
    return None


def _nearest(a: Point, b: Point, p: Point) -> Point:
    run = b - a
    size = run.x * run.x + run.y * run.y
    share = ((p.x - a.x) * run.x + (p.y - a.y) * run.y) / size if size else 0.0
    return a + run.scaled(max(0.0, min(1.0, share)))


def way_of(at: Point, blockers: Sequence[Point]) -> float:
    """Which way a man is blocked, 1 right or -1 left: from where all his blockers stand; 0 for
    one who is met from both sides or from straight ahead."""
    sides = {1.0 if p.x < at.x - _STEP else -1.0 if p.x > at.x + _STEP else 0.0 for p in blockers}
    return sides.pop() if len(sides) == 1 else 0.0

"""Blocks against a look: a flat bar at the defender, two on one man, and the climb from there.

A bar touches the ring of white round its defender's letter, square to the way the blocker comes.
Where two take one man their bars stand side by side round the letter, each on its own side.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.football.play import Assignment, Hit, Kind, Play
from stemline.geometry.box import Box, square
from stemline.geometry.curves import far_from, leave, left_of, unit
from stemline.geometry.paths import Ending, Leg, Line, Path, Point
from stemline.picture.paper.letter import Letter, solids
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.scene import Item, Stroke
from stemline.picture.ways.set_facing import set_facing

_ROUNDS = 12
_FAR = 3.2
"""Yards from a pass blocker's bar to his man from which dots join the two."""
_SET_AND_STEP = 2
"""Legs of a pass set: back from the line, and at the rusher."""
_SHORT_OF = 0.8
"""Yards from a man at which the bar of a set stands, where the set goes to his place."""
_ON_HIS_WAY = 1.5
"""Yards from a man's place from which a block on him is one on his way to the ball."""
_CLEAR = 0.95
_WIDER = 1.15
"""A climb comes no nearer to the letter of its first man than this, as part of the ring."""
_TURNS = (0.0, 15.0, -15.0, 30.0, -30.0, 45.0, -45.0, 60.0, -60.0)
"""Degrees by which a bar may be moved round its letter, the least first."""
_STRAIGHT = 1e-6
_BARS = 1.5
"""Middles of two bars at one letter are at least this many half bars apart."""
_APART = 1.6
"""Points between dots and a line beside which they end."""
_ALONG = 6
"""Points that dots may run so near a line: they cross it."""
_SPARE = 8.0
"""Degrees of white between two bars at one letter."""


@dataclass(frozen=True)
class Touch:
    """Where a bar stands: its middle, and the direction from there to the defender."""

    at: Point
    facing: Point


Touches = Mapping[tuple[str, str], Touch]
"""By blocker and defender."""


def touches(
    play: Play, symbols: Mapping[str, Symbol], letters: Mapping[str, Letter], board: Board
) -> dict[tuple[str, str], Touch]:
    """Where every blocker meets every defender whom he takes."""
    coming: dict[str, list[tuple[str, float]]] = {}
    made: dict[tuple[str, str], Touch] = {}
    for task in play.assignments:
        before = _before(task, symbols[task.man].at)
        for hit in task.hits[:2]:
            letter = letters.get(hit.defender)
            if letter is None:
                continue
            if comes_to(hit, play):
                made[task.man, hit.defender] = Touch(hit.at, unit(hit.at, letter.at))
                continue
            way = before - letter.at
            coming.setdefault(hit.defender, []).append((task.man, math.atan2(way.y, way.x)))
            before = letter.at
    for name, blockers in coming.items():
        letter = letters[name]
        apart = 2 * math.atan2(board.mark("hit_bar"), letter.reach) + math.radians(_SPARE)
        others = solids({n: s for n, s in letters.items() if n != name}, play, board)
        others += [square(s.at, s.edge) for s in symbols.values()]
        angles = dict(_spread(blockers, apart))
        for man, _ in blockers:
            angle = angles[man]
            beside = [touch for (_, who), touch in made.items() if who == name]
            made[man, name] = _free_touch(letter, angle, others, beside, board)
    return made


def comes_to(hit: Hit, play: Play) -> bool:
    """Whether a defender is met away from where he stands: he runs to the ball."""
    where = play.defence.defender(hit.defender).at if play.defence is not None else hit.at
    return where.distance(hit.at) > _ON_HIS_WAY


def _free_touch(
    letter: Letter, angle: float, others: Sequence[Box], beside: Sequence[Touch], board: Board
) -> Touch:
    """The bar at ``angle`` from the letter, or the nearest place round it that is on no other
    letter and on no bar ``beside`` it."""
    half, thick = board.mark("hit_bar"), board.weight("bar") / 2
    choices: list[tuple[float, Touch]] = []
    # the first way to turn is outward, so that the mirrored picture turns the other way
    aside = math.cos(angle) if abs(math.cos(angle)) > _STRAIGHT else letter.at.x
    outward = 1.0 if aside > 0 else -1.0
    for turn in _TURNS:
        way = angle + outward * math.radians(turn)
        out = Point(math.cos(way), math.sin(way))
        touch = Touch(letter.at + out.scaled(letter.reach), out.scaled(-1.0))
        across = left_of(out).scaled(half)
        a, b = touch.at - across, touch.at + across
        bar = Box.around((a, b)).grown(thick)
        cost = sum(bar.overlap(box) for box in others)
        cost += sum(1.0 for o in beside if touch.at.distance(o.at) < _BARS * half)
        if not board.frame.holds(bar):
            cost += 1.0 + bar.width * bar.height - bar.overlap(board.frame)
        if cost == 0:
            return touch
        choices.append((round(cost, 6), touch))
    return min(choices, key=lambda choice: choice[0])[1]


def _before(task: Assignment, start: Point) -> Point:
    """The last corner before the first block."""
    path = task.path
    return path.corners[-2] if path is not None and len(path.legs) > 1 else start


def _spread(blockers: Sequence[tuple[str, float]], apart: float) -> list[tuple[str, float]]:
    """The blockers round one defender, at least ``apart`` radians from each other.

    Angles are counted from straight up the field, so that nobody's order breaks at a seam: a
    blocker who comes from beyond his man is rare.
    """
    seam = math.pi / 2
    order = sorted(((a - seam) % (2 * math.pi), man) for man, a in blockers)
    angles = [angle for angle, _ in order]
    for _ in range(_ROUNDS):
        for i in range(len(angles) - 1):
            short = apart - (angles[i + 1] - angles[i])
            if short > 0:
                angles[i] -= short / 2
                angles[i + 1] += short / 2
    return [(man, angle + seam) for angle, (_, man) in zip(angles, order, strict=True)]


def block_path(task: Assignment, start: Point, there: Touches) -> Path | None:
    """The blocker's way to the bar at his first man; None when that man is not in the picture."""
    touch = there.get((task.man, task.hits[0].defender))
    if touch is None:
        return None
    legs = task.path.legs if task.path is not None else ()
    return Path(start, (*legs[:-1], Leg(touch.at)), Ending.BLOCK)


def climb_path(task: Assignment, there: Touches, letters: Mapping[str, Letter]) -> Path | None:
    """From the bar at the first man, round his letter, to the bar at the second; None without a
    second."""
    if len(task.hits) < 2:
        return None
    first = there.get((task.man, task.hits[0].defender))
    second = there.get((task.man, task.hits[1].defender))
    if first is None or second is None:
        return None
    legs = task.climb.legs[:-1] if task.climb is not None else ()
    round_ = _round(first.at, second.at, letters[task.hits[0].defender])
    return Path(first.at, (*round_, *legs, Leg(second.at)), Ending.BLOCK)


def _round(start: Point, to: Point, letter: Letter) -> tuple[Leg, ...]:
    """The corners of the way round a letter on which a bar stands; none where it is not in the
    way. He passes on the side where his bar is."""
    if far_from((start, to), letter.at) > _CLEAR * letter.reach:
        return ()
    aside = start.x - letter.at.x if abs(start.x - letter.at.x) > 1e-6 else to.x - letter.at.x
    side = 1.0 if aside > 0 else -1.0
    wide, turn = _WIDER * letter.reach, letter.reach / 2
    beside = letter.at + Point(side * wide, 0.0)
    above = letter.at + Point(side * wide / 2, wide)
    return (Leg(beside, turn), Leg(above, turn))


def set_path(path: Path, at: Point) -> Path:
    """A set and the step at the man ``at`` as one short stroke; a longer way stays as it is.

    A path that goes all the way to him ends short of his letter.
    """
    if len(path.legs) == _SET_AND_STEP:
        path = replace(path, legs=path.legs[-1:])
    before, end = path.corners[-2], path.end
    if end.distance(at) >= _SHORT_OF or before.distance(at) <= _SHORT_OF:
        return path
    short = at + unit(at, before).scaled(_SHORT_OF)
    return replace(path, legs=(*path.legs[:-1], Leg(short)))


def eyes_items(
    play: Play, letters: Mapping[str, Letter], board: Board, lines: Sequence[Sequence[Point]] = ()
) -> tuple[Item, ...]:
    """Dots from the bar of a pass blocker to a man he takes if he comes, who stands far from it,
    and on a run from a bar to a man who is met on his way to the ball; they end where they would
    run into one of the ``lines`` along it."""
    items: list[Item] = []
    for task in play.assignments:
        letter = letters.get(task.hits[0].defender) if task.hits else None
        if letter is None or task.path is None:
            continue
        if play.kind is Kind.RUN and not board.full:
            continue  # a small picture of a run has no room for them
        if play.kind is Kind.RUN:
            hit = task.hits[0]
            facing = unit(hit.at, letter.at) if comes_to(hit, play) else None
            end, far, rushes = hit.at, 0.0, False
        else:
            facing, end = set_facing(task, play), task.path.end
            far, rushes = _FAR, letter.man.rushes
        if facing is None:
            continue
        start = end + facing.scaled(board.yards(2.5))
        if start.distance(letter.at) > far and not rushes:
            start = _before_lines(letter.at, start, lines, board)
            pieces = leave((Line(letter.at, start),), letter.at, letter.reach)
            items.append(Stroke(pieces, "eyes", (), task.span))
    return tuple(items)


def _before_lines(
    start: Point, end: Point, lines: Sequence[Sequence[Point]], board: Board
) -> Point:
    """The end of the dots, taken back to where no line runs beside them."""
    white, step = board.yards(_APART), board.yards(1.0)
    far, way = start.distance(end), unit(start, end)
    left = far
    while left > far / 2:
        at = start + way.scaled(left)
        if all(far_from(points, at) >= white for points in lines if len(points) > 1):
            break
        left -= step
    return start + way.scaled(left) if far / 2 < left < far - _ALONG * step else end

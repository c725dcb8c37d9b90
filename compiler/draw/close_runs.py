"""The lines of a run or a protection: blocks to their men, climbs, fakes, and the carrier on top.

Order of drawing: men who run no block, the quarterback's fake, blocks, second blocks, the carrier.
A later line breaks an earlier one, so the carrier's is whole.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from stemline.draw.blocks import Touches, block_path, climb_path, set_facing, set_path, touches
from stemline.draw.board import Board
from stemline.draw.defenders import Letter, touched
from stemline.draw.detours import Round, detour
from stemline.draw.lanes import spread, turn_back
from stemline.draw.pulls import in_lanes
from stemline.draw.routes import (
    BLOCK,
    CARRY,
    CLIMB,
    FAKE,
    Run,
    begun_at,
    ghosts_of,
    keep_off,
)
from stemline.draw.scene import Box
from stemline.draw.symbols import Symbol
from stemline.football.defence import Level
from stemline.football.play import Assignment, Kind, Play
from stemline.football.players import Position
from stemline.paths import Ending, Leg, Path, Point

_ORDER = ("", FAKE, BLOCK, CLIMB, CARRY)
_FREE = ("", FAKE)
"""Lines that may be moved a lane aside; a block and the carrier go where they go."""
_HARD = 0.8
"""Part of the ring round a letter that a path never enters while there is another way."""
_CARRIER = 0.5
"""The carrier and who leads him keep only this part of the ring: no bend into another gap."""
_HOLE = 1.6
"""Yards to each side of the line of scrimmage where the carrier's way is set by his hole."""
_ABOUT = 2.0
"""Yards round a path beyond which nothing is in its way."""
_PAST = 1.9
"""Yards past the line where a man who leads through the hole leaves it for his block."""
_TURN = 0.5
_TIP = 0.1
"""Yards below his path's end where a carrier's place beside a deeper letter is looked at."""
_DEAD_ON = 0.1
"""Yards: a letter this near the middle of the carrier's way is passed on its outside."""


def plan_close(
    play: Play, symbols: Mapping[str, Symbol], letters: Mapping[str, Letter], board: Board
) -> tuple[Run, ...]:
    """Every line of a close picture in drawing order, kept off men, letters and one another."""
    play = in_lanes(play, symbols, board)
    there = touches(play, symbols, letters, board) if play.kind is Kind.RUN else {}
    runs = [
        run
        for task in play.assignments
        for run in _runs(play, task, symbols[task.man].at, there, letters)
    ]
    runs = _through_the_hole(runs, symbols, letters, board)
    runs.sort(key=lambda run: _ORDER.index(run.pen))
    lane, turn = board.mark("lane"), board.mark("turn")
    free = [run for run in runs if run.pen in _FREE]
    ways = dict(
        zip(map(id, free), spread([turn_back(r.path, lane) for r in free], lane), strict=True)
    )
    ghosts = ghosts_of(play, symbols, board)
    still = touched(play)
    near = [s for n, s in letters.items() if n in still or s.man.level is Level.LINE]
    made: list[Run] = []
    for run in runs:
        path = ways.get(id(run), run.path)
        keep = keep_off(symbols, ghosts, run.man, board)
        path = detour(path, _about(path, (*keep, *_letters_off(run, near))), turn)
        made.append(replace(run, path=_not_back(path) if run.pen == CARRY else path))
    return tuple(made)


def _runs(
    play: Play,
    task: Assignment,
    start: Point,
    there: Touches,
    letters: Mapping[str, Letter],
) -> list[Run]:
    if task.hits and play.kind is Kind.RUN:
        return _blocks(task, start, there, letters)
    if task.path is None or not task.path.legs:
        return []
    path = begun_at(task.path, start)
    if path.ending is Ending.BLOCK:
        facing = set_facing(task, play)
        path = set_path(path, task.hits[0].at) if facing else path
        return [Run(task.man, path, None, task.span, BLOCK, facing)]
    pen = ""
    if task.man == play.carrier:
        pen = CARRY
    elif play.man(task.man).position is Position.QUARTERBACK:
        pen = FAKE
    return [Run(task.man, path, None, task.span, pen)]


def _blocks(
    task: Assignment, start: Point, there: Touches, letters: Mapping[str, Letter]
) -> list[Run]:
    """The block on the first man, and the second part of it on the next."""
    made: list[Run] = []
    first = block_path(task, start, there)
    if first is not None:
        facing = there[task.man, task.hits[0].defender].facing
        made.append(Run(task.man, first, None, task.span, BLOCK, facing))
    second = climb_path(task, there, letters)
    if second is not None:
        facing = there[task.man, task.hits[1].defender].facing
        made.append(Run(task.man, second, None, task.span, CLIMB, facing))
    return made


def _letters_off(run: Run, letters: Sequence[Letter]) -> Sequence[Round]:
    """Every letter but the one at which the run's bar stands."""
    made: list[Round] = []
    for letter in letters:
        narrow = letter.man.level is Level.LINE and (run.pen == CARRY or run.leads)
        reach = letter.reach * (_CARRIER if narrow else 1.0)
        if letter.at.distance(run.path.end) > 1.05 * letter.reach:
            made.append(Round(letter.at, reach, _HARD * reach))
    return made


def _about(path: Path, rounds: Sequence[Round]) -> Sequence[Round]:
    """Those that the path could meet, bent or not: most blocks are short."""
    xs, ys = [p.x for p in path.corners], [p.y for p in path.corners]
    around = Box(min(xs), min(ys), max(xs), max(ys)).grown(_ABOUT)
    return [r for r in rounds if around.holds(Box(r.at.x, r.at.y, r.at.x, r.at.y))]


def _through_the_hole(
    runs: Sequence[Run],
    symbols: Mapping[str, Symbol],
    letters: Mapping[str, Letter],
    board: Board,
) -> list[Run]:
    """The carrier moved beside a letter that stands in his hole, and those who lead him through
    it kept on his line."""
    made = list(runs)
    carrier = next((run for run in runs if run.pen == CARRY), None)
    if carrier is None:
        return made
    path = carrier.path
    for letter in sorted(letters.values(), key=lambda letter: letter.at.y):
        if letter.man.level is not Level.DEEP:
            room = letter.reach + board.weight("carry")
            path = _beside(path, letter, room, symbols, board.weight("carry"))
    made[made.index(carrier)] = replace(carrier, path=path)
    lane = board.mark("lead")
    return [_led(run, path, lane) if run.pen == BLOCK else run for run in made]


def _beside(
    path: Path, letter: Letter, room: float, symbols: Mapping[str, Symbol], white: float
) -> Path:
    """The path with its part past the line moved off the letter, to the side where it passes, as
    far as the next man of the line lets it."""
    end, level = path.end.y, letter.at.y
    here = _crossing(path, min(level, end - _TIP) if level < end + room else level)
    if here is None or abs(here - letter.at.x) >= room:
        return path
    aside = here - letter.at.x
    outward = 1.0 if letter.at.x > 0 else -1.0
    side = outward if abs(aside) < _DEAD_ON else 1.0 if aside > 0 else -1.0
    free = [
        (s.at.x - here) * side - s.edge - white
        for s in symbols.values()
        if s.man.on_line and (s.at.x - here) * side > 0 and letter.man.level is Level.LINE
    ]
    by = Point(side * max(0.0, min([room - side * aside, *free])), 0.0)
    line = letter.man.level is Level.LINE
    floor = -_HOLE if line else _HOLE
    if not line:
        path = _with_corner(path, _HOLE)
    legs = tuple(replace(leg, to=leg.to + by) if leg.to.y > floor else leg for leg in path.legs)
    return replace(path, legs=legs)


def _with_corner(path: Path, y: float) -> Path:
    """The path with a corner where it last crosses a depth, so that it can turn there."""
    here = _crossing(path, y)
    if here is None:
        return path
    index = max(i for i, (a, b) in enumerate(pairwise(path.corners)) if a.y <= y < b.y)
    corner = Leg(Point(here, y), _TURN)
    return replace(path, legs=(*path.legs[:index], corner, *path.legs[index:]))


def _led(run: Run, carrier: Path, lane: float) -> Run:
    """A blocker who goes through the carrier's hole, kept on his line until he is past the
    defenders there; the carrier is drawn over him."""
    legs: list[Leg] = []
    led = False
    for leg in run.path.legs[:-1]:
        here = _crossing(carrier, leg.to.y) if abs(leg.to.y) < _HOLE else None
        if here is None or abs(leg.to.x - here) > lane:
            legs.append(leg)
            continue
        led = True
        legs.append(replace(leg, to=Point(here, leg.to.y)))
    beyond = _crossing(carrier, _PAST)
    if led and run.path.end.y > _PAST + 1.0 and beyond is not None:
        legs.append(Leg(Point(beyond, _PAST), _TURN))
    path = replace(run.path, legs=(*legs, run.path.legs[-1]))
    return replace(run, path=path, leads=led)


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


def _crossing(path: Path, y: float) -> float | None:
    """Where a path last crosses a depth, going up the field."""
    found = None
    for a, b in pairwise(path.corners):
        if a.y <= y < b.y:
            found = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y)
    return found

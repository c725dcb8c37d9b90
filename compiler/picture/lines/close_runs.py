"""The lines of a run or a protection: blocks to their men, climbs, fakes, and the carrier on top.

Order of drawing: men who run no block, the quarterback's fake, blocks, second blocks, the carrier.
The carrier's is whole wherever another crosses it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from stemline.football.defenders import Level
from stemline.football.play import Assignment, Kind, Play
from stemline.football.players import Position
from stemline.geometry.box import Box, square
from stemline.geometry.curves import dot, left_of, nearest, unit
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.picture.lines.blocks import Touches, block_path, climb_path, set_path, touches
from stemline.picture.lines.leading import crossed, followed, led
from stemline.picture.lines.route_lines import (
    BLOCK,
    CARRY,
    CLIMB,
    FAKE,
    HELD,
    LineRun,
    gives_it_on,
)
from stemline.picture.men.standing import Standing
from stemline.picture.paper.letter import Letter, free_mark, touched
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.ways.at_hole import DrawnHole
from stemline.picture.ways.detours import Round, detour, narrow
from stemline.picture.ways.gaps import through_gaps
from stemline.picture.ways.lanes import spread, turn_back
from stemline.picture.ways.set_facing import set_facing
from stemline.picture.ways.starts import begun_at, behind_passer, ends_clear, ghosts_of, keep_off

_ORDER = ("", FAKE, BLOCK, CLIMB, HELD, CARRY)
_FREE = ("", FAKE)
"""Lines that may be moved a lane aside; a block and the carrier go where they go."""
_HARD = 0.8
"""Part of the ring round a letter that a path never enters while there is another way."""
_CARRIER = 0.5
"""The carrier and who leads him keep only this part of the ring: no bend into another gap."""
_TOUCH = 0.13
"""Points by which the bend of a block in the line may touch a man before he is brought straight
through the gap, where the carrier runs."""
_MERGING = 12.0
"""Degrees between two lines under which one that ends on the other looks like a part of it."""
_STUB = 3.5
"""Points of a block's line that are seen between a man and his bar where he meets nobody."""
_ABOUT = 2.0
"""Yards round a path beyond which nothing is in its way."""


def plan_close(men: Standing, letters: Mapping[str, Letter]) -> tuple[LineRun, ...]:
    """Every line of a close picture in drawing order, kept off men, letters and one another."""
    play, symbols, hole, board = men.laned, men.symbols, men.hole, men.on
    there = touches(play, symbols, letters, board) if play.kind is Kind.RUN else {}
    runs = [
        run
        for task in play.assignments
        for run in (
            *_runs(play, task, symbols[task.man].at, there, letters),
            *_kept(play, task, symbols[task.man].at),
        )
    ]
    runs = [_off_him(run, play, symbols[run.man], board) for run in runs]
    if hole is not None:
        runs = [_at_hole(run, hole, symbols, board) for run in runs]
    runs.sort(key=lambda run: _ORDER.index(run.pen))
    lane, turn = board.mark("lane"), board.mark("turn")
    free = [run for run in runs if run.pen in _FREE]
    ways = dict(
        zip(map(id, free), spread([turn_back(r.path, lane) for r in free], lane), strict=True)
    )
    ways |= _beside_carrier(runs, lane)
    ghosts = ghosts_of(play, symbols, board)
    still = touched(play)
    near = [s for n, s in letters.items() if n in still or s.man.level is Level.LINE]
    made: list[LineRun] = []
    for run in runs:
        path = ways.get(id(run), run.path)
        if run.pen != CARRY:
            keep = keep_off(symbols, ghosts, run.man, board)
            path = behind_passer(path, symbols, run.man, board)
            if run.pen in _FREE:
                ends = (*keep, *(_whole(letter, board) for letter in letters.values()))
                path = ends_clear(path, ends, board.mark("head_half"))
            elif play.kind is Kind.PASS:
                path = ends_clear(path, keep, board.mark("hit_bar"))
            if run.leads:
                # white round a man who stands beside the carrier's way would take his lane
                keep = tuple(narrow(o, board.weight("block") / 2) for o in keep)
            off = _letters_off(run, near, play.unmet, board)
            path = detour(path, _about(path, (*keep, *off)), turn)
            if not run.leads:
                others = [s for name, s in symbols.items() if name != run.man]
                through = through_gaps(
                    path, others, board.weight("block") / 2 - board.yards(_TOUCH)
                )
                # a bend left out in the gap may have been one round a letter
                path = path if through == path else detour(through, _about(through, off), turn)
        made.append(replace(run, path=path))
    return tuple(made)


def _off_him(run: LineRun, play: Play, symbol: Symbol, board: Board) -> LineRun:
    """The block of a man who meets nobody, its bar so far off his symbol that the line to it is
    seen: a bar alone beside a man hangs on nothing."""
    if run.pen != BLOCK or play.assignment(run.man).hits:
        return run
    end = run.path.end
    short = symbol.edge + board.yards(_STUB) - symbol.at.distance(end)
    if short <= 0.0 or end.distance(symbol.at) < 1e-6:
        return run
    off = end + unit(symbol.at, end).scaled(short)
    return replace(run, path=replace(run.path, legs=(*run.path.legs[:-1], Leg(off))))


def _beside_carrier(runs: Sequence[LineRun], lane: float) -> dict[int, Path]:
    """The ways of men who give the ball on, ended beside the carrier's way where they would run
    into it nearly along it."""
    carried = [piece for run in runs if run.pen == CARRY for piece in pairwise(run.path.corners)]
    return {id(run): _beside(run.path, carried, lane) for run in runs if run.pen == HELD}


def _beside(path: Path, others: Sequence[tuple[Point, Point]], lane: float) -> Path:
    before, end = path.corners[-2:]
    for a, b in others:
        across = left_of(unit(a, b))
        angle = math.degrees(math.asin(min(1.0, abs(dot(unit(before, end), across)))))
        if nearest(a, b, end)[0].distance(end) < lane / 2 and angle < _MERGING:
            side = math.copysign(lane, dot(before - a, across))
            end = end + across.scaled(side)
            return replace(path, legs=(*path.legs[:-1], replace(path.legs[-1], to=end)))
    return path


def _runs(
    play: Play,
    task: Assignment,
    start: Point,
    there: Touches,
    letters: Mapping[str, Letter],
) -> list[LineRun]:
    if task.hits and play.kind is Kind.RUN:
        return _blocks(task, start, there, letters)
    if task.path is None or not task.path.legs:
        return []
    path = begun_at(task.path, start)
    if path.ending is Ending.BLOCK:
        facing = set_facing(task, play)
        path = set_path(path, task.hits[0].at) if facing else path
        return [LineRun(task.man, path, None, task.span, BLOCK, facing)]
    pen = ""
    if task.man == play.carrier:
        pen = CARRY
    elif gives_it_on(task, play):
        pen = HELD
    elif play.man(task.man).position is Position.QUARTERBACK:
        pen = FAKE
    return [LineRun(task.man, path, None, task.span, pen)]


def _kept(play: Play, task: Assignment, start: Point) -> list[LineRun]:
    """The ways on which a quarterback keeps the ball if his key has him keep it, and on which a
    man has it whom he gives it to off his key."""
    given = [to for key in play.keys for does, to, _ in key.choices if does == "give"]
    if play.kind is not Kind.RUN or (
        play.man(task.man) is not play.passer and task.man not in given
    ):
        return []
    return [
        LineRun(task.man, _left(begun_at(branch.path, start), branch.leaves), branch, task.span)
        for branch in task.branches
    ]


def _left(path: Path, leaves: Point) -> Path:
    """The rest of a way that parts from his own at its first corner, else all of it."""
    if len(path.legs) > 1 and path.legs[0].to == leaves:
        return replace(path, start=leaves, legs=path.legs[1:])
    return path


def _blocks(
    task: Assignment, start: Point, there: Touches, letters: Mapping[str, Letter]
) -> list[LineRun]:
    """The block on the first man, and the second part of it on the next."""
    made: list[LineRun] = []
    first = block_path(task, start, there)
    if first is not None:
        facing = there[task.man, task.hits[0].defender].facing
        made.append(LineRun(task.man, first, None, task.span, BLOCK, facing))
    second = climb_path(task, there, letters)
    if second is not None:
        facing = there[task.man, task.hits[1].defender].facing
        made.append(LineRun(task.man, second, None, task.span, CLIMB, facing))
    return made


def _letters_off(
    run: LineRun, letters: Sequence[Letter], free: Sequence[str], board: Board
) -> Sequence[Round]:
    """Every letter but the one at which the run's bar stands, and the wedges over free men."""
    made: list[Round] = []
    for letter in letters:
        narrow = letter.man.level is Level.LINE and run.leads
        touch = max(letter.half_width, letter.half_height) + board.weight("block")
        reach = max(_CARRIER * letter.reach, touch) if narrow else letter.reach
        bare = letter.reach - board.mark("letter_room") + board.weight("block") / 2
        if letter.at.distance(run.path.end) > 1.05 * letter.reach:
            made.append(Round(letter.at, reach, min(_HARD * reach, bare)))
        if letter.man.label in free:
            made.append(_wedge(letter, board))
    return made


def _whole(letter: Letter, board: Board) -> Round:
    """A letter on which no arrow may end."""
    bare = letter.reach - board.mark("letter_room") + board.weight("block") / 2
    return Round(letter.at, letter.reach, bare)


def _wedge(letter: Letter, board: Board) -> Round:
    points = free_mark(letter, board).points
    at = Point(letter.at.x, sum(p.y for p in points) / len(points))
    size = board.mark("free")
    return Round(at, size + board.mark("gap"), size)


def _about(path: Path, rounds: Sequence[Round]) -> Sequence[Round]:
    """Those that the path could meet, bent or not: most blocks are short."""
    around = Box.around(path.corners).grown(_ABOUT)
    return [r for r in rounds if around.holds(square(r.at, 0.0))]


def _at_hole(run: LineRun, hole: DrawnHole, symbols: Mapping[str, Symbol], board: Board) -> LineRun:
    """A line as the carrier's hole has it."""
    if run.pen == CARRY:
        return replace(run, path=hole.path)
    if run.pen == BLOCK and run.man in hole.lanes:
        return replace(run, path=led(run.path, run.man, hole, board), leads=True)
    if run.pen == CLIMB:
        return replace(run, path=crossed(run.path, hole, board))
    if run.pen == "" and symbols[run.man].man.rank is None:
        others = [s for name, s in symbols.items() if name != run.man]
        return replace(run, path=followed(run.path, hole, board, others))
    return run

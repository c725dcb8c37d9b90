"""Where men run, as strokes: paths after the snap and the branches a look decides.

The small picture leaves the branches out: it is there to show how a call differs from its base.

Order of drawing: men who are in no read first, then the reads from last to first, so that of two
men who cross at the same moment the one looked at first is left whole.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from stemline.football.play import Assignment, Branch, Play
from stemline.football.players import Position
from stemline.football.timing.draws import draws
from stemline.football.timing.men import CARRIER
from stemline.geometry.curves import (
    Pieces,
    far_from,
    heading,
    leave,
    left_of,
    nearest,
    points_of,
    stop_short,
    unit,
)
from stemline.geometry.paths import Ending, Line, Path, Point, segments
from stemline.picture.lines.blocks import set_path
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.scene import Disc, Item, Stroke
from stemline.picture.ways.gaps import through_gaps
from stemline.picture.ways.landing import Tip, land
from stemline.picture.ways.lanes import spread, turn_back
from stemline.picture.ways.launch import launch_path
from stemline.picture.ways.set_facing import set_facing
from stemline.picture.ways.starts import (
    begun_at,
    behind_passer,
    ends_clear,
    ghosts_of,
    keep_off,
    past_own,
)
from stemline.source import Span

CARRY, FAKE, BLOCK, CLIMB, SET = "carry", "fake", "block", "climb", "set"
"""Pens of a run and of a protection: the carrier, a man who fakes, a block, its second part, and
a man who sets for a pass."""
HELD = "held"
"""The pen of a man who has the ball and gives it on."""

_AT_CORNER = 0.3
"""Yards: a branch that leaves this near a corner leaves at the corner."""
_LEAVES = 0.9
"""Yards at most that a branch shares with its path before the turn at which it leaves."""
_NOTCH = 0.75
"""An arrowhead is hollowed this far in from behind, as part of its length from the tip."""
_INTO = 0.6
"""A line stops this far from the tip: past the notch, and never past the point."""


@dataclass(frozen=True)
class LineRun:
    """One line to draw: whose it is, its reshaped path, and the branch it stands for, if any.

    ``pen`` is a stroke of the theme, "" for a route's or a branch's; ``facing`` the direction
    from the bar at its end to the man who is blocked, None to take the path's own. ``leads`` tells
    a blocker who goes through the carrier's hole; ``name`` is the line's own in the scene.
    """

    man: str
    path: Path
    branch: Branch | None
    span: Span
    pen: str = ""
    facing: Point | None = None
    leads: bool = False
    name: str = ""

    @property
    def style(self) -> str:
        return self.pen or ("branch" if self.branch else "route")


@dataclass(frozen=True)
class Drawn:
    """A run on paper: ``points`` close together along it, for labels to keep away from."""

    run: LineRun
    items: tuple[Item, ...]
    points: tuple[Point, ...]


def plan_runs(play: Play, symbols: Mapping[str, Symbol], board: Board) -> tuple[LineRun, ...]:
    """Every run in drawing order, kept off other runs and other men's symbols.

    A man who sets against a rusher is drawn facing him, pale enough to leave the routes alone;
    the small picture leaves him out.
    """
    lane = board.mark("lane")
    bases: list[LineRun] = []
    branches: list[LineRun] = []
    for task in _in_order(play):
        start = symbols[task.man].at
        setting = task.path is not None and set_facing(task, play) is not None
        if task.path is not None and task.path.legs and (board.shows(Detail.SETS) or not setting):
            path = begun_at(task.path, start)
            facing = set_facing(task, play)
            pen = SET if facing else _pen(task, play)
            path = set_path(path, task.hits[0].at) if facing else turn_back(path, lane)
            bases.append(LineRun(task.man, path, None, task.span, pen, facing))
            if task.climb is not None and not task.hits:
                bases.append(LineRun(task.man, task.climb, None, task.span, CLIMB))
        for branch in task.branches if board.shows(Detail.BRANCHES) else ():
            cut = _after(begun_at(branch.path, start), branch.leaves)
            if cut.legs:
                branches.append(LineRun(task.man, turn_back(cut, lane), branch, task.span))
    launch = _launch(play, symbols, board) if board.shows(Detail.SETS) else []
    runs = [*bases, *launch, *branches]
    laid = spread([run.path for run in runs], lane)
    ghosts = ghosts_of(play, symbols, board)
    bent = [
        replace(run, path=_bent(path, run.man, run.style, symbols, ghosts, board))
        for run, path in zip(runs, laid, strict=True)
    ]
    # a branch lies under the path it leaves, so that the path is never broken by it
    # and so does the passer, who is only on his way to throw
    return (*bent[len(bases) :], *_ends_on_top(bent[: len(bases)], board.mark("head")))


def _pen(task: Assignment, play: Play) -> str:
    """The ball carrier's, the one of him who shows that he has it, or a route's."""
    if task.man == play.carrier:
        return CARRY
    if gives_it_on(task, play):
        return HELD
    return FAKE if task.role == CARRIER else ""


def gives_it_on(task: Assignment, play: Play) -> bool:
    """Whether a man's line is that of the ball on its way to another."""
    led = task.role == CARRIER or (task.path is not None and task.path.ending is Ending.STAND)
    draw = draws(play)
    return led and (task.man in play.ball_men or (draw is not None and task.man == draw.giver))


def _launch(play: Play, symbols: Mapping[str, Symbol], board: Board) -> list[LineRun]:
    """The way of a quarterback who throws on the run, as deep as the picture is."""
    low = board.frame.bottom + board.mark("head_half") + board.yards(1.0)
    made: list[LineRun] = []
    for symbol in symbols.values():
        if symbol.man.position is Position.QUARTERBACK:
            found = launch_path(play, symbol.at, low)
            if found is not None:
                made.append(LineRun(found[0], found[1], None, symbol.man.span, FAKE))
    return made


def _bent(
    path: Path,
    man: str,
    pen: str,
    symbols: Mapping[str, Symbol],
    ghosts: Mapping[str, Point],
    board: Board,
) -> Path:
    """The path round the other men, and through the line between two of them."""
    keep = keep_off(symbols, ghosts, man, board)
    half = {Ending.BLOCK: "bar", Ending.SETTLE: "dot"}.get(path.ending, "head_half")
    tip = Tip(board.mark("head"), board.mark(half), board.weight(pen) / 2)
    path = ends_clear(behind_passer(path, symbols, man, board), keep, tip.half)
    path = land(path, keep, tip, board.mark("turn"))
    path = past_own(path, symbols[man], board.weight("bar"))
    others = (symbol for name, symbol in symbols.items() if name != man)
    return through_gaps(path, others, tip.line)


def _ends_on_top(runs: Sequence[LineRun], near: float) -> tuple[LineRun, ...]:
    """The runs with each one that ends on another moved over it: an arrow is never broken."""
    lines = {run.man: points_of(segments(run.path)) for run in runs}
    order = list(runs)
    for run in runs:
        under = [
            other
            for other in order
            if other is not run and far_from(lines[other.man], run.path.end) < near
        ]
        last = max((order.index(other) for other in under), default=-1)
        if last > order.index(run):
            order.remove(run)
            order.insert(last, run)
    return tuple(order)


def _in_order(play: Play) -> Iterable[Assignment]:
    first = {man: read.number for read in reversed(play.reads) for man in read.men}
    last = len(play.reads) + 1
    return sorted(play.assignments, key=lambda task: -first.get(task.man, last))


def _after(path: Path, leaves: Point) -> Path:
    """The part of a branch from where it parts: from just before the turn, if it parts at one."""
    corners = path.corners
    places = [nearest(a, b, leaves)[0] for a, b in pairwise(corners)]
    index = min(range(len(places)), key=lambda i: (places[i].distance(leaves), i))
    at, corner = places[index], corners[index + 1]
    if index + 1 < len(path.legs) and at.distance(corner) < _AT_CORNER:
        before = corners[index]
        reach = min(path.legs[index].reach, _LEAVES, before.distance(corner) / 2)
        at = corner - unit(before, corner).scaled(reach)
        if reach == 0:
            return replace(path, start=corner, legs=path.legs[index + 1 :])
    return replace(path, start=at, legs=path.legs[index:])


def draw_run(run: LineRun, symbols: Mapping[str, Symbol], board: Board, pale: bool) -> Drawn:
    """The run as strokes: from the symbol's edge to its arrow, dot or bar, the line first."""
    symbol = symbols[run.man]
    whole = segments(run.path)
    pieces = leave(whole, symbol.at, symbol.edge)
    if not pieces:
        return Drawn(run, (), ())
    tone = "-pale" if pale else ""
    style = run.style + tone
    line, head, marks = _ending(run, pieces, symbol.man.interior, tone, board)
    stroke = Stroke(line, style, head, run.span, run.name)
    return Drawn(run, (stroke, *marks), points_of(pieces))


def _ending(
    run: LineRun, pieces: Pieces, interior: bool, tone: str, board: Board
) -> tuple[Pieces, tuple[Point, ...], tuple[Item, ...]]:
    end = pieces[-1].end
    match run.path.ending:
        case Ending.RUN:
            return *arrowed(pieces, board, "carry_head" if run.pen == CARRY else "head"), ()
        case Ending.SETTLE:
            return pieces, (), (Disc(end, board.mark("dot"), f"dot{tone}", run.span),)
        case Ending.BLOCK:
            ahead = heading(pieces, board.mark("head"))
            return pieces, (), (bar_item(run, end, ahead, interior, tone, board),)
        case Ending.STAND:
            return pieces, (), ()


def bar_item(
    run: LineRun, at: Point, ahead: Point, interior: bool, tone: str, board: Board
) -> Stroke:
    """The flat end of a block; shorter at a defender and in the line, where another may stand
    beside it."""
    half = board.mark("hit_bar" if run.facing or interior else "bar")
    across = left_of(run.facing or ahead).scaled(half)
    style = "set-bar" if run.pen == SET else "bar"
    return Stroke((Line(at - across, at + across),), style + tone, (), run.span)


def arrowed(pieces: Pieces, board: Board, kind: str = "head") -> tuple[Pieces, tuple[Point, ...]]:
    """The pieces up to inside an arrowhead on their end, and the head: its tip first."""
    tip = pieces[-1].end
    size = min(board.mark(kind), 0.9 * sum(p.start.distance(p.end) for p in pieces))
    ahead = heading(pieces, size)
    half = left_of(ahead).scaled(board.mark(f"{kind}_half"))
    back = tip - ahead.scaled(size)
    notch = tip - ahead.scaled(_NOTCH * size)
    return stop_short(pieces, _INTO * size), (tip, back + half, notch, back - half)

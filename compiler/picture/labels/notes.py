"""What stands beside the lines: read tiles with their pressure order, alerts, depths, words.

Each maker says what it wants placed and how to draw it once `labels` has found the place. ``only``
is the label of the one man who is drawn strong: what belongs to the others is pale, as their paths.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from stemline.football.play import Alert, Branch, DepthMark, Play, Read
from stemline.geometry.box import Box
from stemline.geometry.curves import Pieces, nearest, unit
from stemline.geometry.paths import Ending, Line, Path, Point, along, length
from stemline.picture.labels.labels import Wanted
from stemline.picture.lines.motions import Moved
from stemline.picture.lines.route_lines import Drawn
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, centred
from stemline.picture.scene.scene import Item, Plate, Stroke, TextRun
from stemline.source import Span

_UP = Point(0.0, 1.0)
_DOWN = Point(0.0, -1.0)
_LOOSE, _FIRM = 1.8, 6.0
"""How much a note minds its direction: a read at the end of a path stands beyond that end."""
_ABOUT = 24.0
"""Points round a read within which its tile may stand without a leader, the tile's own width in."""
_AT_END = 2.0
"""Yards: a read this near the end of its man's path is placed beyond that end."""


@dataclass(frozen=True)
class WantedNote:
    """A label before it has a place: ``draw`` makes its items inside the box that is found.

    ``role`` is "read", "alert", "depth" or "words", else "", and ``text`` what it says.
    """

    want: Wanted
    draw: Callable[[Box], tuple[Item, ...]]
    halo: bool
    span: Span
    role: str = ""
    text: str = ""


def tone(only: str | None, men: Collection[str]) -> str:
    """The ending of a role that is drawn for ``men``: "-pale" where the strong man is another."""
    return "" if only is None or only in men else "-pale"


def read_notes(
    play: Play, drawn: Sequence[Drawn], board: Board, only: str | None = None
) -> tuple[WantedNote, ...]:
    """A tile for each read, its chevrons counting its place in the order under pressure; none
    against a look that leaves nobody to run it."""
    hurried = {read.target: read.number for read in play.pressure}
    named = {read.target for read in play.reads}
    rows = [(read, str(read.number), hurried.get(read.target, 0)) for read in play.reads]
    rows += [(read, "", read.number) for read in play.pressure if read.target not in named]
    return tuple(
        _read_note(read, text, count, drawn, board, tone(only, read.men))
        for read, text, count in rows
        if read.men or play.defence is None
    )


def _read_note(
    read: Read, text: str, count: int, drawn: Sequence[Drawn], board: Board, pale: str
) -> WantedNote:
    tile = board.mark("tile")
    chevrons = (count - 1) * board.mark("chevron_step") + board.mark("chevron") if count else 0.0
    between = board.yards(2.0) if text and count else 0.0
    width = (tile if text else 0.0) + between + chevrons
    toward, hold = _UP, _LOOSE
    for line in drawn:
        near = line.run.branch is None and line.run.man in read.men
        if near and len(line.points) > 1 and line.run.path.end.distance(read.at) < _AT_END:
            toward = _UP if line.run.path.ending is Ending.SETTLE else _last(line.points)
            hold = _FIRM
    gap = board.mark("dot") + board.yards(2.6)
    past = _others_near(read, drawn, board.yards(_ABOUT))
    want = Wanted(read.at, width, tile, gap, toward, hold, past=past)

    def draw(box: Box) -> tuple[Item, ...]:
        return tile_items(text, count, box, board, read.span, pale)

    return WantedNote(want, draw, False, read.span, "read", text or read.target)


def _others_near(
    read: Read, drawn: Sequence[Drawn], reach: float
) -> tuple[tuple[Point, Point], ...]:
    """Pieces of lines within ``reach`` of a read that are not its men's."""
    return tuple(
        (a, b)
        for line in drawn
        if line.run.man not in read.men
        for a, b in pairwise(line.points)
        if nearest(a, b, read.at)[0].distance(read.at) < reach
    )


def tile_items(
    text: str, count: int, box: Box, board: Board, span: Span, pale: str = ""
) -> tuple[Item, ...]:
    """A read's tile at the left of ``box`` and its chevrons after it; ``pale`` as `tone` has it."""
    items: list[Item] = []
    x = box.left
    if text:
        tile = board.mark("tile")
        square = Box(x, box.bottom, x + tile, box.top)
        items.append(Plate(square, board.mark("tile_corner"), f"tile{pale}", span))
        items.append(centred(text, square.centre, f"read{pale}", board, span))
        x += tile + board.yards(2.0)
    half, depth, y = board.mark("chevron_half"), board.mark("chevron"), box.centre.y
    for _ in range(count):
        tip = Point(x + depth, y)
        pieces: Pieces = (Line(Point(x, y + half), tip), Line(tip, Point(x, y - half)))
        items.append(Stroke(pieces, f"chevron{pale}", (), span))
        x += board.mark("chevron_step")
    return tuple(items)


def alert_notes(
    play: Play,
    drawn: Sequence[Drawn],
    symbols: Mapping[str, Symbol],
    board: Board,
    only: str | None = None,
) -> tuple[WantedNote, ...]:
    """An open tile with an A for each alert; the large picture adds when it holds."""
    made: list[WantedNote] = []
    for alert in play.alerts:
        spots = [s.at for s in play.spots if s.name == alert.target]
        own = [d for d in drawn if d.run.man in alert.men]
        ends = [d.run.path.end for d in own if _about(alert, d.run.branch)]
        ends += [d.run.path.end for d in own if d.run.branch is None]
        stand = [symbols[man].at for man in alert.men if man in symbols]
        places = [*ends, *spots, *stand]
        if places:
            made.append(_alert_note(alert, places[0], board, tone(only, alert.men)))
    return tuple(made)


def _about(alert: Alert, branch: Branch | None) -> bool:
    """Whether an alert is about what a man does instead: it holds when the branch does."""
    return branch is not None and branch.looks == alert.when


def _alert_note(alert: Alert, at: Point, board: Board, pale: str) -> WantedNote:
    tile = board.mark("tile")
    words = alert.when if board.shows(Detail.ALERT_WORDS) else ""
    width = tile + (board.yards(2.5) + board.extent(words, "words").width if words else 0.0)

    def draw(box: Box) -> tuple[Item, ...]:
        return alert_items(words, box, board, alert.span, pale)

    want = Wanted(at, width, tile, board.yards(4.0), _UP, _LOOSE)
    return WantedNote(want, draw, bool(words), alert.span, "alert", alert.when)


def alert_items(words: str, box: Box, board: Board, span: Span, pale: str = "") -> tuple[Item, ...]:
    """An open tile at the left of ``box`` and its words after it."""
    tile = board.mark("tile")
    square = Box(box.left, box.bottom, box.left + tile, box.top)
    items: list[Item] = [
        Plate(square, board.mark("tile_corner"), f"tile-open{pale}", span),
        centred("A", square.centre, f"alert{pale}", board, span),
    ]
    if words:
        rise = board.extent(words, "words").rise
        at = Point(square.right + board.yards(2.5), box.centre.y - rise / 2)
        items.append(TextRun(words, at, f"words{pale}", span))
    return tuple(items)


def depth_notes(play: Play, board: Board, only: str | None = None) -> tuple[WantedNote, ...]:
    """The taught depths, outside the turn where each is taught; one that several men share once."""
    if not board.shows(Detail.DEPTHS):
        return ()
    rows: dict[DepthMark, tuple[Path | None, Span, list[str]]] = {}
    for task in play.assignments:
        own = [(mark, task.path) for mark in task.marks]
        own += [(mark, branch.path) for branch in task.branches for mark in branch.marks]
        for mark, path in own:
            rows.setdefault(mark, (path, task.span, []))[2].append(task.man)
    return tuple(
        text_note(
            yards_text(mark.yards),
            "depth",
            (mark.at,),
            _outside(path, mark.at),
            board,
            span,
            tone(only, men),
        )
        for mark, (path, span, men) in rows.items()
    )


def word_notes(
    play: Play,
    drawn: Sequence[Drawn],
    moved: Sequence[Moved],
    board: Board,
    only: str | None = None,
) -> tuple[WantedNote, ...]:
    """The look at the end of each branch, the words of each motion, where the size shows them.

    Several men who move alike have their words once, beside any of them; so has a branch with an
    alert at its end.
    """
    made = [
        text_note(
            line.run.branch.looks,
            "words",
            (line.run.path.end,),
            _last(line.points),
            board,
            line.run.span,
            tone(only, (line.run.man,)),
        )
        for line in drawn
        if line.run.branch is not None and line.run.branch.looks and len(line.points) > 1
        if board.shows(Detail.BRANCHES)
        if not any(line.run.man in a.men and _about(a, line.run.branch) for a in play.alerts)
    ]
    if not board.shows(Detail.MOTION_WORDS):
        return tuple(made)
    said: dict[str, list[Moved]] = {}
    for move in moved:
        if move.words:
            said.setdefault(move.words, []).append(move)
    for words, moves in said.items():
        places = [moves[0].middle, *(at for move in moves for at in _along(move))]
        pale = tone(only, [move.man for move in moves])
        made.append(text_note(words, "words", places, _DOWN, board, moves[0].span, pale))
    return tuple(made)


def _along(move: Moved) -> tuple[Point, ...]:
    """Where the words of a motion may stand: a fourth, half and three fourths along it."""
    long = length(move.points)
    return tuple(along(move.points, long * part) for part in (0.5, 0.25, 0.75))


def text_note(
    text: str,
    role: str,
    places: Sequence[Point],
    toward: Point,
    board: Board,
    span: Span,
    pale: str,
) -> WantedNote:
    """Words at the first of ``places`` that has room."""
    style = role + pale
    room = board.extent(text, style)

    def draw(box: Box) -> tuple[Item, ...]:
        return (TextRun(text, Point(box.left, box.bottom + room.fall), style, span),)

    gap = board.yards(3.2 if role == "depth" else 4.2)
    at, *also = dict.fromkeys(places)
    height = room.rise + room.fall
    want = Wanted(at, room.width, height, gap, toward, _LOOSE, tuple(also))
    return WantedNote(want, draw, True, span, role, text)


def lost_notes(men: Sequence[Symbol], board: Board) -> tuple[WantedNote, ...]:
    """Words beside the old place of each of ``men``, who stands elsewhere now."""
    return tuple(
        text_note(f"{s.man.label} before", "words", (s.at,), _DOWN, board, s.man.span, "-pale")
        for s in men
    )


def yards_text(yards: float) -> str:
    """A depth as coaches write it: 12, 5½."""
    whole = int(yards // 1)
    if abs(yards - whole) < 0.05:
        return str(whole)
    if abs(yards - whole - 0.5) < 0.05:
        return f"{whole}½" if whole else "½"
    return f"{yards:.1f}"


def _last(points: Sequence[Point]) -> Point:
    return unit(points[-2], points[-1])


def _outside(path: Path | None, at: Point) -> Point:
    """Away from the inside of the turn at ``at``; up, where there is no turn."""
    corners = path.corners if path is not None else ()
    for a, b, c in zip(corners, corners[1:], corners[2:], strict=False):
        if b.distance(at) < 1.0:
            way = unit(a, b) - unit(b, c)
            return unit(Point(0, 0), way)
    return _UP

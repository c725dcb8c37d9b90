"""Small pictures for the page "How to read these pictures": one for each mark and each line."""

from __future__ import annotations

from collections.abc import Callable

from stemline.football.play import Branch, Man
from stemline.football.players import Position
from stemline.geometry.box import Box, square
from stemline.geometry.curves import leave, left_of
from stemline.geometry.paths import Ending, Leg, Line, Path, Point, segments
from stemline.picture.labels.notes import alert_items, tile_items
from stemline.picture.legend.legend_blocks import ENTRIES as BLOCK_ENTRIES
from stemline.picture.lines.crossings import break_lines
from stemline.picture.lines.route_lines import LineRun, arrowed, draw_run
from stemline.picture.men.symbols import men_items
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, centred
from stemline.picture.scene.scene import Disc, Item, Layer, Plate, Polygon, Scene, Stroke, TextRun
from stemline.source import NOWHERE
from stemline.theme import Size, Theme

_SCALE = 8.5
"""Points to the yard, at least: what a picture of the book usually has."""
_EDGE = 0.845
"""Yards from a man's middle to his symbol's edge, at most: two men stand one above the other."""
_FRAME = Box(-4.2, -1.7, 4.2, 1.7)

_Drawer = Callable[[Board], tuple[Item, ...]]


def legend_entries(theme: Theme) -> tuple[tuple[str, Scene], ...]:
    """A caption and a small scene for each kind of mark, in the order to explain them."""
    look = theme.look(Size.FULL)
    edge = look.symbol["man"] + look.grounds["man"].edge_weight / 2
    board = Board(_FRAME, max(_SCALE, edge / _EDGE), Size.FULL, theme)
    return tuple((caption, _scene(caption, draw(board), board)) for caption, draw in _ALL)


def _scene(caption: str, items: tuple[Item, ...], board: Board) -> Scene:
    layer = Layer("legend", items)
    return Scene(caption, caption, board.frame, board.scale, board.size, (layer,))


def _man(label: str, position: Position, at: Point) -> Man:
    return Man(label, position, at, at, True, None, NOWHERE)


def _symbol(board: Board, at: Point, position: Position = Position.WIDEOUT) -> Symbol:
    kind = "lineman" if position.interior else "man"
    radius = board.mark(kind)
    edge = radius + board.yards(board.look.grounds[kind].edge_weight / 2)
    return Symbol(_man("G" if position.interior else "X", position, at), at, radius, edge)


def _men(board: Board, *symbols: Symbol) -> tuple[Item, ...]:
    return men_items({str(i): s for i, s in enumerate(symbols)}, board, None)


def _path(board: Board, ending: Ending, *corners: tuple[float, float, float]) -> tuple[Item, ...]:
    """A man and his path; corners are x, y and the reach of the turn there."""
    start = Point(corners[0][0], corners[0][1])
    legs = tuple(Leg(Point(x, y), reach) for x, y, reach in corners[1:])
    run = LineRun("X", Path(start, legs, ending), None, NOWHERE)
    symbol = _symbol(board, start)
    return (*draw_run(run, {"X": symbol}, board, False).items, *_men(board, symbol))


def _offence(board: Board) -> tuple[Item, ...]:
    return _men(
        board,
        _symbol(board, Point(-2.6, 0)),
        _symbol(board, Point(0.2, 0), Position.GUARD),
        _symbol(board, Point(1.6, 0), Position.CENTRE),
        _symbol(board, Point(3.0, 0), Position.GUARD),
    )


def _paths(board: Board) -> tuple[Item, ...]:
    return (
        *_path(board, Ending.RUN, (-2.6, 0.86, 0), (3.4, 0.86, 0)),
        *_path(board, Ending.SETTLE, (-2.6, -0.86, 0), (2.6, -0.86, 0)),
    )


def _block(board: Board) -> tuple[Item, ...]:
    return _path(board, Ending.BLOCK, (-2.0, -0.4, 0), (1.8, 0.4, 0))


def _crossing(board: Board) -> tuple[Item, ...]:
    under = Path(Point(-3.4, -0.8), (Leg(Point(3.2, 0.9)),))
    over = Path(Point(3.4, -0.8), (Leg(Point(-3.2, 0.9)),))
    items: list[Item] = []
    for path in (under, over):
        symbol = _symbol(board, path.start)
        items += draw_run(LineRun("X", path, None, NOWHERE), {"X": symbol}, board, False).items
    # at one moment, so that the one drawn last is whole
    return break_lines((Layer("routes", tuple(items)),), {}, board)[0].items


def _motions(board: Board) -> tuple[Item, ...]:
    return (*_motion(board, 0.86, running=False), *_motion(board, -0.86, running=True))


def _motion(board: Board, y: float, running: bool) -> tuple[Item, ...]:
    symbol = _symbol(board, Point(2.4, y))
    start, ring = Point(-3.0, y), board.mark("ghost")
    pieces = leave(segments(Path(start, (Leg(symbol.at),))), start, ring)
    end = symbol.at - Point(symbol.edge + board.yards(0.6), 0)
    line = (Line(pieces[0].start, end),)
    across = left_of(Point(1, 0)).scaled(board.mark("tick"))
    tick = Stroke((Line(end - across, end + across),), "tick", (), NOWHERE)
    short, head = arrowed(line, board)
    return (
        Stroke(short if running else line, "motion", head if running else (), NOWHERE),
        *(() if running else (tick,)),
        Disc(start, ring, "ghost", NOWHERE),
        centred("X", start, "ghost", board, NOWHERE),
        *_men(board, symbol),
    )


def _branch(board: Board) -> tuple[Item, ...]:
    start = Point(-3.0, -0.8)
    symbol = _symbol(board, start)
    base = Path(start, (Leg(Point(0.2, -0.8), 0.4), Leg(Point(0.2, 1.5))))
    other = Path(Point(-0.2, -0.8), (Leg(Point(2.4, -0.8)),))
    branch = Branch("off", other, "", (), other.start)
    lines = (LineRun("X", other, branch, NOWHERE), LineRun("X", base, None, NOWHERE))
    drawn = [draw_run(run, {"X": symbol}, board, False).items for run in lines]
    word = TextRun("off", Point(2.7, -1.0), "words", NOWHERE)
    return (*drawn[0], *drawn[1], *_men(board, symbol), word)


def _reads(board: Board) -> tuple[Item, ...]:
    return (*_tile(board, "1", 1, Point(-2.4, 0)), *_tile(board, "4", 3, Point(1.4, 0)))


def _tile(board: Board, text: str, count: int, at: Point) -> tuple[Item, ...]:
    return tile_items(text, count, square(at, board.mark("tile") / 2), board, NOWHERE)


def _alert(board: Board) -> tuple[Item, ...]:
    half = board.mark("tile") / 2
    box = Box(-3.4, -half, 3.4, half)
    return alert_items("middle open", box, board, NOWHERE)


def _triangle(board: Board) -> tuple[Item, ...]:
    points = (Point(-3.2, -0.9), Point(0, 1.2), Point(3.2, -0.9))
    return (Polygon(points, "claim", NOWHERE),)


def _depth(board: Board) -> tuple[Item, ...]:
    line = _path(board, Ending.RUN, (-1.6, -0.8, 0), (-1.6, 0.8, 0.5), (2.6, 0.8, 0))
    room = board.extent("12", "depth")
    at = Point(-1.6 - room.width - board.yards(4.0), 0.9)
    halo = Box(at.x, at.y, at.x + room.width, at.y + room.rise)
    return (*line, Plate(halo, 0.0, "halo", NOWHERE), TextRun("12", at, "depth", NOWHERE))


def _field(board: Board) -> tuple[Item, ...]:
    left, right = board.frame.left, board.frame.right
    half = board.mark("hash")
    return (
        Stroke((Line(Point(left, 0.7), Point(right, 0.7)),), "yard-line", (), NOWHERE),
        Stroke((Line(Point(1.5, 0.7 - half), Point(1.5, 0.7 + half)),), "hash", (), NOWHERE),
        TextRun("5", Point(left + board.yards(4.0), 0.85), "yards", NOWHERE),
        Stroke((Line(Point(left, -0.9), Point(right, -0.9)),), "line-of-scrimmage", (), NOWHERE),
    )


_ENTRIES: tuple[tuple[str, _Drawer], ...] = (
    ("A man where he is at the snap; the line, the centre a square", _offence),
    ("His path: an arrow runs on, a dot settles and faces the ball", _paths),
    ("His path: he blocks", _block),
    ("Where a path has a gap, the man on the other is there later", _crossing),
    ("Before the snap, from the ring: tick, he is set; arrow, still running", _motions),
    ("Where he goes instead, if the look or the man who is read is as named", _branch),
    ("A read: the order of the eyes; chevrons, the order under pressure", _reads),
    ("Alert: look here first when the words hold", _alert),
    ("The ground that the concept covers", _triangle),
    ("Yards past the line where he turns", _depth),
    ("Every fifth yard past the line of scrimmage, and a hash", _field),
)
_ALL: tuple[tuple[str, _Drawer], ...] = (*_ENTRIES, *BLOCK_ENTRIES)

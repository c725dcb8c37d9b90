"""What is left of an old line beside the new ones: where it lies off them, and on no man.

Only that tells what has changed. The rest would be the same line twice.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from stemline.geometry.box import Box
from stemline.geometry.curves import Pieces, far_from, points_of, split
from stemline.geometry.cutting import measure, part
from stemline.geometry.paths import Point, length
from stemline.picture.lines.laid import LaidLines
from stemline.picture.lines.old_lines import HERE
from stemline.picture.paper.letter import Letter
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.scene import Disc, Item, Stroke
from stemline.picture.ways.detours import Round

SHORTEST = 2.5
"""Points: what is left of an old line shorter than this shows nothing."""
_STEP = 0.1
"""Yards along an old line from one place to the next where it is compared with the new one."""
_ALONG = 8.0
"""Widths of an old line that another may lie on it: the two could not be told apart there."""
_BARS = frozenset({"bar", "set-bar"})


def left_over(
    items: Iterable[Item], man: str, now: LaidLines, olds: Sequence[Sequence[Point]] = ()
) -> list[Item]:
    """An old line as far as it lies off the man's new ones, with its end where that is another; of
    one that runs along the old lines ``olds`` of others, what is off those."""
    on, items = now.on, tuple(items)
    new = [d.points for d in now.drawn if d.run.man == man and len(d.points) > 1]
    near = (on.weight("route") + on.weight("before")) / 2 + on.mark("cross")
    others = [
        *(room_of(s, on) for name, s in now.symbols.items() if name != man or not _own(s, items)),
        *(_round(letter, on) for letter in now.letters.values()),
    ]
    kept: list[Item] = []
    for item in items:
        if isinstance(item, Disc):
            if kept and not near_lines(item.centre, new, near):
                kept.append(replace(item, style="dot-pale"))
        elif isinstance(item, Stroke) and item.style in _BARS:
            middle = (item.segments[0].start + item.segments[0].end).scaled(0.5)
            clear = not any(_covers(letter, item, on) for letter in now.letters.values())
            if kept and clear and not near_lines(middle, new, near):
                kept.append(replace(item, style="before-bar"))
        elif isinstance(item, Stroke):
            pieces = _off(item.segments, new, near, others, on.yards(SHORTEST))
            apart = _off(pieces, olds, on.weight("before"), (), on.yards(SHORTEST))
            if _long(pieces) - _long(apart) > _ALONG * on.weight("before"):
                pieces = apart
            if pieces:
                ends = item.head and pieces[-1].end.distance(item.segments[-1].end) < HERE
                ends = ends and not any(
                    o.at.distance(p) < o.hard for o in others for p in item.head
                )
                head = item.head if ends and not near_lines(item.head[0], new, near) else ()
                kept.append(replace(item, segments=pieces, style="before", head=head))
    return kept


def _long(pieces: Pieces) -> float:
    return sum(length(points_of((piece,))) for piece in pieces)


def _own(symbol: Symbol, items: Iterable[Item]) -> bool:
    """Whether a man's line starts at this symbol of his."""
    starts = (i.segments[0].start for i in items if isinstance(i, Stroke) and i.segments)
    return any(start.distance(symbol.at) <= symbol.edge + HERE for start in starts)


def near_lines(at: Point, lines: Iterable[Sequence[Point]], within: float) -> bool:
    return any(far_from(line, at) <= within for line in lines)


def _off(
    pieces: Pieces,
    lines: Sequence[Sequence[Point]],
    near: float,
    rounds: Sequence[Round],
    least: float,
) -> Pieces:
    """The stretches of the pieces that lie off the lines and on no symbol and no letter, none
    shorter than ``least``: where there is no way round it the old line goes on behind a man."""
    if not pieces:
        return ()
    whole = measure(pieces)
    about = [_about(step, near) for line in lines for step in pairwise(line)]
    count = max(1, round(whole.length / _STEP))
    step = whole.length / count
    spans: list[tuple[float, float]] = []
    for i in range(count):
        number, t = whole.at((i + 0.5) * step)
        at = split(whole.pieces[number], t)[0].end
        close = (
            piece
            for box, piece in about
            if box.left <= at.x <= box.right and box.bottom <= at.y <= box.top
        )
        if near_lines(at, close, near) or any(o.at.distance(at) < o.hard for o in rounds):
            continue
        low, high = i * step, (i + 1) * step if i + 1 < count else whole.length
        if spans and low - spans[-1][1] < _STEP / 2:
            low = spans.pop()[0]
        spans.append((low, high))
    kept = (span for span in spans if span[1] - span[0] >= least)
    return tuple(piece for span in kept for piece, _ in part(whole, span))


def _about(step: tuple[Point, Point], near: float) -> tuple[Box, tuple[Point, Point]]:
    """A straight step of a line, and where whoever comes ``near`` it is."""
    return Box.around(step).grown(near + HERE), step


def room_of(symbol: Symbol, on: Board) -> Round:
    size = symbol.edge + on.weight("before") / 2
    return Round(symbol.at, size, size)


def _round(letter: Letter, on: Board) -> Round:
    size = math.hypot(letter.half_width, letter.half_height) + on.weight("before") / 2
    return Round(letter.at, size, size)


def _covers(letter: Letter, bar: Stroke, on: Board) -> bool:
    """Whether a bar lies on a letter."""
    box = letter.box.grown(on.weight("before-bar") / 2)
    ends = (bar.segments[0].start, bar.segments[0].end)
    tenths = (ends[0] + (ends[1] - ends[0]).scaled(i / 10) for i in range(11))
    return any(box.left < p.x < box.right and box.bottom < p.y < box.top for p in tenths)


def clear_of(pieces: Pieces, rounds: Sequence[Round], least: float) -> Pieces:
    """The stretches of the pieces that lie on no symbol."""
    return _off(pieces, (), 0.0, rounds, least)

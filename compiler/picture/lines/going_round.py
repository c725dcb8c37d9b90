"""A man of a stunt on paper: behind the letter of him who goes first, down beside it, and in; with
how long he waits, beside his own."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from stemline.geometry.box import Box
from stemline.geometry.paths import Leg, Path, Point
from stemline.picture.paper.letter import Letter
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import TextRun
from stemline.picture.ways.gaps import clear

_TURN = 0.8
"""Yards in which he turns behind that letter."""
_DOWN = 2.0
"""Points in which he turns down beside it."""
_WORD = 2.4
"""Points of white between his letter and how long he waits."""
_WHITE = 0.6
"""Points of white round that word."""
_EVERY = 5
"""Yards between two lines of the field."""
_UNDER = 1.5
"""Weights of his line under that letter where his gap lies under it."""
_CLEAR = 2.0
"""Points of white between that letter and his line."""
_LEAST = 0.3
"""Points of it that are left where the next letter is near; with less he has no way in."""


def stunt_way(
    letter: Letter, first: Letter, gap: Point, end: Point, others: Iterable[Letter], board: Board
) -> Path:
    """From ``letter`` round ``first`` to the place before the gap, and to the end; where there is
    no way beside that letter, to behind it."""
    via = letter.man.duty.via if letter.man.duty is not None else None
    white = board.yards(_CLEAR) + board.weight("rush") / 2
    top = first.box.top + white
    side = 1.0 if gap.x >= first.at.x else -1.0
    room = _room(first, side, white, others)
    if room < board.weight("rush") / 2 + board.yards(_LEAST):
        return Path(letter.at, (Leg(Point(first.at.x, top + white)),))
    beside = first.half_width + room
    if (gap.x - first.at.x) * side > beside:
        beside = min((gap.x - first.at.x) * side, first.half_width + white)
    down = Point(first.at.x + side * beside, top)
    # Who comes from that side himself turns down there, and not in a loop over the letter.
    over = down.x if (letter.at.x - down.x) * side > _TURN else first.at.x
    turn = Point(over, max(via.y if via is not None else top, top))
    legs = [Leg(turn, _TURN)] if letter.at.y < turn.y + white else []
    legs.append(Leg(down, board.yards(_DOWN)))
    low = Point(down.x, first.box.bottom)
    if (gap.x - down.x) * side < 0:
        legs.append(Leg(low, board.yards(_DOWN)))
        gap = Point(gap.x, min(gap.y, low.y - _UNDER * board.weight("rush")))
    return Path(letter.at, (*legs, Leg(gap, board.yards(_DOWN)), Leg(end)))


def _room(first: Letter, side: float, white: float, others: Iterable[Letter]) -> float:
    """White beside the letter on one side: half of what there is to the next one, at most
    ``white``."""
    apart = [
        (other.at.x - first.at.x) * side - other.half_width - first.half_width
        for other in others
        if abs(other.at.y - first.at.y) < first.half_height + other.half_height
    ]
    return min([white, *(room / 2 for room in apart if room > 0)])


def stopped_short(path: Path, symbols: Sequence[Symbol], board: Board) -> Path | None:
    """The path ended before a gap that is too narrow for it on paper, or as it is where it goes
    through none; None where the gap is wide enough."""
    if len(path.legs) == 1:
        return path
    if clear(path.corners[-2:], symbols, board.weight("rush") / 2):
        return None
    return Path(path.start, path.legs[:-1])


def late_word(letter: Letter, others: Iterable[Letter], ink: Ink, board: Board) -> TextRun | None:
    """How long a man waits, over his letter or beside it: where it is on no line, no other letter
    and no line of the field; None where it would be on one everywhere."""
    assert letter.man.duty is not None, "a man who waits has something to do"
    text = f"{letter.man.duty.after:g} s"
    room, white = board.extent(text, "words"), board.yards(_WORD)
    wide, tall = room.width, room.rise + room.fall
    box, middle = letter.box, letter.at
    places = (
        Point(middle.x - wide / 2, box.top + white),
        Point(box.right + white, middle.y - tall / 2),
        Point(box.left - white - wide, middle.y - tall / 2),
    )
    for at in places:
        bare = Box(at.x, at.y, at.x + wide, at.y + tall)
        word = bare.grown(board.yards(_WHITE))
        lined = math.floor(word.top / _EVERY) * _EVERY >= word.bottom
        taken = lined or ink.under(word)[0] or not board.frame.holds(word)
        if not taken and all(o is letter or o.box.overlap(word) <= 0 for o in others):
            return TextRun(text, Point(at.x, at.y + room.fall), "words", letter.man.span)
    return None

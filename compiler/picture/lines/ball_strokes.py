"""The heavy part of a man's line: where he has the ball, and nowhere else.

His line is drawn whole and thin first, so that it stays one line with one name; over it lies the
part from where he gets the ball to where he gives it: "R-ball".
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from stemline.football.timing.ball_held import BallHeld
from stemline.geometry.curves import nearest, points_of, split
from stemline.geometry.paths import Point, Segment
from stemline.picture.lines.ball_line import BallPlaces
from stemline.picture.lines.route_lines import CARRY, HELD
from stemline.picture.scene.scene import Item, Stroke

_THIN = "route"
_LEAST = 0.25
"""Yards: a shorter part of a line is not told from the rest."""


@dataclass(frozen=True)
class _TimedPiece:
    """A piece of a stroke with the moments at its two ends."""

    piece: Segment
    start: float
    end: float

    def cut(self, low: float, high: float) -> _TimedPiece:
        """Its part from ``low`` to ``high`` of its way (0 to 1)."""
        piece = split(self.piece, high)[0] if high < 1 else self.piece
        piece = split(piece, low / high)[1] if low > 0 else piece
        takes = self.end - self.start
        return _TimedPiece(piece, self.start + low * takes, self.start + high * takes)


def weighed(
    items: Sequence[Item], held: Sequence[BallHeld], places: BallPlaces
) -> tuple[Item, ...]:
    """The lines of men who get or give the ball, each heavy where he has it.

    ``items`` have been broken and timed already; ``places`` are those of the cross-bars.
    """
    made: list[Item] = []
    for item in items:
        man, _, what = item.name.rpartition("-") if isinstance(item, Stroke) else ("", "", "")
        mine = [h for h in held if h.man == man]
        if isinstance(item, Stroke) and what in (CARRY, HELD) and mine and item.times:
            made += _weighed(item, mine, places)
        else:
            made.append(item)
    return tuple(made)


def _weighed(stroke: Stroke, mine: Sequence[BallHeld], places: BallPlaces) -> Iterator[Stroke]:
    pieces = tuple(_timed(stroke))
    whole = (0, 0.0), (len(pieces) - 1, 1.0)
    parts = []
    for one in mine:
        got, gave = places.got(one), places.gave(one)
        low = _nearest(pieces, got) if got is not None else whole[0]
        high = _nearest(pieces, gave) if gave is not None else whole[1]
        parts.append((one, low, high))
    if [part[1:] for part in parts] == [whole]:
        yield stroke
        return
    heavy = [part for part in parts if _long(pieces, *part[1:])]
    last = bool(heavy) and heavy[-1][2] == whole[1]
    pale = stroke.style[len(stroke.style.removesuffix("-pale")) :]
    yield replace(stroke, style=_THIN + pale, head=() if last else stroke.head)
    for number, (one, low, high) in enumerate(heavy, 1):
        cut = tuple(_between(pieces, low, high))
        name = stroke.name.rpartition("-")[0] + "-ball" + (f"-{number}" if number > 1 else "")
        yield replace(
            stroke,
            segments=tuple(c.piece for c in cut),
            head=stroke.head if high == whole[1] else (),
            name=name,
            times=_times(cut, one),
        )


def _times(cut: Sequence[_TimedPiece], held: BallHeld) -> tuple[float, ...]:
    """The moments along a heavy part, from that at which he gets the ball to that at which he gives
    it: between two places of his line he does not run evenly."""
    low = held.got.there if held.got is not None else cut[0].start
    high = held.gave.leaves if held.gave is not None else cut[-1].end
    times = [cut[0].start]
    for before, after in pairwise(cut):
        times.append(before.end)
        if after.piece.start.distance(before.piece.end) > 1e-6:
            times.append(after.start)
    return (low, *(min(max(time, low), high) for time in times[1:]), high)


_Place = tuple[int, float]
"""A piece's number, and how much of its way (0 to 1)."""


def _timed(stroke: Stroke) -> Iterator[_TimedPiece]:
    """The pieces with their moments: one for the start of each run of pieces, one for each end."""
    times = iter(stroke.times)
    at: Point | None = None
    before = 0.0
    for piece in stroke.segments:
        if at is None or at.distance(piece.start) > 1e-6:
            before = next(times)
        after = next(times)
        yield _TimedPiece(piece, before, after)
        at, before = piece.end, after


def _nearest(pieces: Sequence[_TimedPiece], place: Point) -> _Place:
    best, found = float("inf"), (0, 0.0)
    for number, timed in enumerate(pieces):
        steps = points_of((timed.piece,))
        for step, (a, b) in enumerate(pairwise(steps)):
            near, share = nearest(a, b, place)
            if near.distance(place) < best - 1e-9:
                best, found = near.distance(place), (number, (step + share) / (len(steps) - 1))
    return found


def _between(pieces: Sequence[_TimedPiece], low: _Place, high: _Place) -> Iterator[_TimedPiece]:
    for number in range(low[0], high[0] + 1):
        start = low[1] if number == low[0] else 0.0
        end = high[1] if number == high[0] else 1.0
        if end - start > 1e-6:
            yield pieces[number].cut(start, end)


def _long(pieces: Sequence[_TimedPiece], low: _Place, high: _Place) -> bool:
    if low >= high:
        return False
    points = [points_of((c.piece,)) for c in _between(pieces, low, high)]
    return sum(a.distance(b) for line in points for a, b in pairwise(line)) > _LEAST

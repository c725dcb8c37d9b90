"""The ball on its way: a cross-bar where each man takes it, dashed while it is in the air. Between
two bars the line is heavy of him who runs with it (`ball_strokes`)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from stemline.football.exchanges import BallMoves
from stemline.football.play import Play
from stemline.football.timing.ball_clock import BallMoment, ball_moments
from stemline.football.timing.ball_held import BallHeld
from stemline.football.timing.levels import PlayingLevel
from stemline.geometry.curves import left_of, nearest, unit
from stemline.geometry.paths import Line, Point
from stemline.picture.lines.handoff import mesh_items
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.scene import Item, Stroke

_ROOM = 0.12
"""Yards left between a man's symbol and a ball that leaves or reaches him."""
_LEAST = 0.4
"""Yards: a shorter flight is drawn by its cross-bar alone."""


@dataclass(frozen=True)
class _OnTheWay:
    """Where on a man's drawn way the ball is, and which way he runs there; ``stands`` tells one
    who has not moved: the line ends at his symbol then."""

    at: Point
    ahead: Point
    stands: bool


@dataclass(frozen=True)
class BallPlaces:
    """Where on the drawn ``lines`` the ball is given and taken, told by the moments of the play as
    it is run, before the picture folds it."""

    lines: Mapping[str, Sequence[Point]]
    symbols: Mapping[str, Symbol]
    board: Board

    def given(self, moment: BallMoment) -> _OnTheWay:
        """Where the giver lets it go."""
        return self._met(moment.exchange.giver, moment.given)

    def taken(self, moment: BallMoment) -> _OnTheWay:
        """Where the taker has it: clear of his own symbol, if he has set off."""
        man = moment.exchange.taker
        return _past(self._met(man, moment.taken), self.symbols[man], self.board)

    def got(self, held: BallHeld) -> Point | None:
        """Where a man's line becomes the ball's; None where he has it from his symbol on."""
        if held.got is None or held.got.exchange.kind is BallMoves.SNAP:
            return None
        met = self.taken(held.got)
        return None if met.stands else met.at

    def gave(self, held: BallHeld) -> Point | None:
        """Where it is the ball's no more; None where it is to its end."""
        if held.gave is None:
            return None
        met = self.given(held.gave)
        return self.symbols[held.man].at if met.stands else met.at

    def _met(self, man: str, at: Point) -> _OnTheWay:
        return _met(man, self.board.fold.point(at), self.lines, self.symbols)


def ball_marks(
    play: Play, played: Play, places: BallPlaces, level: PlayingLevel
) -> tuple[Item, ...]:
    """The items of each exchange, named after the man who gets the ball: "X-mesh-1", "R-toss".

    ``played`` is the play before the picture folds it: the clock runs there.
    """
    items: list[Item] = []
    for moment in ball_moments(played, level):
        items += _exchange(moment, play, places)
    return tuple(items)


def _exchange(moment: BallMoment, play: Play, places: BallPlaces) -> Iterator[Item]:
    x, symbols, board = moment.exchange, places.symbols, places.board
    giver, taker = places.given(moment), places.taken(moment)
    span = x.span if x.said else play.assignment(x.taker).span
    times = (moment.leaves, moment.there)
    if x.kind.flies or x.kind is BallMoves.SNAP:
        start = _off(giver, taker.at, symbols[x.giver])
        end = _off(taker, giver.at, symbols[x.taker])
        far = start.distance(end)
        if far > _LEAST and giver.at.distance(taker.at) > far - 1e-6:
            yield Stroke(
                (Line(start, end),), "flight", (), span, f"{x.taker}-{x.kind.name.lower()}", times
            )
        across = _across(unit(giver.at, taker.at), taker).scaled(board.mark("mesh"))
        yield Stroke((Line(end - across, end + across),), "mesh", (), span)
        return
    met = taker if not taker.stands or giver.stands else giver
    own = x.taker if met is taker else x.giver
    others = [symbol for man, symbol in symbols.items() if man != own]
    strokes = mesh_items(met.at, met.ahead, board, span, others)
    for number, stroke in enumerate(strokes[:1] if x.kind is BallMoves.FAKE else strokes, 1):
        named = f"{x.taker}-{'fake' if x.kind is BallMoves.FAKE else 'mesh'}-{number}"
        yield Stroke(stroke.segments, stroke.style, (), span, named, (moment.there, moment.there))


def _met(
    man: str, at: Point, lines: Mapping[str, Sequence[Point]], symbols: Mapping[str, Symbol]
) -> _OnTheWay:
    """The place of a man's drawn line that is nearest to where he is."""
    own = symbols[man].at
    points = lines.get(man, ())
    if len(points) < 2 or at.distance(own) < symbols[man].edge:
        way = unit(points[0], points[1]) if len(points) > 1 else Point(0.0, 1.0)
        return _OnTheWay(own, way, True)
    best, found = float("inf"), _OnTheWay(own, Point(0.0, 1.0), True)
    for a, b in pairwise(points):
        if a.distance(b) < 1e-9:
            continue
        near, _ = nearest(a, b, at)
        if near.distance(at) < best - 1e-9:
            best, found = near.distance(at), _OnTheWay(near, unit(a, b), False)
    return found


def _past(met: _OnTheWay, symbol: Symbol, board: Board) -> _OnTheWay:
    """The place as far from the symbol of a man who has just set off as the cross-bar is long."""
    room = symbol.edge + board.mark("mesh") + board.weight("mesh") / 2
    if met.stands or met.at.distance(symbol.at) >= room:
        return met
    return replace(met, at=symbol.at + unit(symbol.at, met.at).scaled(room))


def _across(flight: Point, taker: _OnTheWay) -> Point:
    """Across the ball's way and that of the man who catches it, so that the bar lies on neither."""
    if taker.stands:
        return left_of(flight)
    both = flight + taker.ahead
    return (
        left_of(unit(Point(0.0, 0.0), both))
        if both.distance(Point(0.0, 0.0)) > 0.3
        else left_of(flight)
    )


def _off(met: _OnTheWay, other: Point, symbol: Symbol) -> Point:
    """Where the ball's line begins or ends: at the symbol's edge of a man who stands."""
    if not met.stands or met.at.distance(other) < 1e-6:
        return met.at
    return met.at + unit(met.at, other).scaled(symbol.edge + _ROOM)

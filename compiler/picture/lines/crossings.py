"""Where two lines cross, the one that is there later is whole and the other has a small gap.

So a picture tells who is there first. A gap is cut out of the line: it needs no colour of the
ground and hides nothing else. But a route is read as one line before anybody asks who is first:
where a gap would break it up, the two just cross, which reads well.

- What goes before, in this order: the carrier and the bars of blocks are whole; the one man who is
  shown strong goes before those who are pale; what happens after the snap before a motion, an
  offence's line before a defender's; a man's own path before what a look would have him do. Then
  the time decides, and within a hundredth of a second the order in which lines are drawn.
- A gap is as wide as the upper line and its white. It never takes an arrowhead, a dot, a bar or a
  turn: there the other line has the gap instead.
- No gap is longer than `_LONGEST`, leaves less line than `_STUB` before a symbol, an end or another
  gap, or takes more than its `_SHARE` of a line. Two that are nearer are one if that is no longer.
- Lines that cross at less than some 20 degrees have none: no white would be left between them.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum

from stemline.geometry.curves import heading, turn_angle, unit
from stemline.geometry.cutting import (
    MeasuredLine,
    PathCross,
    Span,
    crossings,
    longer,
    measure,
    part,
    parts,
)
from stemline.geometry.paths import Curve, Line, Point
from stemline.picture.lines.paces import Pace
from stemline.picture.paper.surface import Board
from stemline.picture.scene.scene import Disc, Layer, Stroke

_TIE = 0.01
"""Seconds: who is there later by less is there at the same time. Times are written so fine."""
_STUB = 1.5
"""Arrowheads: the shortest piece of line beside a gap."""
_LONGEST = 1.7
"""Arrowheads: the longest gap."""
_SHARE = 0.3
"""The most of a line that its gaps take."""
_STRETCH = 1.75
"""A gap at a flat angle is at most so many times as long as one at a right angle."""
_SHOWS = 0.25
"""Whites of a gap: with less left beside the upper line, at a flat angle, a gap shows nothing."""
_BEND = 2.0
"""Whites of a gap that are kept on both sides of the middle of a turn."""
_TURN = 30.0
"""Degrees from which a turn is kept whole."""
_LAYERS = frozenset({"duties", "before", "routes", "motions"})


class _Phase(IntEnum):
    """What goes before what, the last before all others."""

    BEFORE = 0
    DEFENCE = 1
    RUSH = 2
    MOTION = 3
    PLAY = 4


_PHASES = {
    **dict.fromkeys(("before", "before-motion"), _Phase.BEFORE),
    **dict.fromkeys(("drop", "man"), _Phase.DEFENCE),
    "rush": _Phase.RUSH,
    "motion": _Phase.MOTION,
    **dict.fromkeys(
        ("route", "branch", "carry", "held", "fake", "block", "climb", "set"), _Phase.PLAY
    ),
    **dict.fromkeys(("bar", "set-bar"), _Phase.PLAY),
}
"""The strokes that break others or are broken; every other is drawn as it is."""
_WHOLE = frozenset({"carry", "bar", "set-bar"})


@dataclass(frozen=True)
class _BreakableLine:
    """A line that may be broken.

    ``drawn`` is the stroke, ``line`` goes on past its end through its dot, or its arrowhead and as
    far again as the stroke is wide: a tip that touches a line lies on it. ``own`` is how much is
    stroke, ``half`` half its weight, ``end`` half the width of what ends it, ``from_`` and ``to``
    where along the line that begins and, if it is a head, comes to its tip. ``turns`` no gap may
    take, nor come nearer than ``stub`` to either end.
    """

    stroke: Stroke
    drawn: MeasuredLine
    line: MeasuredLine
    own: float
    half: float
    end: float
    from_: float
    to: float
    turns: tuple[Span, ...]
    stub: float
    phase: _Phase
    whole: bool
    pale: bool
    pace: Pace | None
    order: int

    def when(self, along: float) -> float:
        return self.pace.at(along / self.own) if self.pace is not None else 0.0

    def wide(self, along: float) -> float:
        """Half the width of what is drawn so far along: a head narrows to its tip."""
        if along <= self.from_:
            return self.half
        if self.to <= self.from_:
            return self.end
        return max(self.taper(along) * (self.to - along), self.half)

    def taper(self, along: float) -> float:
        """By how much it narrows there for each yard on."""
        return self.end / (self.to - self.from_) if self.from_ < along < self.to else 0.0

    def dot(self, along: float) -> float:
        """How far on from there its dot is, below 0 past its middle; infinite where no dot is."""
        return self.own - along if self.to < self.from_ < along else math.inf

    def at_end(self, along: float) -> bool:
        """Whether a head or a dot is there."""
        return along > self.from_


@dataclass(frozen=True)
class _Meeting:
    """Way ``over`` breaks way ``under``, each so far along."""

    over: _BreakableLine
    under: _BreakableLine
    over_at: float
    under_at: float
    sine: float
    cosine: float

    def turned(self) -> _Meeting:
        return replace(
            self,
            over=self.under, under=self.over, over_at=self.under_at, under_at=self.over_at,
        )  # fmt: skip


def break_lines(
    layers: Iterable[Layer], paces: Mapping[str, Pace], board: Board
) -> tuple[Layer, ...]:
    """The layers with their lines broken where others cross them, and each named line timed."""
    layers = tuple(layers)
    ways: list[_BreakableLine] = []
    for layer in layers:
        if layer.name in _LAYERS:
            dots = {i.centre: i.radius for i in layer.items if isinstance(i, Disc)}
            moments = paces if layer.name != "before" else {}
            for item in layer.items:
                if isinstance(item, Stroke) and item.segments and _plain(item.style) in _PHASES:
                    ways.append(_way(item, dots, moments, len(ways), board))
    gaps = _gaps(ways, board)
    new = {id(way.stroke): _broken(way, gaps[way.order], board) for way in ways}
    return tuple(
        replace(layer, items=tuple(new.get(id(item), item) for item in layer.items))
        for layer in layers
    )


def _plain(style: str) -> str:
    return style.removesuffix("-pale")


def _way(
    stroke: Stroke,
    dots: Mapping[Point, float],
    paces: Mapping[str, Pace],
    order: int,
    board: Board,
) -> _BreakableLine:
    plain = _plain(stroke.style)
    own = measure(stroke.segments)
    half, white = board.weight(stroke.style) / 2, board.mark("cross")
    line, end, from_, last = own, half, own.length, stroke.segments[-1].end
    to = from_
    if stroke.head:
        tip, left, *_, right = stroke.head
        end, back = left.distance(right) / 2, (left + right).scaled(0.5)
        to = own.length + last.distance(tip)
        from_ = min(to - back.distance(tip), own.length)
        line = longer(own, (Line(last, tip + unit(last, tip).scaled(2 * half)),))
    elif last in dots:
        end, from_, to = dots[last], own.length - dots[last], 0.0
        line = longer(own, (Line(last, last + heading(stroke.segments, end).scaled(end)),))
    return _BreakableLine(
        stroke, own, line, own.length, half, end, from_, to,
        tuple(_turns(own, _BEND * white)), _STUB * board.mark("head"), _PHASES[plain],
        plain in _WHOLE, plain != stroke.style, paces.get(stroke.name), order,
    )  # fmt: skip


def _turns(line: MeasuredLine, most: float) -> list[Span]:
    """The turns of a line, with as much before and after as makes them turns."""
    kept: list[Span] = []
    for number, piece in enumerate(line.pieces):
        far = line.far(number)
        if isinstance(piece, Curve):
            if turn_angle(piece.start, piece.corner, piece.end) >= _TURN:
                ends = line.far(number + 1) if number + 1 < len(line.pieces) else line.length
                reach = min((ends - far) / 2, most)
                kept.append(((far + ends) / 2 - reach, (far + ends) / 2 + reach))
            continue
        before = line.pieces[number - 1]
        sharp = turn_angle(before.start, piece.start, piece.end) >= _TURN
        if number and sharp and isinstance(before, Line):
            kept.append((far - most, far + most))
    return kept


def _gaps(ways: Sequence[_BreakableLine], board: Board) -> list[list[Span]]:
    """The gaps of each way. The latest lines cut first, so that a line that is itself broken
    where it crosses a third cuts no gap there for nobody."""
    gaps: list[list[Span]] = [[] for _ in ways]
    white, longest = board.mark("cross"), _LONGEST * board.mark("head")
    for meeting in sorted(_meetings(ways, white), key=_latest_first):
        if any(low < meeting.over_at < high for low, high in gaps[meeting.over.order]):
            continue
        one = meeting.turned() if _turns_over(meeting, white, longest) else meeting
        span = _span(one, white, longest)
        if span is not None:
            gaps[one.under.order] = _cut(gaps[one.under.order], one.under, span, longest)
    return gaps


def _meetings(ways: Sequence[_BreakableLine], white: float) -> Iterable[_Meeting]:
    for n, a in enumerate(ways):
        for c in crossings(a.line, a.line):
            low, high = sorted((c.along_a, c.along_b))
            # a loop smaller than two gaps is a turn
            if high - low > 4 * (a.half + white):
                yield _Meeting(a, a, high, low, c.sine, c.cosine)
        for b in ways[n + 1 :]:
            for c in crossings(a.line, b.line):
                if not (a.whole and b.whole):
                    yield _meeting(a, b, c)


def _meeting(a: _BreakableLine, b: _BreakableLine, at: PathCross) -> _Meeting:
    made = _Meeting(a, b, at.along_a, at.along_b, at.sine, at.cosine)
    return made if _over(made) else made.turned()


def _over(m: _Meeting) -> bool:
    a, b = m.over, m.under
    ranks = (a.whole, not a.pale, a.phase), (b.whole, not b.pale, b.phase)
    if ranks[0] != ranks[1]:
        return ranks[0] > ranks[1]
    if _apart(a, b):
        return bool(a.pace and a.pace.base)
    late = a.when(m.over_at) - b.when(m.under_at)
    return late > 0 if abs(late) >= _TIE else a.order > b.order


def _apart(a: _BreakableLine, b: _BreakableLine) -> bool:
    """Whether one is a man's own path and the other what a look would have him do."""
    return (
        a.pace is not None and b.pace is not None
        and a.pace.man == b.pace.man and a.pace.base != b.pace.base
    )  # fmt: skip


def _latest_first(m: _Meeting) -> tuple[bool, int, float, int]:
    return (not m.over.whole, -m.over.phase, -m.over.when(m.over_at), -m.over.order)


def _turns_over(m: _Meeting, white: float, longest: float) -> bool:
    """Whether the line that goes before has the gap instead: for what ends an offence's line, or
    for a turn where only the time says which goes before."""
    if m.over.whole or m.over.pale != m.under.pale or m.over is m.under:
        return False
    if m.under.at_end(m.under_at):
        return m.under.phase >= _Phase.MOTION
    if m.over.phase is not m.under.phase or _apart(m.over, m.under):
        return False
    span = _span(m, white, longest)
    return span is not None and _taken(span, m.under.turns)


def _span(m: _Meeting, white: float, longest: float) -> Span | None:
    """What the upper line and its white take of the lower line; None where that shows nothing."""
    across, own, on = m.over.wide(m.over_at) + white, m.under.half, m.over.dot(m.over_at)
    if on < math.inf:
        middle = m.under_at + on * m.cosine
        half = math.sqrt(max(across * across - (on * m.sine) ** 2, 0.0))
        return middle - half, middle + half
    lean, lies = m.over.taper(m.over_at) * m.cosine, own * abs(m.cosine)
    most = min(_STRETCH * (across + own), longest / 2)
    reach = []
    for way in (-1, 1):
        sine = m.sine + way * lean
        reach.append(min((across + lies) / sine, most) if sine > 0 else most)
        beside = m.over.wide(m.over_at + way * reach[-1] * m.cosine)
        if reach[-1] * m.sine < beside + lies + _SHOWS * white:
            return None
    return m.under_at - reach[0], m.under_at + reach[1]


def _cut(gaps: list[Span], way: _BreakableLine, span: Span, longest: float) -> list[Span]:
    """The gaps of a line with one more, if that leaves it a line that is easily read."""
    low, high = span
    near = [g for g in gaps if g[0] - high < way.stub and low - g[1] < way.stub]
    low, high = min([low, *(g[0] for g in near)]), max([high, *(g[1] for g in near)])
    made = sorted([*(g for g in gaps if g not in near), (low, high)])
    if (
        (near and high - low > longest)
        or low < way.stub
        or high > min(way.from_, way.own) - way.stub
        or _taken((low, high), way.turns)
        or sum(b - a for a, b in made) > _SHARE * way.own
    ):
        # a gap that ends on the next line would make this one seem to end there
        return [g for g in gaps if not _taken(g, (span,))]
    return made


def _taken(span: Span, kept: Iterable[Span]) -> bool:
    return any(span[0] < high and low < span[1] for low, high in kept)


def _broken(way: _BreakableLine, gaps: Sequence[Span], board: Board) -> Stroke:
    """The stroke without its gaps, and the moment at each end of its pieces."""
    stroke, pace, own = way.stroke, way.pace, way.drawn
    pieces = []
    times: list[float] = []
    for low, high in _ends_of_dashes(parts(own, gaps), way, board):
        times.append(way.when(low))
        for piece, far in part(own, (low, high)) if gaps else _whole(own):
            pieces.append(piece)
            times.append(way.when(far))
    name = stroke.name if pace is not None else ""
    return replace(stroke, segments=tuple(pieces), name=name, times=tuple(times) if name else ())


def _whole(line: MeasuredLine) -> Iterable[tuple[Line | Curve, float]]:
    ends = [*(line.far(n) for n in range(1, len(line.pieces))), line.length]
    return zip(line.pieces, ends, strict=True)


def _ends_of_dashes(left: Sequence[Span], way: _BreakableLine, board: Board) -> Iterable[Span]:
    """The parts of a dashed line, each that ends at a gap with at least half a dash: what is cut
    to a dot is left out, and what is more is drawn so long."""
    dash = [board.yards(d) for d in board.look.pens[way.stroke.style].dash]
    for low, high in left:
        if len(dash) == 2 and high < way.own:
            rest = (high - low) % sum(dash)
            if rest < dash[0] / 2 and high - low > sum(dash):
                high += dash[0] / 2 - rest if rest > dash[0] / 4 else -rest
        yield low, high

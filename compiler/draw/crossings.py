"""Where two lines cross, the one that is there later is whole and the other has a gap.

So a picture tells who is there first, and two lines that cross cannot be taken for two that bend.
A gap is cut out of the line: it needs no colour of the ground and hides nothing else.

- What goes before, in this order: the carrier and the bars of blocks are whole; the one man who is
  shown strong goes before those who are pale; what happens after the snap before a motion, an
  offence's line before a defender's; a man's own path before what a look would have him do. Then
  the time decides, and within a hundredth of a second the order in which lines are drawn.
- A gap never takes an arrowhead, a dot, a bar or a turn, and never leaves a crumb of line. Where it
  would, the other line has the gap; where that may not be either, the two just cross.
- Two gaps with no more than a crumb between them are one.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum

from stemline.draw.board import Board
from stemline.draw.curves import heading, turn_angle, unit
from stemline.draw.cutting import Crossing, Measured, Span, crossings, measure, part, parts
from stemline.draw.paces import Pace
from stemline.draw.scene import Disc, Layer, Stroke
from stemline.paths import Curve, Line, Point

_TIE = 0.01
"""Seconds: who is there later by less is there at the same time. Times are written so fine."""
_CRUMB = 2.0
"""The shortest piece of line beside a gap, in whites of a gap; a dashed line's is a dash at
least."""
_LONGEST = 2.5
"""A gap at a flat angle is at most so many times as long as one at a right angle."""
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
    **dict.fromkeys(("route", "branch", "carry", "fake", "block", "climb", "set"), _Phase.PLAY),
    **dict.fromkeys(("bar", "set-bar"), _Phase.PLAY),
}
"""The strokes that break others or are broken; every other is drawn as it is."""
_WHOLE = frozenset({"carry", "bar", "set-bar"})


@dataclass(frozen=True)
class _Way:
    """A line that may be broken.

    ``line`` goes on past the end of the stroke through its dot, or its arrowhead and as far again
    as the stroke is wide: a tip that touches a line lies on it. ``own`` is how much is stroke,
    ``half`` half its weight, ``end`` half the width of what ends it and ``from_`` where along the
    line that begins; ``kept`` is what no gap may take.
    """

    stroke: Stroke
    line: Measured
    own: float
    half: float
    end: float
    from_: float
    kept: tuple[Span, ...]
    crumb: float
    phase: _Phase
    whole: bool
    pale: bool
    pace: Pace | None
    order: int

    def when(self, along: float) -> float:
        return self.pace.at(along / self.own) if self.pace is not None else 0.0

    def wide(self, along: float) -> float:
        """Half the width of what is drawn so far along."""
        return self.end if along > self.from_ else self.half


@dataclass(frozen=True)
class _Meeting:
    """Way ``over`` breaks way ``under``, each so far along."""

    over: _Way
    under: _Way
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
    ways: list[_Way] = []
    for layer in layers:
        if layer.name in _LAYERS:
            dots = {i.centre: i.radius for i in layer.items if isinstance(i, Disc)}
            moments = paces if layer.name != "before" else {}
            for item in layer.items:
                if isinstance(item, Stroke) and item.segments and _plain(item.style) in _PHASES:
                    ways.append(_way(item, dots, moments, len(ways), board))
    gaps = _gaps(ways, board.mark("cross"))
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
) -> _Way:
    plain, pen = _plain(stroke.style), board.look.pens[stroke.style]
    own = measure(stroke.segments)
    half, white = board.weight(stroke.style) / 2, board.mark("cross")
    crumb = max(_CRUMB * white, board.yards(pen.dash[0]) if pen.dash else 0.0)
    pieces, end, from_, last = stroke.segments, half, own.length, stroke.segments[-1].end
    if stroke.head:
        tip, left, *_, right = stroke.head
        end, back = left.distance(right) / 2, (left + right).scaled(0.5)
        from_ = own.length - max(back.distance(tip) - last.distance(tip), 0.0)
        pieces = (*pieces, Line(last, tip + unit(last, tip).scaled(2 * half)))
    elif last in dots:
        end, from_ = dots[last], own.length - dots[last]
        pieces = (*pieces, Line(last, last + heading(pieces, end).scaled(end)))
    line = own if pieces == stroke.segments else measure(pieces)
    tail = (min(from_, own.length) - crumb, line.length)
    return _Way(
        stroke, line, own.length, half, end, from_,
        ((0.0, crumb), *_turns(own, crumb), tail), crumb, _PHASES[plain], plain in _WHOLE,
        plain != stroke.style, paces.get(stroke.name), order,
    )  # fmt: skip


def _turns(line: Measured, crumb: float) -> list[Span]:
    """The turns of a line, with as much before and after as makes them turns."""
    kept: list[Span] = []
    for number, piece in enumerate(line.pieces):
        far = line.far(number)
        if isinstance(piece, Curve):
            if turn_angle(piece.start, piece.corner, piece.end) >= _TURN:
                ends = line.far(number + 1) if number + 1 < len(line.pieces) else line.length
                reach = min((ends - far) / 2, crumb)
                kept.append(((far + ends) / 2 - reach, (far + ends) / 2 + reach))
            continue
        before = line.pieces[number - 1]
        sharp = turn_angle(before.start, piece.start, piece.end) >= _TURN
        if number and sharp and isinstance(before, Line):
            kept.append((far - crumb, far + crumb))
    return kept


def _gaps(ways: Sequence[_Way], white: float) -> list[list[Span]]:
    """The gaps of each way. The latest lines cut first, so that a line that is itself broken
    where it crosses a third cuts no gap there for nobody."""
    gaps: list[list[Span]] = [[] for _ in ways]
    for meeting in sorted(_meetings(ways, white), key=_latest_first):
        if _open(gaps[meeting.over.order], meeting.over_at) or _open(
            gaps[meeting.under.order], meeting.under_at
        ):
            continue
        for one in (meeting, meeting.turned()) if _may_turn(meeting) else (meeting,):
            cut = _cut(gaps[one.under.order], one, white)
            if cut is not None:
                gaps[one.under.order] = cut
                break
    return gaps


def _meetings(ways: Sequence[_Way], white: float) -> Iterable[_Meeting]:
    for n, a in enumerate(ways):
        for c in crossings(a.line, a.line):
            low, high = sorted((c.along_a, c.along_b))
            # a loop smaller than two gaps is a turn
            if high - low > 4 * (a.half + white):
                yield _Meeting(a, a, high, low, c.sine, c.cosine)
        for b in ways[n + 1 :]:
            for c in crossings(a.line, b.line):
                if a.whole and b.whole:
                    continue
                yield _meeting(a, b, c)


def _meeting(a: _Way, b: _Way, at: Crossing) -> _Meeting:
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


def _apart(a: _Way, b: _Way) -> bool:
    """Whether one is a man's own path and the other what a look would have him do."""
    return (
        a.pace is not None and b.pace is not None
        and a.pace.man == b.pace.man and a.pace.base != b.pace.base
    )  # fmt: skip


def _latest_first(m: _Meeting) -> tuple[bool, int, float, int]:
    return (not m.over.whole, -m.over.phase, -m.over.when(m.over_at), -m.over.order)


def _may_turn(m: _Meeting) -> bool:
    """Whether the line that goes before may have the gap instead: for what ends an offence's line,
    or where only the time says which goes before."""
    if m.over.whole or m.over.pale != m.under.pale or m.over is m.under:
        return False
    at_end = m.under_at > m.under.from_ and m.under.phase >= _Phase.MOTION
    return at_end or (m.over.phase is m.under.phase and not _apart(m.over, m.under))


def _cut(gaps: Sequence[Span], m: _Meeting, white: float) -> list[Span] | None:
    """The gaps of the lower line with one more; None where it would take what is kept."""
    way = m.under
    across = m.over.wide(m.over_at) + white
    half = min((across + way.half * m.cosine) / m.sine, _LONGEST * (across + way.half))
    low, high = m.under_at - half, m.under_at + half
    apart: list[Span] = []
    for gap in gaps:
        if gap[0] - high < way.crumb and low - gap[1] < way.crumb:
            low, high = min(low, gap[0]), max(high, gap[1])
        else:
            apart.append(gap)
    if any(low < kept[1] and kept[0] < high for kept in way.kept):
        return None
    return sorted([*apart, (low, high)])


def _open(gaps: Iterable[Span], at: float) -> bool:
    return any(low < at < high for low, high in gaps)


def _broken(way: _Way, gaps: Sequence[Span], board: Board) -> Stroke:
    """The stroke without its gaps, and the moment at each end of its pieces."""
    stroke, pace = way.stroke, way.pace
    own = measure(stroke.segments) if way.line.length != way.own else way.line
    pieces = []
    times: list[float] = []
    for low, high in _ends_of_dashes(parts(own, gaps), way, board):
        times.append(way.when(low))
        for piece, far in part(own, (low, high)) if gaps else _whole(own):
            pieces.append(piece)
            times.append(way.when(far))
    name = stroke.name if pace is not None else ""
    return replace(stroke, segments=tuple(pieces), name=name, times=tuple(times) if name else ())


def _whole(line: Measured) -> Iterable[tuple[Line | Curve, float]]:
    ends = [*(line.far(n) for n in range(1, len(line.pieces))), line.length]
    return zip(line.pieces, ends, strict=True)


def _ends_of_dashes(left: Sequence[Span], way: _Way, board: Board) -> Iterable[Span]:
    """The parts of a dashed line, each that ends at a gap without a last dash cut to a dot."""
    dash = [board.yards(d) for d in board.look.pens[way.stroke.style].dash]
    for low, high in left:
        if len(dash) == 2 and high < way.own:
            rest = (high - low) % sum(dash)
            if rest < dash[0] / 2 and high - low > sum(dash):
                high -= rest
        yield low, high

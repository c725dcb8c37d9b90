"""Where two lines cross, and a line with pieces cut out of it. Yards.

A line is measured once: its turns become short straight steps, each with how far along the line it
begins, so that "so far along" means the same to whoever finds a crossing and whoever cuts there.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from stemline.geometry.box import Box
from stemline.geometry.curves import Pieces, dot, split
from stemline.geometry.paths import Curve, Line, Point, Segment

_STEPS = 16
"""Straight steps that stand for a turn."""
_SAME = 1e-6
"""Yards: two places this near are one."""
_ALONG = 0.02
"""Sine of an angle under which two steps run along each other and do not cross."""

Span = tuple[float, float]
"""From so many yards along a line to so many."""


class CutStep(NamedTuple):
    """A straight step of a measured line; ``far`` yards along it, on piece ``piece`` from ``low``
    to ``high`` of that piece's way (0 to 1)."""

    a: Point
    b: Point
    far: float
    piece: int
    low: float
    high: float


@dataclass(frozen=True)
class MeasuredLine:
    """A line in steps. ``first`` says at which step each piece begins, ``boxes`` where it lies and
    ``box`` where all do."""

    pieces: Pieces
    steps: tuple[CutStep, ...]
    first: tuple[int, ...]
    boxes: tuple[Box, ...]
    box: Box
    length: float

    def far(self, piece: int) -> float:
        """Yards along the line at which a piece begins."""
        return self.steps[self.first[piece]].far

    def at(self, far: float) -> tuple[int, float]:
        """The piece that is ``far`` yards along, and how much of its way (0 to 1) is behind."""
        index = max(bisect_right(self.steps, far, key=lambda step: step.far) - 1, 0)
        step = self.steps[index]
        size = step.a.distance(step.b)
        share = min(max((far - step.far) / size, 0.0), 1.0) if size > _SAME else 0.0
        return step.piece, step.low + share * (step.high - step.low)


@dataclass(frozen=True)
class PathCross:
    """Where line a crosses line b: how far along each, and the angle between their headings: the
    sine without its sign, the cosine above 0 where both go on the same way."""

    at: Point
    along_a: float
    along_b: float
    sine: float
    cosine: float


def measure(pieces: Pieces) -> MeasuredLine:
    """The pieces, end to end, in steps."""
    return longer(_NOTHING, pieces)


def longer(line: MeasuredLine, by: Pieces) -> MeasuredLine:
    """The line with more pieces on its end."""
    steps, first, boxes, far = list(line.steps), list(line.first), list(line.boxes), line.length
    around = line.box
    for number, piece in enumerate(by, len(first)):
        first.append(len(steps))
        stops = piece.between(_STEPS) if isinstance(piece, Curve) else []
        count, a = len(stops) + 1, piece.start
        for i, b in enumerate((*stops, piece.end), 1):
            steps.append(CutStep(a, b, far, number, (i - 1) / count, i / count))
            far += a.distance(b)
            a = b
        boxes.append(_box(piece))
        around = around.union(boxes[-1])
    return MeasuredLine((*line.pieces, *by), tuple(steps), tuple(first), tuple(boxes), around, far)


_NOWHERE = Box(math.inf, math.inf, -math.inf, -math.inf)
_NOTHING = MeasuredLine((), (), (), (), _NOWHERE, 0.0)


def crossings(a: MeasuredLine, b: MeasuredLine) -> tuple[PathCross, ...]:
    """Every place where the two cross, in order along a. Where one only comes up to the other and
    ends there, or runs along it, is none. A line may be crossed with itself."""
    if not _meet(a.box, b.box):
        return ()
    found: list[PathCross] = []
    for one, other in _near(a, b):
        crossing = _cross(one, other)
        if crossing is not None and not _ends(crossing, a, b) and not _known(crossing, found):
            found.append(crossing)
    return tuple(sorted(found, key=lambda c: c.along_a))


def parts(line: MeasuredLine, gaps: Iterable[Span]) -> tuple[Span, ...]:
    """What is left of the line outside the gaps, in order."""
    left: list[Span] = []
    at = 0.0
    for low, high in sorted(gaps):
        if low > at:
            left.append((at, low))
        at = max(at, high)
    return (*left, (at, line.length)) if at < line.length else tuple(left)


def part(line: MeasuredLine, span: Span) -> tuple[tuple[Segment, float], ...]:
    """The pieces from so far along the line to so far, each with how far along it ends."""
    (i, t), (j, u) = line.at(span[0]), line.at(span[1])
    made: list[tuple[Segment, float]] = []
    for number in range(i, j + 1):
        piece = line.pieces[number]
        low, high = t if number == i else 0.0, u if number == j else 1.0
        if high - low <= _SAME:
            continue
        if high < 1.0:
            piece = split(piece, high)[0]
        if low > 0.0:
            piece = split(piece, low / high)[1]
        made.append((piece, span[1] if number == j else line.far(number + 1)))
    return tuple(made)


def _near(a: MeasuredLine, b: MeasuredLine) -> Iterator[tuple[CutStep, CutStep]]:
    """The steps of both lines that lie near enough to cross, each two of them once. A turn is no
    loop, and two steps that follow each other do not cross."""
    for i, box in enumerate(a.boxes):
        for j, other in enumerate(b.boxes):
            if (a is b and j <= i) or not _meet(box, other):
                continue
            theirs = _steps_in(b, j, box)
            for m in _steps_in(a, i, other):
                for n in theirs:
                    if a is not b or n > m + 1:
                        yield a.steps[m], b.steps[n]


def _steps_in(line: MeasuredLine, piece: int, box: Box) -> list[int]:
    """The steps of a piece that reach into a box."""
    first = line.first[piece]
    last = line.first[piece + 1] if piece + 1 < len(line.first) else len(line.steps)
    if last - first == 1:
        return [first]
    return [n for n in range(first, last) if _reaches(line.steps[n], box)]


def _reaches(step: CutStep, box: Box) -> bool:
    a, b = step.a, step.b
    return (
        (a.x <= box.right or b.x <= box.right)
        and (a.x >= box.left or b.x >= box.left)
        and (a.y <= box.top or b.y <= box.top)
        and (a.y >= box.bottom or b.y >= box.bottom)
    )


def _cross(one: CutStep, other: CutStep) -> PathCross | None:
    way, across = one.b - one.a, other.b - other.a
    size, wide = math.hypot(way.x, way.y), math.hypot(across.x, across.y)
    if size < _SAME or wide < _SAME:
        return None
    area = way.x * across.y - way.y * across.x
    sine = abs(area) / (size * wide)
    if sine < _ALONG:
        return None
    apart = other.a - one.a
    t = (apart.x * across.y - apart.y * across.x) / area
    u = (apart.x * way.y - apart.y * way.x) / area
    if not (_within(t, size) and _within(u, wide)):
        return None
    at = one.a + way.scaled(t)
    cosine = dot(way, across) / (size * wide)
    return PathCross(at, one.far + t * size, other.far + u * wide, sine, cosine)


def _within(share: float, size: float) -> bool:
    return -_SAME <= share * size <= size + _SAME


def _ends(crossing: PathCross, a: MeasuredLine, b: MeasuredLine) -> bool:
    """Whether one of the two lines begins or ends on the other."""
    return any(
        not 2 * _SAME < far < line.length - 2 * _SAME
        for far, line in ((crossing.along_a, a), (crossing.along_b, b))
    )


def _known(crossing: PathCross, found: Sequence[PathCross]) -> bool:
    """Whether it was found already, on the step before: they share the place between them."""
    return any(
        abs(crossing.along_a - c.along_a) < 4 * _SAME
        and abs(crossing.along_b - c.along_b) < 4 * _SAME
        for c in found
    )


def _box(piece: Segment) -> Box:
    points = [piece.start, piece.end]
    if not isinstance(piece, Line):
        points.append(piece.corner)
    return Box.around(points).grown(_SAME)


def _meet(a: Box, b: Box) -> bool:
    return a.left <= b.right and b.left <= a.right and a.bottom <= b.top and b.bottom <= a.top

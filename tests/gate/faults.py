"""What is wrong with a diagram: what overlaps, what is too small, what is cut off.

Two things overlap where one reaches more than `TOLERANCE` into the other; touching is none.

Allowed, and counted as no fault:

- a line of the field under words that have a white halo;
- a path over the symbol it starts at, or that the path it continues or leaves starts at;
- a block's line over the defender it ends at, but not its bar;
- a leader over the two things it joins;
- a path of the play as it was before, on one of the play as it is;
- two paths that cross, and anything over the pale grounds of claims and drops.

Two paths of different men that run on one line, rather than cross, cannot be told apart there: they
are counted by how long they lie on each other, in widths of the stroke.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache

from shapely import STRtree, box, union_all
from shapely.geometry.base import BaseGeometry

from stemline.theme import SMALLEST_TYPE

from . import roles
from .marks import Diagram, Mark
from .sorting import Sorted, Thing, Way, sort_marks

TOLERANCE = 0.15
"""Points: under half the thinnest stroke, and finer than an office printer's dots (600 to an
inch are 0.12 points apart)."""
_TYPE_TOLERANCE = 0.05
"""Points: outlines are written to a hundredth of a point, and six points of type are four high."""
_ALONG = 8.0
"""Widths of a stroke that another may lie on it: a crossing at an angle of less than 8 degrees."""


class Kind(Enum):
    """A kind of fault, as the table's columns name it."""

    LABELS = "label on label"
    ON_PATH = "label on path"
    ON_FIELD = "label on field line"
    ON_SYMBOL = "label on symbol"
    SYMBOLS = "symbol on symbol"
    THROUGH = "path through symbol"
    ALONG = "path along a path"
    RING = "letter over its ring"
    CUT = "cut by a white edge"
    SMALL = "type too small"
    OUTSIDE = "outside the frame"


@dataclass(frozen=True)
class Fault:
    """One fault: what is on what, where in points from the picture's top left corner, and how
    much of it in square points."""

    kind: Kind
    what: str
    on: str
    x: float
    y: float
    area: float

    def __str__(self) -> str:
        on = f" / {self.on}" if self.on else ""
        return f"{self.kind.value}: {self.what}{on} at {self.x:.0f}, {self.y:.0f}"


def faults(diagram: Diagram) -> tuple[Fault, ...]:
    """Every fault of ``diagram``, in the order of `Kind`."""
    by = sort_marks(diagram)
    symbols = [(s.name, s.shape) for s in by.symbols]
    labels = [(t.name, t.shape) for t in by.labels]
    return (
        *_pairs(Kind.LABELS, labels),
        *_crossed(Kind.ON_PATH, by.labels, by.paths),
        *_on_field(by),
        *_over(Kind.ON_SYMBOL, labels, symbols),
        *_pairs(Kind.SYMBOLS, symbols),
        *_crossed(Kind.THROUGH, by.symbols, by.paths),
        *_along(by.paths),
        *_ringed(by.symbols),
        *_cut(by),
        *_small(diagram.marks),
        *_outside(diagram, by),
    )


Named = tuple[str, BaseGeometry]


def _fault(kind: Kind, what: str, on: str, where: BaseGeometry) -> Fault:
    at = where.representative_point() if where.area else where.interpolate(0.5, normalized=True)
    return Fault(kind, what, on, float(at.x), float(at.y), float(where.area))


@lru_cache(maxsize=512)
def _inner(shape: BaseGeometry) -> BaseGeometry:
    """A shape without its outermost edge: what must stay clear."""
    return shape.buffer(-TOLERANCE, join_style="mitre")


def _pairs(kind: Kind, things: Sequence[Named]) -> Iterator[Fault]:
    inner = [_inner(shape) for _, shape in things]
    for i, j in _meeting(inner, [shape for _, shape in things]):
        if i < j:
            yield _fault(kind, things[i][0], things[j][0], inner[i] & things[j][1])


def _over(kind: Kind, things: Sequence[Named], under: Sequence[Named]) -> Iterator[Fault]:
    inner = [_inner(shape) for _, shape in things]
    for i, j in _meeting(inner, [shape for _, shape in under]):
        yield _fault(kind, things[i][0], under[j][0], inner[i] & under[j][1])


def _meeting(
    first: Sequence[BaseGeometry], second: Sequence[BaseGeometry]
) -> list[tuple[int, int]]:
    """The pairs of places in the two lists whose shapes meet, in order."""
    if not first or not second:
        return []
    rows, columns = STRtree(second).query(list(first), predicate="intersects")
    return sorted((int(i), int(j)) for i, j in zip(rows, columns, strict=True))


def _crossed(kind: Kind, things: Sequence[Thing], paths: Sequence[Way]) -> Iterator[Fault]:
    inner = [_inner(t.shape) for t in things]
    for i, j in _meeting(inner, [p.shape for p in paths]):
        if things[i].mark.order not in paths[j].own:
            yield _fault(kind, things[i].name, paths[j].name, inner[i] & paths[j].shape)


def _on_field(by: Sorted) -> Iterator[Fault]:
    """Words on a line of the field, where no white laid between them hides it."""
    inner = [_inner(t.shape) for t in by.labels]
    for i, j in _meeting(inner, [m.shape for m in by.field]):
        thing, line = by.labels[i], by.field[j]
        between = [h.shape for h in by.halos if line.order < h.order < thing.mark.order]
        seen = (inner[i] & line.shape) - union_all(between)
        if not seen.is_empty:
            yield _fault(Kind.ON_FIELD, thing.name, line.style, seen)


def _along(paths: Sequence[Way]) -> Iterator[Fault]:
    """Paths of different men that lie on one another for more than a crossing."""
    long = [
        (p, p.mark.way)
        for p in paths
        if p.mark.way is not None and roles.plain(p.mark.style) not in roles.SHORT_MARKS
    ]
    for i, j in _meeting([way for _, way in long], [p.mark.shape for p, _ in long]):
        (one, way), (other, _) = long[i], long[j]
        shared = way & other.mark.shape
        if i >= j or one.own & other.own or _over_time(one, other):
            continue
        # A line that a heavier one of the same man lies over is judged as that one.
        edge = other.mark.edge
        over = [p.mark.shape for p, _ in long if p.own & other.own and p.mark.edge > edge]
        if over:
            shared = shared - union_all(over)
        if shared.length > _ALONG * other.mark.edge:
            yield _fault(Kind.ALONG, one.name, other.name, shared)


def _over_time(one: Way, other: Way) -> bool:
    """Whether only one of two paths is of the play as it was before."""
    return (one.mark.style in roles.BEFORE) != (other.mark.style in roles.BEFORE)


def _ringed(symbols: Sequence[Thing]) -> Iterator[Fault]:
    """Letters that reach into the line round them."""
    for symbol in symbols:
        letters = symbol.letters
        if letters is not None and letters.outline is not None:
            room = symbol.shape.buffer(-symbol.mark.edge)
            over = letters.outline.buffer(-TOLERANCE) - room
            if not over.is_empty:
                yield _fault(Kind.RING, symbol.name, "", over)


def _cut(by: Sorted) -> Iterator[Fault]:
    """What a halo that is drawn later takes a piece of."""
    things = (*by.symbols, *by.labels)
    for i, j in _meeting([t.shape for t in things], [h.shape for h in by.halos]):
        thing, halo = things[i], by.halos[j]
        if halo.order < thing.mark.order:
            continue
        gone = _inner(thing.mark.outline or thing.shape) & halo.shape
        if not gone.is_empty:
            yield _fault(Kind.CUT, thing.name, halo.style, gone)


def _small(marks: Sequence[Mark]) -> Iterator[Fault]:
    for mark in marks:
        if mark.words and mark.points < SMALLEST_TYPE - _TYPE_TOLERANCE:
            what = f"{mark.words!r} ({mark.style}, {mark.points:.1f} pt)"
            yield _fault(Kind.SMALL, what, "", mark.shape)


def _outside(diagram: Diagram, by: Sorted) -> Iterator[Fault]:
    """What is cut off; white that is cut off is missed by nobody."""
    frame = box(0, 0, diagram.width, diagram.height).buffer(TOLERANCE, join_style="mitre")
    white = {h.order for h in by.halos}
    for mark in diagram.marks:
        out = mark.shape - frame
        if not out.is_empty and mark.order not in white:
            name = f"{mark.words!r} ({mark.style})" if mark.words else mark.style
            yield _fault(Kind.OUTSIDE, name, "", out)

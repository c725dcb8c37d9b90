"""The marks of a diagram as a reader sees them: labels, symbols, paths, and whose each path is.

A file does not say whose a path is, and a reader is not told either: he follows it to where it
starts. So does this.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from shapely import Point, union_all
from shapely.geometry.base import BaseGeometry

from . import roles
from .marks import Diagram, Mark

_AT = 1.0
"""Points from a symbol within which a path starts at it."""
_JOINED = 0.1
"""Points from a path within which another continues or leaves it."""
_LETTER = 6.0
"""Points from the end of a block, or the start of a rush, within which its defender stands."""
_BY_MIDDLE = frozenset({"bar", "set-bar", "before-bar", "tick", "dot"})
"""Marks on the end of a path: they belong to the path on which their middle lies."""


@dataclass(frozen=True)
class Thing:
    """A label or a symbol; ``letters`` is the text inside a symbol's outline."""

    mark: Mark
    name: str
    letters: Mark | None = None

    @property
    def shape(self) -> BaseGeometry:
        return self.mark.shape


@dataclass(frozen=True)
class Way:
    """A line with its arrowhead; ``own`` are the orders of the symbols and labels it may touch."""

    mark: Mark
    name: str
    shape: BaseGeometry
    own: frozenset[int] = frozenset()


@dataclass(frozen=True)
class Sorted:
    """A diagram's marks by what they are to a reader; what is ground is left out."""

    labels: tuple[Thing, ...]
    symbols: tuple[Thing, ...]
    paths: tuple[Way, ...]
    field: tuple[Mark, ...]
    halos: tuple[Mark, ...]


def sort_marks(diagram: Diagram) -> Sorted:
    """The marks sorted. Raises ValueError for a role that `roles` does not know."""
    labels: list[Thing] = []
    symbols: list[Thing] = []
    lines: list[Way] = []
    field: list[Mark] = []
    halos: list[Mark] = []
    for mark in diagram.marks:
        style = roles.plain(mark.style)
        if mark.words:
            if mark.style in roles.LABELS:
                labels.append(Thing(mark, f"{mark.words!r} ({mark.style})"))
            elif mark.style in roles.LETTERING | roles.DEFENDERS:
                _lettered(symbols, mark)
            else:
                raise ValueError(f"unknown role of a text: {mark.style}")
        elif mark.head:
            last = lines.pop()
            lines.append(replace(last, shape=union_all([last.shape, mark.shape])))
        elif mark.way is not None and style in roles.PATHS | roles.LEADERS:
            lines.append(Way(mark, mark.style, mark.shape))
        elif mark.way is not None and style in roles.TILE_STROKES:
            symbols.append(Thing(mark, mark.style))
        elif mark.way is not None and style in roles.FIELD:
            field.append(mark)
        elif mark.style in roles.SYMBOLS:
            symbols.append(Thing(mark, mark.style))
        elif mark.style in roles.DOTS:
            lines.append(Way(mark, mark.style, mark.shape))
        elif mark.style in roles.HALOS:
            halos.append(mark)
        elif mark.style not in roles.GROUNDS:
            raise ValueError(f"unknown role of a stroke or shape: {mark.style}")
    owned = _owned(lines, symbols, labels)
    return Sorted(
        tuple(labels),
        tuple(symbols),
        owned,
        tuple(field),
        tuple(halos),
    )


def _lettered(symbols: list[Thing], mark: Mark) -> None:
    """Text put into the symbol drawn just before it, or a symbol by itself: a defender's letter."""
    last = symbols[-1] if symbols else None
    ring = last is not None and last.mark.order == mark.order - 1 and last.mark.way is None
    if last is not None and ring and last.mark.shape.intersects(mark.shape.centroid):
        symbols[-1] = Thing(last.mark, f"{mark.words} ({last.mark.style})", mark)
    else:
        symbols.append(Thing(mark, f"{mark.words} ({mark.style})"))


def _owned(
    lines: Sequence[Way], symbols: Sequence[Thing], labels: Sequence[Thing]
) -> tuple[Way, ...]:
    """The lines, each with what it may touch: first by its ends, then by the line it leaves."""
    by_order = {s.mark.order: s for s in symbols}
    own = {line.mark.order: _at_its_ends(line.mark, symbols, labels) for line in lines}
    for _ in range(3):
        for line in lines:
            if own[line.mark.order] or line.mark.style in roles.LEADERS:
                continue
            anchor = _anchor(line.mark)
            for other in lines:
                way = other.mark.way
                if way is not None and other is not line and way.distance(anchor) <= _JOINED:
                    own[line.mark.order] |= own[other.mark.order]
    made: list[Way] = []
    for line in lines:
        mine = own[line.mark.order]
        whose = next((by_order[o].name.split(" ")[0] for o in sorted(mine) if o in by_order), "")
        met = _blocked(line.mark, symbols)
        name = f"{line.name} of {whose}" if whose else line.name
        made.append(replace(line, name=name, own=frozenset(mine | met)))
    return tuple(made)


def _anchor(mark: Mark) -> Point:
    if roles.plain(mark.style) in _BY_MIDDLE or mark.start is None:
        return mark.shape.centroid
    return mark.start


def _at_its_ends(mark: Mark, symbols: Sequence[Thing], labels: Sequence[Thing]) -> set[int]:
    """What a path starts at; what a motion and a leader end at as well."""
    style = roles.plain(mark.style)
    if mark.start is None or mark.end is None or style in _BY_MIDDLE:
        return set()
    if style in roles.DEFENCE:
        return _defender(mark.start, symbols)
    ends = [mark.start]
    if style in ("motion", "before-motion") or style in roles.LEADERS:
        ends.append(mark.end)
    things = [*symbols, *labels] if style in roles.LEADERS else symbols
    return {order for end in ends for order in _nearest(end, things, _AT)}


def _blocked(mark: Mark, symbols: Sequence[Thing]) -> set[int]:
    if roles.plain(mark.style) not in roles.BLOCKS or mark.end is None:
        return set()
    return _defender(mark.end, symbols)


def _defender(at: Point, symbols: Sequence[Thing]) -> set[int]:
    defenders = [s for s in symbols if s.mark.style in roles.DEFENDERS or s.mark.style == "key"]
    return _nearest(at, defenders, _LETTER)


def _nearest(at: Point, things: Iterable[Thing], within: float) -> set[int]:
    best, far = set[int](), within
    for thing in things:
        apart = float(thing.shape.distance(at))
        if apart <= far:
            best, far = {thing.mark.order}, apart
    return best

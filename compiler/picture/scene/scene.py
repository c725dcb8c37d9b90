"""The Scene: a display list that every back end translates and none has to think about.

Lengths are yards, x right of the ball and y downfield; ``scale`` says how many printed points a
yard is. Styles are the theme's role names: no colour, weight or file format is known here.
Everything is already measured and placed; a back end moves nothing.
"""

from __future__ import annotations

from dataclasses import dataclass

from stemline.geometry.box import Box
from stemline.geometry.paths import Curve, Line, Point, Segment
from stemline.source import Span
from stemline.theme import Size

__all__ = [
    "Box",
    "Curve",
    "Disc",
    "Item",
    "Layer",
    "Line",
    "Plate",
    "Point",
    "Polygon",
    "Scene",
    "Segment",
    "Stroke",
    "TextRun",
]
"""A scene's whole vocabulary, its geometry too: a back end needs nothing below."""


@dataclass(frozen=True)
class Stroke:
    """A line made of straight and curved pieces; ``style`` is a stroke of the theme.

    The pieces follow each other end to end, but for gaps where a later line crosses. ``head`` is
    () or the corners of a filled arrowhead in the stroke's own grey, its tip first; the pieces
    then stop inside the head.

    ``name`` is whose line it is and what he does on it ("H-route"), once in a scene; "" for a line
    that is nobody's way. ``times`` are seconds after the snap, before it below 0: when he is at
    the start of the first piece and of each after a gap, and at the end of every piece.
    """

    segments: tuple[Segment, ...]
    style: str
    head: tuple[Point, ...]
    span: Span
    name: str = ""
    times: tuple[float, ...] = ()


@dataclass(frozen=True)
class Disc:
    """A circle; ``style`` is a shape of the theme. A man's own has his label for its ``name``."""

    centre: Point
    radius: float
    style: str
    span: Span
    name: str = ""


@dataclass(frozen=True)
class Plate:
    """An upright rectangle, its corners rounded by ``corner`` yards; a shape of the theme.

    The centre's own has his label for its ``name``.
    """

    box: Box
    corner: float
    style: str
    span: Span
    name: str = ""


@dataclass(frozen=True)
class Polygon:
    """A closed shape of straight sides; ``style`` is a shape of the theme."""

    points: tuple[Point, ...]
    style: str
    span: Span


@dataclass(frozen=True)
class TextRun:
    """A few words on one line; ``at`` is the left end of the baseline; a text of the theme."""

    text: str
    at: Point
    style: str
    span: Span


Item = Stroke | Disc | Plate | Polygon | TextRun


@dataclass(frozen=True)
class Layer:
    """Items drawn in order, under one name ("field", "routes", "men", "reads", "labels" ...)."""

    name: str
    items: tuple[Item, ...]


@dataclass(frozen=True)
class Scene:
    """One picture: what is in ``frame``, ``scale`` points to the yard, layers from the ground up.

    ``description`` says the picture in words, for a reader who cannot see it.
    """

    title: str
    description: str
    frame: Box
    scale: float
    size: Size
    layers: tuple[Layer, ...]

    @property
    def width(self) -> float:
        """Printed width in points."""
        return self.frame.width * self.scale

    @property
    def height(self) -> float:
        """Printed height in points."""
        return self.frame.height * self.scale

    @property
    def items(self) -> tuple[Item, ...]:
        return tuple(item for layer in self.layers for item in layer.items)

"""An emitted diagram read back as geometry: points on paper, y downward, from the top left corner.

A stroke is as wide as it is drawn, with flat ends; its dashes count as a solid line. A shape ends
at the outer side of its edge, an edge in the ground's colour apart. Words are the box round their
outlines, the outlines kept beside.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from xml.etree import ElementTree

from shapely import LineString, MultiLineString, Point, Polygon, box, transform, union_all
from shapely.geometry.base import BaseGeometry

from stemline.picture.scene.metrics import Face, faces
from stemline.theme import Size, Theme

_SVG = "{http://www.w3.org/2000/svg}"
_CURVE, _LETTER_CURVE = 12, 4
"""Straight pieces that stand for a curve of a path, and of a letter."""
_TOKENS = re.compile(r"[MLQZ]|-?[\d.]+(?:e-?\d+)?")
_MOVED = re.compile(r"translate\((-?[\d.e-]+)[ ,]+(-?[\d.e-]+)\)")

Pair = tuple[float, float]


@dataclass(frozen=True)
class Paint:
    """How an element is painted.

    ``lines`` are the middles of what is drawn as a line: a stroke's pieces, a shape's edge.
    ``dash`` is in points. ``fill`` and ``stroke`` are colours, "" where there is none.
    """

    lines: tuple[LineString, ...]
    dash: tuple[float, ...]
    fill: str
    stroke: str


@dataclass(frozen=True)
class Mark:
    """One drawn element.

    ``shape`` is the area it takes; ``way`` the middle of a stroke, None for what is filled;
    ``outline`` the letters of words. ``order`` counts from the ground up. ``points`` is the
    printed size of type, 0 for what is no text.
    """

    order: int
    layer: str
    style: str
    words: str
    head: bool
    shape: BaseGeometry
    way: LineString | None
    outline: BaseGeometry | None
    edge: float
    points: float
    paint: Paint

    @property
    def start(self) -> Point | None:
        return Point(self.way.coords[0]) if self.way is not None else None

    @property
    def end(self) -> Point | None:
        return Point(self.way.coords[-1]) if self.way is not None else None


@dataclass(frozen=True)
class Diagram:
    """One picture: its printed size in points and its marks in drawing order."""

    width: float
    height: float
    marks: tuple[Mark, ...]


def read_svg(svg: str, theme: Theme) -> Diagram:
    """The diagram in ``svg``. Raises ValueError for an element of a kind that is never emitted."""
    root = ElementTree.fromstring(svg)
    left, top, width, height = (float(n) for n in root.get("viewBox", "").split())
    if (left, top) != (0.0, 0.0):
        raise ValueError("the view box does not start at 0 0")
    marks: list[Mark] = []
    for group in root.iter(f"{_SVG}g"):
        for element in group:
            marks.append(_mark(len(marks), group.get("class", ""), element, theme))
    return Diagram(width, height, tuple(marks))


def _mark(order: int, layer: str, element: ElementTree.Element, theme: Theme) -> Mark:
    style, _, rest = element.get("class", "").partition(" ")
    words, edge = element.get("data-text", ""), float(element.get("stroke-width", 0.0))
    rim = 0.0 if element.get("stroke") == theme.colours.ground else edge / 2
    way: LineString | None = None
    outline: BaseGeometry | None = None
    points = 0.0
    rings: list[list[Pair]] = []
    core = _NOTHING
    kind = element.tag.removeprefix(_SVG)
    if kind == "circle":
        middle = Point(float(element.get("cx", 0)), float(element.get("cy", 0)))
        core = _circle(middle, float(element.get("r", 0)))
        shape: BaseGeometry = middle.buffer(float(element.get("r", 0)) + rim, quad_segs=16)
    elif kind == "rect":
        x, y = float(element.get("x", 0)), float(element.get("y", 0))
        wide, tall = float(element.get("width", 0)), float(element.get("height", 0))
        corner = float(element.get("rx", 0))
        inner = box(x + corner, y + corner, x + wide - corner, y + tall - corner)
        core = box(x, y, x + wide, y + tall)
        shape = inner.buffer(corner + rim)
    elif kind == "path":
        d, shift = element.get("d", ""), _shift(element.get("transform", ""))
        rings = [] if words else list(_rings(d, shift, _CURVE))
        if words:
            outline = transform(_lettering(d), lambda at: at + shift)
            shape = box(*outline.bounds)
            points = _type_size(words, style, outline, theme)
        elif element.get("fill") == "none":
            way = _way(rings)
            shape = _stroke(rings, edge)
        else:
            core = Polygon(rings[0])
            shape = core.buffer(rim, join_style="round")
    else:
        raise ValueError(f"a {kind} element is never emitted")
    lines = _strings(rings) if way is not None else _edge(core)
    paint = _paint(element, lines)
    return Mark(
        order, layer, style, words, rest == "head", shape, way, outline, edge, points, paint
    )


_NOTHING = Polygon()


def _edge(core: Polygon) -> tuple[LineString, ...]:
    return () if core is _NOTHING else (LineString(core.exterior.coords),)


def _circle(middle: Point, radius: float) -> Polygon:
    """A circle from where its line starts, at the right, the way it is drawn: down first."""
    x, y = middle.x, middle.y
    return Polygon([(x + radius * cosine, y + radius * sine) for cosine, sine in _TURNS])


_TURNS = [(math.cos(2 * math.pi * i / 64), math.sin(2 * math.pi * i / 64)) for i in range(64)]


def _paint(element: ElementTree.Element, lines: tuple[LineString, ...]) -> Paint:
    dash = tuple(float(n) for n in element.get("stroke-dasharray", "").split())
    fill, stroke = element.get("fill", "none"), element.get("stroke", "none")
    return Paint(lines, dash, fill.replace("none", ""), stroke.replace("none", ""))


def _strings(rings: list[list[Pair]]) -> tuple[LineString, ...]:
    return tuple(LineString(ring) for ring in rings if len(ring) > 1)


@cache
def _lettering(d: str) -> BaseGeometry:
    """Words where they are written before they are moved: every picture has the same ones."""
    rings = _rings(d, (0.0, 0.0), _LETTER_CURVE)
    return union_all([Polygon(ring) for ring in rings if len(ring) > 3])


def _way(rings: list[list[Pair]]) -> LineString:
    return LineString([p for ring in rings for p in ring])


def _stroke(rings: list[list[Pair]], weight: float) -> BaseGeometry:
    lines = MultiLineString([ring for ring in rings if len(ring) > 1])
    return lines.buffer(weight / 2, cap_style="flat", join_style="round")


def _shift(transform: str) -> Pair:
    found = _MOVED.fullmatch(transform)
    return (float(found[1]), float(found[2])) if found else (0.0, 0.0)


def _rings(d: str, shift: Pair, fine: int) -> Iterator[list[Pair]]:
    """The path's pieces, each a run of points; curves are cut into short straight pieces."""
    dx, dy = shift
    tokens = _TOKENS.findall(d)
    ring: list[Pair] = []
    verb, i = "", 0
    while i < len(tokens):
        if tokens[i] in "MLQZ":
            verb = tokens[i]
            i += 1
            if verb == "Z":
                ring.append(ring[0])
                continue
        count = 4 if verb == "Q" else 2
        numbers = [float(t) for t in tokens[i : i + count]]
        i += count
        pairs = [(x + dx, y + dy) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]
        if verb == "M":
            if ring:
                yield ring
            ring = pairs
            verb = "L"
        elif verb == "L":
            ring += pairs
        else:
            ring += _curve(ring[-1], pairs[0], pairs[1], fine)
    if ring:
        yield ring


def _curve(start: Pair, bend: Pair, end: Pair, fine: int) -> list[Pair]:
    made = []
    for i in range(1, fine + 1):
        t = i / fine
        a, b, c = (1 - t) ** 2, 2 * t * (1 - t), t * t
        made.append(
            (a * start[0] + b * bend[0] + c * end[0], a * start[1] + b * bend[1] + c * end[1])
        )
    return made


def _type_size(words: str, style: str, outline: BaseGeometry, theme: Theme) -> float:
    """The size at which ``words`` in their face would be as tall as they are drawn, in points."""
    face = theme.look(Size.FULL).types[style].face
    _, top, _, bottom = outline.bounds
    return float((bottom - top) / _tall(words, faces(theme)[face]))


@cache
def _tall(words: str, face: Face) -> float:
    """How tall the outlines of ``words`` are, in ems."""
    parts = []
    for letter in words:
        for verb, points in face.glyph(letter).outline:
            parts.append(verb + " ".join(f"{1000 * x:.1f} {1000 * y:.1f}" for x, y in points))
    ys = [y for ring in _rings("".join(parts), (0.0, 0.0), _LETTER_CURVE) for _, y in ring]
    return (max(ys) - min(ys)) / 1000

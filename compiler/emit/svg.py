"""Scene to SVG: a translation, nothing else. Lengths are points; words are drawn as outlines.

What an item is stays readable in the file: a layer is a group whose class is its name, and each
element's class is its role in the theme, with `head` added for an arrowhead. An outline of words
says in `data-text` which words they are. A theme on white lays no ground: the paper is one.

A man's symbol has his label for its `id`, and each line of his an `id` that begins with it
("H-route"). `data-times` of a line are seconds after the snap, one for each M, L and Q of its `d`:
when he is there. A line that others break stays one path, with an M after each gap.

An element is written by svgwrite once for each look, with gaps; its places are put into them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import cache, lru_cache
from typing import Any, assert_never

from svgwrite.base import BaseElement
from svgwrite.container import Group
from svgwrite.drawing import Drawing
from svgwrite.path import Path as PathElement
from svgwrite.shapes import Circle, Rect

from stemline.picture.scene.metrics import Face, faces
from stemline.picture.scene.scene import (
    Disc,
    Item,
    Layer,
    Line,
    Plate,
    Point,
    Polygon,
    Scene,
    Segment,
    Stroke,
    TextRun,
)
from stemline.theme import Appearance, Pen, Theme

_DIGITS = 2
"""Decimals of a point: a hundredth is finer than any printer."""
_GAP = "\x03"
"""What stands for a value that is still to be put in: no text of a coach can hold it."""
_Kind = Callable[..., Any]
"""A class of elements of svgwrite, which says no types."""
_NOTHING = "<g />"
"""An empty group as it is written; no text of a coach is so, since it would be escaped."""


def to_svg(scene: Scene, theme: Theme, ids: str | None = "") -> str:
    """The scene as one SVG document. It prints at ``scene.scale`` points to the yard.

    ``ids`` is put before every `id`, for pictures that come to stand in one document; with None
    there are no ids and no times.
    """
    page = _Page(scene, theme, ids)
    wide, tall = _number(scene.width), _number(scene.height)
    drawing = Drawing(size=(f"{wide}pt", f"{tall}pt"), viewBox=f"0 0 {wide} {tall}", debug=False)
    drawing["role"] = "img"
    drawing.set_desc(scene.title, scene.description)
    if not theme.colours.white:
        ground = theme.colours.ground
        drawing.add(Rect((0, 0), (wide, tall), class_="ground", fill=ground, debug=False))
    drawing.add(Group(debug=False))
    head, tail = drawing.tostring().rsplit(_NOTHING, 1)
    layers = [page.layer(layer) for layer in scene.layers]
    return "".join((head, *layers, tail))


class _Page:
    """Turns items into elements; yards become points from the frame's top left corner."""

    def __init__(self, scene: Scene, theme: Theme, ids: str | None) -> None:
        self._ids = ids
        self._scale = scene.scale
        self._left, self._top = scene.frame.left, scene.frame.top
        self._look: Appearance = theme.look(scene.size)
        self._faces: dict[str, Face] = faces(theme)

    def layer(self, layer: Layer) -> str:
        """The layer as a group of its elements."""
        elements = [element for item in layer.items for element in self._elements(item)]
        group = Group(class_=layer.name, debug=False)
        if not elements:
            return str(group.tostring())
        group.add(Group(debug=False))
        return str(group.tostring()).replace(_NOTHING, "".join(elements))

    def _elements(self, item: Item) -> list[str]:
        match item:
            case Stroke():
                return self._stroke(item)
            case Disc():
                x, y = self._at(item.centre)
                at = {"cx": str(x), "cy": str(y), "r": str(self._length(item.radius))}
                return [_filled(Circle, self._shape(item.style), {**at, **self._named(item.name)})]
            case Plate():
                x, y = self._at(Point(item.box.left, item.box.top))
                wide, tall = self._length(item.box.width), self._length(item.box.height)
                at = {"x": str(x), "y": str(y), "width": str(wide), "height": str(tall)}
                corner = self._length(item.corner)
                if corner:
                    at |= {"rx": str(corner), "ry": str(corner)}
                return [_filled(Rect, self._shape(item.style), {**at, **self._named(item.name)})]
            case Polygon():
                d = self._closed(item.points)
                return [_filled(PathElement, self._shape(item.style), {"d": d})]
            case TextRun():
                return self._text(item)
            case _:
                assert_never(item)

    def _stroke(self, item: Stroke) -> list[str]:
        pen = self._look.pens[item.style]
        made = []
        if item.segments:
            paint = {"class_": item.style, "fill": "none", **_pen(pen)}
            given = {"d": self._line(item.segments), **self._named(item.name, item.times)}
            made.append(_filled(PathElement, paint, given))
        if item.head:
            paint = {"class_": f"{item.style} head", "fill": pen.colour}
            made.append(_filled(PathElement, paint, {"d": self._closed(item.head)}))
        return made

    def _text(self, item: TextRun) -> list[str]:
        kind = self._look.types[item.style]
        letters = outline(item.text, self._faces[kind.face], kind.points)
        if not letters:
            return []
        moved = f"translate({self._pair(item.at)})"
        given = {"data_text": _escaped(item.text), "d": letters, "transform": moved}
        return [_filled(PathElement, {"class_": item.style, "fill": kind.colour}, given)]

    def _named(self, name: str, times: Iterable[float] = ()) -> dict[str, str]:
        """The attributes by which a page finds an element again, and moves a man along it."""
        if self._ids is None or not name:
            return {}
        made = {"id": _escaped(self._ids + _id(name))}
        moments = " ".join(_number(t) for t in times)
        return {**made, "data_times": moments} if moments else made

    def _line(self, segments: Iterable[Segment]) -> str:
        parts: list[str] = []
        at, last = "", None
        for piece in segments:
            if piece.start is not last and (start := self._pair(piece.start)) != at:
                parts.append(f"M{start}")
            at, last = self._pair(piece.end), piece.end
            if isinstance(piece, Line):
                parts.append(f"L{at}")
            else:
                parts.append(f"Q{self._pair(piece.corner)} {at}")
        return "".join(parts)

    def _closed(self, points: Iterable[Point]) -> str:
        return "M" + "L".join(self._pair(p) for p in points) + "Z"

    def _shape(self, style: str) -> dict[str, Any]:
        ground = self._look.grounds[style]
        return {
            "class_": style,
            "fill": ground.fill or "none",
            **(_pen(ground.edge) if ground.edge else {}),
        }

    def _at(self, p: Point) -> tuple[float, float]:
        return _round((p.x - self._left) * self._scale), _round((self._top - p.y) * self._scale)

    def _length(self, yards: float) -> float:
        return _round(yards * self._scale)

    def _pair(self, p: Point) -> str:
        x, y = (p.x - self._left) * self._scale, (self._top - p.y) * self._scale
        return f"{round(x, _DIGITS) + 0.0:g} {round(y, _DIGITS) + 0.0:g}"


@cache
def outline(text: str, face: Face, size: float) -> str:
    """The letters' outlines from the left end of their baseline; the same words come often."""
    parts: list[str] = []
    x = 0.0
    for letter in text:
        glyph = face.glyph(letter)
        for verb, points in glyph.outline:
            ends = [f"{_number(x + px * size)} {_number(-py * size)}" for px, py in points]
            parts.append(verb + " ".join(ends))
        x += glyph.advance * size
    return "".join(parts)


def _pen(pen: Pen) -> dict[str, Any]:
    dash = {"stroke_dasharray": " ".join(_number(d) for d in pen.dash)} if pen.dash else {}
    return {
        "stroke": pen.colour,
        "stroke_width": _round(pen.weight),
        "stroke_linejoin": "round",
        **dash,
    }


def _id(name: str) -> str:
    """A name as an `id`, which begins with a letter."""
    return name if name[:1].isalpha() else f"man-{name}"


def _filled(kind: _Kind, paint: Mapping[str, Any], given: Mapping[str, str]) -> str:
    """An element of that look; what is ``given`` is put into it as it is."""
    head, rest = _form(kind, tuple(paint.items()), tuple(given))
    return head + "".join([given[name] + text for name, text in rest])


@cache
def _form(
    kind: _Kind, paint: tuple[tuple[str, Any], ...], given: tuple[str, ...]
) -> tuple[str, tuple[tuple[str, str], ...]]:
    """An element as it is written: up to the first of the attributes ``given``, and what follows
    the value of each, in the order of their names."""
    element = kind(debug=False)
    element.update(dict(paint))
    element.update({name: _GAP for name in given if name != "d"})
    if "d" in given:
        element.push(_GAP)
    head, *rest = str(element.tostring()).split(_GAP)
    return head, tuple(zip(sorted(given, key=_attribute), rest, strict=True))


def _attribute(key: str) -> str:
    """An attribute's name as it is written."""
    return key.rstrip("_").replace("_", "-")


@lru_cache(maxsize=4096)
def _escaped(value: str) -> str:
    """A value as it stands in an attribute."""
    element = BaseElement(debug=False, id=value)
    return str(element.tostring()).partition('"')[2].rpartition('"')[0]


def _round(value: float) -> float:
    return round(value, _DIGITS) + 0.0


def _number(value: float) -> str:
    return f"{round(value, _DIGITS) + 0.0:g}"

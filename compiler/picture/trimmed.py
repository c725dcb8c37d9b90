"""A picture without the empty field above and below what is drawn on it.

Pictures that are compared share a scale and a width; those that stand in a column, each below its
own words, need no height in common.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from stemline.geometry.box import Box, square
from stemline.geometry.curves import points_of
from stemline.geometry.paths import Line, Point
from stemline.picture.lines.field_lines import AGAINST
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import (
    Disc,
    Item,
    Layer,
    Plate,
    Polygon,
    Scene,
    Stroke,
    TextRun,
)
from stemline.theme import Theme

_FIELD = "field"
_HASH = "hash"
_EDGE = 0.5
"""Points from the edge within which a line along it would be cut in its own thickness."""
_ROOM = 1.4
"""Points left above and below the ink: half of the thickest line, and white."""


_TALLER = 0.08
"""By how much more of its height a frame is taken for higher than it is."""


def roomier(frame: Box) -> Box:
    """The frame of pictures that are to be trimmed: the deepest are drawn a little smaller, so that
    more of them stand in a column, and what it has more is trimmed again."""
    return Box(frame.left, frame.bottom - frame.height * _TALLER, frame.right, frame.top)


def trimmed(scene: Scene, theme: Theme) -> Scene:
    """The scene, its frame lowered and raised to what stands on the field in it; the lines of the
    field end there. The look's name goes from its corner: the page says it over the picture."""
    scene = replace(scene, layers=tuple(map(_unnamed, scene.layers)))
    heights = [
        y
        for layer in scene.layers
        for item in layer.items
        if layer.name != _FIELD or isinstance(item, TextRun)
        for y in _heights(item, scene, theme)
    ]
    if not heights:
        return scene
    room, whole = _ROOM / scene.scale, scene.frame
    bottom, top = max(whole.bottom, min(heights) - room), min(whole.top, max(heights) + room)
    frame = Box(whole.left, bottom, whole.right, top)
    layers = tuple(
        Layer(layer.name, tuple(_cut(layer.items, frame, _EDGE / scene.scale)))
        if layer.name == _FIELD
        else layer
        for layer in scene.layers
    )
    return replace(scene, frame=frame, layers=layers)


def _unnamed(layer: Layer) -> Layer:
    if layer.name != _FIELD:
        return layer
    items = (i for i in layer.items if not (isinstance(i, TextRun) and i.text.startswith(AGAINST)))
    return Layer(layer.name, tuple(items))


def _heights(item: Item, scene: Scene, theme: Theme) -> Iterator[float]:
    """How low and how high ink reaches, in yards, without a line's own thickness."""
    match item:
        case Stroke(segments=segments, head=head):
            yield from (point.y for point in (*points_of(segments), *head))
        case Disc(centre=centre, radius=radius):
            around = square(centre, radius)
            yield from (around.bottom, around.top)
        case Plate(box=box):
            yield from (box.bottom, box.top)
        case Polygon(points=points):
            yield from (point.y for point in points)
        case TextRun(text=text, at=at, style=style):
            room = extent(text, theme.look(scene.size).types[style], theme)
            yield from (at.y - room.fall / scene.scale, at.y + room.rise / scene.scale)


def _cut(items: tuple[Item, ...], frame: Box, edge: float = 0.0) -> Iterator[Item]:
    """The field's items in ``frame``: its lines run along it or across it. One that runs along it
    nearer than ``edge`` yards to its end is left out."""
    for item in items:
        if not isinstance(item, Stroke):
            yield item
            continue
        pieces = []
        for each in item.segments:
            low, high = sorted((each.start.y, each.end.y))
            near = edge if low == high else 0.0
            if high < frame.bottom + near or low > frame.top - near:
                continue
            if item.style == _HASH and not frame.bottom <= low <= high <= frame.top:
                continue  # what is left of it would be a speck
            start, end = (
                Point(point.x, min(max(point.y, frame.bottom), frame.top))
                for point in (each.start, each.end)
            )
            pieces.append(Line(start, end))
        if pieces:
            yield replace(item, segments=tuple(pieces))

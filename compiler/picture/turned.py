"""A picture as the other side sees it: turned half round, its words upright.

For the look team, whose men stand behind their own line and look at the ball.
"""

from __future__ import annotations

from dataclasses import replace
from typing import assert_never

from stemline.geometry.box import Box
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import (
    Curve,
    Disc,
    Item,
    Line,
    Plate,
    Point,
    Polygon,
    Scene,
    Segment,
    Stroke,
    TextRun,
)
from stemline.theme import Theme


def turned(scene: Scene, theme: Theme) -> Scene:
    """The scene turned by half a circle about the middle of its frame; each word stays upright
    about its own middle."""
    turn = _Turn(scene, theme)
    layers = tuple(
        replace(layer, items=tuple(turn.item(item) for item in layer.items))
        for layer in scene.layers
    )
    words = f"Seen from the defence. {scene.description}"
    return replace(scene, layers=layers, description=words)


class _Turn:
    def __init__(self, scene: Scene, theme: Theme) -> None:
        frame = scene.frame
        self._x, self._y = frame.left + frame.right, frame.top + frame.bottom
        self._scale = scene.scale
        self._types = theme.look(scene.size).types
        self._theme = theme

    def _point(self, point: Point) -> Point:
        return Point(self._x - point.x, self._y - point.y)

    def _segment(self, piece: Segment) -> Segment:
        match piece:
            case Line():
                return Line(self._point(piece.start), self._point(piece.end))
            case Curve():
                start, corner, end = map(self._point, (piece.start, piece.corner, piece.end))
                return Curve(start, corner, end)
            case _:
                assert_never(piece)

    def item(self, item: Item) -> Item:
        match item:
            case Stroke():
                segments = tuple(map(self._segment, item.segments))
                return replace(item, segments=segments, head=tuple(map(self._point, item.head)))
            case Disc():
                return replace(item, centre=self._point(item.centre))
            case Plate():
                return replace(item, box=self._box(item.box))
            case Polygon():
                return replace(item, points=tuple(map(self._point, item.points)))
            case TextRun():
                return self._words(item)
            case _:
                assert_never(item)

    def _box(self, box: Box) -> Box:
        return Box(self._x - box.right, self._y - box.top, self._x - box.left, self._y - box.bottom)

    def _words(self, run: TextRun) -> TextRun:
        """The middle of the capitals goes where the half turn takes it."""
        room = extent(run.text, self._types[run.style], self._theme)
        wide, tall = room.width / self._scale, room.rise / self._scale
        middle = self._point(Point(run.at.x + wide / 2, run.at.y + tall / 2))
        return replace(run, at=Point(middle.x - wide / 2, middle.y - tall / 2))

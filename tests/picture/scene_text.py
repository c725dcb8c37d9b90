"""A scene as text: what a reviewer reads in a snapshot."""

from __future__ import annotations

from typing import assert_never

from stemline.geometry.box import Box
from stemline.geometry.paths import Line, Point
from stemline.picture.scene.scene import Disc, Item, Plate, Polygon, Scene, Stroke, TextRun


def scene_text(scene: Scene) -> str:
    """One item a line under its layer's name, lengths in yards to two decimals."""
    lines = [
        scene.title,
        f"frame {_box(scene.frame)} scale {scene.scale:.3f}",
        f"printed {scene.width:.1f} x {scene.height:.1f} pt",
    ]
    for layer in scene.layers:
        lines.append(f"[{layer.name}]")
        lines += (f"  {_item(item)}" for item in layer.items)
    return "\n".join(lines) + "\n"


def _item(item: Item) -> str:
    match item:
        case Stroke():
            head = f" head at {_point(item.head[0])}" if item.head else ""
            return f"stroke {item.style} {_pieces(item)}{head}"
        case Disc():
            return f"disc {item.style} {_point(item.centre)} r {item.radius:.2f}"
        case Plate():
            return f"plate {item.style} {_box(item.box)}"
        case Polygon():
            return f"polygon {item.style} {' '.join(_point(p) for p in item.points)}"
        case TextRun():
            return f"text {item.style} {item.text!r} {_point(item.at)}"
        case _:
            assert_never(item)


def _pieces(stroke: Stroke) -> str:
    said = [_point(stroke.segments[0].start)] if stroke.segments else []
    for piece in stroke.segments:
        kind = "" if isinstance(piece, Line) else f"~{_point(piece.corner)} "
        said.append(kind + _point(piece.end))
    return " ".join(said)


def _box(box: Box) -> str:
    return f"{_point(Point(box.left, box.bottom))}..{_point(Point(box.right, box.top))}"


def _point(p: Point) -> str:
    return f"{round(p.x, 2) + 0.0:.2f},{round(p.y, 2) + 0.0:.2f}"

"""A diagram copied in black and white, two pages to a sheet, and what of it is left.

It is rendered as printed, made smaller and cut at half grey: what is paler is white. An item is
there when half of its line can be found again at its place: the line of a stroke, the edge of a
shape, the ink of words. Of a dashed line the dashes count, and half of the gaps must be white.
What another item hides by being drawn over it is not asked for. Nothing is asked of what is in
the ground's colour on purpose.

Common practice tried on paper, no published source: an office copier's 64 % puts two pages of
letter paper on one; its own sharpening, which saves some pale greys, is not reckoned with.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

import numpy as np
import resvg_py
from numpy.typing import NDArray
from PIL import Image
from shapely import STRtree, contains_xy
from shapely.geometry import LineString

from stemline.theme import SMALLEST_TYPE, Theme

from . import roles
from .colour import luminance, rgb
from .marks import Diagram, Mark, read_svg

SCALE = 0.64
DOTS = 300
"""Dots to the inch, of the print and of the copy."""
_PIXELS = DOTS / 72 * SCALE
"""Pixels of the copy to a point of the print."""
_CUT = 128
_STEP = 0.4
"""Points between two places of a line that are looked at."""
_ENOUGH = 0.5
"""The share of an item's line that must be left of it."""
_INK = 0.45
"""The share of the ink of words: thin slanted ones are read with a little under half."""
_LEAST_GAP = 1.0
"""Points: a shorter gap of a dashed line is none to the eye."""
_GAPS = 3
"""A line with fewer gaps in sight is too short to be read as dashed."""

Bits = NDArray[np.bool_]
Places = NDArray[np.float64]


class Loss(Enum):
    """How an item is no more what it was."""

    GONE = "gone"
    CLOSED = "dashes run together"


@dataclass(frozen=True)
class Lost:
    """An item that the copy has lost: its role, how, the share that is left, where in points."""

    role: str
    how: Loss
    left: float
    x: float
    y: float

    def __str__(self) -> str:
        return f"{self.role}: {self.how.value}, {self.left:.0%} left, at {self.x:.0f}, {self.y:.0f}"


@dataclass(frozen=True)
class Copy:
    """What a copy of a diagram has lost, how many items of each role it was asked for, and the
    least points of its letters as copied (0 where it has none)."""

    lost: tuple[Lost, ...]
    asked: tuple[str, ...]
    least: float

    @property
    def small(self) -> bool:
        """Whether it has letters under the least type that is printed."""
        return 0 < self.least < SMALLEST_TYPE


def copied(svg: str, theme: Theme) -> Copy:
    """The diagram in ``svg`` copied, and what is lost of it."""
    diagram = read_svg(svg, theme)
    black = copy_of(svg)
    asked = [mark for mark in diagram.marks if not _blank(mark, theme)]
    sheet = _Sheet(diagram, black)
    lost = tuple(each for mark in asked for each in sheet.lost(mark))
    points = [mark.points * SCALE for mark in asked if mark.words]
    return Copy(lost, tuple(_role(mark) for mark in asked), min(points, default=0.0))


def copy_of(svg: str) -> Bits:
    """Where the copy is black."""
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg, dpi=DOTS, background="#ffffff"))
    print_ = Image.open(io.BytesIO(png)).convert("L")
    size = round(print_.width * SCALE), round(print_.height * SCALE)
    return np.asarray(print_.resize(size, Image.Resampling.BOX)) < _CUT


def _blank(mark: Mark, theme: Theme) -> bool:
    return {mark.paint.fill, mark.paint.stroke} <= {"", theme.colours.ground}


def _role(mark: Mark) -> str:
    return f"{mark.style} (text)" if mark.words else f"{mark.style}{' head' * mark.head}"


class _Sheet:
    """A copy beside the diagram that it is of."""

    def __init__(self, diagram: Diagram, black: Bits) -> None:
        self._black = black
        self._near = _grown(black)
        self._covers = [m for m in diagram.marks if m.paint.fill and not m.words]
        self._tree = STRtree([m.shape for m in self._covers])
        self._lines = [m for m in diagram.marks if m.way is not None]
        self._line_tree = STRtree([m.shape for m in self._lines])

    def lost(self, mark: Mark) -> Iterator[Lost]:
        if mark.words:
            yield from self._told(mark, Loss.GONE, self._letters(mark))
            return
        on, off = _places(mark)
        seen = self._open(mark, on)
        if mark.style in roles.GROUNDS:  # a route along its side is no edge of its own
            seen = self._bare(mark, seen)
        yield from self._told(mark, Loss.GONE, self._share(self._near, seen))
        gaps = self._bare(mark, self._open(mark, off))
        if len(gaps) >= _GAPS:
            yield from self._told(mark, Loss.CLOSED, self._share(~self._black, gaps))

    def _told(self, mark: Mark, how: Loss, left: float | None) -> Iterator[Lost]:
        if left is not None and left < (_INK if mark.words else _ENOUGH):
            at = mark.shape.centroid
            yield Lost(_role(mark), how, left, float(at.x), float(at.y))

    def _open(self, mark: Mark, places: Places) -> Places:
        """The places that nothing drawn later lies on."""
        if not len(places):
            return places
        for i in self._tree.query(mark.shape):
            cover = self._covers[i]
            if cover.order > mark.order and len(places):
                places = places[~contains_xy(cover.shape, places[:, 0], places[:, 1])]
        return places

    def _bare(self, mark: Mark, places: Places) -> Places:
        """The places that no other line lies on."""
        for i in self._line_tree.query(mark.shape):
            line = self._lines[i]
            if line.order != mark.order and len(places):
                places = places[~contains_xy(line.shape, places[:, 0], places[:, 1])]
        return places

    def _share(self, bits: Bits, places: Places) -> float | None:
        """The share of places where a bit is set; None where no place is on the paper."""
        at = np.floor(places * _PIXELS).astype(int).reshape(-1, 2)
        tall, wide = bits.shape
        inside = (at >= 0).all(axis=1) & (at[:, 0] < wide) & (at[:, 1] < tall)
        at = at[inside]
        return float(bits[at[:, 1], at[:, 0]].mean()) if len(at) else None

    def _letters(self, mark: Mark) -> float:
        """How much ink of words is left, in shares of what their outlines hold; at most 1."""
        outline = mark.outline
        assert outline is not None, "words have an outline"
        left, top, right, bottom = (n * _PIXELS for n in outline.bounds)
        tall, wide = self._black.shape
        rows = np.arange(max(0, int(top)), min(tall, int(bottom) + 1))
        columns = np.arange(max(0, int(left)), min(wide, int(right) + 1))
        ys, xs = np.meshgrid(rows, columns, indexing="ij")
        dark = luminance(rgb(mark.paint.fill)) < luminance((0.5, 0.5, 0.5))
        bits = self._black if dark else ~self._black
        return min(1.0, float(bits[ys, xs].sum()) / float(outline.area * _PIXELS**2))


def _places(mark: Mark) -> tuple[Places, Places]:
    """Places along an item's lines: those that are drawn, and the middles of a dash's gaps."""
    on: list[tuple[float, ...]] = []
    off: list[tuple[float, ...]] = []
    for line in mark.paint.lines:
        for at, drawn in _along(line, mark.paint.dash):
            (on if drawn else off).append(line.interpolate(at).coords[0])
    return np.array(on, dtype=np.float64).reshape(-1, 2), np.array(off, dtype=np.float64).reshape(
        -1, 2
    )


def _along(line: LineString, dash: tuple[float, ...]) -> Iterator[tuple[float, bool]]:
    """How far along a line its places are, and whether the line is drawn there."""
    if not dash:
        count = max(2, round(line.length / _STEP))
        yield from (((i + 0.5) * line.length / count, True) for i in range(count))
        return
    at, turn = 0.0, 0
    while at < line.length:
        piece = min(dash[turn % len(dash)], line.length - at)
        if turn % 2:
            if piece >= _LEAST_GAP:
                yield at + piece / 2, False
        else:
            count = max(1, round(piece / _STEP))
            yield from ((at + (i + 0.5) * piece / count, True) for i in range(count))
        at, turn = at + dash[turn % len(dash)], turn + 1


def _grown(black: Bits) -> Bits:
    """Black, and a pixel round it: a line is found where it was drawn or right beside."""
    wide = np.pad(black, 1)
    made = np.zeros_like(black)
    tall, across = black.shape
    for dy in range(3):
        for dx in range(3):
            made |= wide[dy : dy + tall, dx : dx + across]
    return made

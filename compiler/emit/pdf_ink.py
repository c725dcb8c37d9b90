"""Scene to the drawing operators of PDF (ISO 32000-1, 8.4 to 8.5): a translation, nothing else.

Lengths are hundredths of a point, whole numbers, x right and y down from the frame's top left
corner: the same hundredths that an SVG of the scene rounds to. A letter is drawn by its name,
`letter_name`, in thousandths of an em; the document holds each letter's outline once for all its
pictures. A curve with one control point becomes one with two, as PDF has no other.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import assert_never

from stemline.emit.gallery import Art, Letter, PdfInk
from stemline.picture.scene.metrics import Face, Glyph, faces
from stemline.picture.scene.scene import (
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
from stemline.theme import Appearance, Pen, Theme

_UNITS = 100
"""To a point."""
_EM = 1000
"""Units of a letter's own space to the em."""
_ARC = 0.5522847498
"""How far the handles of a quarter circle reach, in radii: 4/3 (sqrt 2 - 1), the customary curve,
which is off by less than three hundredths of a percent."""

_Place = tuple[int, int]
_Spot = tuple[float, float]


def to_ink(scene: Scene, theme: Theme) -> PdfInk:
    """The scene as operators. Raises `stemline.theme.Refused` for a damaged letter."""
    page = _Sheet(scene, theme)
    if not theme.colours.white:
        page.ground(theme.colours.ground)
    for item in scene.items:
        page.put(item)
    return PdfInk(" ".join(page.parts).encode(), tuple(sorted(page.letters)))


def art_of(id_: str, scene: Scene, theme: Theme, svg: str) -> Art:
    """The scene as a picture of a gallery; ``svg`` is it as SVG, "" where nobody asks for it."""
    size = scene.width, scene.height
    return Art(id_, svg, scene.description, *size, scene.title, to_ink(scene, theme))


def letter_name(letter: Letter) -> str:
    """What a letter's outline is called in operators: the number of its face and of the letter."""
    face, text = letter
    return f"{face}.{ord(text):x}"


@lru_cache(maxsize=1024)
def letter_ink(glyph: Glyph) -> bytes:
    """A letter's outline, filled: thousandths of an em from the left end of its baseline, y up."""
    parts: list[str] = []
    at = (0.0, 0.0)
    for verb, points in glyph.outline:
        scaled = [(x * _EM, y * _EM) for x, y in points]
        if verb == "Q":
            scaled = [*_two(at, scaled[0], scaled[1]), scaled[1]]
        if scaled:
            at = scaled[-1]
        numbers = [f"{_short(x)} {_short(y)}" for x, y in scaled]
        parts += [*numbers, {"M": "m", "L": "l", "Q": "c", "Z": "h"}[verb]]
    return " ".join((*parts, "f")).encode() if parts else b""


class _Sheet:
    """The operators so far. What is set already, a colour or a width, is not set again."""

    def __init__(self, scene: Scene, theme: Theme) -> None:
        self._scale = scene.scale
        self._left, self._top = scene.frame.left, scene.frame.top
        self._size = self._length(scene.frame.width), self._length(scene.frame.height)
        self._look: Appearance = theme.look(scene.size)
        self._faces: dict[str, Face] = faces(theme)
        self._numbers = {face: number for number, face in enumerate(sorted(theme.fonts))}
        self._set: dict[str, str] = {}
        self.parts: list[str] = ["1 j 0 J"]  # round joins, blunt ends, as in an SVG
        self.letters: set[Letter] = set()

    def ground(self, colour: str) -> None:
        self._fill(colour)
        self.parts.append(f"0 0 {self._size[0]} {self._size[1]} re f")

    def put(self, item: Item) -> None:
        match item:
            case Stroke():
                self._stroke(item)
            case Disc():
                ring = _circle(self._at(item.centre), self._length(item.radius))
                self._shape(item.style, ring)
            case Plate():
                left, top = self._at(Point(item.box.left, item.box.top))
                wide, tall = self._length(item.box.width), self._length(item.box.height)
                corner = min(self._length(item.corner), wide // 2, tall // 2)
                self._shape(item.style, _plate(left, top, wide, tall, corner))
            case Polygon():
                self._shape(item.style, self._closed(item.points))
            case TextRun():
                self._text(item)
            case _:
                assert_never(item)

    def _stroke(self, item: Stroke) -> None:
        pen = self._look.pens[item.style]
        if item.segments:
            self._pen(pen)
            self.parts.append(f"{self._line(item.segments)} S")
        if item.head:
            self._fill(pen.colour)
            self.parts.append(f"{self._closed(item.head)} f")

    def _text(self, item: TextRun) -> None:
        """Letter by letter: each is drawn where the one before has left the pen."""
        kind = self._look.types[item.style]
        face = self._faces[kind.face]
        x, y = self._at(item.at)
        size = _short(kind.points * _UNITS / _EM, 4)
        run: list[str] = []
        gone = 0.0
        for text in item.text:
            glyph = face.glyph(text)
            if glyph.outline:
                letter = (self._numbers[kind.face], text)
                self.letters.add(letter)
                run += [f"1 0 0 1 {_short(gone)} 0 cm"] if gone else []
                run.append(f"/{letter_name(letter)} Do")
                gone = 0.0
            gone += glyph.advance * _EM
        if run:
            self._fill(kind.colour)
            self.parts += [f"q {size} 0 0 -{size} {x} {y} cm", *run, "Q"]

    def _shape(self, style: str, outline: str) -> None:
        ground = self._look.grounds[style]
        if ground.fill:
            self._fill(ground.fill)
        if ground.edge:
            self._pen(ground.edge)
        paint = ("B" if ground.fill else "S") if ground.edge else "f" if ground.fill else "n"
        self.parts.append(f"{outline} {paint}")

    def _fill(self, colour: str) -> None:
        self._once("fill", _colour(colour, "g", "rg"))

    def _pen(self, pen: Pen) -> None:
        self._once("stroke", _colour(pen.colour, "G", "RG"))
        self._once("weight", f"{_whole(pen.weight)} w")
        self._once("dash", f"[{' '.join(str(_whole(d)) for d in pen.dash)}] 0 d")

    def _once(self, what: str, operator: str) -> None:
        if self._set.get(what) != operator:
            self._set[what] = operator
            self.parts.append(operator)

    def _line(self, segments: Iterable[Segment]) -> str:
        parts: list[str] = []
        at: _Place | None = None
        for piece in segments:
            start = self._at(piece.start)
            if start != at:
                parts.append(f"{_pair(start)} m")
            at = self._at(piece.end)
            if isinstance(piece, Line):
                parts.append(f"{_pair(at)} l")
            else:
                handles = _two(start, self._at(piece.corner), at)
                parts.append(f"{' '.join(_pair(_near(h)) for h in handles)} {_pair(at)} c")
        return " ".join(parts)

    def _closed(self, points: Iterable[Point]) -> str:
        first, *rest = (_pair(self._at(p)) for p in points)
        return " ".join((f"{first} m", *(f"{each} l" for each in rest), "h"))

    def _at(self, p: Point) -> _Place:
        return _whole((p.x - self._left) * self._scale), _whole((self._top - p.y) * self._scale)

    def _length(self, yards: float) -> int:
        return _whole(yards * self._scale)


def _circle(centre: _Place, radius: int) -> str:
    """Clockwise from its right, where SVG begins one (SVG 1.1, 9.3): dashes fall alike."""
    x, y = centre
    points = [(x + radius, y), (x, y + radius), (x - radius, y), (x, y - radius)]
    turns = zip(points, (*points[1:], points[0]), strict=True)
    arcs = (_quarter(centre, start, end) for start, end in turns)
    return " ".join((f"{_pair(points[0])} m", *arcs, "h"))


def _plate(left: int, top: int, wide: int, tall: int, corner: int) -> str:
    """A box clockwise from the left end of its top, each corner a quarter circle."""
    if not corner:
        return f"{left} {top} {wide} {tall} re"
    near, far = (left + corner, top + corner), (left + wide - corner, top + tall - corner)
    right, bottom = left + wide, top + tall
    parts = [f"{near[0]} {top} m"]
    for centre, start, end in (
        ((far[0], near[1]), (far[0], top), (right, near[1])),
        (far, (right, far[1]), (far[0], bottom)),
        ((near[0], far[1]), (near[0], bottom), (left, far[1])),
        (near, (left, near[1]), (near[0], top)),
    ):
        parts += [f"{_pair(start)} l", _quarter(centre, start, end)]
    return " ".join((*parts, "h"))


def _quarter(centre: _Place, start: _Place, end: _Place) -> str:
    """A quarter circle to ``end``: each handle runs beside the other end's radius."""
    (x, y), (sx, sy), (ex, ey) = centre, start, end
    first = _near((sx + (ex - x) * _ARC, sy + (ey - y) * _ARC))
    second = _near((ex + (sx - x) * _ARC, ey + (sy - y) * _ARC))
    return f"{_pair(first)} {_pair(second)} {_pair(end)} c"


def _two(start: _Spot, corner: _Spot, end: _Spot) -> tuple[_Spot, _Spot]:
    """The two handles of the curve that has one: each two thirds of the way to it."""
    (x, y), (cx, cy), (ex, ey) = start, corner, end
    return (
        (x + (cx - x) * 2 / 3, y + (cy - y) * 2 / 3),
        (ex + (cx - ex) * 2 / 3, ey + (cy - ey) * 2 / 3),
    )


@lru_cache(maxsize=1024)
def _colour(colour: str, grey: str, mixed: str) -> str:
    """The operator that sets ``colour``, "#rrggbb"; a grey is one number."""
    levels = [_short(int(colour[i : i + 2], 16) / 255, 4) for i in (1, 3, 5)]
    if len(set(levels)) == 1:
        return f"{levels[0]} {grey}"
    return f"{' '.join(levels)} {mixed}"


def _near(place: _Spot) -> _Place:
    return round(place[0]), round(place[1])


def _whole(points: float) -> int:
    return round(points * _UNITS)


def _pair(place: _Place) -> str:
    return f"{place[0]} {place[1]}"


def _short(value: float, digits: int = 1) -> str:
    """With ``digits`` decimals at most, and nothing that says nothing: .5, not 0.500."""
    text = f"{value:.{digits}f}".rstrip("0").rstrip(".")
    text = text.replace("0.", ".", 1) if text.startswith(("0.", "-0.")) else text
    return "0" if text in ("", "-0", "-") else text

"""How wide words are and what their letters look like, read from the theme's own font files.

Text is drawn as outlines everywhere, so a picture is the same in every viewer and on every page.
Kerning is left out: labels are a few letters long, and measuring agrees with drawing.
"""

from __future__ import annotations

import io
from dataclasses import dataclass, field
from functools import cache
from typing import TYPE_CHECKING

from stemline.diagnostics.catalogue.themes import E907
from stemline.source import NOWHERE, Span
from stemline.theme import Theme, Type, refusal

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont

Command = tuple[str, tuple[tuple[float, float], ...]]
"""One outline command, "M", "L", "Q" (one control point) or "Z", with points in ems, y upward."""

_FALLBACK = "?"
"""What stands for a letter that a face does not have; for want of it the face's own first glyph,
which is made for that (ISO/IEC 14496-22, the Open Font Format)."""
_DESCENDERS = frozenset("gjpqyQ,;()/|ç")
_CAP = 0.7
"""Height of capitals and figures in ems; near enough the same for every condensed sans."""
_DESCENT = 0.2
_READ = frozenset({"cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "post"})
"""Tables of a font that letters are read from. No other is opened: a damaged one does no harm."""
_MOST_PARTS = 2_000
"""Strokes, and letters that it is put together from, of one letter: Latin ones have below 100, the
most crowded Chinese ones below 1,000. A damaged font may be put together from itself."""


@dataclass(frozen=True)
class Glyph:
    """One letter: how far it moves the pen, in ems, and its outline."""

    advance: float
    outline: tuple[Command, ...]


@dataclass(eq=False)
class Face:
    """One font file. Glyphs are read when first asked for, and kept."""

    data: bytes
    name: str = ""
    at: Span = NOWHERE
    _glyphs: dict[str, Glyph] = field(default_factory=dict)
    _font: TTFont | None = None

    def glyph(self, letter: str) -> Glyph:
        """Raises `stemline.theme.Refused` where the file is damaged."""
        known = self._glyphs.get(letter)
        if known is None:
            try:
                known = self._glyphs[letter] = self._read(letter)
            except Exception as error:  # whatever a reader of bytes meets in bytes that are wrong
                why = f"the letter {letter} is damaged ({' '.join(str(error).split())[:80]})"
                raise refusal(E907(file=self.name, why=why), self.at) from error
        return known

    def _read(self, letter: str) -> Glyph:
        if self._font is None:
            from fontTools.ttLib import TTFont  # costs more than all the drawing: only when needed

            font = TTFont(io.BytesIO(self.data), lazy=True)
            for tag in [tag for tag in font.reader.tables if str(tag) not in _READ]:
                del font.reader.tables[tag]
            self._font = font
        font = self._font
        names = font.getBestCmap() or {}
        name = names.get(ord(letter)) or names.get(ord(_FALLBACK))
        name = name or font.getGlyphOrder()[0]
        em = font["head"].unitsPerEm
        return Glyph(font["hmtx"][name][0] / em, _outline(font.getGlyphSet(), name, em))


def _outline(glyphs: object, name: str, em: float) -> tuple[Command, ...]:
    from fontTools.pens.basePen import decomposeQuadraticSegment
    from fontTools.pens.recordingPen import DecomposingRecordingPen

    class Pen(DecomposingRecordingPen):  # type: ignore[misc]
        """Counts what a letter is put together from, so that a damaged one comes to an end."""

        parts = 0

        def addComponent(self, *part: object, **named: object) -> None:
            self.parts += 1
            if self.parts + len(self.value) > _MOST_PARTS:
                raise ValueError(f"it has more than {_MOST_PARTS:,} parts")
            super().addComponent(*part, **named)

    pen = Pen(glyphs)
    glyphs[name].draw(pen)  # type: ignore[index]
    made: list[Command] = []

    def put(kind: str, *points: tuple[float, float]) -> None:
        made.append((kind, tuple((x / em, y / em) for x, y in points)))

    for verb, points in pen.value:
        if verb == "moveTo":
            put("M", *points)
        elif verb == "lineTo":
            put("L", *points)
        elif verb == "qCurveTo":
            if points[-1] is None:  # a closed loop of curve points only: start half way round it
                loop = points[:-1]
                first = ((loop[0][0] + loop[-1][0]) / 2, (loop[0][1] + loop[-1][1]) / 2)
                put("M", first)
                points = (*loop, first)
            for control, end in decomposeQuadraticSegment(points):
                put("Q", control, end)
        elif verb in ("closePath", "endPath"):
            put("Z")
        else:
            raise ValueError(f"the font's outlines are not TrueType curves: {verb}")
    return tuple(made)


@cache
def faces(theme: Theme) -> dict[str, Face]:
    """The theme's faces by name."""
    return {
        name: Face(data, name, theme.faces_at.get(name, NOWHERE))
        for name, data in theme.fonts.items()
    }


@dataclass(frozen=True)
class Extent:
    """Room that words take, in points: ``rise`` above and ``fall`` below the baseline."""

    width: float
    rise: float
    fall: float


def extent(text: str, kind: Type, theme: Theme) -> Extent:
    """How much room ``text`` takes when set in ``kind``."""
    return _extent(text, kind, faces(theme)[kind.face])


@cache
def _extent(text: str, kind: Type, face: Face) -> Extent:
    width = sum(face.glyph(letter).advance for letter in text)
    fall = _DESCENT if _DESCENDERS.intersection(text) else 0.0
    return Extent(width * kind.points, _CAP * kind.points, fall * kind.points)

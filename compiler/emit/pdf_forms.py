"""Pictures placed in a PDF: each a form (ISO 32000-1, 8.10) that is stored once and drawn by name.

The PDF engine lays out and tags what has a size; where it would paint an image it calls `draw`,
inside the marked content of the image's own figure, so the alternative text stays with what is
drawn. Letters are forms too, shared by all pictures of a document.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from typing import Any

from stemline.emit.engine_log import PictureFailed
from stemline.emit.gallery import Art, Letter, PdfInk
from stemline.emit.pdf_ink import letter_ink, letter_name
from stemline.picture.scene.metrics import faces
from stemline.theme import Theme

_UNITS = 100
"""Units of a picture's own space to a point."""
_PIXELS = 4 / 3
"""CSS pixels to a point, the lengths of the engine."""


class Forms:
    """The forms of one document, by what they draw: two pictures that look the same are one."""

    def __init__(self, theme: Theme) -> None:
        self._theme = theme
        self._forms: dict[str, Any] = {}
        self._letters: set[Letter] = set()

    def images(self, arts: Iterable[Art]) -> dict[str, Any]:
        """What the engine takes for its images, by id: of those that come as operators."""
        return {art.id: _Placed(art, art.ink, self) for art in arts if art.ink is not None}

    def form(self, name: str, ink: PdfInk, box: tuple[float, float]) -> Any:
        """The form's stream, still without the letters that it draws."""
        from pydyf import Array

        if name not in self._forms:
            self._letters.update(ink.letters)
            self._forms[name] = _stream(ink.operators, Array([0, 0, *box]))
        return self._forms[name]

    def finish(self, document: object, pdf: Any) -> None:
        """Add the letters to the document, and tell each picture where they are."""
        from pydyf import Dictionary

        resources = Dictionary({"XObject": Dictionary(self._add_letters(pdf))})
        pdf.add_object(resources)
        self._tell(resources.reference)

    def leave_open(self, pdf: Any, where: bytes) -> dict[str, bytes]:
        """Add the letters as `finish`, but tell the pictures only that they are at ``where``: the
        reference of each by its name."""
        self._tell(where)
        return self._add_letters(pdf)

    def _add_letters(self, pdf: Any) -> dict[str, bytes]:
        from pydyf import Array, Dictionary

        known, names = faces(self._theme), sorted(self._theme.fonts)
        letters: dict[str, bytes] = {}
        for letter in sorted(self._letters):
            outline = letter_ink(known[names[letter[0]]].glyph(letter[1]))
            form = _stream(outline, Array(_EM_BOX))
            form.extra["Resources"] = Dictionary()
            pdf.add_object(form)
            letters[letter_name(letter)] = form.reference
        return letters

    def _tell(self, resources: bytes) -> None:
        for form in self._forms.values():
            form.extra["Resources"] = resources


_EM_BOX = (-2000, -2000, 4000, 4000)
"""Thousandths of an em: any letter keeps within it."""


class _Placed:
    """A picture in the engine's own terms: it has a size, and can be drawn.

    Where the engine stores an image of dots once for all its places, it stores this one's form.
    """

    def __init__(self, art: Art, ink: PdfInk, forms: Forms) -> None:
        self._art, self._ink, self._forms = art, ink, forms
        self._box = round(art.width * _UNITS), round(art.height * _UNITS)
        seal = hashlib.sha256(repr((self._box, ink.letters)).encode() + ink.operators)
        self.id = seal.hexdigest()[:16]

    def get_intrinsic_size(self, resolution: float, font_size: float) -> tuple[float, float, float]:
        width, height = self._art.width * _PIXELS, self._art.height * _PIXELS
        return width, height, width / height

    def draw(self, stream: Any, width: float, height: float, style: Mapping[str, Any]) -> None:
        """Raises `PictureFailed`."""
        try:
            stream.transform(a=width / self._box[0], d=height / self._box[1])
            stream.draw_x_object(stream.add_image(self, False, 1))
        except Exception as why:
            raise self._failed(why) from why

    def get_x_object(self, interpolate: bool, ratio: float) -> Any:
        """Raises `PictureFailed`."""
        try:
            return self._forms.form(self.id, self._ink, self._box)
        except Exception as why:
            raise self._failed(why) from why

    def _failed(self, why: Exception) -> PictureFailed:
        """Whatever it is, a book without the picture is no book."""
        return PictureFailed(self._art.name or self._art.id, str(why))


def _stream(operators: bytes, box: Any) -> Any:
    from pydyf import Dictionary, Stream

    extra = {"Type": "/XObject", "Subtype": "/Form", "BBox": box}
    return Stream([operators], Dictionary(extra), compress=True)

"""The pictures of a book as bytes and words, by the id they have in the book."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

Letter = tuple[int, str]
"""A letter of a picture: its face's number among the theme's fonts by name, and itself."""


@dataclass(frozen=True)
class PdfInk:
    """A picture as drawing operators of PDF, and the letters that they draw by name."""

    operators: bytes
    letters: tuple[Letter, ...]


@dataclass(frozen=True)
class Art:
    """One drawn picture: printed size in points, and ``alt`` for a reader who cannot see it.

    ``name`` is what a message calls it. With ``ink`` it is placed in a PDF as it is, and ``svg``
    may be "" where nobody asks for one; without it a PDF is painted from the SVG.
    """

    id: str
    svg: str
    alt: str
    width: float
    height: float
    name: str = ""
    ink: PdfInk | None = None


@dataclass(frozen=True)
class Gallery:
    """All pictures of a book. Asking for one that is not there is our own mistake: KeyError."""

    arts: tuple[Art, ...]

    @cached_property
    def _by_id(self) -> dict[str, Art]:
        return {art.id: art for art in reversed(self.arts)}

    @property
    def heights(self) -> dict[str, float]:
        """Points by id."""
        return {id_: art.height for id_, art in self._by_id.items()}

    def art(self, id_: str) -> Art:
        return self._by_id[id_]

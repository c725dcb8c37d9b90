"""The pictures of a book as bytes and words, by the id they have in the book."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Art:
    """One drawn picture: printed size in points, and ``alt`` for a reader who cannot see it.

    ``name`` is what a message calls it.
    """

    id: str
    svg: str
    alt: str
    width: float
    height: float
    name: str = ""


@dataclass(frozen=True)
class Gallery:
    """All pictures of a book. Asking for one that is not there is our own mistake: KeyError."""

    arts: tuple[Art, ...]

    def art(self, id_: str) -> Art:
        for art in self.arts:
            if art.id == id_:
                return art
        raise KeyError(id_)

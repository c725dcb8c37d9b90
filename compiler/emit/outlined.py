"""What a page is filled in from, as a digest: one that is as it was is not filled in to be told so.

A template knows a page by its model, and the pictures and page numbers that the model names: it
has no other word for a place. What it does not read, a picture's own play, is left out.
"""

from __future__ import annotations

import hashlib
import pickle
from collections.abc import Mapping, Sequence
from dataclasses import fields
from io import BytesIO

from stemline.book.content.book import Book
from stemline.book.content.page import Entry
from stemline.book.layout.fit import Laid
from stemline.emit.gallery import Art, Gallery
from stemline.theme import Theme


class Outlining:
    """Digests of the pages of one book with its pictures in one theme."""

    def __init__(self, book: Book, gallery: Gallery, theme: Theme) -> None:
        self._begun = repr((theme.digest, book.title, book.paper.name, book.plan is None)).encode()
        self._arts = {art.id: art for art in gallery.arts}
        self._drawn: dict[str, bytes] = {}

    def sizes(self, laid: Laid, numbers: Mapping[str, int]) -> str:
        """What ``laid`` is filled in and measured from: of its pictures the size and the words."""
        return self._digest((laid,), numbers, drawn=False)

    def whole(self, laid: Sequence[Laid], numbers: Mapping[str, int]) -> str:
        """What pages that share a sheet are filled in and set from, their pictures as they are
        drawn."""
        return self._digest(laid, numbers, drawn=True)

    def _digest(self, laid: Sequence[Laid], numbers: Mapping[str, int], *, drawn: bool) -> str:
        out = BytesIO()
        pickler = _ModelBytes(out)
        pickler.dump(tuple(laid))
        digest = hashlib.sha256(self._begun)
        digest.update(hashlib.sha256(out.getvalue()).digest())
        named = sorted(pickler.words)
        digest.update(repr([(word, numbers[word]) for word in named if word in numbers]).encode())
        for word in named:
            if word in self._arts:
                digest.update(self._picture(self._arts[word], drawn))
        return digest.hexdigest()

    def _picture(self, art: Art, drawn: bool) -> bytes:
        said = repr((art.id, art.width, art.height, art.alt)).encode("utf-8", "surrogatepass")
        return said + self._ink(art) if drawn else said

    def _ink(self, art: Art) -> bytes:
        if art.id not in self._drawn:
            made = (art.ink.operators, art.ink.letters) if art.ink else art.svg
            self._drawn[art.id] = hashlib.sha256(repr(made).encode()).digest()
        return self._drawn[art.id]


class _ModelBytes(pickle.Pickler):
    """Alike models as the same bytes, which nobody reads back; and all words of theirs."""

    def __init__(self, out: BytesIO) -> None:
        super().__init__(out, protocol=5)
        self.dispatch_table = {Entry: _shown}
        self.fast = True  # whether two alike words are one object is no matter
        self.words: set[str] = set()

    def persistent_id(self, value: object) -> tuple[object, ...] | None:
        if type(value) is str:
            self.words.add(value)
        return tuple(sorted(value, key=repr)) if type(value) is frozenset else None


_SHOWN = tuple(field.name for field in fields(Entry) if field.name != "play")


def _shown(entry: Entry) -> tuple[type[Entry], tuple[object, ...]]:
    return Entry, tuple(getattr(entry, name) for name in _SHOWN)

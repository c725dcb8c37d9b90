"""Pieces of a book that were set alone, bound together as one file.

What a book has once is made here: the tree of its pages, outline, names of places, the root of
the structure and its tree of parents (ISO 32000-1, 14.7), fonts and the letters of pictures. The
objects of the pieces go in as they are but for their references; streams that are equal go in once.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

import pydyf

from stemline.emit.fragments import (
    DOCUMENT,
    FEET,
    FONTS,
    KEY,
    LETTERS,
    OPEN,
    TREE,
    Fragment,
    OutlineEntry,
    Piece,
)
from stemline.emit.pdf_file import file_of


class FontsDiffer(Exception):
    """A piece draws a glyph that the book's fonts do not have."""


def bound(fragments: Sequence[Fragment], feet: Fragment, fonts: Fragment) -> bytes:
    """The book of ``fragments`` in their order, with the identifier that its bytes give it.

    Over each page the page of ``feet`` with its number is painted, as decoration and not as
    content; all use the fonts of ``fonts``. Raises `FontsDiffer`.
    """
    _hold_fonts((*fragments, feet), fonts)
    return _Binding(fragments, feet, fonts).written()


def _hold_fonts(fragments: Iterable[Fragment], fonts: Fragment) -> None:
    for fragment in fragments:
        for name, (_, said) in fragment.fonts.items():
            if name not in fonts.fonts or not said.keys() <= fonts.fonts[name][1].keys():
                raise FontsDiffer(name)


class _Ready(pydyf.Object):  # type: ignore[misc]
    """An object that is written already."""

    data = b""
    compressible = True

    def __init__(self, data: bytes, *, stream: bool) -> None:
        super().__init__()
        self.data, self.compressible = data, not stream


class _Binding:
    def __init__(self, fragments: Sequence[Fragment], feet: Fragment, fonts: Fragment) -> None:
        self._pdf = pydyf.PDF()
        self._once: dict[bytes, int] = {}
        self._letters, self._document = pydyf.Dictionary(), pydyf.Dictionary()
        self._fonts, self._resources = pydyf.Dictionary(), pydyf.Dictionary()
        for each in (self._fonts, self._letters, self._resources, self._document):
            self._pdf.add_object(each)
        self._named = {
            TREE.encode(): self._pdf.pages.reference,
            DOCUMENT.encode(): self._document.reference,
            FONTS.encode(): self._fonts.reference,
            LETTERS.encode(): self._resources.reference,
        }
        self._fragments = fragments
        self._put_fonts(fonts)
        self._letter_forms()
        numbers = self._put(feet, {})
        self._feet = [b"%d 0 R" % numbers[at] for at in feet.contents]
        self._pages: list[list[bytes]] = []
        self._elements: list[bytes] = []
        self._parents = pydyf.Array()
        self._keys = 0
        for fragment in fragments:
            self._bind(fragment)

    def written(self) -> bytes:
        self._structure()
        self._names()
        self._outline()
        pdf, first = self._pdf, self._fragments[0]
        pdf.info["Producer"] = pydyf.String(first.producer)
        pdf.info["Title"] = pydyf.String(first.title)
        pdf.catalog["Lang"] = pydyf.String(first.language)
        pdf.catalog["ViewerPreferences"] = pydyf.Dictionary({"DisplayDocTitle": "true"})
        pdf.catalog["MarkInfo"] = pydyf.Dictionary({"Marked": "true"})
        return file_of(pdf)

    def _put_fonts(self, fonts: Fragment) -> None:
        numbers = self._put(fonts, {})
        self._fonts |= {name: b"%d 0 R" % numbers[at] for name, at in fonts.letters.items()}

    def _letter_forms(self) -> None:
        """The letters of all pictures, each once."""
        forms: dict[str, Piece] = {}
        for fragment in self._fragments:
            forms |= {name: fragment.objects[at] for name, at in fragment.letters.items()}
        for name in sorted(forms):
            self._letters[name] = b"%d 0 R" % self._shared(b"".join(forms[name]))
        self._resources["XObject"] = self._letters.reference

    def _bind(self, fragment: Fragment) -> None:
        at = sum(map(len, self._pages))
        opened = {
            f"{FEET}{page}".encode(): self._feet[at + page] for page in range(len(fragment.pages))
        }
        opened |= {
            f"{KEY}{key}".encode(): b"%d" % (self._keys + key)
            for key in range(len(fragment.parents))
        }
        numbers = self._put(fragment, opened)

        def said(local: int) -> bytes:
            return b"%d 0 R" % numbers[local]

        self._pages.append([said(page) for page in fragment.pages])
        self._elements += [said(each) for each in fragment.elements]
        for key, parent in enumerate(fragment.parents, self._keys):
            self._parents.append(key)
            if isinstance(parent, int):
                self._parents.append(said(parent))
            else:
                self._parents.append(pydyf.Array(map(said, parent)))
        self._keys += len(fragment.parents)
        for page in fragment.pages:
            self._pdf.pages["Kids"].extend([numbers[page], 0, "R"])
            self._pdf.pages["Count"] += 1

    def _put(self, fragment: Fragment, opened: Mapping[bytes, bytes]) -> list[int]:
        """Adds the objects of a piece; the number that each got."""
        table = {**self._named, **opened}
        numbers: list[int] = []
        own: list[_Ready | None] = []
        for head, body in fragment.objects:
            if body and all(name in self._named for name in OPEN.findall(head)):
                numbers.append(self._shared(_closed((head, body), table)))
                own.append(None)
            else:
                ready = _Ready(b"", stream=bool(body))
                self._pdf.add_object(ready)
                numbers.append(ready.number)
                own.append(ready)
        table |= {b"%d" % at: b"%d 0 R" % number for at, number in enumerate(numbers)}
        for each, piece in zip(own, fragment.objects, strict=True):
            if each is not None:
                each.data = _closed(piece, table)
        return numbers

    def _shared(self, data: bytes) -> int:
        """The number of a stream that may stand for all that are equal."""
        if data not in self._once:
            ready = _Ready(data, stream=True)
            self._pdf.add_object(ready)
            self._once[data] = ready.number
        return self._once[data]

    def _structure(self) -> None:
        parents = pydyf.Dictionary({"Nums": self._parents})
        self._pdf.add_object(parents)
        root = pydyf.Dictionary({
            "Type": "/StructTreeRoot",
            "K": pydyf.Array([self._document.reference]),
            "ParentTree": parents.reference,
            "ParentTreeNextKey": self._keys,
        })  # fmt: skip
        self._pdf.add_object(root)
        self._pdf.catalog["StructTreeRoot"] = root.reference
        self._document |= {
            "Type": "/StructElem",
            "S": "/Document",
            "K": pydyf.Array(self._elements),
            "P": root.reference,
        }

    def _names(self) -> None:
        """The places that links lead to, in the order of their names."""
        places: dict[str, Any] = {}
        for pages, fragment in zip(self._pages, self._fragments, strict=True):
            for name, page, x, y in fragment.places:
                places.setdefault(name, pydyf.Array([pages[page], "/XYZ", x, y, 0]))
        held = pydyf.Array()
        for name in sorted(places):
            held.extend([pydyf.String(name), places[name]])
        tree = pydyf.Dictionary({"Names": held})
        self._pdf.catalog["Names"] = pydyf.Dictionary({"Dests": tree})

    def _outline(self) -> None:
        root = pydyf.Dictionary()
        self._pdf.add_object(root)
        open_: list[tuple[int, Any, bool]] = [(0, root, False)]
        for pages, fragment in zip(self._pages, self._fragments, strict=True):
            for mark in fragment.marks:
                while open_[-1][0] >= mark.level:
                    open_.pop()
                open_.append((mark.level, self._entry(mark, pages, open_), mark.closed))
        if "First" in root:
            self._pdf.catalog["Outlines"] = root.reference

    def _entry(
        self, mark: OutlineEntry, pages: Sequence[bytes], open_: Sequence[tuple[int, Any, bool]]
    ) -> Any:
        """A new last child of the innermost entry; counted by all that show it (12.3.3)."""
        parent = open_[-1][1]
        entry = pydyf.Dictionary({
            "Title": pydyf.String(mark.label),
            "Dest": pydyf.Array([pages[mark.page], "/XYZ", mark.x, mark.y, 0]),
            "Parent": parent.reference,
        })  # fmt: skip
        self._pdf.add_object(entry)
        if "Last" in parent:
            last = self._pdf.objects[int(parent["Last"].split()[0])]
            entry["Prev"], last["Next"] = last.reference, entry.reference
        else:
            parent["First"] = entry.reference
        parent["Last"] = entry.reference
        for _, above, closed in reversed(open_):
            above["Count"] = above.get("Count", 0) + (-1 if closed else 1)
            if closed:
                break
        return entry


def _closed(piece: Piece, table: Mapping[bytes, bytes]) -> bytes:
    head, body = piece
    return OPEN.sub(lambda found: table[found[1]], head) + body

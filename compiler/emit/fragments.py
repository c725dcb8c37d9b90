"""A piece of a book that was set alone: its pages as objects of PDF that fit into any file.

The engine writes a whole document. What of it belongs to its pages is cut out of it here: page,
content, forms and structure elements, with their numbers counted from the piece's own beginning.
What a book has once (fonts, letters, the root of its pages and of its structure) is left open
under a name. `binding.py` puts pieces together.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from copy import copy
from dataclasses import dataclass, field
from itertools import count
from typing import Any

from stemline.emit.heights import POINTS, stands_on

OPEN = re.compile(rb"\0(\w+) ")
"""A reference that is left open, in the head of an object: to an object of the piece by its
number, or to what the book has once by one of the names below."""
TREE, DOCUMENT, FONTS, LETTERS, FEET, KEY = "tree", "document", "fonts", "letters", "feet", "key"
"""The root of the pages and of the structure, the dictionaries of fonts and of a picture's letters;
what is painted over the piece's first page is "feet0", the first key in the tree of parents
(ISO 32000-1, 14.7.4.4) "key0"."""

OPEN_LETTERS = b"\0letters "
_FOOT = b"/Artifact <</Type /Pagination /Subtype /Footer>> BDC"
_REFERENCE = re.compile(rb"(\d+) 0 R")

Piece = tuple[bytes, bytes]
"""An object: all of it, or a stream's dictionary and the stream itself."""


@dataclass(frozen=True)
class OutlineEntry:
    """An entry of the outline: on a page of the piece, from 0, in points."""

    level: int
    label: str
    page: int
    x: float
    y: float
    closed: bool


@dataclass(frozen=True)
class Fragment:
    """``pages``, their ``contents``, ``elements`` (structure elements below the document) and
    ``letters`` are numbers of ``objects``; so are ``parents``, by key, for a page all of its marked
    content. ``places`` are a name, its page from 0 and its point; ``stands`` the pages from 1 on
    which each id stands; ``fonts`` for each font its family and what each of its glyphs says.
    """

    objects: tuple[Piece, ...]
    pages: tuple[int, ...]
    contents: tuple[int, ...]
    elements: tuple[int, ...] = ()
    parents: tuple[int | list[int], ...] = ()
    marks: tuple[OutlineEntry, ...] = ()
    places: tuple[tuple[str, int, float, float], ...] = ()
    stands: Mapping[str, list[int]] = field(default_factory=dict)
    fonts: Mapping[str, tuple[str, Mapping[int, str]]] = field(default_factory=dict)
    letters: Mapping[str, int] = field(default_factory=dict)
    title: str = ""
    language: str = ""
    producer: str = ""

    def packed(self) -> bytes:
        """The piece as bytes; `unpacked` reads them."""
        told = [
            self.pages, self.contents, self.elements, self.parents,
            [[m.level, m.label, m.page, m.x, m.y, m.closed] for m in self.marks],
            self.places, self.stands,
            {name: [family, list(said.items())] for name, (family, said) in self.fonts.items()},
            self.letters, self.title, self.language, self.producer,
            [[len(head), len(body)] for head, body in self.objects],
        ]  # fmt: skip
        parts = [json.dumps(told, separators=(",", ":")).encode(), b"\n"]
        parts += (part for each in self.objects for part in each)
        return b"".join(parts)


def unpacked(data: bytes) -> Fragment | None:
    """The piece that was packed; None where the bytes are none of ours."""
    told, _, held = data.partition(b"\n")
    try:
        (pages, contents, elements, parents, marks, places, stands, fonts, letters, title, language,
         producer, lengths) = json.loads(told)  # fmt: skip
        objects, at = [], 0
        for head, body in lengths:
            objects.append((held[at : at + head], held[at + head : at + head + body]))
            at += head + body
        parts = [kid for each in parents for kid in (each if type(each) is list else [each])]
        told_of = {*pages, *contents, *elements, *parts, *letters.values()}
        if at != len(held) or not told_of <= set(range(len(objects))):
            return None
        return Fragment(
            tuple(objects), tuple(pages), tuple(contents), tuple(elements), tuple(parents),
            tuple(OutlineEntry(*mark) for mark in marks),
            tuple((str(name), int(page), x, y) for name, page, x, y in places), stands,
            {name: (family, dict(said)) for name, (family, said) in fonts.items()},
            letters, title, language, producer,
        )  # fmt: skip
    except (ValueError, TypeError, RecursionError, AttributeError):
        return None


def cut_out(document: Any, pdf: Any, name: str, letters: Mapping[str, bytes]) -> Fragment:
    """What the engine is about to write for ``document``, as a piece.

    ``name`` tells the piece from any other of its book, ``letters`` are references by name.
    """
    return _Cutting(document, pdf, name).fragment(letters)


def cut_feet(document: Any, pdf: Any) -> Fragment:
    """What is painted over each page, marked as decoration: no reader has to hear it."""
    return _Cutting(document, pdf, "").feet()


def cut_fonts(document: Any, pdf: Any) -> Fragment:
    """The fonts of ``document``, their objects under ``letters``."""
    return _Cutting(document, pdf, "").fonts_alone()


class _Cutting:
    """One document's objects on their way to a piece: numbered as they are come to."""

    def __init__(self, document: Any, pdf: Any, name: str) -> None:
        self._document, self._pdf, self._name = document, pdf, name
        self._at: dict[int, int] = {}
        self._queue: list[int] = []
        pages = pdf.pages["Kids"][::3]
        self._opened: dict[int, bytes] = {pdf.pages.number: _open(TREE)}
        fonts = {self._number(self._object(pdf.objects[n]["Resources"])["Font"]) for n in pages}
        self._opened |= dict.fromkeys(fonts, _open(FONTS))

    def fragment(self, letters: Mapping[str, bytes]) -> Fragment:
        pages = [self._pdf.objects[number] for number in self._pdf.pages["Kids"][::3]]
        streams = [self._number(page["Contents"]) for page in pages]
        for number, page in enumerate(pages):
            stream = self._pdf.objects[streams[number]]
            stream.stream = [b"q", *stream.stream, b"Q"]  # what is painted over it begins afresh
            page["Contents"] = _array((page["Contents"], _open(f"{FEET}{number}")))
            if "StructParents" in page:
                page["StructParents"] = _open(f"{KEY}{page['StructParents']}")
        elements, parents = self._structure()
        named = {letter: self._local(self._number(at)) for letter, at in letters.items()}
        numbers = tuple(self._local(page.number) for page in pages)
        contents = tuple(self._local(number) for number in streams)
        objects = tuple(self._objects())
        metadata = self._document.metadata
        return Fragment(
            objects, numbers, contents, elements, parents, tuple(self._marks()),
            tuple(self._places()), stands_on(self._document), self._fonts(), named,
            metadata.title or "", metadata.lang or "", self._pdf.info["Producer"].string,
        )  # fmt: skip

    def feet(self) -> Fragment:
        contents = []
        for number in self._pdf.pages["Kids"][::3]:
            at = self._number(self._pdf.objects[number]["Contents"])
            stream = self._pdf.objects[at]
            stream.stream = [_FOOT, b"q", *stream.stream, b"Q", b"EMC"]
            contents.append(self._local(at))
        return Fragment(tuple(self._objects()), (), tuple(contents), fonts=self._fonts())

    def fonts_alone(self) -> Fragment:
        page = self._pdf.objects[self._pdf.pages["Kids"][0]]
        fonts = self._object(self._object(page["Resources"])["Font"])
        named = {name: self._local(self._number(at)) for name, at in fonts.items()}
        return Fragment(tuple(self._objects()), (), (), fonts=self._fonts(), letters=named)

    def _structure(self) -> tuple[tuple[int, ...], tuple[int | list[int], ...]]:
        """Elements below the document, and the parents by key."""
        if "StructTreeRoot" not in self._pdf.catalog:
            return (), ()
        root = self._object(self._pdf.catalog["StructTreeRoot"])
        document = self._object(root["K"][0])
        self._opened[document.number] = _open(DOCUMENT)
        numbers = self._object(root["ParentTree"])["Nums"]
        for key, parent in zip(numbers[::2], numbers[1::2], strict=True):
            if not isinstance(parent, list):
                self._annotation(self._object(parent), key)
        elements = tuple(self._local(self._number(each)) for each in document["K"])
        parents: list[int | list[int]] = [
            [self._local(self._number(each)) for each in parent]
            if isinstance(parent, list) else self._local(self._number(parent))
            for parent in numbers[1::2]
        ]  # fmt: skip
        self._name_cells()
        return elements, tuple(parents)

    def _name_cells(self) -> None:
        """Cells name their headings by identifiers, which hold for a whole book."""
        named: dict[int, Any] = {}
        for each in self._pdf.objects:
            if isinstance(each, dict):
                headers = each["A"].get("Headers", ()) if isinstance(each.get("A"), dict) else ()
                own = (each["ID"],) if each.get("Type") == "/StructElem" and "ID" in each else ()
                named |= {id(name): name for name in (*own, *headers)}
        for name in named.values():
            name.string = f"{self._name}-{name.string}"

    def _annotation(self, element: Any, key: int) -> None:
        for kid in element["K"]:
            if isinstance(kid, bytes):
                annotation = self._object(kid).get("Obj")
                if annotation is not None and self._object(annotation).get("StructParent") == key:
                    self._object(annotation)["StructParent"] = _open(f"{KEY}{key}")

    def _objects(self) -> Iterator[Piece]:
        from pydyf import Stream

        for at in count():
            if at == len(self._queue):
                return
            each = self._pdf.objects[self._queue[at]]
            if isinstance(each, Stream):
                stream = copy(each)
                stream.extra = self._swapped(each.extra)
                head, mark, body = stream.data.partition(b"\nstream\n")
                yield head, mark + body
            else:
                yield self._swapped(each).data, b""

    def _swapped(self, value: Any) -> Any:
        """The value with its references open."""
        from pydyf import Array, Dictionary

        if isinstance(value, dict):
            return Dictionary({key: self._swapped(each) for key, each in value.items()})
        if isinstance(value, list):
            return Array([self._swapped(each) for each in value])
        if isinstance(value, bytes) and (found := _REFERENCE.fullmatch(value)):
            number = int(found[1])
            return self._opened.get(number) or _open(str(self._local(number)))
        return value

    def _local(self, number: int) -> int:
        if number not in self._at:
            self._at[number] = len(self._queue)
            self._queue.append(number)
        return self._at[number]

    def _object(self, reference: bytes) -> Any:
        return self._pdf.objects[self._number(reference)]

    @staticmethod
    def _number(reference: bytes) -> int:
        return int(reference.split()[0])

    def _marks(self) -> Iterator[OutlineEntry]:
        for number, page in enumerate(self._document.pages):
            for level, label, (x, y), state in page.bookmarks:
                at = x * POINTS, (page.height - y) * POINTS
                yield OutlineEntry(level, label, number, *at, state == "closed")

    def _places(self) -> Iterator[tuple[str, int, float, float]]:
        seen: set[str] = set()
        for number, page in enumerate(self._document.pages):
            for name, (x, y, _, _) in page.anchors.items():
                if name not in seen:
                    seen.add(name)
                    yield name, number, x * POINTS, (page.height - y) * POINTS

    def _fonts(self) -> dict[str, tuple[str, dict[int, str]]]:
        fonts: dict[str, tuple[str, dict[int, str]]] = {}
        for font in self._document.fonts.values():
            said = fonts.setdefault(font.hash, (font.family, {}))[1]
            said |= font.to_unicode
        return fonts


def _open(name: str) -> bytes:
    return b"\0%s " % name.encode()


def _array(values: tuple[bytes, ...]) -> Any:
    from pydyf import Array

    return Array(values)

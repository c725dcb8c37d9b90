"""The parts of a book, each set alone: what it is set from, and the setting itself."""

from __future__ import annotations

import gc
import hashlib
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from html import escape
from typing import Any, Protocol

from stemline.emit.engine import Engine, shared_by
from stemline.emit.fragments import OPEN_LETTERS, Fragment, cut_feet, cut_fonts, cut_out
from stemline.emit.gallery import Art, Gallery, PdfInk
from stemline.emit.heights import heights_in
from stemline.emit.side_by_side import SideBySide
from stemline.theme import Theme

_PICTURE = re.compile(r"stemline:picture/([\w-]+)")
_FAMILY = "stemline "
FEW, MANY_TO_MEASURE = 12, 3
"""Parts that are worth starting processes for; one that is measured holds several sections."""


class SetBefore(Protocol):
    """Pieces by a digest of all that they hang on but the program and its libraries."""

    def get(self, key: str, /) -> Fragment | None: ...

    def put(self, key: str, piece: Fragment, /) -> None: ...

    def named(self, outline: str, /) -> str | None:
        """The key of what was filled in from a page of that outline."""

    def name(self, outline: str, key: str, /) -> None: ...


@dataclass(frozen=True)
class Part:
    """``name`` is its own in the book; ``kind`` "feet", "fonts" or "" for pages; ``arts`` are the
    pictures that ``html`` shows."""

    name: str
    html: str
    arts: tuple[Art, ...] = ()
    kind: str = ""

    @cached_property
    def key(self) -> str:
        """A digest of everything that the part is set from but its theme."""
        digest = hashlib.sha256(repr((self.name, self.kind, self.html)).encode())
        for art in self.arts:
            drawn = (art.ink.operators, art.ink.letters) if art.ink else art.svg
            digest.update(repr((art.id, art.width, art.height, drawn)).encode())
        return digest.hexdigest()


@dataclass(frozen=True)
class Unfilled:
    """A part that ``fill`` makes, for who does not know what one of its ``outline`` became."""

    outline: str
    fill: Callable[[], Part]


def part_of(name: str, html: str, gallery: Gallery) -> Part:
    """Pages with the pictures that they show."""
    return Part(name, html, tuple(gallery.art(id_) for id_ in _PICTURE.findall(html)))


def fonts_part(theme: Theme, pieces: Iterable[Fragment]) -> Part:
    """A page with every glyph of ``pieces``: its fonts are those of the book."""
    said: dict[str, set[str]] = {}
    for piece in pieces:
        for family, texts in piece.fonts.values():
            said.setdefault(family, set()).update(texts.values())
    ours = [f"{_FAMILY}{face}" for face in sorted(theme.fonts)]
    # A font that stands in for a letter is found by the engine as it was for the pages.
    others = [text for family, texts in said.items() if family not in ours for text in texts]
    rows = [
        f"<p style='font-family: \"{family}\"'>{escape(' '.join(sorted({*said[family], *others})))}"
        for family in ours if family in said
    ]  # fmt: skip
    faces = "".join(
        f'@font-face {{ font-family: "{_FAMILY}{face}"; src: url("stemline:font/{face}"); }}\n'
        for face in sorted(theme.fonts)
    )
    html = f'<html lang="en"><title>fonts</title><style>{faces}</style>{"".join(rows)}</html>'
    return Part("fonts", html, kind="fonts")


class Press:
    """The engine with one theme and its fonts, for one part after another."""

    def __init__(self, theme: Theme) -> None:
        self._theme = theme
        self._shared = shared_by(theme)
        self._begun = False

    def measure(self, part: Part) -> dict[str, float]:
        """The height of everything in the part that has an id, as `heights_in` says it."""
        self._clear()
        engine = Engine(Gallery(part.arts), self._theme, self._shared)
        with engine.minded():
            return heights_in(engine.lay_out(part.html))

    def set(self, part: Part) -> Fragment:
        """The piece. Raises as `to_pdf` does."""
        self._clear()
        return self._cut(part)

    def _clear(self) -> None:
        """Away with the document before: its boxes hold each other, and all of them are young,
        since nothing is collected while one is set. The last goes with all else."""
        if self._begun:
            gc.collect(0)
        self._begun = True

    def _cut(self, part: Part) -> Fragment:
        engine = Engine(Gallery(part.arts), self._theme, self._shared)
        made: list[Fragment] = []
        lent: list[str] = []

        def cut(document: Any, pdf: Any) -> None:
            if part.kind == "feet":
                made.append(cut_feet(document, pdf))
            elif part.kind == "fonts":
                made.append(cut_fonts(document, pdf))
            else:
                letters = engine.forms.leave_open(pdf, OPEN_LETTERS)
                for name in lent:
                    del document.pages[0].anchors[name]
                made.append(cut_out(document, pdf, part.name, letters))

        with engine.minded():
            document = engine.lay_out(part.html)
            lent += _lend(document)
            engine.hand_over(document, cut, tags=not part.kind, fonts=part.kind == "fonts")
        return made[0]


class Setter:
    """Sets parts in one theme, several at once; what was set before is not set again. ``helpers``
    are processes that do what a `Press` does, where there are some for more than one book."""

    def __init__(
        self, theme: Theme, before: SetBefore | None = None, helpers: SideBySide | None = None
    ) -> None:
        self._theme, self._before = theme, before
        self._press = Press(theme)
        self._helpers, self._own = helpers or SideBySide(Press, theme), helpers is None
        self._done: dict[str, Fragment] = {}
        self._named: dict[str, str] = {}

    def __enter__(self) -> Setter:
        return self

    def __exit__(self, *_: object) -> None:
        if self._own:
            self._helpers.end()

    def measure(self, parts: Sequence[Part]) -> list[dict[str, float]]:
        """What `Press.measure` says of each."""
        bare = [replace(part, arts=tuple(map(_blank, part.arts))) for part in parts]
        made = self._beside("measure", bare, MANY_TO_MEASURE)
        known = ((part, next(made, None)) for part in bare)
        return [self._press.measure(part) if it is None else it for part, it in known]

    def set(self, parts: Sequence[Part | Unfilled]) -> list[Fragment]:
        """The pieces of ``parts``, in order. Raises as `to_pdf` does."""
        lacking: list[Part] = []
        keys = [self._known(part, lacking) for part in parts]
        made = self._beside("set", lacking, FEW)
        for part in lacking:
            piece = next(made, None) or self._press.set(part)
            self._done[self._key(part)] = piece
            if self._before is not None:
                self._before.put(self._key(part), piece)  # at once: a later one may be interrupted
        return [self._done[key] for key in keys]

    def _known(self, part: Part | Unfilled, lacking: list[Part]) -> str:
        """The key of ``part``, which is filled in only where its outline has none; one that was
        not set before is put to those that are lacking."""
        if isinstance(part, Unfilled):
            key = self._named.get(part.outline) or self._name_before(part.outline)
            if key and self._set_before(key):
                self._named[part.outline] = key
                return key
            outline, part = part.outline, part.fill()
            key = self._named[outline] = self._key(part)
            if self._before is not None:
                self._before.name(outline, key)
        key = self._key(part)
        if not self._set_before(key):
            lacking.append(part)
        return key

    def _name_before(self, outline: str) -> str | None:
        return self._before.named(outline) if self._before is not None else None

    def _set_before(self, key: str) -> bool:
        held = self._before.get(key) if self._before is not None and key not in self._done else None
        if held is not None:
            self._done[key] = held
        return key in self._done

    def _beside(self, method: str, parts: Sequence[Part], few: int) -> Iterator[Any]:
        """What other processes make of ``parts``, from the first on, as far as it can be had."""
        many = len(parts) >= few or (parts and self._helpers.started)
        return self._helpers.each(method, parts) if many else iter(())

    def _key(self, part: Part) -> str:
        return f"{self._theme.digest} {part.key}"


def _blank(art: Art) -> Art:
    """The picture by its size alone."""
    return replace(art, ink=PdfInk(b"", ())) if art.ink is not None else art


def _lend(document: Any) -> list[str]:
    """Places of other parts, lent to the document: the engine drops a link that leads nowhere."""
    here = {name for page in document.pages for name in page.anchors}
    lent = {
        target for page in document.pages for kind, target, *_ in page.links
        if kind == "internal" and target not in here
    }  # fmt: skip
    document.pages[0].anchors.update(dict.fromkeys(sorted(lent), (0, 0, 0, 0)))
    return sorted(lent)

"""Pictures of plays as back ends take them: from what is kept, else drawn and kept.

A picture is drawn from its play's sealed bytes and from the part of the theme that its size shows,
and from nothing else; it is kept under all of them and the program's own source. So whatever
changes a picture changes its key, and a stale one cannot come out.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from types import MappingProxyType

from stemline.emit.gallery import Art, PdfInk
from stemline.emit.pdf_ink import to_ink
from stemline.emit.svg import to_svg
from stemline.football.play import Play
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.geometry.box import Box
from stemline.outside.program import program
from stemline.outside.store import Store
from stemline.picture.captions import captioned
from stemline.picture.picture import picture
from stemline.resolve.sealing import Sealed, seal, unsealed
from stemline.theme import Size, Theme

_IDS = "\x02"
"""What stands before every `id` of an SVG that is kept: no text of a coach can hold it."""


@dataclass(frozen=True)
class Showing:
    """What a picture shows, as `picture` takes it; ``captions`` stand under it."""

    size: Size
    frame: Box | None = None
    only: str | None = None
    duties: bool = False
    before: Play | None = None
    captions: tuple[str, ...] = ()


class Drawings:
    """Draws plays in one theme, for men of one level; ``store`` keeps nothing where it is None."""

    def __init__(
        self, theme: Theme, level: PlayingLevel = HIGH_SCHOOL, store: Store | None = None
    ) -> None:
        self._theme, self._level = theme, level
        self._store = store if store is not None and program() else Store(None)
        self._themes = {size: _shown(theme, size) for size in Size}
        begun = hashlib.sha256(program().encode())
        _add(begun, (seal(level),))
        self._begun = {size: begun.copy() for size in Size}
        for size, digest in self._begun.items():
            _add(digest, (_look(theme, size),))

    def art(
        self, id_: str, play: Play, wanted: Showing, *, svg: bool = False, ids: str = ""
    ) -> Art:
        """The picture of ``play`` under the id ``id_``; with its SVG where ``svg`` says so, each
        `id` in it with ``ids`` before it. Raises `Refused` for a damaged letter of the theme."""
        sealed = seal(play)
        before = seal(wanted.before) if wanted.before is not None else None
        key = self._key(sealed, before, wanted)
        drawn = _read(self._store.get(key))
        if drawn is None or (svg and not drawn.svg):
            drawn = self._drawn(sealed, before, wanted, svg)
            self._store.put(key, _written(drawn))
        text = drawn.svg.replace(_IDS, ids) if svg else ""
        return replace(drawn, id=id_, svg=text)

    def _key(self, play: Sealed[Play], before: Sealed[Play] | None, wanted: Showing) -> str:
        digest = self._begun[wanted.size].copy()
        box = wanted.frame
        frame = (box.left, box.bottom, box.right, box.top) if box is not None else None
        shown = repr(
            (wanted.size.name, frame, wanted.only, wanted.duties, wanted.captions)
        ).encode()
        _add(digest, (play, before or b"", shown))
        return digest.hexdigest()[:40]

    def _drawn(
        self, play: Sealed[Play], before: Sealed[Play] | None, wanted: Showing, svg: bool
    ) -> Art:
        theme = self._themes[wanted.size]
        scene = picture(
            unsealed(play), wanted.size, theme, wanted.frame, wanted.only, wanted.duties,
            unsealed(before) if before is not None else None, self._level,
        )  # fmt: skip
        scene = captioned(scene, wanted.captions, theme)
        text = to_svg(scene, theme, _IDS) if svg else ""
        size = scene.width, scene.height
        return Art("", text, scene.description, *size, scene.title, to_ink(scene, theme))


@lru_cache(maxsize=16)
def _shown(theme: Theme, size: Size) -> Theme:
    """The theme with no size but this: a picture that looked at another would not be drawn."""
    return replace(theme, looks=MappingProxyType({size: theme.look(size)}))


@lru_cache(maxsize=16)
def _look(theme: Theme, size: Size) -> bytes:
    """All that a picture of this size takes from the theme, as bytes."""
    look = theme.look(size)
    tables = [sorted(each.items()) for each in (look.symbol, look.pens, look.grounds, look.types)]
    room = look.width, look.height, look.yard, look.margin
    fonts = sorted((n, hashlib.sha256(data).hexdigest()) for n, data in theme.fonts.items())
    return repr((room, tables, theme.colours, fonts)).encode()


def _add(digest: hashlib._Hash, parts: Iterable[bytes]) -> None:
    for part in parts:
        digest.update(hashlib.sha256(part).digest())


def _written(art: Art) -> bytes:
    assert art.ink is not None, "whatever is drawn has its operators"
    held = [
        art.name, art.alt, art.width, art.height, art.ink.operators.decode("ascii"),
        art.ink.letters, art.svg,
    ]  # fmt: skip
    return json.dumps(held, separators=(",", ":")).encode("utf-8", "surrogatepass")


def _read(data: bytes | None) -> Art | None:
    """A kept picture; None where there is none, or it is not as we write."""
    try:
        match json.loads(data) if data else None:
            case [
                str(name), str(alt), float(width), float(height), str(operators), list(letters),
                str(svg),
            ]:  # fmt: skip
                drawn = tuple((int(face), str(letter)) for face, letter in letters)
                return Art("", svg, alt, width, height, name, PdfInk(operators.encode(), drawn))
    except (ValueError, TypeError, RecursionError):
        pass
    return None

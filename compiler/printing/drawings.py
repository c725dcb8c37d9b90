"""Pictures of plays as back ends take them: from what is kept, else drawn and kept.

A picture is drawn from its play's sealed bytes, without words that it does not show, and from the
part of the theme that its size shows, and from nothing else; it is kept under all of them and the
program's own source. So whatever changes a picture changes its key: a stale one cannot come out.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import chain, groupby
from types import MappingProxyType
from typing import NamedTuple

from stemline.emit.gallery import Art, PdfInk
from stemline.emit.pdf_ink import to_ink
from stemline.emit.side_by_side import SideBySide
from stemline.football.play import Play
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.geometry.box import Box
from stemline.outside.program import program
from stemline.outside.store import Store
from stemline.picture.captions import captioned
from stemline.picture.picture import Ground, begin, picture
from stemline.picture.scene.scene import Scene
from stemline.picture.trimmed import trimmed
from stemline.resolve.sealing import Sealed, seal, unsealed
from stemline.theme import Size, Theme

_IDS = "\x02"
"""What stands before every `id` of an SVG that is kept: no text of a coach can hold it."""


@dataclass(frozen=True)
class Showing:
    """What a picture shows, as `picture` takes it; ``captions`` stand under it, and ``trim`` leaves
    out the empty field above and below on paper: an SVG stands alone and keeps it. ``whole`` is a
    look with all its men."""

    size: Size
    frame: Box | None = None
    only: str | None = None
    duties: bool = False
    before: Play | None = None
    captions: tuple[str, ...] = ()
    trim: bool = False
    solid: tuple[str, ...] = ()
    whole: bool = False


class _Asked(NamedTuple):
    """A picture, and what it is kept under."""

    key: str
    play: Sealed[Play]
    before: Sealed[Play] | None
    wanted: Showing


_Job = tuple[Sealed[Play], Sealed[Play] | None, Showing, bool]
_GROUNDS = 100
"""Plays whose ground is held for their next man: more than a week has calls."""
FEW = 60
"""Pictures that are not worth starting processes for, less one."""


class Drawings:
    """Draws plays in one theme, for men of one level; ``store`` keeps nothing where it is None.
    ``helpers`` are processes that can do so too, where there are some for more than pictures."""

    def __init__(
        self,
        theme: Theme,
        level: PlayingLevel = HIGH_SCHOOL,
        store: Store | None = None,
        helpers: SideBySide | None = None,
    ) -> None:
        self._theme, self._level, self._helpers = theme, level, helpers
        self._store = store if store is not None and program() else Store(None)
        self._themes = {size: _shown(theme, size) for size in Size}
        begun = hashlib.sha256(program().encode())
        _add(begun, (seal(level),))
        self._begun = {size: begun.copy() for size in Size}
        for size, digest in self._begun.items():
            _add(digest, (_look(theme, size),))
        self._asked: dict[tuple[int, Showing], _Asked] = {}
        self._coming: Iterator[tuple[str, Art]] = iter(())
        self._made: dict[str, Art] = {}
        self._held: dict[str, Art] = {}
        self._sealed: dict[int, tuple[Play, Sealed[Play]]] = {}
        self._ground = lru_cache(maxsize=_GROUNDS)(self._begin)

    def art(
        self, id_: str, play: Play, wanted: Showing, *, svg: bool = False, ids: str = ""
    ) -> Art:
        """The picture of ``play`` under the id ``id_``; with its SVG where ``svg`` says so, each
        `id` in it with ``ids`` before it. Raises `Refused` for a damaged letter of the theme."""
        asked = self._asked.get((id(play), wanted)) or self._asking(play, wanted)
        drawn = _enough(self._held.get(asked.key) or _read(self._store.get(asked.key)), svg)
        if drawn is None:
            drawn = _enough(self._came(asked.key), svg) or self.drawn((*asked[1:], svg))
            self._store.put(asked.key, _written(drawn))
        return _named(drawn, id_, ids, svg)

    def name(self, play: Play, wanted: Showing) -> str:
        """What a picture is kept under."""
        return (self._asked.get((id(play), wanted)) or self._asking(play, wanted)).key

    def kept(self, name: str, id_: str, *, svg: bool = False) -> Art | None:
        """The picture that is kept under ``name``, as `art` gives it; None where none is."""
        drawn = _enough(_read(self._store.get(name)), svg) if name else None
        return None if drawn is None else _named(drawn, id_, "", svg)

    def keep(self, name: str, art: Art) -> None:
        """Keep a picture that is drawn from other things than a play."""
        self._store.put(name, _written(art))

    @contextmanager
    def beside(self, wanted: Sequence[tuple[Play, Showing, bool]]) -> Iterator[None]:
        """Meanwhile those of ``wanted`` that are not kept are drawn by other processes where they
        are many, in that order, the last of each telling whether with its SVG: `art` takes them as
        they come."""
        lacking: dict[str, _Job] = {}
        for play, showing, svg in wanted:
            asked = self._asking(play, showing)
            self._asked[id(play), showing] = asked
            if asked.key in lacking:
                svg = svg or lacking[asked.key][-1]
            elif (held := _enough(_read(self._store.get(asked.key)), svg)) is not None:
                self._held[asked.key] = held
                continue
            lacking[asked.key] = (*asked[1:], svg)
        helpers = self._helpers or SideBySide(Drawings, self._theme, self._level)
        if len(lacking) >= FEW or (lacking and helpers.started):
            # Those of one ground go to one process.
            grounds = groupby(
                lacking.values(), key=lambda job: (_ground_of(job), job[2].only is None)
            )
            together = [tuple(jobs) for _, jobs in grounds]
            drawn = chain.from_iterable(helpers.each("all_drawn", together))
            self._coming = zip(tuple(lacking), drawn, strict=False)
        try:
            yield
        finally:
            if helpers is not self._helpers:
                helpers.end()
            self._asked, self._coming, self._made, self._held = {}, iter(()), {}, {}
            self._sealed = {}  # as large as the plays themselves

    def _asking(self, play: Play, wanted: Showing) -> _Asked:
        sealed = self._seal(play)
        before = self._seal(wanted.before) if wanted.before is not None else None
        return _Asked(self._key(sealed, before, wanted), sealed, before, wanted)

    def _seal(self, play: Play) -> Sealed[Play]:
        """The play as it is drawn, sealed once: a page shows it small, its own file large. It is
        held with its bytes, so that its place in memory is no other play's."""
        held = self._sealed.get(id(play))
        if held is None:
            held = self._sealed[id(play)] = play, seal(play.unsaid)
        return held[1]

    def _came(self, key: str) -> Art | None:
        """What another process drew under that key, waited for; None where none does."""
        while key not in self._made and (made := next(self._coming, None)) is not None:
            self._made[made[0]] = made[1]
        return self._made.get(key)

    def _key(self, play: Sealed[Play], before: Sealed[Play] | None, wanted: Showing) -> str:
        digest = self._begun[wanted.size].copy()
        box = wanted.frame
        frame = (box.left, box.bottom, box.right, box.top) if box is not None else None
        shown = (
            wanted.size.name, frame, wanted.only, wanted.duties, wanted.captions, wanted.trim,
            wanted.solid, wanted.whole,
        )  # fmt: skip
        _add(digest, (play, before or b"", repr(shown).encode()))
        return digest.hexdigest()[:40]

    def _begin(
        self,
        play: Sealed[Play],
        before: Sealed[Play] | None,
        size: Size,
        frame: Box | None,
        duties: bool,
        whole: bool,
    ) -> tuple[Ground, Play, Play | None]:
        shown, was = unsealed(play), unsealed(before) if before is not None else None
        theme = self._themes[size]
        return begin(shown, size, theme, frame, duties, was, self._level, whole), shown, was

    def all_drawn(self, jobs: Sequence[_Job]) -> list[Art]:
        return [self.drawn(job) for job in jobs]

    def drawn(self, job: _Job) -> Art:
        """A picture, nobody's yet; with its SVG where the job says so."""
        _, _, wanted, svg = job
        theme = self._themes[wanted.size]
        # Of a play that is drawn for a man the others' pictures are wanted too.
        make = self._begin if wanted.only is None else self._ground
        begun = make(*_ground_of(job))
        ground, shown, was = begun
        scene = picture(
            shown, wanted.size, theme, wanted.frame, wanted.only, wanted.duties, was, self._level,
            wanted.solid, wanted.whole, ground,
        )  # fmt: skip
        scene = captioned(scene, wanted.captions, theme)
        text = _as_svg(scene, theme) if svg else ""
        scene = trimmed(scene, theme) if wanted.trim else scene
        size = scene.width, scene.height
        return Art("", text, scene.description, *size, scene.title, to_ink(scene, theme))


def _ground_of(
    job: _Job,
) -> tuple[Sealed[Play], Sealed[Play] | None, Size, Box | None, bool, bool]:
    """What of a job its ground hangs on, as `_begin` takes it."""
    play, before, wanted, _ = job
    return play, before, wanted.size, wanted.frame, wanted.duties, wanted.whole


def _as_svg(scene: Scene, theme: Theme) -> str:
    from stemline.emit.svg import to_svg  # its library is loaded only where something is drawn

    return to_svg(scene, theme, _IDS)


def _named(drawn: Art, id_: str, ids: str, svg: bool) -> Art:
    return replace(drawn, id=id_, svg=drawn.svg.replace(_IDS, ids) if svg else "")


def _enough(drawn: Art | None, svg: bool) -> Art | None:
    """The picture; None where it is still to be drawn, or drawn again for its SVG."""
    return drawn if drawn is not None and (drawn.svg or not svg) else None


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

"""Where a theme is, and the theme with all those it extends as one.

A name means a folder with a `theme.toml`: the coach's own in the places given, else a bundled one.
Every theme rests on the bundled `plain`, which says everything.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MappingProxyType
from typing import Any

from stemline.diagnostics.catalogue.themes import (
    E901,
    E902,
    E904,
    E905,
    E906,
    E907,
    E911,
    E912,
    E917,
)
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.source import NOWHERE, Source, Span
from stemline.theme import limits
from stemline.theme.appearance import colours_of, look_of
from stemline.theme.folder_files import FolderFiles, Unread, read, reason, taken
from stemline.theme.fonts import unfit
from stemline.theme.pictures import Unsound, prove_png, prove_svg
from stemline.theme.table import laid_over, parsed, sound, span_of
from stemline.theme.theme import Size, Theme, ThemeFolder

PLAIN = "plain"
_TABLE = "theme.toml"
_PROOFS = {".svg": prove_svg, ".png": prove_png}


class ThemeError(ValueError):
    """A bundled theme that is missing or wrong: our own mistake."""


@dataclass(frozen=True)
class Found:
    """What came of looking for a theme: None where it has mistakes, the files they stand in."""

    theme: Theme | None
    diagnostics: tuple[Diagnostic, ...]
    sources: tuple[Source, ...]


def bundled_themes() -> tuple[str, ...]:
    """The names of the themes that come with the program."""
    folder = files("stemline.themes")
    return tuple(sorted(f.name for f in folder.iterdir() if (f / _TABLE).is_file()))


@cache
def load_theme(name: str = PLAIN) -> Theme:
    """The bundled theme of that name. Raises `ThemeError` when it is missing or wrong."""
    got = theme_called(name, NOWHERE, ())
    if got.theme is None:
        codes = ", ".join(f"{d.said}" for d in got.diagnostics)
        raise ThemeError(f"theme {name}: {codes}")
    return got.theme


def theme_called(name: str, at: Span, places: Sequence[Path], *, path: bool = False) -> Found:
    """The theme that ``name`` means, said at ``at``: a folder of one of ``places``, or bundled.

    Only a coach at his keyboard may give a ``path``; a text says a plain name.
    """
    folder = _folder(name, places, ()) if path or _is_plain(name) else None
    if folder is None:
        return Found(None, (_unknown(name, at, places),), ())
    return read_theme(folder, name)


def read_theme(folder: Traversable, name: str) -> Found:
    """The theme kept in ``folder``: a coach's own, or a bundled one."""
    chain, sources, found = _chain(folder)
    table: dict[str, Any] = {}
    fonts: dict[str, bytes] = {}
    faces_at: dict[str, Span] = {}
    for link in reversed(chain):
        kept, wrong = sound(link.source, link.table, table or link.table)
        found += wrong + _unsound(link)
        said = kept.get("font", {})
        faces, wrong = _fonts(link, said)
        found += wrong
        fonts |= faces
        faces_at |= {face: span_of(link.source, "font", face) for face in faces}
        table = laid_over(table, kept)
    if found:
        return Found(None, tuple(found), sources)
    layers = tuple(link.layer for link in chain)
    theme = Theme(
        name=name,
        title=str(table.get("title", name)),
        looks=MappingProxyType({size: look_of(table, size) for size in Size}),
        fonts=MappingProxyType(fonts),
        digest=_digest(layers),
        colours=colours_of(table),
        layers=layers,
        faces_at=MappingProxyType(faces_at),
    )
    return Found(theme, (), sources)


@dataclass(frozen=True)
class _Link:
    """One theme of the chain: its folder, what was read of it, and its own table."""

    folder: Traversable
    layer: ThemeFolder
    source: Source
    table: dict[str, Any]
    unread: frozenset[str]


def _chain(folder: Traversable) -> tuple[list[_Link], tuple[Source, ...], list[Diagnostic]]:
    """The theme's folder, its file and its table, then those of the theme it extends, and on."""
    chain: list[_Link] = []
    found: list[Diagnostic] = []
    at: Traversable | None = folder
    plain = files("stemline.themes") / PLAIN
    while at is not None:
        link, wrong = _link(at)
        found += wrong
        chain.append(link)
        if at == plain:
            break
        base, span = link.table.get("extends", PLAIN), span_of(link.source, "", "extends")
        if not isinstance(base, str):
            base = PLAIN  # said by `sound`
        beside = [at.parent] if isinstance(at, Path) else []
        below = _folder(base, beside, [each.folder for each in chain]) if _is_plain(base) else None
        if below is None and _is_plain(base) and _folder(base, beside, ()):
            found.append(E905(name=base).at(span))
        elif below is None:
            found.append(_unknown(base, span, beside))
        elif len(chain) >= limits.LONGEST_CHAIN and below != plain:
            found.append(E917(most=limits.LONGEST_CHAIN).at(span))
            below = None
        at = below or plain
    return chain, tuple(link.source for link in chain), found


def _link(folder: Traversable) -> tuple[_Link, list[Diagnostic]]:
    """A theme's folder as it is now, with its own table, and what could not be read of it."""
    try:
        took = taken(folder)
    except OSError as error:
        took = FolderFiles(unread=[(_TABLE, reason(error))])
    if _TABLE not in took.files and _TABLE not in dict(took.unread):
        took.unread.append((_TABLE, "no such file or directory"))
    bundled = folder.name in bundled_themes() and folder == files("stemline.themes") / folder.name
    layer = ThemeFolder(str(folder), MappingProxyType(took.files), bundled)
    found = [
        E906(file=name, why=why).at(Span(layer.named(name), 0, 0, 0)) for name, why in took.unread
    ]
    file = layer.named(_TABLE)
    try:
        text = took.files.get(_TABLE, b"").decode("utf-8-sig")
    except UnicodeDecodeError:
        found.append(E902(why="it is not UTF-8 text").at(Span(file, 0, 0, 0)))
        text = ""
    source = Source(file, text.replace("\r\n", "\n"))
    own, wrong = parsed(source)
    unread = frozenset(name for name, _ in took.unread)
    return _Link(folder, layer, source, own, unread), [*found, *wrong]


def _unsound(link: _Link) -> list[Diagnostic]:
    """Texts that are none, and pictures that cannot be drawn."""
    found: list[Diagnostic] = []
    for name, data in () if link.layer.bundled else link.layer.files.items():
        file, ending = link.layer.named(name), name[name.rfind(".") :]
        if ending in (".css", ".jinja"):
            try:
                data.decode("utf-8-sig")
            except UnicodeDecodeError as error:
                line = data.count(b"\n", 0, error.start) + 1
                column = error.start - data.rfind(b"\n", 0, error.start)
                at = Span(file, line, column, column + 1)
                found.append(E911(file=name, byte=f"{data[error.start]:#04x}").at(at))
        elif ending in _PROOFS:
            try:
                _PROOFS[ending](data)
            except Unsound as error:
                at = Span(file, error.line, error.column, error.column + 1)
                found.append(E912(file=name, why=error.why).at(at))
    return found


def _is_plain(name: str) -> bool:
    """Whether it names a folder and no way to one."""
    return not (set(name) & set("/\\:\0") or name in ("", ".", ".."))


def _folder(
    name: str, places: Iterable[Path], without: Sequence[Traversable]
) -> Traversable | None:
    """The folder of a theme; ``without`` are those that may not be meant, being on the way here."""
    candidates: list[Traversable] = [place / name for place in places] if name else []
    if name in bundled_themes():
        candidates.append(files("stemline.themes") / name)
    return next((f for f in candidates if _is_theme(f) and f not in without), None)


def _is_theme(folder: Traversable) -> bool:
    """Whether it holds a theme, or what stands in a theme's place; a name that no folder can have
    is none."""
    try:
        table = folder / _TABLE
        return os.path.lexists(table) if isinstance(table, Path) else table.is_file()
    except (OSError, ValueError):
        return False


def _unknown(name: str, at: Span, places: Sequence[Path]) -> Diagnostic:
    near = nearest(name, _names(places))
    known = ", ".join(bundled_themes())
    return E901(found=name, choices=known).at(at, nearest=near)


def _names(places: Iterable[Path]) -> Iterator[str]:
    yield from bundled_themes()
    for place in places:
        with suppress(OSError):
            yield from (f.name for f in place.iterdir() if _is_theme(f))


def _fonts(link: _Link, said: Mapping[str, str]) -> tuple[dict[str, bytes], list[Diagnostic]]:
    """The font files of a theme's own table, from its own folder and nowhere else."""
    fonts: dict[str, bytes] = {}
    found: list[Diagnostic] = []
    for number, (face, file) in enumerate(said.items()):
        span = span_of(link.source, "font", face)
        if number == limits.MOST_FACES:
            wanted = f"at most {limits.MOST_FACES} faces"
            found.append(E904(key="font", wanted=wanted).at(span))
            break
        try:
            data = _font(link, file)
        except Unread as why:
            if file not in link.unread:  # said of the file already
                found.append(E906(file=file, why=why.why).at(span))
            continue
        if wrong := unfit(data):
            found.append(E907(file=file, why=wrong).at(span))
        fonts[face] = data
    return fonts, found


def _font(link: _Link, file: str) -> bytes:
    """A font of the theme's folder, whatever its ending. Raises `Unread`."""
    parts = file.replace("\\", "/").split("/")
    if set(parts) & {"", ".", ".."} or set(file) & set(":\0"):
        raise Unread("it is outside the theme's folder")
    name = "/".join(parts)
    held = link.layer.files.get(name)
    return held if held is not None else read(link.folder, link.folder.joinpath(*parts), name)


def _digest(layers: Iterable[ThemeFolder]) -> str:
    digest = hashlib.sha256()
    for layer in layers:
        for name, data in layer.files.items():
            digest.update(f"{name} {len(data)} ".encode() + data)
    return digest.hexdigest()

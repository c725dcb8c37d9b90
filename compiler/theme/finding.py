"""Where a theme is, and the theme with all those it extends as one.

A name means a folder with a `theme.toml`: the coach's own in the places given, else a bundled one.
Every theme rests on the bundled `plain`, which says everything.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MappingProxyType
from typing import Any

from stemline.diagnostics.model import Diagnostic, diagnose
from stemline.diagnostics.nearest import nearest
from stemline.source import NOWHERE, Source, Span
from stemline.theme.fonts import unfit
from stemline.theme.looks import colours_of, look_of
from stemline.theme.model import Size, Theme
from stemline.theme.table import laid_over, parsed, sound, span_of

PLAIN = "plain"
_TABLE = "theme.toml"
_PRINTED = (".toml", ".jinja", ".css", ".svg", ".png", ".ttf")


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
        codes = ", ".join(f"{d.code} {dict(d.values)}" for d in got.diagnostics)
        raise ThemeError(f"theme {name}: {codes}")
    return got.theme


def theme_called(name: str, at: Span, places: Sequence[Path]) -> Found:
    """The theme that ``name`` means, said at ``at``: a folder of one of ``places``, or bundled."""
    folder = _folder(name, places, ())
    if folder is None:
        return Found(None, (_unknown(name, at, places),), ())
    return read_theme(folder, name)


def read_theme(folder: Traversable, name: str) -> Found:
    """The theme kept in ``folder``: a coach's own, or a bundled one."""
    chain, sources, found = _chain(folder)
    table: dict[str, Any] = {}
    fonts: dict[str, bytes] = {}
    for place, source, own in reversed(chain):
        kept, wrong = sound(source, own, table or own)
        found += wrong
        faces, wrong = _fonts(place, source, kept.get("font", {}))
        found += wrong
        fonts |= faces
        table = laid_over(table, kept)
    folders = tuple(place for place, _, _ in chain)
    digest = ""
    try:
        digest = _digest(folders)
    except OSError as error:
        at, file = Span(sources[0].name, 0, 0, 0), Path(error.filename or folder.name).name
        found.append(diagnose("E906", at, file=file, why=_why(error)))
    if found:
        return Found(None, tuple(found), sources)
    theme = Theme(
        name=name,
        title=str(table.get("title", name)),
        looks=MappingProxyType({size: look_of(table, size) for size in Size}),
        fonts=MappingProxyType(fonts),
        digest=digest,
        colours=colours_of(table),
        folders=folders,
    )
    return Found(theme, (), sources)


_Link = tuple[Traversable, Source, dict[str, Any]]


def _chain(folder: Traversable) -> tuple[list[_Link], tuple[Source, ...], list[Diagnostic]]:
    """The theme's folder, its file and its table, then those of the theme it extends, and on."""
    chain: list[_Link] = []
    found: list[Diagnostic] = []
    sources: list[Source] = []
    at: Traversable | None = folder
    while at is not None:
        source, own, wrong = _table(at)
        sources.append(source)
        found += wrong
        chain.append((at, source, own))
        base = own.get("extends", PLAIN)
        if at == files("stemline.themes") / PLAIN:
            break
        span = span_of(source, "", "extends")
        if not isinstance(base, str):
            base = PLAIN  # said by `sound`
        beside = [at.parent] if isinstance(at, Path) else []
        below = _folder(base, beside, [place for place, _, _ in chain])
        if below is None and _folder(base, beside, ()):
            found.append(diagnose("E905", span, name=base))
        elif below is None:
            found.append(_unknown(base, span, beside))
        at = below or files("stemline.themes") / PLAIN
    return chain, tuple(sources), found


def _table(folder: Traversable) -> tuple[Source, dict[str, Any], tuple[Diagnostic, ...]]:
    file = folder / _TABLE
    name = str(file)
    try:
        text = file.read_bytes().decode("utf-8-sig")
    except OSError as error:
        span = Span(name, 0, 0, 0)
        return Source(name, ""), {}, (diagnose("E906", span, file=_TABLE, why=_why(error)),)
    except UnicodeDecodeError:
        span = Span(name, 0, 0, 0)
        return Source(name, ""), {}, (diagnose("E902", span, why="it is not UTF-8 text"),)
    source = Source(name, text.replace("\r\n", "\n"))
    own, found = parsed(source)
    return source, own, found


def _folder(
    name: str, places: Iterable[Path], without: Sequence[Traversable]
) -> Traversable | None:
    """The folder of a theme; ``without`` are those that may not be meant, being on the way here."""
    candidates: list[Traversable] = [place / name for place in places] if name else []
    if name in bundled_themes():
        candidates.append(files("stemline.themes") / name)
    return next((f for f in candidates if _is_theme(f) and f not in without), None)


def _is_theme(folder: Traversable) -> bool:
    """Whether it holds a theme; a name that no folder can have is none."""
    try:
        return (folder / _TABLE).is_file()
    except OSError:
        return False


def _unknown(name: str, at: Span, places: Sequence[Path]) -> Diagnostic:
    near = nearest(name, _names(places))
    known = ", ".join(bundled_themes())
    return diagnose("E901", at, nearest=near, found=name, choices=known)


def _names(places: Iterable[Path]) -> Iterator[str]:
    yield from bundled_themes()
    for place in places:
        with suppress(OSError):
            yield from (f.name for f in place.iterdir() if _is_theme(f))


def _fonts(
    folder: Traversable, source: Source, said: Mapping[str, str]
) -> tuple[dict[str, bytes], list[Diagnostic]]:
    """The font files of a theme's own table, from its own folder and nowhere else."""
    fonts: dict[str, bytes] = {}
    found: list[Diagnostic] = []
    for face, file in said.items():
        span = span_of(source, "font", face)
        parts = file.replace("\\", "/").split("/")
        if ".." in parts or "" in parts or ":" in file:
            found.append(diagnose("E906", span, file=file, why="it is outside the theme's folder"))
            continue
        try:
            data = folder.joinpath(*parts).read_bytes()
        except OSError as error:
            found.append(diagnose("E906", span, file=file, why=_why(error)))
            continue
        if why := unfit(data):
            found.append(diagnose("E907", span, file=file, why=why))
        fonts[face] = data
    return fonts, found


def _why(error: OSError) -> str:
    return (error.strerror or "it cannot be opened").casefold()


def _digest(folders: Iterable[Traversable]) -> str:
    digest = hashlib.sha256()
    for folder in folders:
        for name, data in _files(folder, ""):
            digest.update(f"{name} {len(data)} ".encode() + data)
    return digest.hexdigest()


def _files(folder: Traversable, under: str) -> Iterator[tuple[str, bytes]]:
    """The files that decide how a theme prints, by their path, in order."""
    for file in sorted(folder.iterdir(), key=lambda f: f.name):
        if file.is_dir() and not under:
            yield from _files(file, f"{file.name}/")
        elif file.is_file() and file.name.endswith(_PRINTED):
            yield under + file.name, file.read_bytes()

"""The files of a playbook folder: what is no text of it is named, and nothing is waited for."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from stemline.diagnostics.catalogue.files import (
    E101,
    E102,
    E103,
    E104,
    E105,
    E106,
    E107,
    E108,
    E109,
    W101,
    W102,
)
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.source import Source, Span

SUFFIX = ".play"
LARGEST_FILE = 8_000_000
"""Bytes. A season's book is a few hundred kilobytes of text; more is not one."""
ALL_FILES = 64_000_000
"""Characters of all texts of a folder together, so that no folder fills the memory."""
BUILD = "build"
"""The folder beside the texts that a build writes."""

_KINDS = (
    (stat.S_ISFIFO, "a pipe"),
    (stat.S_ISSOCK, "a socket"),
    (stat.S_ISCHR, "a device"),
    (stat.S_ISBLK, "a device"),
    (stat.S_ISDIR, "a folder"),
)
_OUTSIDE = "a link to a file outside the playbook"
_TOO_MUCH = f"with it the files are more than {ALL_FILES // 1_000_000} million characters"
_ALMOST = (SUFFIX, f"{SUFFIX}.txt")
"""Endings, in any letters, of a file that was meant to be a text of the playbook."""


@dataclass(frozen=True)
class Files:
    """The texts of a playbook folder, in order of their names."""

    folder: Path
    sources: tuple[Source, ...]
    found: tuple[Diagnostic, ...]

    @property
    def by_name(self) -> dict[str, Source]:
        return {s.name: s for s in self.sources}


def read_files(folder: Path) -> Files:
    """Every ``.play`` file below the folder, its build folder and hidden folders left out.

    Mistakes of the outside world are diagnostics too: no folder, no file, not UTF-8, empty, and
    whatever bears the name of a text and is not one.
    """
    if (problem := _no_folder(folder)) is not None:
        return Files(folder, (), (problem,))
    found: list[Diagnostic] = []
    paths = sorted(_play_files(folder, found))
    if not (paths or found):
        return Files(folder, (), (E103(folder=str(folder)).at(_whole(folder)),))
    home = folder.resolve()
    sources: list[Source] = []
    size = 0
    for path in paths:
        source, problem = _read(path, home)
        size += len(source.text) if source is not None else 0
        if size > ALL_FILES:
            found.append(E107(why=_TOO_MUCH).at(_start(str(path))))
            break
        if problem is not None:
            found.append(problem)
        if source is not None:
            sources.append(source)
    return Files(folder, tuple(sources), tuple(found))


def read_one(path: Path) -> Files:
    """One text, by the same rules as those of a folder."""
    source, problem = _read(path, path.resolve().parent)
    found = (problem,) if problem is not None else ()
    return Files(path.parent, (source,) if source is not None else (), found)


def decoded(name: str, raw: bytes) -> tuple[Source | None, Diagnostic | None]:
    """The text of a file; None, with the reason, where it is not UTF-8."""
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        column = error.start - (raw.rfind(b"\n", 0, error.start) + 1) + 1
        at = Span(name, line, column, column + 1)
        return None, E104(byte=f"{raw[error.start]:#04x}").at(at)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    source = Source(name, text)
    if not text.strip():
        return source, E105().at(_start(name))
    return source, None


def is_text(name: str) -> bool:
    """Whether a file of this name is read."""
    return name.endswith(SUFFIX) and not name.startswith(".")


def _whole(folder: Path) -> Span:
    """A folder, which has no lines."""
    return Span(str(folder), 0, 0, 0)


def _start(name: str) -> Span:
    """What is said of a whole file stands at its beginning."""
    return Span(name, 1, 1, 1)


def _no_folder(folder: Path) -> Diagnostic | None:
    """Why there is no folder to read; None where there is one."""
    place = _whole(folder)
    try:
        kind = folder.stat().st_mode
    except PermissionError as error:
        return E109(why=_why(error)).at(place)
    except (OSError, ValueError):  # not there, a circle of links, no name that a system takes
        near = nearest(folder.name, tuple(sorted(_folders_beside(folder))))
        return E101(folder=str(folder)).at(place, nearest=near)
    if not stat.S_ISDIR(kind):
        return E102(folder=str(folder)).at(place)
    return None


def _folders_beside(folder: Path) -> list[str]:
    try:
        return [path.name for path in folder.parent.iterdir() if path.is_dir()]
    except (OSError, ValueError):
        return []


def _play_files(folder: Path, found: list[Diagnostic]) -> Iterator[Path]:
    """The paths that bear a text's name; what looks like one and is not read goes to ``found``."""

    def unread(error: OSError) -> None:
        found.append(E109(why=_why(error)).at(_whole(Path(error.filename))))

    for root, folders, names in os.walk(folder, onerror=unread):
        here = Path(root)
        folders[:] = sorted(f for f in folders if f != BUILD and not f.startswith("."))
        for linked in [f for f in folders if (here / f).is_symlink()]:
            folders.remove(linked)
            found.append(W102().at(_whole(here / linked)))
        for name in sorted(names):
            if is_text(name):
                yield here / name
            elif not name.startswith(".") and name.casefold().endswith(_ALMOST):
                found.append(W101().at(_start(str(here / name))))


def _read(path: Path, home: Path) -> tuple[Source | None, Diagnostic | None]:
    """A file's text. Only a file is opened, and only one below ``home``: a pipe would be waited
    for, a device never ends, and a link may lead to what the coach would not show."""
    name = str(path)
    try:
        kind = path.stat().st_mode
        if (what := next((word for test, word in _KINDS if test(kind)), None)) is not None:
            return None, E108(what=what).at(_start(name))
        if not path.resolve().is_relative_to(home):
            return None, E108(what=_OUTSIDE).at(_start(name))
        raw, size = _content(path)
    except (OSError, RuntimeError) as error:  # a circle of links is a RuntimeError of pathlib
        return None, E107(why=_why(error)).at(_start(name))
    if size > LARGEST_FILE:
        return None, E106(size=f"{size / 1e6:.0f}").at(_start(name))
    return decoded(name, raw)


def _content(path: Path) -> tuple[bytes, int]:
    """A file's bytes and their number; no bytes of one that is too large.

    Opened without waiting, and looked at again once it is: it may have been changed for a pipe.
    """
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    with os.fdopen(handle, "rb") as file:
        about = os.fstat(handle)
        if not stat.S_ISREG(about.st_mode):
            raise OSError(0, "it is not a file any more")
        if about.st_size > LARGEST_FILE:
            return b"", about.st_size
        raw = file.read(LARGEST_FILE + 1)
        return raw, len(raw)


def _why(error: Exception) -> str:
    return getattr(error, "strerror", None) or "cannot be opened"

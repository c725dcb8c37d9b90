"""A theme's folder as bytes: its files are read once, and nothing outside it ever.

A link is followed only where it ends at a plain file inside the folder. What is no plain file, too
large or too much is told with its name and never waited for: a pipe has no end, a device no size.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from dataclasses import dataclass, field
from importlib.resources.abc import Traversable
from pathlib import Path

from stemline.theme import limits

PRINTED = tuple(limits.LARGEST)
"""Endings of the files that decide how a theme prints; no other is looked into."""

OUTSIDE = "it is a link that leads out of the theme's folder"


class Unread(Exception):
    """A file of a theme that is not read; ``why`` says the reason in words."""

    def __init__(self, why: str) -> None:
        super().__init__(why)
        self.why = why


@dataclass
class FolderFiles:
    """The files of a folder by their path in it, in order, and which could not be read."""

    files: dict[str, bytes] = field(default_factory=dict)
    unread: list[tuple[str, str]] = field(default_factory=list)
    size: int = 0
    looked_at: int = 0


def taken(folder: Traversable) -> FolderFiles:
    """Every file of the folder that prints. Hidden files, and those in hidden folders, do not."""
    made = FolderFiles()
    for name, file in _walk(folder, "", 1, made):
        if len(made.files) >= limits.MOST_FILES:
            made.unread.append((name, f"a theme has at most {limits.MOST_FILES} files that print"))
            break
        try:
            data = read(folder, file, name)
        except Unread as why:
            made.unread.append((name, why.why))
            continue
        made.size += len(data)
        if made.size > limits.ALL_FILES:
            most = limits.ALL_FILES // limits.MEGABYTE
            made.unread.append((name, f"the files of a theme are at most {most} megabytes"))
            break
        made.files[name] = data
    return made


def read(folder: Traversable, file: Traversable, name: str) -> bytes:
    """The bytes of a file of the folder. Raises `Unread`."""
    most = limits.LARGEST.get(name[name.rfind(".") :].casefold(), limits.LARGEST[".ttf"])
    try:
        if not isinstance(file, Path) or not isinstance(folder, Path):
            return file.read_bytes()  # the program's own, wherever it is kept
        data = _bytes(_inside(folder, file), most)
    except (OSError, RuntimeError, ValueError) as error:
        raise Unread(reason(error)) from error
    if len(data) > most:
        raise Unread(f"it is larger than {most // 1000:,} kilobytes")
    return data


def reason(error: Exception) -> str:
    """Why something cannot be opened, in words."""
    return (getattr(error, "strerror", None) or "it cannot be opened").casefold()


def _walk(
    folder: Traversable, under: str, depth: int, made: FolderFiles
) -> Iterator[tuple[str, Traversable]]:
    for file in sorted(folder.iterdir(), key=lambda f: f.name):
        name = under + file.name
        made.looked_at += 1
        if made.looked_at == limits.MOST_ENTRIES:
            made.unread.append((name, f"the folder holds more than {limits.MOST_ENTRIES:,} names"))
        if made.looked_at >= limits.MOST_ENTRIES:
            return
        if file.name.startswith((".", "__pycache__")):
            continue
        linked = isinstance(file, Path) and file.is_symlink()
        if linked and _is_folder(file):
            made.unread.append((name, "it is a link to a folder; only a file may be a link"))
        elif not linked and _is_folder(file):
            if depth < limits.DEEPEST:
                yield from _walk(file, f"{name}/", depth + 1, made)
            else:
                made.unread.append((name, f"folders lie more than {limits.DEEPEST} deep"))
        elif file.name.endswith(PRINTED):
            yield name, file


def _is_folder(file: Traversable) -> bool:
    try:
        return file.is_dir()
    except OSError:
        return False


def _inside(folder: Path, file: Path) -> Path:
    """Where the file really is. Raises `Unread` where that is outside the folder."""
    try:
        real = file.resolve(strict=True)
    except (OSError, RuntimeError) as error:
        if file.is_symlink():
            raise Unread("it is a link that leads nowhere") from error
        raise
    if not real.is_relative_to(folder.resolve(strict=True)):
        raise Unread(OUTSIDE)
    return real


def _bytes(real: Path, most: int) -> bytes:
    """Up to one more byte than ``most`` of a plain file; never waits for a pipe."""
    never = getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOFOLLOW", 0)
    handle = os.open(real, os.O_RDONLY | never | getattr(os, "O_BINARY", 0))
    with os.fdopen(handle, "rb") as opened:
        if not stat.S_ISREG(os.fstat(handle).st_mode):
            raise Unread("it is no plain file")
        return opened.read(most + 1)

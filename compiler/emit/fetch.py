"""What a page may ask for: our pictures and the theme's own files, and nothing else.

A theme may come from another coach. Its pages can name any address, so every address is
answered here: ``stemline:picture/ID``, ``stemline:font/FACE`` and ``stemline:theme/FILE``.
No other scheme, no file outside the theme's folders, no network.

A file is taken from the theme's own folder, else from the theme that it extends. A style sheet is
read after that of the theme below it, so that it may hold only what differs.
"""

from __future__ import annotations

from collections.abc import Mapping
from importlib.resources.abc import Traversable

from stemline.theme import Theme

SCHEME = "stemline:"

_KINDS = {".css": "text/css", ".svg": "image/svg+xml", ".png": "image/png", ".ttf": "font/ttf"}


class Refused(ValueError):
    """A page asked for something that is neither a picture of the book nor a theme's file, or a
    template of the theme cannot be filled in."""


def theme_files(theme: Theme, ending: str) -> dict[str, Traversable]:
    """The files at the top of the theme's folders by name, its own before those it extends."""
    return {
        file.name: file
        for folder in reversed(theme.folders)
        for file in folder.iterdir()
        if file.name.endswith(ending) and file.is_file()
    }


def answer(url: str, theme: Theme, pictures: Mapping[str, str]) -> tuple[bytes, str]:
    """The bytes behind ``url`` and their media type. Raises `Refused`."""
    kind, _, name = url.removeprefix(SCHEME).partition("/")
    if not url.startswith(SCHEME) or not name:
        raise Refused(f"{url} is outside the book: only its pictures and its theme are read")
    if kind == "picture" and name in pictures:
        return pictures[name].encode(), "image/svg+xml"
    if kind == "font" and name in theme.fonts:
        return theme.fonts[name], "font/ttf"
    if kind == "theme":
        return _theme_file(url, name, theme)
    raise Refused(f"{url}: the book has no such {kind}")


def _theme_file(url: str, name: str, theme: Theme) -> tuple[bytes, str]:
    media = _KINDS.get(name[name.rfind(".") :])
    held = [file for folder in theme.folders if (file := _in_folder(folder, name)) is not None]
    if not held:
        raise Refused(f"{url}: the theme has no such file")
    if media is None:
        raise Refused(f"{url}: not a kind of file that a page may use")
    if media == "text/css":
        return b"\n".join(file.read_bytes() for file in reversed(held)), media
    return held[0].read_bytes(), media


def _in_folder(folder: Traversable, name: str) -> Traversable | None:
    """A file below ``folder``, one level of plain names at a time."""
    file = folder
    for part in name.split("/"):
        if not file.is_dir() or part not in {child.name for child in file.iterdir()}:
            return None
        file = file / part
    return file if file.is_file() else None

"""What a page may ask for: our pictures and the theme's own files, and nothing else.

A theme may come from another coach. Its pages can name any address, so every address is
answered here: ``stemline:picture/ID``, ``stemline:font/FACE`` and ``stemline:theme/FILE``.
No other scheme, no network, and no file at all: a theme's files were read when it was found.

A file is taken from the theme's own folder, else from the theme that it extends. A style sheet is
read after that of the theme below it, so that it may hold only what differs.
"""

from __future__ import annotations

from collections.abc import Mapping

from stemline.diagnostics.catalogue.themes import E916
from stemline.theme import Refused, Theme, refused_at, where_said

__all__ = ["SCHEME", "Refused", "answer", "theme_files"]

SCHEME = "stemline:"

_KINDS = {".css": "text/css", ".svg": "image/svg+xml", ".png": "image/png", ".ttf": "font/ttf"}


def theme_files(theme: Theme, ending: str) -> dict[str, bytes]:
    """The files at the top of the theme's folders by name, its own before those it extends."""
    return {
        name: data
        for layer in reversed(theme.layers)
        for name, data in layer.files.items()
        if name.endswith(ending) and "/" not in name
    }


def answer(url: str, theme: Theme, pictures: Mapping[str, str]) -> tuple[bytes, str]:
    """The bytes behind ``url`` and their media type. Raises `Refused`."""
    kind, _, name = url.removeprefix(SCHEME).partition("/")
    if not url.startswith(SCHEME) or not name:
        why = f"{_short(url)} is outside the book: only its pictures and its theme are read"
        raise _refused(theme, url, why)
    if kind == "picture" and name in pictures:
        return pictures[name].encode(), "image/svg+xml"
    if kind == "font" and name in theme.fonts:
        return theme.fonts[name], "font/ttf"
    if kind == "theme":
        return _theme_file(url, name, theme)
    raise _refused(theme, url, f"{_short(url)}: the book has no such {_short(kind)}")


def _theme_file(url: str, name: str, theme: Theme) -> tuple[bytes, str]:
    media = _KINDS.get(name[name.rfind(".") :])
    held = [layer.files[name] for layer in theme.layers if name in layer.files]
    if not held:
        raise _refused(theme, url, f"{_short(url)}: the theme has no such file")
    if media is None:
        raise _refused(theme, url, f"{_short(url)}: not a kind of file that a page may use")
    if media == "text/css":
        return b"\n".join(reversed(held)), media
    return held[0], media


def _refused(theme: Theme, url: str, why: str) -> Refused:
    """At the line of the theme where the address stands, as far as it is written out there."""
    file, line = where_said(theme, (url, url.removeprefix(f"{SCHEME}theme/")))
    return refused_at(theme, file, line, E916(why=why))


def _short(url: str) -> str:
    return url if len(url) <= 100 else url[:97] + "..."

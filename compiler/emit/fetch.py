"""What a page may ask for: our pictures and the theme's own files, and nothing else.

A theme may come from another coach. Its pages can name any address, so every address is
answered here: ``stemline:picture/ID``, ``stemline:font/FACE`` and ``stemline:theme/FILE``.
No other scheme, no file outside the theme's folder, no network.
"""

from __future__ import annotations

from collections.abc import Mapping
from importlib.abc import Traversable
from importlib.resources import files

from stemline.theme import Theme

SCHEME = "stemline:"

_KINDS = {".css": "text/css", ".svg": "image/svg+xml", ".png": "image/png", ".ttf": "font/ttf"}


class Refused(ValueError):
    """A page asked for something that is neither a picture of the book nor a theme's file."""


def theme_folder(theme: Theme) -> Traversable:
    """The bundled folder of the theme's templates and style sheets."""
    own = files("stemline.themes") / theme.name
    return own if (own / "book.html.jinja").is_file() else files("stemline.themes") / "plain"


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
    """A file of the theme's folder, one level of plain names at a time."""
    file = theme_folder(theme)
    for part in name.split("/"):
        if not file.is_dir() or part not in {child.name for child in file.iterdir()}:
            raise Refused(f"{url}: the theme has no such file")
        file = file / part
    media = _KINDS.get(name[name.rfind(".") :])
    if media is None or not file.is_file():
        raise Refused(f"{url}: not a kind of file that a page may use")
    return file.read_bytes(), media

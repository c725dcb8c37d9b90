"""A page gets the book's pictures and the theme's own files, and nothing else."""

from __future__ import annotations

import pytest

from stemline.emit.fetch import Refused, answer
from stemline.theme import Theme

PICTURES = {"call-1": "<svg/>"}


def test_pictures_fonts_and_theme_files(theme: Theme) -> None:
    assert answer("stemline:picture/call-1", theme, PICTURES) == (b"<svg/>", "image/svg+xml")
    assert answer("stemline:font/regular", theme, PICTURES)[0] == theme.fonts["regular"]
    body, media = answer("stemline:theme/book.css", theme, PICTURES)
    assert media == "text/css"
    assert b"@page" in body


@pytest.mark.parametrize(
    "url",
    [
        "file:///etc/passwd",
        "http://localhost/x.png",
        "https://example.org/x.css",
        "data:image/svg+xml,<svg/>",
        "ftp://example.org/x",
        "/etc/passwd",
        "book.css",
        "stemline:",
        "stemline:picture/call-2",
        "stemline:picture/../theme.toml",
        "stemline:font/nobody",
        "stemline:theme/../__init__.py",
        "stemline:theme/fonts/../../__init__.py",
        "stemline:theme//etc/passwd",
        "stemline:theme/fonts",
        "stemline:theme/theme.toml",
        "stemline:theme/book.css/x",
        "STEMLINE:theme/book.css",
        "stemline:secrets/x",
    ],
)
def test_everything_else_is_refused(url: str, theme: Theme) -> None:
    with pytest.raises(Refused):
        answer(url, theme, PICTURES)

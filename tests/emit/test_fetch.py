"""A page gets the book's pictures and the theme's own files, and nothing else."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from stemline.emit.fetch import Refused, answer, theme_files
from stemline.theme import Theme, ThemeFolder, load_theme, read_theme

PICTURES = {"call-1": "<svg/>"}


def above(theme: Theme, **files: str) -> Theme:
    """The theme with a folder of these files over it; in a name, two strokes stand for a dot."""
    held = {name.replace("__", "."): text.encode() for name, text in files.items()}
    return replace(theme, layers=(ThemeFolder("mine", held), *theme.layers))


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


def test_a_file_comes_from_the_theme_itself_before_the_one_below(theme: Theme) -> None:
    mine = above(theme, cover__svg="<svg id='mine'/>", macros__html__jinja="mine")
    assert answer("stemline:theme/cover.svg", mine, {})[0] == b"<svg id='mine'/>"
    templates = theme_files(mine, ".jinja")
    assert templates["macros.html.jinja"] == b"mine"
    assert templates["book.html.jinja"]


def test_a_style_sheet_is_read_after_the_one_below(theme: Theme) -> None:
    mine = above(theme, book__css="h1 { color: red }")
    body, _ = answer("stemline:theme/book.css", mine, {})
    plain, _ = answer("stemline:theme/book.css", theme, {})
    assert body == plain + b"\nh1 { color: red }"


def test_a_folder_of_ones_own_is_no_door_to_others(tmp_path: Path) -> None:
    own = tmp_path / "own"
    own.mkdir()
    (tmp_path / "secret.css").write_text("x", "utf-8")
    (own / "theme.toml").write_text("", "utf-8")
    mine = read_theme(own, "own").theme
    assert mine is not None
    for url in ("stemline:theme/../secret.css", f"stemline:theme/{tmp_path}/secret.css"):
        with pytest.raises(Refused):
            answer(url, mine, {})


def test_the_dark_theme_brings_its_own_cover() -> None:
    dark = load_theme("dark")
    assert dark.colours.ground.encode() in answer("stemline:theme/cover.svg", dark, {})[0]
    assert answer("stemline:theme/book.css", dark, {})[0].startswith(b"/*")

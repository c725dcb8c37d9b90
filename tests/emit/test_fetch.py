"""A page gets the book's pictures and the theme's own files, and nothing else."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from stemline.emit.fetch import Refused, answer, theme_files
from stemline.theme import Theme, load_theme

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


def test_a_file_comes_from_the_theme_itself_before_the_one_below(
    theme: Theme, tmp_path: Path
) -> None:
    (tmp_path / "cover.svg").write_text("<svg id='mine'/>", "utf-8")
    (tmp_path / "macros.html.jinja").write_text("mine", "utf-8")
    mine = replace(theme, folders=(tmp_path, *theme.folders))
    assert answer("stemline:theme/cover.svg", mine, {})[0] == b"<svg id='mine'/>"
    templates = theme_files(mine, ".jinja")
    assert templates["macros.html.jinja"] == tmp_path / "macros.html.jinja"
    assert templates["book.html.jinja"].read_text("utf-8")


def test_a_style_sheet_is_read_after_the_one_below(theme: Theme, tmp_path: Path) -> None:
    (tmp_path / "book.css").write_text("h1 { color: red }", "utf-8")
    body, _ = answer(
        "stemline:theme/book.css", replace(theme, folders=(tmp_path, *theme.folders)), {}
    )
    plain, _ = answer("stemline:theme/book.css", theme, {})
    assert body == plain + b"\nh1 { color: red }"


def test_a_folder_of_ones_own_is_no_door_to_others(theme: Theme, tmp_path: Path) -> None:
    own = tmp_path / "own"
    own.mkdir()
    (tmp_path / "secret.css").write_text("x", "utf-8")
    mine = replace(theme, folders=(own, *theme.folders))
    for url in ("stemline:theme/../secret.css", f"stemline:theme/{tmp_path}/secret.css"):
        with pytest.raises(Refused):
            answer(url, mine, {})


def test_the_dark_theme_brings_its_own_cover() -> None:
    dark = load_theme("dark")
    assert dark.colours.ground.encode() in answer("stemline:theme/cover.svg", dark, {})[0]
    assert answer("stemline:theme/book.css", dark, {})[0].startswith(b"/*")

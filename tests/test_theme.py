"""Themes are data: what a coach may change, and what he may not break."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from stemline.theme import SMALLEST_TYPE, Size, ThemeError, load_theme, read_theme


def copy(folder: Path, old: str, new: str) -> Path:
    """The bundled theme in a folder of its own, one piece of its table changed."""
    plain = files("stemline.themes") / "plain"
    (folder / "fonts").mkdir()
    for font in (plain / "fonts").iterdir():
        (folder / "fonts" / font.name).write_bytes(font.read_bytes())
    table = (plain / "theme.toml").read_text(encoding="utf-8")
    assert old in table
    (folder / "theme.toml").write_text(table.replace(old, new, 1), encoding="utf-8")
    return folder


def test_the_plain_theme_has_every_role_at_both_sizes() -> None:
    theme = load_theme()
    full, thumb = theme.look(Size.FULL), theme.look(Size.THUMB)
    assert full.pens.keys() == thumb.pens.keys()
    assert full.width == pytest.approx(7.3 * 72)
    assert thumb.width == pytest.approx(2.3 * 72)
    assert theme.fonts.keys() == {"regular", "semibold", "bold", "italic"}


def test_every_face_has_its_licence_beside_it() -> None:
    fonts = files("stemline.themes") / "plain" / "fonts"
    assert "SIL Open Font License" in (fonts / "OFL.txt").read_text(encoding="utf-8")


def test_no_type_is_smaller_than_six_points_whatever_the_table_says(tmp_path: Path) -> None:
    changed = read_theme(copy(tmp_path, "size = [8.4, 6.2]", "size = [4.0, 3.0]"), "mine")
    assert changed.look(Size.FULL).types["letter"].points == SMALLEST_TYPE
    for size in Size:
        assert min(t.points for t in load_theme().look(size).types.values()) >= SMALLEST_TYPE


def test_the_digest_follows_the_table(tmp_path: Path) -> None:
    changed = read_theme(copy(tmp_path, "weight = [1.45, 0.95]", "weight = [2.0, 1.2]"), "mine")
    assert changed.look(Size.FULL).pens["route"].weight == 2.0
    assert changed.digest != load_theme().digest


@pytest.mark.parametrize(
    ("old", "new"),
    [("[font]", "[font"), ('face = "bold"', 'face = "black"'), ("[picture]", "[pictures]")],
)
def test_a_broken_theme_says_which_and_why(tmp_path: Path, old: str, new: str) -> None:
    with pytest.raises(ThemeError, match="theme mine"):
        read_theme(copy(tmp_path, old, new), "mine")


def test_a_theme_that_is_not_there() -> None:
    with pytest.raises(ThemeError, match="theme no-such"):
        load_theme("no-such")

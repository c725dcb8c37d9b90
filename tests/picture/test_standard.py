"""The drawing standard prints the theme's own numbers."""

from __future__ import annotations

from pathlib import Path

import pytest

from stemline.theme import load_theme

from .standard_tables import tables

STANDARD = (Path(__file__).parents[2] / "themes" / "standard.md").read_text("utf-8")
TABLES = tables(load_theme())


@pytest.mark.parametrize("heading", TABLES)
def test_the_tables_are_the_themes(heading: str) -> None:
    assert f"### {heading}\n\n{TABLES[heading]}\n" in STANDARD

"""The book can be read aloud: its PDF is tagged and every figure says what it shows."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from click.testing import CliRunner
from pypdf import PdfReader

from stemline.commands import main


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory, kept: None) -> Path:
    """The starter playbook's output folder."""
    folder = tmp_path_factory.mktemp("spoken") / "mine"
    for command in ("new", "build"):
        result = CliRunner().invoke(main, [command, str(folder)])
        assert result.exit_code == 0, result.stderr
    return folder / "build"


@pytest.fixture(scope="module")
def figures(built: Path) -> list[str]:
    """The alternative text of every figure, in reading order; "" where one has none."""
    root: Any = PdfReader(built / "book.pdf").trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    return [str(figure.get("/Alt", "")) for figure in _figures(root["/StructTreeRoot"])]


def _figures(node: Any) -> Iterator[Any]:
    node = node.get_object()
    if isinstance(node, list):
        for child in node:
            yield from _figures(child)
    elif isinstance(node, dict):
        if node.get("/S") == "/Figure":
            yield node
        if "/K" in node:
            yield from _figures(node["/K"])


def test_every_figure_has_words(figures: list[str]) -> None:
    assert len(figures) > 20
    assert "" not in figures


def test_a_figures_words_are_its_pictures(built: Path, figures: list[str]) -> None:
    said = []
    for path in sorted((built / "pictures").glob("*.svg")):
        desc = ElementTree.fromstring(path.read_text("utf-8")).findtext("{*}desc")
        assert desc
        said.append(desc)
    # A mirror, and the sum of two pictures, are named on a page and not drawn there.
    drawn = set(said) & set(figures)
    assert drawn == {words for words in figures if words in said}
    assert len(drawn) >= len(said) / 2


def test_a_screen_reader_knows_each_picture(built: Path) -> None:
    """An SVG is an image with a title and a description of its own."""
    for path in (built / "pictures").glob("*.svg"):
        root = ElementTree.fromstring(path.read_text("utf-8"))
        assert root.get("role") == "img"
        title, desc = root.findtext("{*}title"), root.findtext("{*}desc")
        assert title and desc and desc.startswith(f"{title}. ")

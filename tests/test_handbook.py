"""The handbook: every sample with what it draws, every mark of the pages read, the same bytes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import pytest
from click.testing import CliRunner

from stemline.commands import main
from stemline.emit.handbook_pages import HandbookPart, PartKind, handbook_html, handbook_pdf
from stemline.handbook.making import PAGES
from stemline.handbook.page_parts import page_parts
from stemline.handbook.page_samples import samples_of
from stemline.theme import load_theme

_DRAWN = {"concept", "run", "formation", "motion", "route", "look", "protection", "tag"}


def page(name: str) -> str:
    return files("stemline.grammar").joinpath(name).read_text("utf-8")


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> str:
    file = tmp_path_factory.mktemp("handbook") / "handbook.html"
    result = CliRunner().invoke(main, ["handbook", "-o", str(file)])
    assert (result.exit_code, result.stderr) == (0, "")
    return file.read_text("utf-8")


def test_every_block_that_can_be_drawn_is(written: str) -> None:
    titles = re.findall(r"<figcaption>(.*?)</figcaption>", written)
    assert len(titles) == written.count("<svg ")
    for sample in samples_of(page(PAGES[0])):
        shown = [block for block in sample.blocks if block.kind in _DRAWN]
        for block in shown:
            name = block.name.text.casefold()
            assert any(title.casefold().endswith(name) for title in titles), name


def test_ids_are_given_once_and_links_lead_to_one(written: str) -> None:
    ids = re.findall(r'\bid="([^"]+)"', written)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r'href="#([^"]+)"', written)) <= set(ids)
    assert "http" not in re.sub(r'xmlns(:\w+)?="[^"]+"', "", written)


def words_of(part: HandbookPart) -> Iterator[str]:
    for line in (*part.lines, *(cell for row in part.rows for cell in row)):
        yield from (words.text for words in line if words.style != "code")


@pytest.mark.parametrize("name", PAGES)
def test_no_mark_of_a_page_comes_out_as_a_mark(name: str) -> None:
    parts = page_parts(page(name))
    said = [text for part in parts for text in words_of(part)]
    assert not [text for text in said if re.search(r"[`*\[\]|]|---", text)]
    assert {part.kind for part in parts} >= {PartKind.HEADING, PartKind.PROSE, PartKind.TABLE}


@pytest.mark.parametrize("name", PAGES)
def test_no_word_of_a_page_is_lost(name: str) -> None:
    """What the parts say, with marks and blanks off, is what the page says."""

    def bare(text: str) -> str:
        return re.sub(r"[\s`*|#-]", "", text)

    text = re.sub(r"^!\[.*$|^```.*$", "", page(name), flags=re.MULTILINE)
    text = re.sub(r"^\d+\. ", "", text, flags=re.MULTILINE)
    wanted = bare(re.sub(r"\[([^]]*)\]\([^)]*\)", r"\1", text))
    parts = page_parts(page(name))
    lines = ((*part.lines, *(cell for row in part.rows for cell in row)) for part in parts)
    said = ["".join(words.text for line in each for words in line) for each in lines]
    told = "".join(text or part.text for text, part in zip(said, parts, strict=True))
    assert bare(told) == wanted


def test_the_same_pages_are_the_same_bytes() -> None:
    parts, theme = page_parts(page("season.md"))[:6], load_theme("dark")
    assert handbook_pdf(parts, "T", theme, "a4", "") == handbook_pdf(parts, "T", theme, "a4", "")
    assert theme.colours.ink in handbook_html(parts, "T", theme, "a4")


def test_what_is_wrong_leaves_the_last_one(tmp_path: Path) -> None:
    file = tmp_path / "handbook.pdf"
    file.write_bytes(b"the last one")
    for wrong in (["-o", str(file.with_suffix(".doc"))], ["-o", str(file), "--theme", "drak"]):
        result = CliRunner().invoke(main, ["handbook", *wrong])
        assert result.exit_code == 2
        assert "error E" in result.stderr
        assert "Traceback" not in result.stderr
    assert file.read_bytes() == b"the last one"

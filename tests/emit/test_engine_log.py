"""A picture that fails fails the document, and an interrupt always comes through."""

from __future__ import annotations

from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pytest
import weasyprint.svg

from stemline.emit.engine_log import PictureFailed
from stemline.emit.gallery import Art, Gallery
from stemline.emit.pdf import pages_pdf
from stemline.emit.single import picture_pdf, picture_png
from stemline.theme import Theme, load_theme, read_theme

GOOD = '<svg xmlns="http://www.w3.org/2000/svg" width="9pt" height="9pt"><path d="M1 1H8"/></svg>'
PAGE = '<html lang="en"><title>p</title><img src="stemline:picture/a" alt="a"></html>'


def page(svg: str, html: str = PAGE, theme: Theme | None = None) -> bytes:
    art = Art("a", svg, "a line", 9, 9, "Doubles Right Stick")
    return pages_pdf(html, Gallery((art,)), theme or load_theme(), "")


def test_a_good_picture_is_drawn() -> None:
    assert page(GOOD).startswith(b"%PDF")


@pytest.mark.parametrize("svg", [GOOD[:40], GOOD.replace("M1", "\x0bM1"), "", "no picture"])
def test_a_picture_that_cannot_be_read_stops_the_document_by_its_name(svg: str) -> None:
    with pytest.raises(PictureFailed) as failed:
        page(svg)
    assert failed.value.address == "Doubles Right Stick"
    assert failed.value.why


def failing(error: BaseException) -> Callable[..., None]:
    def draw(*args: object, **more: object) -> None:
        raise error

    return draw


def test_a_picture_that_fails_half_drawn_stops_the_document(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(weasyprint.svg.SVG, "draw_node", failing(ZeroDivisionError("by nothing")))
    with pytest.raises(PictureFailed, match="Doubles Right Stick cannot be drawn: by nothing"):
        page(GOOD)


def test_an_interrupt_in_the_middle_of_a_picture_comes_through(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The engine catches it there, and would go on without the picture."""
    monkeypatch.setattr(weasyprint.svg.SVG, "draw_node", failing(KeyboardInterrupt()))
    with pytest.raises(KeyboardInterrupt):
        page(GOOD)


def test_a_themes_picture_that_cannot_be_read_stops_the_document(tmp_path: Path) -> None:
    (tmp_path / "theme.toml").write_text("", "utf-8")
    (tmp_path / "cover.svg").write_text("<svg", "utf-8")
    html = PAGE.replace("picture/a", "theme/cover.svg")
    found = read_theme(tmp_path, "mine")
    if found.theme is None:
        return
    with pytest.raises(PictureFailed, match=r"stemline:theme/cover\.svg cannot be drawn"):
        page(GOOD, html, found.theme)


def test_one_picture_as_pdf_and_in_dots() -> None:
    cover = files("stemline.themes") / "plain" / "cover.svg"
    art = Art("call", cover.read_text("utf-8"), "words", 30, 30, "A <call>")
    assert picture_pdf(art, load_theme()) == picture_pdf(art, load_theme())
    assert picture_pdf(art, load_theme()).startswith(b"%PDF")
    assert picture_png(art, load_theme()).startswith(b"\x89PNG")

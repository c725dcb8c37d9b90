"""The engine with its memories lays out what it lays out without them."""

from __future__ import annotations

from contextlib import nullcontext

import pydyf
import pypdfium2
import pytest
import weasyprint
from sample_gallery import CAPTIONS, gallery_of
from sample_season import sample_season
from tinyhtml5 import inputstream
from weasyprint.css import ComputedStyle, InitialStyle
from weasyprint.formatting_structure.boxes import Box
from weasyprint.layout import leader, percent
from weasyprint.text import fonts, line_break

from stemline.book.content.book import Edition, make_book
from stemline.book.layout.plans import plain_layout
from stemline.emit import engine, engine_memory
from stemline.emit.engine_kinds import kind_of
from stemline.emit.gallery import Gallery
from stemline.emit.html import book_html
from stemline.emit.parts import Part, Press, part_of
from stemline.emit.pdf import pages_pdf
from stemline.theme import load_theme

TRIED = (
    """<style>
.two { columns: 2; column-gap: 9pt; width: 60% }
.bar { padding: 1% calc(1pt + 1%); box-sizing: border-box; width: 50% }
.bent { text-decoration: underline; letter-spacing: 1pt; text-align: justify;
 line-height: calc(1em + 4pt) }
.tight { white-space: nowrap; overflow: hidden; text-overflow: ellipsis; width: 40pt }
.side { margin-inline: 9pt 2pt; padding-block-end: 3pt; border-inline-start: 2pt solid }
.side b { direction: inherit; padding: initial; margin-left: calc(1em + 1pt); --room: 4pt;
 padding-inline-end: var(--room); display: inline-block; float: none }
.side i { position: absolute; right: 0 } .two b { float: right }
.broken { overflow-wrap: anywhere; width: 30pt } table { border-collapse: collapse; width: 80% }
td { border: 1pt solid; padding: 1pt 2% }
#tight b { border: 1pt solid; border-radius: 2pt 0; position: absolute; bottom: 0 }
.two { border: 1pt solid; position: relative; color: var(--ink) }
:root { --ink: #102030 }
</style><body lang="en">"""
    + "".join(
        f"""<p class="{kind}" id="{kind}">Read the corner, then the hitch behind him; throw it
    awaybythetime
    he turns round, and do not wait for anybody <b>{kind}</b> <i>else</i>.</p>"""
        for kind in ("two", "bar", "bent", "tight", "side", 'side" dir="rtl', "broken", "")
    )
    + "<table><tr><td>One<td>two three four</table>"
    + "<table style='border-collapse: separate; margin: 9pt; padding: 5pt'><tr><td>Five</table>"
)


OTHERWISE = (
    ("60%", "70%"),
    ("--room: 4pt", "--room: 9pt"),
    ("#102030", "#908070"),
    ("float: right", "float: left"),
    ("", ""),
)
"""Documents in the same fonts, each otherwise in one thing that others hang on."""


def test_with_memories_every_line_and_length_is_as_without(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    theme = load_theme()
    book = make_book(sample_season(), Edition("", ""), CAPTIONS)
    gallery = gallery_of(sample_season(), CAPTIONS)
    shown = book.pages[-1:]
    html = book_html(book, gallery, plain_layout(book), theme, shown=shown, opening=False)
    page, press = part_of("", html, gallery), Press(theme)

    def made() -> list[object]:
        tried = [TRIED, *(TRIED.replace(*each) for each in OTHERWISE)]
        return [press.measure(page), *(press.set(Part("", html)).packed() for html in tried)]

    with_memories = made()
    of = (
        line_break.split_first_line,
        line_break.strut,
        line_break.can_break_text,
        fonts.get_font_description,
        percent.resolve_percentages,
        percent.resolve_radii_percentages,
    )
    for memory in of:
        engine_memory._put(memory, memory.__wrapped__)
    monkeypatch.setattr(pydyf, "_to_bytes", pydyf._to_bytes.__wrapped__)
    monkeypatch.setattr(ComputedStyle, "__missing__", ComputedStyle.__missing__.__wrapped__)
    monkeypatch.setattr(ComputedStyle, "copy", ComputedStyle.copy.__wrapped__)
    monkeypatch.setattr(inputstream, "characters_until_regex", {})
    monkeypatch.setattr(engine, "_fonts_left", nullcontext)
    monkeypatch.setattr(Box, "is_in_normal_flow", Box.is_in_normal_flow.__wrapped__)
    monkeypatch.setattr(engine, "without_notes", lambda html: html)
    try:
        assert with_memories == made()
    finally:
        for memory in of:
            engine_memory._put(memory.__wrapped__, memory)


def test_a_copy_of_a_style_is_of_no_kind() -> None:
    """It is made to be changed."""
    engine_memory.remember()
    fonts_of = fonts.FontConfiguration()
    style = ComputedStyle(None, {}, None, InitialStyle(fonts_of), "", fonts_of, {})
    assert kind_of(style) is not None
    assert kind_of(style.copy()) is None


def test_a_leader_of_spaces_draws_nothing_and_one_of_dots_all() -> None:
    def document(letter: str) -> bytes:
        after = f"p::after {{ content: leader('{letter}') '12' }}"
        html = f'<html lang="en"><title>-</title><style>{after}</style><p>Smash<p>Sail <i>high</i>'
        return pages_pdf(html, Gallery(()), load_theme(), "")

    def shown(pdf: bytes) -> tuple[str, bytes]:
        page = pypdfium2.PdfDocument(pdf)[0]
        return page.get_textpage().get_text_range(), page.render().to_pil().tobytes()

    spaces, dots = document(" "), document(".")
    handle = leader.handle_leader
    engine_memory._put(handle, handle.__wrapped__)
    try:
        assert dots == document(".")
        whole = document(" ")
    finally:
        engine_memory._put(handle.__wrapped__, handle)
    assert shown(spaces) == shown(whole)
    assert len(spaces) < len(whole)


def test_the_engine_is_one_whose_functions_were_read() -> None:
    """Another one is slow and right: read what `engine_memory` stands before, then add it there."""
    assert (weasyprint.__version__, pydyf.__version__) in engine_memory._KNOWN

"""Letters of the pages that players are handed are 6 points or more after a copy at 64 %."""

from __future__ import annotations

import ctypes
import re
from collections.abc import Iterator
from importlib.resources import files

import pypdfium2
import pypdfium2.raw as pdfium

from stemline.book.content.book import Book
from stemline.theme import SMALLEST_TYPE, Size, Theme

COPY = 0.64
"""An office copier's two pages on one sheet of the same size."""
LEAST = SMALLEST_TYPE / COPY - 0.01
FOOT = 38.0
"""Points of the lower margin: revision and date, which tell a coach whose sheet it is."""
NOT_FOR_PLAYERS = {
    ".foot-left": "revision and date",
    ".foot-middle": "the caution of every foot, which stands on the cover and on the page of care",
    ".index .line": "a caller looks a call up",
    ".index .third .line": "a caller looks a call up",
    ".index h4": "a caller looks a call up",
    ".cover.plan thead th": "the caller's page of a week",
    ".cover.plan .pages": "the caller's page of a week",
    ".cover.plan .caution": "the caller's page of a week; the whole of it stands in the book",
}
"""Styles that are smaller, and why they may be."""
NOT_LARGE = {
    "lineman": "he is known by where he stands, and the table beside names him",
    "before-letter": "what has changed between two seasons, for the staff",
}
PRINTED = {Size.FULL: 1.0, Size.THUMB: 1.5}
"""How much larger than its own size each picture stands on a page with men's jobs."""


def letters(page: pypdfium2.PdfPage) -> Iterator[tuple[float, str]]:
    """Size in points and letter, of all that stands above the foot."""
    text, matrix = page.get_textpage(), pdfium.FS_MATRIX()
    for at in range(text.count_chars()):
        letter = chr(pdfium.FPDFText_GetUnicode(text, at))
        if letter.isspace() or text.get_charbox(at)[1] < FOOT:
            continue
        pdfium.FPDFText_GetMatrix(text, at, ctypes.byref(matrix))
        grown = (matrix.c**2 + matrix.d**2) ** 0.5
        yield pdfium.FPDFText_GetFontSize(text, at) * grown, letter


def test_letters_of_every_page_but_the_index_are_read_on_a_copy(pdf: bytes, book: Book) -> None:
    document = pypdfium2.PdfDocument(pdf)
    found = [list(letters(page)) for page in document][: -len(book.index.pages)]
    assert sum(map(len, found)) > 4000
    small = [
        (number, round(size, 1), letter)
        for number, page in enumerate(found, 1)
        for size, letter in page
        if size < LEAST
    ]
    assert not small, small[:20]


def test_no_style_of_a_players_page_is_smaller() -> None:
    """The sample book has not every kind of page; the sheet of styles has."""
    sheet = files("stemline.themes").joinpath("plain", "book.css").read_text("utf-8")
    sheet = re.sub(r"/\*.*?\*/", "", sheet, flags=re.S)
    small = {
        name.strip()
        for names, says in re.findall(r"([^{}]+)\{([^{}]*)\}", sheet)
        for size in re.findall(r"font(?:-size)?:\s*([\d.]+)pt", says)
        if float(size) < LEAST
        for name in names.split(",")
    }
    assert small == set(NOT_FOR_PLAYERS)


def test_letters_in_pictures_are_read_on_a_copy(theme: Theme) -> None:
    for size, grown in PRINTED.items():
        types = theme.look(size).types
        small = {name for name, each in types.items() if each.points * grown < LEAST}
        assert small <= set(NOT_LARGE), size


def test_rules_between_rows_are_left_by_a_hard_copy() -> None:
    """A thin line paler than half is white on a copy in black and white, and two rows are one."""
    plain = files("stemline.themes").joinpath("plain")
    shades = {
        (name, float(grey))
        for name in ("book.html.jinja", "contact.html.jinja", "week-head.html.jinja")
        for grey in re.findall(
            r"--(?:soft|hair): {{ colours\.shade\(([\d.]+)\) }}",
            plain.joinpath(name).read_text("utf-8"),
        )
    }
    assert len(shades) == 6
    assert not [each for each in shades if each[1] >= 0.5]

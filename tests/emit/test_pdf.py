"""The book as a PDF: what can be read back from it."""

from __future__ import annotations

import builtins
import io
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from importlib.resources import files
from typing import Any

import pytest
from fontTools.misc.timeTools import timestampFromString, timestampNow
from pypdf import PdfReader
from pypdfium2 import PdfDocument
from sample_gallery import CAPTIONS, gallery_of

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.drawn_calls import places
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.page import call_ids
from stemline.book.paper import Paper
from stemline.emit.engine import Engine
from stemline.emit.fetch import Refused
from stemline.emit.gallery import Gallery
from stemline.emit.pdf import PangoMissing, pages_pdf, to_pdf
from stemline.football.play import Season
from stemline.outside.project import CHANGED
from stemline.theme import Theme, ThemeFolder

Outline = list[tuple[int, str, int]]
"""Level, title and page number from 1."""


@pytest.fixture(scope="session")
def reader(pdf: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(pdf))


@pytest.fixture(scope="session")
def texts(reader: PdfReader) -> list[str]:
    return [page.extract_text() for page in reader.pages]


def outline(reader: PdfReader) -> Outline:
    def walk(items: list[Any], level: int) -> Iterator[tuple[int, str, int]]:
        for item in items:
            if isinstance(item, list):
                yield from walk(item, level + 1)
            else:
                number = reader.get_destination_page_number(item)
                yield level, item.title, -1 if number is None else number + 1

    return list(walk(reader.outline, 1))


def captions(reader: PdfReader) -> dict[str, int]:
    """Every call's page, by the outline's entry for its caption."""
    return {title: page for level, title, page in outline(reader) if level == 3}


def test_every_call_is_printed_whole(season: Season, texts: list[str]) -> None:
    for play in season.plays:
        assert any(play.call.spoken in text for text in texts), play.call.spoken


def test_captions_stand_on_their_page_in_book_order(
    season: Season, reader: PdfReader, texts: list[str]
) -> None:
    at = dict.fromkeys(range(1, len(texts) + 1), 0)
    pages = captions(reader)
    homes = zip(season.plays, call_ids(season), places(season), strict=True)
    for number, (play, own, home) in enumerate(homes, 1):
        if own != home:
            continue
        call, page = play.call.spoken, pages[play.call.spoken]
        found = texts[page - 1].find(call, at[page])
        assert found >= 0, call
        at[page] = found + len(call)
        place = reader.get_destination_page_number(reader.named_destinations[f"call-{number}"])
        assert place == page - 1


def test_the_index_gives_the_page_where_the_caption_stands(
    season: Season, reader: PdfReader, texts: list[str]
) -> None:
    (index_from,) = (page for _, title, page in outline(reader) if title == "Index")
    index = "\n".join(texts[index_from - 1 :])
    pages = captions(reader)
    calls = dict(zip(call_ids(season), (play.call.spoken for play in season.plays), strict=True))
    for play, home in zip(season.plays, places(season), strict=True):
        call = play.call.spoken
        printed = re.findall(rf"^{re.escape(call)}\s+(\d+)$", index, re.MULTILINE)
        assert printed == [str(pages[calls[home]])] * (1 + len(play.call.tags)), call


def test_the_outline_goes_from_family_to_concept_to_call(
    book: Book, reader: PdfReader, texts: list[str]
) -> None:
    found = outline(reader)
    (dressed,) = book.of(DressedPage)
    behind = book.pages[book.pages.index(dressed) + 1 :]
    assert [t for level, t, _ in found if level == 1] == [
        "Contents",
        "Contact and care",
        "How to read these pictures",
        "How a call is said",
        "crossing",
        "quick game",
        dressed.name,
        *(page.name for page in behind),
        "Index",
    ]
    assert [t for level, t, _ in found if level == 2] == [
        "Crossers",
        "High Low",
        "Stick",
        "Sprint Out",
        *(f"{group.name}, dressed up" for group in dressed.groups),
        "Index by call",
        "Index by tag",
    ]
    calls = [e.call for page in book.pages for e in page.entries if e.listed]
    assert [t for level, t, _ in found if level == 3] == calls
    for _, title, page in found:
        assert title.removesuffix(", dressed up") in texts[page - 1]


def test_contents_gives_each_concepts_page(book: Book, reader: PdfReader, texts: list[str]) -> None:
    starts = {title: page for _, title, page in outline(reader)}
    contents = texts[starts["Contents"] - 1]
    for concept in book.of(ConceptPage):
        entry = rf"^(?:{concept.family} )?{concept.name} .*?(\d+)$"
        line = re.search(entry, contents, re.MULTILINE)
        assert line is not None
        assert int(line[1]) == starts[concept.name]


def test_no_page_is_empty_and_each_has_its_footer(texts: list[str]) -> None:
    assert "revision 4f2c9e1" in texts[0]
    for number, text in enumerate(texts[1:], 2):
        assert "Saltmarsh Herons · 2026 · revision 4f2c9e1 · 2026-05-01" in text
        assert "A planning aid." in text
        assert re.search(rf"\b{number}$", text.strip())
        assert len(text) > 200


def test_a_long_revision_and_the_caution_are_one_line_of_the_foot(
    small_season: Season, theme: Theme
) -> None:
    edition = Edition(f"4f2c9e1 {CHANGED}", "2026-05-01")
    made = to_pdf(
        make_book(small_season, edition, CAPTIONS),
        gallery_of(small_season, CAPTIONS),
        theme,
        "2026-05-01",
    )
    page = PdfDocument(made)[4].get_textpage()
    words = page.get_text_range()
    boxes = [page.get_charbox(i) for i in range(page.count_chars())]
    left, middle = words.index("Saltmarsh Herons · 2026"), words.index("A planning aid")
    end = left + words[left:].index("2026-05-01")
    assert max(right for _, _, right, _ in boxes[left:end]) < boxes[middle][0] - 4
    line = [box for box, letter in zip(boxes, words, strict=True) if letter.isalpha()][-60:]
    assert max(bottom for _, bottom, *_ in line) - min(bottom for _, bottom, *_ in line) < 4
    number = max(right for _, _, right, _ in boxes)
    last = words.index("decides", middle)
    assert boxes[last][2] < number - 30


def test_links_lead_inside_the_book(reader: PdfReader) -> None:
    links: list[Any] = [
        link.get_object() for page in reader.pages for link in page.annotations or ()
    ]
    assert len(links) > 60
    assert all("/URI" not in link.get("/A", {}) for link in links)


def test_pictures_have_words_and_the_document_a_language(season: Season, reader: PdfReader) -> None:
    root: Any = reader.trailer["/Root"]
    alts = set(_alts(root["/StructTreeRoot"]))
    expected = {f"a picture called {id_}" for id_ in places(season)}
    assert expected <= alts
    assert root["/Lang"] == "en"
    assert reader.metadata is not None
    assert reader.metadata.title == "Saltmarsh Herons 2026 playbook"


def _alts(node: Any) -> Iterator[str]:
    node = node.get_object()
    if isinstance(node, list):
        for child in node:
            yield from _alts(child)
    elif isinstance(node, dict):
        if "/Alt" in node:
            yield str(node["/Alt"])
        if "/K" in node:
            yield from _alts(node["/K"])


def test_only_the_themes_typeface_is_embedded(reader: PdfReader) -> None:
    resources: list[Any] = [page["/Resources"] for page in reader.pages]
    fonts = {
        str(font.get_object()["/BaseFont"])
        for resource in resources
        for font in resource.get("/Font", {}).values()
    }
    assert fonts
    assert all("stemline" in name for name in fonts)


def test_nothing_is_set_below_six_points(reader: PdfReader) -> None:
    sizes: set[float] = set()

    def visit(text: str, cm: list[float], tm: list[float], font: Any, size: float) -> None:
        if text.strip():
            sizes.add(round(abs(size * tm[3] * cm[3]), 2))

    for page in reader.pages:
        page.extract_text(visitor_text=visit)
    assert sizes
    assert min(sizes) >= 6


def test_two_runs_give_the_same_bytes(small_season: Season, theme: Theme) -> None:
    def run() -> bytes:
        book = make_book(small_season, Edition("a", "2026-05-01"), CAPTIONS)
        return to_pdf(book, gallery_of(small_season, CAPTIONS), theme, "2026-05-01")

    before = os.environ.get("SOURCE_DATE_EPOCH")
    assert run() == run()
    assert os.environ.get("SOURCE_DATE_EPOCH") == before


@pytest.mark.parametrize(
    ("date", "seconds"),
    [("2026-05-01", 1_777_593_600), ("1970-01-02", 86_400), ("1969-01-01", 0), ("spring", 0)],
)
def test_the_only_clock_while_a_book_is_written_is_its_edition(
    date: str, seconds: int, theme: Theme, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Asked of a library that dates the files it writes (1970 begins where its own count is 0)."""
    seen: list[int] = []
    engine = Engine.paint

    def painted(*args: Any, **kwargs: Any) -> bytes:
        seen.append(timestampNow() - timestampFromString("Thu Jan  1 00:00:00 1970"))
        return engine(*args, **kwargs)

    monkeypatch.setattr(Engine, "paint", painted)
    pages_pdf('<html lang="en"><title>p</title><p>one</p></html>', Gallery(()), theme, date)
    assert seen == [seconds]


def test_a4_and_a_date_in_words(small_season: Season, theme: Theme) -> None:
    book = make_book(small_season, Edition("a", "spring", Paper.A4), CAPTIONS)
    reader = PdfReader(
        io.BytesIO(to_pdf(book, gallery_of(small_season, CAPTIONS), theme, "spring"))
    )
    box = reader.pages[0].mediabox
    assert (round(box.width), round(box.height)) == (595, 842)


def test_an_empty_season_is_a_short_book(season: Season, theme: Theme) -> None:
    empty = replace(season, plays=(), concepts=())
    book = make_book(empty, Edition("a", "2026-05-01"), CAPTIONS)
    made = PdfReader(io.BytesIO(to_pdf(book, gallery_of(empty, CAPTIONS), theme, "2026-05-01")))
    assert len(made.pages) == 3
    assert "Index" not in made.pages[1].extract_text()


@pytest.mark.parametrize(
    "asks",
    [
        '<img src="file:///etc/passwd">',
        '<img src="http://localhost/x.png">',
        '<link rel="stylesheet" href="file:///etc/passwd">',
        '<p style="background: url(https://example.org/x.png)">x</p>',
        '<img src="stemline:theme/../__init__.py">',
    ],
)
def test_a_theme_that_asks_for_more_is_refused(
    asks: str,
    small_season: Season,
    theme: Theme,
) -> None:
    plain = files("stemline.themes") / "plain" / "book.html.jinja"
    page = plain.read_text(encoding="utf-8").replace("<body>", f"<body>{asks}").encode()
    theme = replace(theme, layers=(ThemeFolder("mine", {"book.html.jinja": page}), *theme.layers))
    book = make_book(small_season, Edition("a", ""), CAPTIONS)
    with pytest.raises(Refused):
        to_pdf(book, gallery_of(small_season, CAPTIONS), theme, "")


def test_without_pango_the_message_says_what_to_install(
    book: Book, gallery: Gallery, theme: Theme, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = builtins.__import__

    def without_pango(name: str, *args: Any, **kwargs: Any) -> Any:
        if name.startswith("weasyprint"):
            raise OSError("cannot load library 'libpango-1.0-0'")
        return real(name, *args, **kwargs)

    monkeypatch.setattr(builtins, "__import__", without_pango)
    with pytest.raises(PangoMissing) as caught:
        to_pdf(book, gallery, theme, "2026-05-01")
    message = str(caught.value)
    assert "apt-get install libpango-1.0-0 libpangoft2-1.0-0" in message
    assert "brew install pango" in message
    assert "pacman -S mingw-w64-x86_64-pango" in message


@pytest.mark.skipif(sys.platform != "linux", reason="only there Python asks a compiler")
def test_the_engine_is_loaded_without_another_program() -> None:
    asked = "import subprocess; subprocess.Popen = None\n"
    asked += "from stemline.emit.engine import _weasyprint; _weasyprint()"
    subprocess.run([sys.executable, "-c", asked], check=True)

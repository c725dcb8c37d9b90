"""Page numbers that the program gives to the engine are those where things stand."""

from __future__ import annotations

import io
import re
from dataclasses import replace

from pypdf import PdfReader
from sample_gallery import CAPTIONS, gallery_of

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.layout.fit import Arrangement, FrontMatter
from stemline.book.layout.numbering import FrontPages, page_numbers
from stemline.emit.gallery import Gallery
from stemline.emit.pdf import to_pdf
from stemline.football.play import Season
from stemline.theme import Theme


def test_every_part_is_laid_out_once_with_its_numbers_given(
    book: Book, gallery: Gallery, theme: Theme, passes: list[str]
) -> None:
    to_pdf(book, gallery, theme, "2026-05-01")
    parts = [html for html in passes if "60in" not in html]
    assert sorted(parts) == sorted(set(parts))
    assert sum(html.count("<article ") for html in parts) == len(book.pages)
    given = [each for html in parts for each in re.findall(r'<a href="#([\w-]+)"([^>]*)>', html)]
    assert given
    assert all(re.fullmatch(r' data-n="\d+"', number) for _, number in given)


def test_small_pictures_are_counted_to_their_sheet(book: Book) -> None:
    small = book.of(DressedPage)[0].groups[0].entries
    page = replace(book.of(ConceptPage)[1], dressups=small)
    book = replace(book, pages=tuple(page if p.id == page.id else p for p in book.pages))
    layout = {p.id: Arrangement(len(p.dressups)) for p in book.pages}
    layout[page.id] = Arrangement(2, rest=(1, len(page.dressups) - 3))
    numbers = page_numbers(book, layout, FrontMatter(care_apart=True), FrontPages(2, 1, 3))
    assert (numbers["contents"], numbers["care"], numbers["reading"]) == (2, 4, 5)
    first = 8 + book.pages.index(page)
    assert numbers[page.id] == first
    sheets = [numbers[entry.id] - first for entry in page.dressups]
    assert sheets == [0, 0, 1] + [2] * (len(page.dressups) - 3)
    assert numbers["by-call"] == 8 + len(book.pages) + 2
    beside = page_numbers(book, layout, FrontMatter(), FrontPages(2, 1, 3))
    assert (beside["care"], beside["reading"]) == (3, 4)


def test_where_a_concept_runs_on_the_numbers_after_it_are_mended(
    season: Season, theme: Theme, passes: list[str]
) -> None:
    long = tuple(f"Line {n} of many that a coach has to say of this concept." for n in range(120))
    sheets = tuple(
        replace(sheet, says=long) if sheet.name == season.plays[0].call.concept else sheet
        for sheet in season.concepts
    )
    book = make_book(replace(season, concepts=sheets), Edition("a", "2026-05-01"), CAPTIONS)
    reader = PdfReader(io.BytesIO(to_pdf(book, gallery_of(season, CAPTIONS), theme, "")))
    fronts = [html for html in passes if 'id="contents"' in html and "60in" not in html]
    assert len(fronts) == 2
    last = book.of(ConceptPage)[-1]
    stands = reader.get_destination_page_number(reader.named_destinations[last.id])
    assert stands is not None
    contents = reader.pages[1].extract_text()
    line = re.search(rf"{last.name} .*?(\d+)$", contents, re.MULTILINE)
    assert line is not None
    assert int(line[1]) == stands + 1
    texts = [page.extract_text() for page in reader.pages]
    assert all(any(words in text for text in texts) for words in long)

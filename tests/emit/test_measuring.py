"""What was measured before is not measured again, and gives the same book."""

from __future__ import annotations

from dataclasses import replace

import pytest
from sample_gallery import CAPTIONS, gallery_of

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.emit.gallery import Gallery
from stemline.emit.measuring import Heights
from stemline.emit.pdf import to_pdf
from stemline.football.play import Season
from stemline.theme import Theme

# A smaller book than the other tests': what is measured is a matter of its sections alone.


@pytest.fixture(scope="module")
def season(small_season: Season) -> Season:
    return small_season


@pytest.fixture(scope="module")
def book(season: Season) -> Book:
    return make_book(season, Edition("4f2c9e1", "2026-05-01"), CAPTIONS)


@pytest.fixture(scope="module")
def gallery(season: Season) -> Gallery:
    return gallery_of(season, CAPTIONS)


@pytest.fixture(scope="module")
def pdf(book: Book, gallery: Gallery, theme: Theme) -> bytes:
    return to_pdf(book, gallery, theme, "2026-05-01")


@pytest.fixture(scope="module")
def known(book: Book, gallery: Gallery, theme: Theme, pdf: bytes) -> dict[str, Heights]:
    """What a build keeps that begins with nothing; it gives the book that keeps nothing."""
    memory: dict[str, Heights] = {}
    assert to_pdf(book, gallery, theme, "2026-05-01", memory) == pdf
    assert len(memory) == 2 * len(book.pages) + 1, "by its model and by its text"
    return memory


def measured(passes: list[str]) -> list[str]:
    """Those that were laid out to be measured: on sheets so long that nothing is parted."""
    return [html for html in passes if "60in" in html]


def articles(html: str) -> int:
    return html.count("<article ")


def test_a_book_that_is_known_is_not_measured(
    book: Book,
    gallery: Gallery,
    theme: Theme,
    pdf: bytes,
    known: dict[str, Heights],
    passes: list[str],
) -> None:
    assert to_pdf(book, gallery, theme, "2026-05-01", dict(known)) == pdf
    assert passes
    assert not measured(passes)


def test_another_revision_measures_nothing(
    season: Season, gallery: Gallery, theme: Theme, known: dict[str, Heights], passes: list[str]
) -> None:
    later = make_book(season, Edition("1b2c3d4", "2026-06-01"), CAPTIONS)
    to_pdf(later, gallery, theme, "2026-06-01", dict(known))
    assert passes
    assert not measured(passes)


def test_only_the_section_that_changed_is_measured(
    season: Season, theme: Theme, known: dict[str, Heights], passes: list[str]
) -> None:
    changed = tuple(
        replace(sheet, says=(*sheet.says, "One more line of coaching, and a long one at that."))
        if sheet.name == season.plays[0].call.concept
        else sheet
        for sheet in season.concepts
    )
    book = make_book(replace(season, concepts=changed), Edition("a", "2026-05-01"), CAPTIONS)
    gallery = gallery_of(season, CAPTIONS)
    warm = to_pdf(book, gallery, theme, "2026-05-01", dict(known))
    (once,) = measured(passes)
    assert articles(once) == 1
    assert 'id="contents"' not in once
    assert to_pdf(book, gallery, theme, "2026-05-01") == warm


def test_a_picture_of_another_size_is_measured_again(
    book: Book, gallery: Gallery, theme: Theme, known: dict[str, Heights], passes: list[str]
) -> None:
    """Its height stands nowhere in the text of its page."""
    base = book.of(ConceptPage)[0].base
    taller = Gallery(
        tuple(
            replace(art, height=art.height + 9) if art.id == base.id else art
            for art in gallery.arts
        )
    )
    to_pdf(book, taller, theme, "2026-05-01", dict(known))
    (once,) = measured(passes)
    assert articles(once) == 1


def test_a_theme_of_another_coach_is_measured_whole(
    book: Book, gallery: Gallery, theme: Theme, passes: list[str]
) -> None:
    """Its templates may make one section hang on another."""
    own = replace(theme, layers=(replace(theme.layers[0], bundled=False), *theme.layers[1:]))
    memory: dict[str, Heights] = {}
    to_pdf(book, gallery, own, "2026-05-01", memory)
    assert not memory
    (once,) = measured(passes)
    assert articles(once) == articles(passes[-1])

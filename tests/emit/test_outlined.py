"""A page's outline holds all that its template prints: what is other on paper is other there."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from typing import Any

import pytest
from sample_gallery import CAPTIONS, gallery_of

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.page import Entry, Page
from stemline.book.layout.fit import Laid
from stemline.book.layout.plans import plain_layout
from stemline.emit.gallery import Art, Gallery
from stemline.emit.html import book_html
from stemline.emit.outlined import Outlining
from stemline.football.play import Season
from stemline.theme import Theme

PICTURE, POINTED = re.compile(r"stemline:picture/([\w-]+)"), re.compile(r'href="#([\w-]+)" data-n')


@pytest.fixture(scope="module")
def book(small_season: Season) -> Book:
    return make_book(small_season, Edition("4f2c9e1", "2026-05-01"), CAPTIONS)


@pytest.fixture(scope="module")
def gallery(small_season: Season) -> Gallery:
    return gallery_of(small_season, CAPTIONS)


class Unread:
    """In place of a play: whoever reads it fails."""

    def __getattribute__(self, name: str) -> Any:
        raise AssertionError(name)


def changed(value: Any) -> Iterator[Any]:
    """``value`` with one of its words, numbers and signs changed, each in turn but plays."""
    if isinstance(value, tuple):
        for at, each in enumerate(value):
            yield from ((*value[:at], new, *value[at + 1 :]) for new in changed(each))
    elif is_dataclass(value) and not isinstance(value, type):
        for field in fields(value):
            if not (isinstance(value, Entry) and field.name == "play"):
                made = changed(getattr(value, field.name))
                yield from (replace(value, **{field.name: new}) for new in made)
    elif isinstance(value, bool):
        yield not value
    elif isinstance(value, str):
        yield f"{value}x"
    elif isinstance(value, int | float):
        yield value + 1


def one_of(gallery: Gallery, new: Art) -> Gallery:
    """The pictures with ``new`` in place of the one of its id."""
    return Gallery(tuple(new if art.id == new.id else art for art in gallery.arts))


def unread(value: Any) -> Any:
    """``value`` with no play in it."""
    if isinstance(value, tuple):
        return tuple(map(unread, value))
    if not is_dataclass(value) or isinstance(value, type):
        return value
    shown = [f.name for f in fields(value) if not (isinstance(value, Entry) and f.name == "play")]
    new = {name: unread(getattr(value, name)) for name in shown}
    return replace(value, **new, **({"play": Unread()} if isinstance(value, Entry) else {}))


def test_what_is_other_on_paper_is_other_in_the_outline(
    book: Book, gallery: Gallery, theme: Theme
) -> None:
    layout = plain_layout(book)
    ids = [id_ for page in book.pages for id_ in (page.id, *page.anchors)]
    numbers = dict.fromkeys([*ids, *(e.id for p in book.pages for e in p.entries)], 7)

    def filled(page: Page) -> str:
        return book_html(
            book, gallery, layout, theme, numbers=numbers, shown=(page,), opening=False
        )

    outlining = Outlining(book, gallery, theme)
    outline = outlining.sizes
    pointed = 0
    for page in book.pages:
        laid = Laid(page, layout[page.id])
        known = outline(laid, numbers)
        html = filled(page)
        bare = unread(page)
        assert filled(bare) == html, "no template reads a play"
        assert outline(replace(laid, page=bare), numbers) == known
        assert all(outline(replace(laid, page=new), numbers) != known for new in changed(page))
        assert all(outline(replace(laid, how=new), numbers) != known for new in changed(laid.how))
        for id_ in {*POINTED.findall(html)}:
            pointed += 1
            assert outline(laid, {**numbers, id_: 8}) != known
        drawn = outlining.whole((laid,), numbers)
        for id_ in {*PICTURE.findall(html)}:
            art = gallery.art(id_)
            for new in (replace(art, width=art.width + 1), replace(art, alt=f"{art.alt} x")):
                other = Outlining(book, one_of(gallery, new), theme)
                assert other.sizes(laid, numbers) != known
            redrawn = replace(art, svg=f"{art.svg} ", ink=None)
            other = Outlining(book, one_of(gallery, redrawn), theme)
            assert other.sizes(laid, numbers) == known
            assert other.whole((laid,), numbers) != drawn
    assert pointed

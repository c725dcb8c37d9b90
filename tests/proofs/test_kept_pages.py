"""Pages from what is kept of passes against looks: the same as from the plays, edit after edit."""

from __future__ import annotations

import random
from collections.abc import Iterator
from pathlib import Path

from sampling import every

from proofs.proved_texts import Texts, edited, texts
from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.football.put_to_looks import PutToLooks
from stemline.outside.store import Store
from stemline.resolve.concept_views import Plays, with_views
from stemline.resolve.order import Order
from stemline.session import Session
from stemline.source import Source


class Pages:
    """The book of all calls of some texts, and how many passes were put to looks for it."""

    def __init__(self, said: Texts, store: Store | None) -> None:
        sources = [Source(*each) for each in said.items()]
        self._session = Session(sources, "book", whole=True, store=store)
        self.worked = 0

    def _put(
        self, order: Order, spot: BallSpot, looks: tuple[str, ...], plays: Plays
    ) -> PutToLooks | None:
        def counted() -> tuple[Play, ...]:
            self.worked += 1
            return plays()

        return self._session.put_to_looks(order, spot, looks, counted)

    def book(self, *, kept: bool) -> Book | None:
        """With ``kept`` what comes of the looks in place of the plays; None of texts with a
        mistake."""
        asked = self._session
        season, wrong = asked.pictured()
        found = (*asked.definitions, *wrong)
        if asked.book is None or season is None or any(d.is_error for d in found):
            return None
        put = self._put if kept else None
        shown = with_views(asked.book, asked.calls, season, asked.expander, put)
        return make_book(shown, Edition("", ""), ("",))


def edits(seed: int, most: int) -> Iterator[tuple[Texts, Book]]:
    """Texts, each an edit after the one before, the first of a look alone, and their book; what has
    a mistake is taken back."""
    said, dice = texts(), random.Random(seed)
    for old, new in (("", ""), ("W rushes B, weak", "W rushes C, weak")):
        said["book.play"] = said["book.play"].replace(old, new)
        made = Pages(said, None).book(kept=False)
        assert made is not None
        yield said, made
    while most:
        tried = edited(said, dice)
        made = Pages(tried, None).book(kept=False) if tried != said else None
        if made is not None:
            said, most = tried, most - 1
            yield said, made


def test_edited_in_a_row_every_page_is_as_from_the_plays(tmp_path: Path) -> None:
    worked = printed = 0
    tables = set[object]()
    for said, fresh in edits(seed=2, most=32 // every(4)):
        with Store(tmp_path) as store:
            pages = Pages(said, store)
            assert pages.book(kept=True) == fresh
        worked += pages.worked
        answers = [page.answers for page in fresh.of(ConceptPage) if page.answers is not None]
        printed += len(answers)
        tables |= {*answers}
    assert 3 < len(tables) <= worked < printed / 2, "most passes do not change with an edit"

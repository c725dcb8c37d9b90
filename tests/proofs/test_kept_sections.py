"""Parts of a book given back whole: the same pages and pictures as made anew, edit after edit."""

from __future__ import annotations

import hashlib
import random
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from sampling import every

import stemline.printing.printed_season as printed
import stemline.resolve.expand as expand
from proofs.proved_texts import Texts, edited, texts
from stemline.book.content.book import Book
from stemline.book.content.keeping import Reads
from stemline.book.content.kinds import page_kinds
from stemline.book.content.kinds.motion_page import MotionPage
from stemline.book.content.page import Page, PageKind
from stemline.book.layout.fit import Laid
from stemline.book.layout.plans import plain_layout
from stemline.emit.gallery import Art, Gallery, PdfInk
from stemline.emit.outlined import Outlining
from stemline.football.play import Season
from stemline.outside.store import Store
from stemline.printing.drawings import Drawings
from stemline.resolve.order import Order
from stemline.results import made_book
from stemline.session import Session
from stemline.source import Source
from stemline.theme import Theme, load_theme


def _drawn(_: Drawings, job: Any) -> Art:
    """A picture that is all that it would be drawn from, and takes no time."""
    *sealed, wanted, svg = job
    wanted = replace(wanted, before=None)
    words = hashlib.sha256(repr((*map(str, sealed), wanted)).encode()).hexdigest()
    return Art("", f"<svg>{words}" * svg, "", 10.0, 10.0, "", PdfInk(words.encode(), ()))


def _written(book: Book, gallery: Gallery, theme: Theme, *_: object) -> bytes:
    """All that a book is set from."""
    outlining, layout = Outlining(book, gallery, theme), plain_layout(book)
    pages = [
        f"{page.id} ({type(page).__name__}): {outlining.whole([Laid(page, layout[page.id])], {})!r}"
        for page in book.pages
    ]
    front = f"the front: {(book.title, book.footer, book.cover, book.care, book.index)!r}"
    arts = f"the pictures: {[replace(art, svg='') for art in gallery.arts]!r}"
    return "\n".join((*pages, front, arts)).encode()


@pytest.fixture(autouse=True)
def quick(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Drawings, "drawn", _drawn)
    monkeypatch.setattr(printed, "to_pdf", _written)
    monkeypatch.setattr(printed, "legend_entries", lambda _: ())


@pytest.fixture
def made(monkeypatch: pytest.MonkeyPatch) -> list[Order]:
    """The plays that were made."""
    plays: list[Order] = []
    make = expand.Expander._play

    def counted(self: expand.Expander, *asked: Any) -> Any:
        plays.append(asked[0])
        return make(self, *asked)

    monkeypatch.setattr(expand.Expander, "_play", counted)
    return plays


def book(said: Texts, store: Store | None) -> dict[str, bytes] | None:
    """The files of a book, anew without a store, of texts without a mistake; None of others."""
    asked = Session([Source(*each) for each in said.items()], "book", whole=True, store=store)
    # Anew nothing is proved: whether there is a mistake the book from the store has told.
    season = asked.season if store is not None else asked.pictured()[0]
    if season is None or (store is not None and asked.failed):
        return None
    return made_book(
        asked, season, "a", "2026-05-01", "letter", load_theme(), lambda *_: None, store
    )


def same(kept: dict[str, bytes] | None, fresh: dict[str, bytes] | None, edit: str) -> None:
    """Refuses a book from the store that is not the one made anew, by its pages' names."""
    if kept == fresh:
        return
    assert kept is not None and fresh is not None, edit
    old, new = (b"\n".join(book.values()).decode().splitlines() for book in (kept, fresh))
    names = {line.partition(": ")[0] for line in {*old} ^ {*new}}
    raise AssertionError(
        f"after {edit} these were given back as they were before: {', '.join(sorted(names))}. The "
        "kind of such a page says too little of what it reads. In its file leave `reads` out, "
        "which is the whole playbook; where it has `parts`, name the rest in `more`."
    )


def test_edited_in_a_row_every_page_and_picture_is_as_made_anew(
    tmp_path: Path, made: list[Order]
) -> None:
    """Each edit after the one before; one with a mistake is taken back. In five edits these dice
    find it where a part's key leaves out the looks, the calls, or the coach's own words."""
    said, dice, few, all_ = texts(), random.Random(7), 0, 0
    most = 30 // every(6)
    while most:
        tried = edited(said, dice)
        made.clear()
        with Store(tmp_path) as store:
            kept = book(tried, store)
        if kept is None:
            continue
        said, most, few = tried, most - 1, few + len(made)
        made.clear()
        same(kept, book(said, None), "an edit")
        all_ += len(made)
    wide = [kind for kind in page_kinds() if kind.parts is None and kind.reads is Reads.ALL]
    assert wide or 0 < few < all_ * 0.7, "most parts do not change with an edit"


def test_a_part_that_is_as_it_was_needs_no_play(
    tmp_path: Path, made: list[Order], monkeypatch: pytest.MonkeyPatch
) -> None:
    said = texts() | {"week.play": ""}
    with Store(tmp_path) as store:
        fresh = book(said, store)
    made.clear()
    with Store(tmp_path) as store:
        assert book(said, store) == fresh is not None
    assert not made, (
        "a book that is as it was made plays: what a page holds is kept only where it is words, "
        "numbers, tuples and frozen dataclasses of book/content/"
    )
    narrow = tuple(k for k in page_kinds() if k.parts is not None or k.reads is not Reads.ALL)
    monkeypatch.setattr("stemline.book.content.book.page_kinds", lambda: narrow)
    said["more.play"] = said["more.play"].replace("Spread them out.", "Crowd them.")
    with Store(tmp_path) as store:
        changed = book(said, store)
    assert {order.concept for order in made} == {"sticks"}, "a sentence of one concept"
    same(changed, book(said, None), "a sentence of a concept")
    assert changed != fresh


def test_a_page_kept_under_the_whole_playbook_reads_its_name_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def pages(season: Season, before: Sequence[Page]) -> Iterator[MotionPage]:
        name = f"{season.team.name}: {len(before)}"
        yield MotionPage(id="whole", name=name, sets=())

    kinds = (*page_kinds(), PageKind(99, pages))
    monkeypatch.setattr("stemline.book.content.book.page_kinds", lambda: kinds)
    said = texts()
    with Store(tmp_path) as store:
        assert book(said, store) is not None
    name, text = next((n, t) for n, t in said.items() if t.startswith("playbook "))
    first, _, rest = text.partition("\n")
    said[name] = f'playbook "Other Name"\n{rest}'
    assert first != 'playbook "Other Name"'
    with Store(tmp_path) as store:
        same(book(said, store), book(said, None), "another name")


EDITS = (
    (
        "book.play",
        "    to right, left\n",
        "    to right\n",
    ),  # all calls after it have other numbers
    ("book.play", "W rushes B, weak", "W rushes C, weak"),
    ("more.play", "X at away, 1 inside numbers", "X at away, 2 inside numbers"),
    ("runs.play", "slot runs bubble", "slot runs hitch"),
    ("more.play", "    feet quick\n", "    feet 3\n"),
)


def test_each_thing_that_a_page_reads_makes_it_anew(tmp_path: Path) -> None:
    said = texts() | {"week.play": ""}
    with Store(tmp_path) as store:
        books = [book(said, store)]
    for name, old, new in EDITS:
        assert old in said[name]
        said[name] = said[name].replace(old, new)
        with Store(tmp_path) as store:
            kept = book(said, store)
        same(kept, book(said, None), f"{old.strip()!r} became {new.strip()!r}")
        assert kept is not None and kept not in books, f"{new} is seen in no page"
        books.append(kept)


_ENTRY = '[[], [["e", "Hitches", "PASS", [-1], true, "", []]], [-2, "e"]]'
FORGED = tuple(each.encode() for each in ("{}", "3", "[[], [], 7]", _ENTRY, "\x80"))


def test_rows_that_are_none_of_ours_cost_time_and_nothing_else(tmp_path: Path) -> None:
    """Each row under its own key and signature, with one of these for its bytes."""
    said = texts()
    with Store(tmp_path) as store:
        fresh = book(said, store)
    assert fresh is not None
    for number in range(3):
        with Store(tmp_path) as store:
            rows = sorted(row for (row,) in store._base.execute("SELECT key FROM result"))  # type: ignore[union-attr]
            for at, row in enumerate(rows):
                store.put(row, FORGED[(at + number) % len(FORGED)])
        with Store(tmp_path) as store:
            assert book(said, store) == fresh

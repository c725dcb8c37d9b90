"""Page numbers kept for the next week: known by all that they hang on, and this user's only."""

from __future__ import annotations

from pathlib import Path

import pytest

from stemline.outside import page_store
from stemline.outside.page_store import PageStore
from stemline.session import Session
from stemline.source import Source

PAGES = {"Trips Right Stick": 12, "Rail": 7}


@pytest.fixture
def store(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> PageStore:
    monkeypatch.setattr(page_store, "place", lambda shelf: tmp_path / shelf)
    monkeypatch.setattr(page_store, "program", lambda: "this program")
    return PageStore(tmp_path)


def test_what_is_kept_is_read_again_under_its_own_key_only(store: PageStore) -> None:
    assert store.read("a") is None
    store.keep("a", PAGES)
    assert store.read("a") == PAGES
    assert store.read("b") is None


def test_another_program_reads_nothing(store: PageStore, monkeypatch: pytest.MonkeyPatch) -> None:
    store.keep("a", PAGES)
    monkeypatch.setattr(page_store, "program", lambda: "another program")
    assert store.read("a") is None


def test_a_file_that_somebody_wrote_is_not_believed(store: PageStore, tmp_path: Path) -> None:
    store.keep("a", PAGES)
    (file,) = (tmp_path / "pages").glob("*.json")
    file.write_text(file.read_text("utf-8").replace("12", "13"), "utf-8")
    assert store.read("a") is None
    store.keep("a", PAGES)
    assert store.read("a") == PAGES


def test_nothing_is_kept_where_nobody_asks_for_it(tmp_path: Path) -> None:
    nothing = PageStore(None)
    nothing.keep("a", PAGES)
    assert nothing.read("a") is None and not list(tmp_path.iterdir())


def test_a_week_does_not_change_what_the_book_hangs_on_and_a_concept_does() -> None:
    book = Source("book.play", "playbook Gulls\n    version 1\n    code high school\n")
    concept = Source("a.play", "concept A\n    x is back\n    x runs swing\n")
    weeks = [Source("week.play", f"week 1 A\n    date 2026-09-0{n}\n") for n in (1, 2)]

    def seal(*sources: Source) -> str:
        return Session(sources, "book").seal("plain")

    assert seal(book, weeks[0]) == seal(book, weeks[1]) == seal(book)
    assert seal(book, concept) != seal(book)
    assert Session((book,), "book").seal("dark") != seal(book)

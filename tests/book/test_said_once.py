"""No sentence stands twice in a row, none runs into the next, and no item is said twice: on every
page of both bundled books and of the drawn ones."""

from __future__ import annotations

import re
from dataclasses import replace

from gate.pictures import PLAYBOOKS
from printed_texts import badly_said, cells

from stemline.book.content.book import Book
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.job_table import NOBODY
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.kinds.look_page import LookPage
from stemline.book.content.kinds.protection_page import ProtectionPage
from stemline.book.content.page import Remark

SAID = re.compile(r'^ +(?:.* )?(?:says?|idea) "([^"]*)"', re.M)
UNHEARD = {
    "saltmarsh-herons": set[str](),
    "cedar-flats-lanterns": {"The last man on the line is yours. No help outside you."},
}
"""Words for a man whom no call of the book has: no tight end stays in."""


def test_every_page_says_a_thing_once(book: Book) -> None:
    assert len(book.of(ConceptPage)) > 20
    assert book.of(ProtectionPage)
    assert book.of(LookPage)
    words = sum(len(text.split()) for _, text in cells(book.pages))
    assert words > 10_000
    assert "\n".join(badly_said((book.pages, book.care, book.reading, book.cover))) == ""


def test_every_word_of_the_coach_is_on_a_page(name: str, book: Book) -> None:
    """What a coach wrote for his men to hear is lost nowhere between his text and the paper."""
    printed = _plain(" ".join(text for _, text in cells(book.pages)))
    texts = [
        text.read_text("utf-8")
        for text in sorted((PLAYBOOKS / name).glob("*.play"))
        if not text.name.startswith(("week", "install", "book"))
    ]
    said = [words for text in texts for words in SAID.findall(text)]
    assert len(said) > 200
    assert {words for words in said if _plain(words) not in printed} == UNHEARD[name]


def _plain(words: str) -> str:
    return f" {' '.join(re.findall(r'[a-z0-9]+', words.casefold()))} "


def test_who_plays_nothing_has_a_name_for_it(book: Book) -> None:
    groups = [group for page in book.of(DressedPage) for group in page.groups]
    jobs = [job for group in groups for one in group.calls for job in one.jobs]
    assert [job for job in jobs if job.man == NOBODY and job.role]
    assert [job for job in jobs if job.man == NOBODY and not job.role] == []


def test_what_is_said_twice_or_runs_together_is_told(book: Book) -> None:
    page = book.of(ConceptPage)[0]
    row = page.rows[0]
    for says in (
        ("Go now.", "Go now."),
        ("Go now.Then stop.",),
        ("Stop , then go.",),
        ("Slide: LT, LG, LG.",),
        ("Throw it to H H or run.",),
    ):
        other = replace(row, task=replace(row.task, says=says))
        assert any(badly_said(replace(page, rows=(other, *page.rows[1:])))), says
    assert any(badly_said(replace(page, rows=(*page.rows, row))))
    for label in ("LT LG LT", "Trips, Quads, Trips"):
        assert any(badly_said(replace(page, tags=(Remark(label, "Go."),))))
    post = book.of(LookPage)[0].rows[0]
    twice = replace(post, duty="Deep third. Deep third.")
    assert any(badly_said(replace(book.of(LookPage)[0], rows=(twice,))))
    kept = replace(book.of(ProtectionPage)[0], words="Slide: line.Edge: helper.")
    assert any(badly_said(kept))
    note = Remark("Heat", "Drink water. Drink water.")
    assert any(badly_said(replace(book.care, notes=(note,))))

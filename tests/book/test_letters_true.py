"""A man of the defence is told from ours wherever his letter stands in words, also without colour.

His letter stands in a box of its own type on paper, in brackets where nothing sets it.
"""

from __future__ import annotations

import re
from dataclasses import replace
from importlib.resources import files

import pytest
from bundled import book_of
from letter_reading import misread

from stemline.book.content.book import Edition, make_book
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.kinds.look_page import LookPage
from stemline.book.content.kinds.protection_page import ProtectionPage
from stemline.book.content.letters import spoken
from stemline.emit.html import _lettered
from stemline.football.play import Play, Season


def test_no_letter_of_theirs_stands_like_one_of_ours(name: str, season: Season) -> None:
    book = book_of(name)
    assert "\n".join(misread(book, season)) == ""


SAID = "Double E, then their S. M is yours; our S has the B gap, and R waits."


@pytest.mark.parametrize(
    ("theirs", "printed"),
    [
        ("EM", "Double [E], then their [S]. [M] is yours; our S has the B gap, and R waits."),
        ("EMSR", "Double [E], then their [S]. [M] is yours; our S has the B gap, and [R] waits."),
        ("", "Double E, then their [S]. M is yours; our S has the B gap, and R waits."),
    ],
)
def test_a_coachs_sentence_tells_the_two_sides(theirs: str, printed: str) -> None:
    assert spoken(SAID, theirs) == printed


def _all_say(season: Season, line: str) -> Season:
    """The season whose coach says one sentence everywhere he may."""

    def says(play: Play) -> Play:
        tasks = tuple(replace(task, says=(line,)) for task in play.assignments)
        look = play.defence
        if look is not None:
            men = tuple(replace(d, says=(line,)) for d in look.defenders)
            look = replace(look, defenders=men)
        return replace(play, assignments=tasks, defence=look)

    def views(plays: tuple[Play, ...]) -> tuple[Play, ...]:
        return tuple(map(says, plays))

    return replace(
        season,
        plays=views(season.plays),
        concepts=tuple(
            replace(
                sheet, says=(line,), views=views(sheet.views), faced=views(sheet.faced),
                tags=tuple((tag, (line,)) for tag, _ in sheet.tags),
            )
            for sheet in season.concepts
        ),
        looks=tuple(replace(s, says=(line,), views=views(s.views)) for s in season.looks),
        protections=tuple(
            replace(s, says=(line,), hot=tuple((throws, line) for throws, _ in s.hot))
            for s in season.protections
        ),
    )  # fmt: skip


def test_every_sentence_of_a_coach_is_marked_where_it_is_printed(season: Season) -> None:
    """On concept, run, protection and look pages: rows, lines, exceptions, tags, hot throws."""
    marked = make_book(_all_say(season, "Eyes on M."), Edition("", ""), ("",))
    assert not list(misread(marked, season))
    looks, concepts = marked.of(LookPage), marked.of(ConceptPage)
    # Where a play faces nobody, no letter is known to be theirs.
    alone = {sheet.name for sheet in season.concepts if not (sheet.views or sheet.faced)}
    alone -= {play.call.concept for play in season.plays if play.defence is not None}
    assert len(alone) <= 1
    for page in (*concepts, *marked.of(ProtectionPage), *looks):
        assert page.says == (("Eyes on M." if page.name in alone else "Eyes on [M]."),)
    for page in (page for page in concepts if page.name not in alone):
        assert all("Eyes on [M]." in row.job for row in page.rows if row.task.says)
    assert all("Eyes on [M]." in row.duty for page in looks for row in page.rows)
    bare = replace(looks[0], says=("Eyes on M.",))
    pages = tuple(bare if page is looks[0] else page for page in marked.pages)
    assert any(misread(replace(marked, pages=pages), season))


def test_the_mark_is_a_box_and_another_type_and_no_colour() -> None:
    printed = str(_lettered("Double [E] & go."))
    assert printed == 'Double <span class="defender">E</span> &amp; go.'
    css = files("stemline.themes").joinpath("plain", "book.css").read_text("utf-8")
    rule = re.search(r"^\.defender \{(.*)\}", css, re.MULTILINE)
    assert rule is not None
    assert "border:" in rule[1]
    assert "font-family:" in rule[1]
    assert " color:" not in rule[1]


def test_it_is_explained_once(name: str) -> None:
    notes = book_of(name).reading.notes
    assert [note.label for note in notes if "man of theirs" in note.words] == ["Letters"]

"""Letters of the two sides in printed words: whose each is, and whether it says so."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from printed_texts import cells

from stemline.book.content.book import Book
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.kinds.look_page import LookPage
from stemline.book.content.page import Page
from stemline.football.play import Play, Season

_GAP = r"(?:playside|backside|strong|weak|field|boundary|rush|\bto) [A-D]\b|\b[A-D] gaps?\b"
"""A gap of the line has a letter too, as `rush C, strong` says."""


def misread(book: Book, season: Season) -> Iterator[str]:
    """Letters that only the defence has without a mark, and marks on letters that it has not."""
    for page in (part for whole in book.pages for part in _parts(whole)):
        plays = _plays(page, season)
        looks = [play.defence for play in plays if play.defence is not None]
        theirs = {d.label for look in looks for d in look.defenders}
        ours = {man.label for play in plays for man in play.men}
        only = theirs if isinstance(page, LookPage) else theirs - ours
        for where, words in cells(page):
            bare = re.sub(_GAP, "", words)
            unmarked = set(re.findall(r"(?<![\[\w])[A-Z][A-Z0-9]?(?![\]\w'])", bare)) & only
            wrong = set(re.findall(r"\[(\w+)\]", words)) - theirs
            if (unmarked and not re.search(r"\bour\b", words)) or wrong:
                yield f"{where}: {sorted(unmarked or wrong)} in {words}"


def _parts(page: Page) -> list[Page]:
    """A page of dress-ups concept by concept, since their letters are not the same men's."""
    if isinstance(page, DressedPage):
        return [replace(page, groups=(group,)) for group in page.groups]
    return [page]


def _plays(page: Page, season: Season) -> list[Play]:
    """Every play that a page speaks of."""
    shown = [entry.play for entry in page.entries]
    names = [group.name for group in page.groups] if isinstance(page, DressedPage) else [page.name]
    for sheet in season.concepts:
        if sheet.name in names:
            shown += [*sheet.views, *sheet.faced, *sheet.keyed]
            shown += [play for play in season.plays if play.call.concept == sheet.name]
    for protection in season.protections:
        if protection.name == page.name:
            shown += protection.views
    return shown

"""A protection's half page: who takes whom against each look, and who comes free."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.book.content.block_table import (
    Fronts,
    against,
    answers,
    fronts,
    grouped,
    most_unlike,
)
from stemline.book.content.keeping import Reads
from stemline.book.content.letters import only_theirs, spoken
from stemline.book.content.page import Entry, Listing, Page, PageKind, Remark, joined
from stemline.football.play import ProtectionSheet, Season

FREE = "comes free"
VIEWS = 1
"""Fronts, beside the first picture's, that are drawn: the table tells the others."""


@dataclass(frozen=True, kw_only=True)
class ProtectionPage(Page):
    """A protection: ``words`` say it, ``fronts`` who takes whom against each look; ``hot`` what is
    thrown when one more comes than is blocked, and when; ``views`` are the pictures beside its
    first."""

    template = "protection.html.jinja"
    listing = Listing.COLUMN
    half = True

    words: str
    hot: tuple[Remark, ...]
    fronts: Fronts | None
    views: tuple[Entry, ...] = ()

    @property
    def framed(self) -> tuple[tuple[Entry, ...], ...]:
        return ((self.base, *self.views),) if self.base else ()


def _pages(season: Season, _: Sequence[Page]) -> Iterator[ProtectionPage]:
    return (_page(sheet, number) for number, sheet in enumerate(season.protections, 1))


KIND = PageKind(30, _pages, reads=Reads.CALLS)


def _page(sheet: ProtectionSheet, number: int) -> ProtectionPage:
    """The page of ``sheet``, the book's ``number``-th protection from 1."""
    columns = grouped(sheet.views)
    shown = most_unlike(columns, VIEWS) or (("", sheet.views[0]),)
    id_ = f"protection-{number}"
    entries = tuple(
        Entry(
            f"{id_}-{i}",
            against(names)[0] if names else sheet.name,
            play,
            answers(play, shown[0][1], FREE),
            listed=False,
            aside=joined(against(names)[1], f"in {play.call.formation}"),
        )
        for i, (names, play) in enumerate(shown)
    )
    theirs = only_theirs(sheet.views)
    rule = next((play for play in sheet.views if play.defence is None), None)
    stay = [a.man for a in rule.assignments if a.role and a.job] if rule is not None else []
    return ProtectionPage(
        id=id_,
        name=sheet.name,
        family="Protections",
        base=entries[0],
        words=sheet.words,
        hot=tuple(Remark(throws, spoken(given, theirs)) for throws, given in sheet.hot),
        fronts=fronts(columns, rule, FREE, stay),
        says=tuple(spoken(line, theirs) for line in sheet.says),
        cautions=sheet.cautions,
        views=entries[1:],
    )

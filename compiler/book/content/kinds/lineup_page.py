"""How the offence lines up: every formation small, called right."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from stemline.book.content.page import Entry, Listing, Page, PageKind, Remark, joined
from stemline.football.play import Season


@dataclass(frozen=True, kw_only=True)
class LineupPage(Page):
    template = "lineup.html.jinja"
    listing = Listing.FIRST


def _pages(season: Season) -> Iterator[LineupPage]:
    entries = tuple(
        Entry(
            f"formation-{i}",
            sheet.name,
            sheet.view,
            tuple(Remark("", line) for line in sheet.says),
            listed=False,
            aside=joined("{}x{}".format(*sheet.view.shape), sheet.people),
        )
        for i, sheet in enumerate(season.formations, 1)
    )
    if entries:
        yield LineupPage(id="lineup", name="How we line up", dressups=entries)


KIND = PageKind(10, _pages)

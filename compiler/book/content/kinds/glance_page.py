"""Looks at a glance: every look in a line, with what it shows and what it leaves open."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.page import Listing, Page, PageKind
from stemline.football.play import Kind, Play, Season


@dataclass(frozen=True)
class GlanceRow:
    """A look: ``id`` of its page, how many men rush and how many are deep, what it shows; the
    passes that have somebody open against it, by who is thrown to, those that have nobody; and the
    runs that leave nobody of theirs unblocked."""

    name: str
    id: str
    rush: int
    shows: str
    opens: tuple[tuple[str, str], ...]
    nobody: tuple[str, ...]
    blocked: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class GlancePage(Page):
    template = "glance.html.jinja"
    listing = Listing.FIRST

    rows: tuple[GlanceRow, ...]


def _pages(season: Season, before: Sequence[Page]) -> Iterator[GlancePage]:
    found = {page.name: page.answers for page in before if isinstance(page, ConceptPage)}
    tables = ((sheet.name, found.get(sheet.name)) for sheet in season.concepts)
    answered = [(name, table) for name, table in tables if table is not None]
    rows = []
    for number, sheet in enumerate(season.looks, 1):
        defence = sheet.views[0].defence
        assert defence is not None, "a look's views show it"
        opens, nobody = [], []
        for concept, table in answered:
            if sheet.name in table.looks:
                at = table.looks.index(sheet.name)
                cells = [(target, cells[at]) for _, target, cells in table.rows]
                target = next((t for t, cell in cells if cell.first and cell.cover == "open"), "")
                opens += [(concept, target)] if target else []
                nobody += [] if any(cell.first for _, cell in cells) else [concept]
        rows.append(
            GlanceRow(
                sheet.name,
                f"look-{number}",
                sum(d.comes for d in defence.defenders),
                ", ".join(defence.shows),
                tuple(opens),
                tuple(nobody),
                _blocked(season, sheet.name),
            )
        )
    if rows:
        yield GlancePage(id="glance", name="Looks at a glance", rows=tuple(rows))


KIND = PageKind(39, _pages)


def _blocked(season: Season, look: str) -> tuple[str, ...]:
    """The runs whose first call leaves nobody unblocked against a look."""
    firsts: dict[str, Play] = {}
    for play in season.plays:
        firsts.setdefault(play.call.concept, play)
    found = []
    for sheet in season.concepts:
        views = (firsts.get(sheet.name), *sheet.views) if sheet.kind is Kind.RUN else ()
        mine = [v for v in views if v is not None and v.defence and v.defence.name == look]
        if mine and not mine[0].unblocked:
            found.append(sheet.name)
    return tuple(found)

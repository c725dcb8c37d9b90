"""Looks at a glance: every look in a line, with what it shows and what it leaves open."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from stemline.book.content.answer_table import Answers
from stemline.book.content.keeping import KeepPart, Reads
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.page import Listing, Page, PageKind
from stemline.football.defence.zones import shown_words
from stemline.football.play import Season


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


def _pages(season: Season, before: Sequence[Page], keep: KeepPart) -> Iterator[GlancePage]:
    known = {page.name: page for page in before if isinstance(page, ConceptPage)}
    pages = [known[sheet.name] for sheet in season.concepts if sheet.name in known]
    answered = [(page.name, page.answers) for page in pages if page.answers is not None]
    held = [(page.name, page.holds) for page in pages if page.holds]
    make = partial(_rows, season, answered, held)
    rows = keep(Reads.CALLS, "glance", tuple[GlanceRow, ...], (answered, held), make)
    if rows:
        yield GlancePage(id="glance", name="Looks at a glance", rows=rows)


KIND = PageKind(39, parts=_pages)


def _rows(
    season: Season,
    answered: Sequence[tuple[str, Answers]],
    held: Sequence[tuple[str, tuple[str, ...]]],
) -> tuple[GlanceRow, ...]:
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
                ", ".join(shown_words(defence)),
                tuple(opens),
                tuple(nobody),
                tuple(run for run, looks in held if sheet.name in looks),
            )
        )
    return tuple(rows)

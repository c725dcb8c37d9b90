"""How a book is laid, decided: what stands on each page, and the page of each place.

Only the engine that sets text knows how tall it is. So it says heights, it is given a plan, and it
says on which pages everything came to stand; a better plan follows where that is not as it should
be. All heights are points.
"""

from __future__ import annotations

from collections.abc import Generator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil

from stemline.book.content.book import Book
from stemline.book.content.page import Entry, Page
from stemline.book.layout.fit import (
    Arrangement,
    FrontMatter,
    Measures,
    Style,
    arrange,
    front,
    front_of_plan,
    share,
    telling,
)
from stemline.book.layout.flowing import counted
from stemline.book.layout.numbering import OPENING, FrontPages, page_numbers
from stemline.book.paper import room

SLACKS = (6.0, 26.0, 60.0)
"""Points left free on each page, tried in turn until every concept keeps to its pages."""

_ABOVE, _LINE, _LETTERS = 4.5, 10.6, 54
"""Points of white over a picture's words in a row of two, and of a line of them; letters there."""

Heights = Mapping[str, float]
"""Points by id."""
Stands = Mapping[str, Sequence[int]]
"""The pages from 1 on which each id stands."""


@dataclass(frozen=True)
class PagePlan:
    """Each page's arrangement by its id, the front pages, and the page of what is pointed to; it is
    for the pages of ``first`` alone, where there are any."""

    layout: Mapping[str, Arrangement]
    front: FrontMatter
    numbers: Mapping[str, int]
    first: tuple[Page, ...] = ()


def plain_layout(book: Book) -> dict[str, Arrangement]:
    """What a book is measured in: the telling small pictures overleaf, one a row."""
    return {
        page.id: Arrangement(
            0, rest=(len(telling(page.dressups)),), rest_style=Style.ONE, told=True
        )
        for page in book.pages
    }


def plans(
    book: Book, heights: Heights, pictures: Heights, *, apart: bool = False
) -> Generator[PagePlan, Stands, None]:
    """Plans of a book, each better than the one before; it ends when the last one will do.

    ``heights`` are those of the parts in the plain layout, and under "ID pages" the sheets that
    each of `OPENING` takes; ``pictures`` those of the pictures. What is sent for each plan is
    where everything came to stand by it. Where pages can be set ``apart``, a plan may be ``first``
    for some of them, by which the numbers of all are known.
    """
    measured = {p.id: measure(heights, p, pictures) for p in book.pages if not p.long}
    slack = dict.fromkeys(measured, 0)
    high = room(book.paper)
    opened = _opened(book, heights, high - SLACKS[0])
    takes = FrontPages(*(int(heights[f"{id_} pages"]) for id_ in OPENING))
    while True:
        layout = _layout(book, measured, {id_: high - SLACKS[n] for id_, n in slack.items()})
        plan = PagePlan(layout, opened, page_numbers(book, layout, opened, takes))
        flowing = [page for page in book.pages if page.flows and layout[page.id].runs_on]
        if apart and flowing:
            stands = yield replace(plan, first=tuple(flowing))
            guessed = {page.id: layout[page.id].pages for page in flowing}
            plan = replace(plan, numbers=counted(plan.numbers, guessed, flowing, stands))
        stands = yield plan
        over = [
            id_
            for id_, how in layout.items()
            if not how.runs_on and len(stands.get(f"{id_}-all", ())) > how.pages
        ]
        if not any(slack[id_] + 1 < len(SLACKS) for id_ in over):
            break
        slack |= {id_: min(slack[id_] + 1, len(SLACKS) - 1) for id_ in over}
    begins = {id_: pages[0] for id_, pages in stands.items()}
    if any(begins.get(id_, number) != number for id_, number in plan.numbers.items()):
        yield replace(plan, numbers={**plan.numbers, **begins})


def _layout(
    book: Book, measured: Mapping[str, Measures], rooms: Mapping[str, float]
) -> dict[str, Arrangement]:
    """Each page's arrangement in its own room, half pages together in the least of theirs."""
    least = min((rooms[page.id] for page in book.pages if page.half), default=0.0)
    halves = share([measured[p.id] if p.half else None for p in book.pages], least)
    made: dict[str, Arrangement] = {}
    told: dict[str, float] = {}
    for page, half in zip(book.pages, halves, strict=True):
        if page.long:
            made[page.id] = Arrangement(0, runs_on=True, elsewhere=frozenset(told))
            told = {}
            continue
        m = measured[page.id]
        if page.flows and page.all_on(told):
            made[page.id] = Arrangement(0, likely=0)
            told = {}
            continue
        if page.flows:
            m = replace(m, fixed=m.fixed - sum(told.values()))
            made[page.id] = replace(arrange(m, rooms[page.id]), elsewhere=frozenset(told))
            told = {}
            continue
        how = made[page.id] = half or arrange(m, rooms[page.id])
        if how.told and page.further:
            told[page.further] = m.changes
        told |= {page.offered[at].id: m.offered[at] / 2 for at in how.taken}
    return made


def _opened(book: Book, heights: Heights, high: float) -> FrontMatter:
    if book.plan is not None:
        return front_of_plan(heights["contents"], high)
    return front(heights["contents"], heights["care"], heights["reading"], high)


def opening_needs(book: Book) -> set[str]:
    """The heights of the opening that `plans` asks for, by their ids."""
    shown = OPENING if book.plan is None else OPENING[:1]
    return {*shown, *(f"{id_} pages" for id_ in OPENING)}


def page_needs(page: Page) -> set[str]:
    """The heights that no page is planned without, by their ids."""
    rows = {f"{e.id}-{part}" for e in telling(page.dressups) for part in ("row", "beside")}
    return {f"{page.id}-fixed", f"{page.id}-head", *rows}


def _over(entry: Entry) -> float:
    """About how much the words over a picture take in a row of two."""
    lines = ceil((len(entry.call) + len(entry.aside) + 1) / _LETTERS)
    return _ABOVE + _LINE * (lines + ceil(len(entry.keyed) / _LETTERS))


def measure(heights: Heights, page: Page, pictures: Heights) -> Measures:
    """The heights of a page's parts from those in the plain layout."""
    measured = telling(page.dressups)
    above = max((heights[f"{e.id}-row"] - heights[f"{e.id}-beside"] for e in measured), default=0.0)
    picture = max((pictures[e.id] for e in page.dressups), default=0.0)
    rows = {style: above + picture * style.factor for style in (Style.THREE, Style.TWO)}
    rows[Style.ONE] = max((heights[f"{e.id}-row"] for e in measured), default=0.0)
    return Measures(
        dressups=len(page.dressups),
        fixed=heights[f"{page.id}-fixed"],
        points=heights.get(f"{page.id}-points", 0.0),
        casting=heights.get(f"{page.id}-casting", 0.0),
        head=heights[f"{page.id}-head"],
        row=rows,
        jobs=heights.get(f"{page.id}-jobs", 0.0),
        changes=heights.get(f"{page.id}-changes", 0.0),
        offered=tuple(_over(e) + pictures[e.id] * Style.TWO.factor for e in page.offered),
    )

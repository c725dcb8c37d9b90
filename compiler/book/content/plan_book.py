"""A week's own book: the season book's kinds of page, holding the calls of one plan alone.

Its front is the plan in a page; the opponent's looks come first, then the calls family by family in
the order in which the plan first calls them, and at the end every situation with its calls.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from stemline.book.content.book import Book, Edition, make_book, opening
from stemline.book.content.drawn_calls import places
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.index import (
    HEAD,
    HEIGHTS,
    Index,
    IndexItem,
    IndexLine,
    set_columns,
)
from stemline.book.content.kinds.look_page import LookPage
from stemline.book.content.page import Entry, Listing, Page, joined
from stemline.book.content.plan_front import plan_front
from stemline.book.content.their_looks import FAMILY, glance_page
from stemline.book.paper import room
from stemline.football.play import Season
from stemline.week.killed_rows import printed_call
from stemline.week.week_values import CallEntry, Week

_ACROSS, _LEAST = 2, 2
"""Columns of the situations: a line holds a call, its number and its page of the season's book."""


def make_plan_book(week: Week, edition: Edition) -> Book:
    """The book of a week that has a game plan."""
    assert week.game is not None, "a week with a game plan"
    season = _this_week(week.game.season)
    spoken = (play.call.spoken for play in season.plays)
    ids = dict(zip(spoken, places(season), strict=True))
    book = make_book(season, edition, ())
    printing = joined(edition.revision and f"revision {edition.revision}", edition.date)
    front = plan_front(week, ids, season.authority, printing)
    return replace(
        book,
        title=f"{front.title}: game plan",
        footer=joined(front.title, printing),
        pages=tuple(opening(_pages(book, week))),
        index=_by_situation(week, ids, edition),
        plan=front,
    )


def _this_week(season: Season) -> Season:
    """What the plan's calls are made of: each has its picture, and no tag is told that none has."""
    called = {(play.call.concept, tag) for play in season.plays for tag in play.call.tags}
    concepts = (
        replace(sheet, tags=tuple(tag for tag in sheet.tags if (sheet.name, tag[0]) in called))
        for sheet in season.concepts
    )
    return replace(season, every_call=True, concepts=tuple(concepts))


def _pages(book: Book, week: Week) -> Iterator[Page]:
    """The looks at a glance and each on its page, then the rest; a call says its number and where
    it stands in the season's book. What that has at its front, how a call is said and how the men
    line up and move, no week has again."""
    glance = glance_page(week)
    if glance is not None:
        yield glance
    for page in book.pages:
        if isinstance(page, LookPage):
            yield replace(page, family=FAMILY, opens=False)
    for page in book.pages:
        if not isinstance(page, LookPage) and page.listing is not Listing.FIRST:
            yield _numbered(replace(page, opens=False), week)


def _numbered(page: Page, week: Week) -> Page:
    if isinstance(page, DressedPage):
        groups = (
            replace(group, entries=tuple(_told(e, week) for e in group.entries))
            for group in page.groups
        )
        return replace(page, groups=tuple(groups))
    base = page.base
    drawn = page.drawn
    if base is not None and base.listed:
        entry = week.entry(base.call)
        drawn = joined(number_and_page(entry), drawn)
        base = replace(base, call=printed_call(entry.call, entry.play))
    return replace(
        page,
        base=base,
        drawn=drawn,
        dressups=tuple(_told(e, week) for e in page.dressups),
        offered=tuple(_told(e, week) for e in page.offered),
    )


def _told(entry: Entry, week: Week) -> Entry:
    if not entry.listed:
        return entry
    planned = week.entry(entry.call)
    return replace(
        entry,
        call=printed_call(planned.call, planned.play),
        aside=joined(number_and_page(planned), entry.aside),
    )


def number_and_page(entry: CallEntry) -> str:
    """ "no. 34 · book 57", either alone, or "" for a call that has neither."""
    number = "" if entry.number is None else f"no. {entry.number}"
    return joined(number, "" if entry.page is None else f"book {entry.page}")


def _by_situation(week: Week, ids: Mapping[str, str], edition: Edition) -> Index:
    """Every situation with its calls in their order, set in columns as the season's indexes are."""
    items = [IndexItem("index", "The plan by situation", "by-situation", HEIGHTS["index"])]
    for each in week.plan.lists:
        items.append(IndexItem("group", each.title, "", HEIGHTS["group"]))
        items += [
            IndexItem("call", planned_line(week.entry(row.call)), ids[row.call], HEIGHTS["call"])
            for row in each.rows
        ]
    entries = map(week.entry, week.plan.calls)
    calls = tuple(IndexLine(printed_call(e.call, e.play), ids[e.call]) for e in entries)
    height = room(edition.paper) - HEAD
    pages = set_columns(tuple(items), _ACROSS, height, _LEAST) if calls else ()
    return Index(calls, (), (), _ACROSS, pages)


def planned_line(entry: CallEntry) -> str:
    """A call on the lines of its situation: "34  Trey Right Stick · book 57"."""
    number = "" if entry.number is None else f"{entry.number}  "
    call = printed_call(entry.call, entry.play)
    return f"{number}{joined(call, '' if entry.page is None else f'book {entry.page}')}"

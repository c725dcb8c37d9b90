"""How a call is said: its parts in order, a few calls taken apart, the words, and the routes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from stemline.book.content.keeping import KeepPart, Reads
from stemline.book.content.page import (
    Entry,
    Listing,
    Page,
    PageKind,
    sentence,
)
from stemline.book.content.pointed_places import pointed_places
from stemline.football.field import Way
from stemline.football.play import Call, Play, RouteSheet, Season

ORDER = ("formation", "side", "motion", "concept", "tags")
"""A call's parts as they are said."""


@dataclass(frozen=True)
class CallPart:
    """A word of a call: which part it is, what it tells, and the id of its place ("" for none)."""

    part: str
    word: str
    tells: str
    id: str = ""


@dataclass(frozen=True)
class TakenApart:
    """A call as it is said, and its parts; ``full`` are the words that a name stands for."""

    spoken: str
    full: str
    parts: tuple[CallPart, ...]


@dataclass(frozen=True)
class WordList:
    """The words that one part of a call may be, each with what goes with it ("" for nothing)."""

    title: str
    words: tuple[tuple[str, str], ...]


@dataclass(frozen=True, kw_only=True)
class CallPage(Page):
    """``names`` are the calls with a name of their own, and the calls they stand for; ``routes``
    the pictures of the routes."""

    template = "call.html.jinja"
    listing = Listing.FIRST

    apart: tuple[TakenApart, ...] = ()
    lists: tuple[WordList, ...] = ()
    names: tuple[tuple[str, str], ...] = ()
    routes: tuple[Entry, ...] = ()

    @property
    def framed(self) -> tuple[tuple[Entry, ...], ...]:
        return (self.routes,) if self.routes else ()


_SIDE_SAID = {
    None: "the called side; to the other side everything is turned over",
    Way.FIELD: "the called side is the wide one, right from the left hash",
    Way.BOUNDARY: "the called side is the short one, left from the left hash",
}


def composed(call: Call) -> str:
    """The words of a call in order, whatever name it has."""
    words = (call.formation, call.side_word.capitalize(), call.motion, call.concept)
    return " ".join(filter(None, (*words, " + ".join(call.tags))))


def _pages(season: Season, _: Sequence[Page], keep: KeepPart) -> Iterator[CallPage]:
    if not season.plays:
        return
    apart = _apart_ones(season.plays)
    said = {s.name: (s.idea, s.tags) for s in season.concepts}
    more = season.signs, [said.get(play.call.concept) for play in apart]
    yield keep(Reads.CALLS, "calls", CallPage, more, lambda: _calls(season, apart))
    pages = tuple[CallPage, ...]
    yield from keep(Reads.ROUTES, "routes", pages, "", lambda: tuple(_all_routes(season)))


def _calls(season: Season, apart: Iterable[Play]) -> CallPage:
    names = tuple(
        (play.call.spoken, composed(play.call))
        for play in season.plays
        if play.call.spoken != composed(play.call)
    )
    return CallPage(
        id="calls",
        name="How a call is said",
        apart=tuple(_apart(play, season) for play in apart),
        lists=tuple(_lists(season)),
        names=names,
    )


def _all_routes(season: Season) -> Iterator[CallPage]:
    routes = tuple(_route(sheet, i) for i, sheet in enumerate(season.routes, 1))
    if routes:
        yield CallPage(id="routes", name="The routes, at one scale", routes=routes)


def _route(sheet: RouteSheet, number: int) -> Entry:
    aside = f"at {sheet.depth:g}" if sheet.depth else ""
    return Entry(f"route-{number}", sheet.name.capitalize(), sheet.view, listed=False, aside=aside)


KIND = PageKind(5, parts=_pages)


def _apart_ones(plays: Iterable[Play]) -> tuple[Play, ...]:
    """A plain call, one with a motion and a tag, one by the field, and one with a name of its own:
    the first of each."""
    plays = tuple(plays)
    kinds = (
        (p for p in plays if not p.call.motion and not p.call.tags),
        (p for p in plays if p.call.motion and p.call.tags),
        (p for p in plays if p.call.way is not None),
        (p for p in plays if p.call.spoken != composed(p.call)),
    )
    firsts = (next(kind, None) for kind in kinds)
    return tuple({play.call.spoken: play for play in firsts if play is not None}.values())


def _apart(play: Play, season: Season) -> TakenApart:
    call, sheets = play.call, {sheet.name: sheet for sheet in season.concepts}
    sheet = sheets.get(call.concept)
    tags = dict(sheet.tags) if sheet is not None else {}
    places = pointed_places(season)
    parts = [
        CallPart(
            "formation",
            call.formation,
            "{} and {} receivers".format(*play.shape),
            places.get(("formation", call.formation), ""),
        ),
        CallPart(
            "side",
            call.side_word.capitalize(),
            _SIDE_SAID[call.way],
        ),
    ]
    if call.motion:
        men: dict[str, list[str]] = {}
        for task in play.assignments:
            if task.motion is not None:
                words = task.motion.words.removeprefix(call.motion).lstrip(" ,")
                men.setdefault(words, []).append(task.man)
        told = "; ".join(f"{' '.join(who)} {words}" for words, who in men.items())
        parts.append(CallPart("motion", call.motion, told, places.get(("motion", call.motion), "")))
    idea = sentence(sheet.idea) if sheet is not None else ""
    parts.append(CallPart("concept", call.concept, idea, places.get(("concept", call.concept), "")))
    for tag in call.tags:
        words = " ".join(sentence(line) for line in tags.get(tag, ()))
        parts.append(CallPart("tags", tag, words))
    full = composed(call)
    return TakenApart(call.spoken, full if full != call.spoken else "", tuple(parts))


def _lists(season: Season) -> Iterator[WordList]:
    calls = [play.call for play in season.plays]
    yield WordList("Formations", tuple((n, "") for n in sorted({c.formation for c in calls})))
    sides = dict.fromkeys(c.side_word.capitalize() for c in calls)
    yield WordList("Sides", tuple((side, "") for side in sides))
    motions = sorted({c.motion for c in calls if c.motion})
    yield WordList("Motions", tuple((name, "") for name in motions))
    families: dict[str, dict[str, None]] = {}
    for play in season.plays:
        families.setdefault(play.family, {})[play.call.concept] = None
    listed = tuple((", ".join(names), family) for family, names in families.items())
    yield WordList("Concepts and runs", listed)
    tags: dict[str, dict[str, None]] = {}
    for call in calls:
        for tag in call.tags:
            tags.setdefault(tag, {})[call.concept] = None
    told = (("Signals", 1), ("Words", 2))
    for title, at in told:
        yield WordList(title, tuple((sign[at], sign[0]) for sign in season.signs if sign[at]))
    yield WordList("Tags", tuple((tag, ", ".join(tags[tag])) for tag in sorted(tags)))

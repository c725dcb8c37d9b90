"""A comparison in numbers: calls by family, and what a man has to learn by concept."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from stemline.compare.comparison import Comparison
from stemline.compare.teaching import Teaching, teaching
from stemline.compare.topics import names_of
from stemline.football.play import Play

Row = tuple[str, ...]
"""A name, and its numbers."""


def numbers(found: Comparison) -> list[Row]:
    """A head, a row for each family, and all of them together."""
    rows: list[Row] = [("", "as was", "changed", "new", "gone")]
    rows += [(f.name, str(f.same), str(f.changed), str(f.new), str(f.gone)) for f in found.families]
    all_of = (found.same, len(found.changed), len(found.added), len(found.dropped))
    return [*rows, ("All", *map(str, all_of))]


def reached_numbers(found: Comparison, only: str) -> list[Row]:
    """As `numbers`, of the calls that changed, came or went with a definition of this name; the
    head alone where none did."""
    reached = _reached(found, only)
    changed = [play for c in found.changed if c.spoken in reached and (play := c.now or c.was)]
    added = [play for play in found.added if _has(play, only)]
    dropped = [play for play in found.dropped if _has(play, only)]
    counts = [Counter(play.family for play in side) for side in (changed, added, dropped)]
    names = [f.name for f in found.families if any(count[f.name] for count in counts)]
    rows: list[Row] = [("", "changed", "new", "gone")]
    rows += [(name, *(str(count[name]) for count in counts)) for name in names]
    return [*rows, ("All", *(str(count.total()) for count in counts))] if names else rows


def learned(found: Comparison, man: str, only: str = "") -> list[Row]:
    """A head, and how many things are new to a man and gone, a row for each concept."""
    row = his_teaching(found, man, only)
    rows: list[Row] = [("", "new", "gone")]
    if row is None:
        return rows
    new, gone = (Counter(topic for topic, _ in jobs) for jobs in (row.new, row.gone))
    rows += [(topic, str(new[topic]), str(gone[topic])) for topic in dict.fromkeys((*new, *gone))]
    return [*rows, ("All", str(new.total()), str(gone.total()))]


def his_teaching(found: Comparison, man: str, only: str = "") -> Teaching | None:
    """What a man has to learn and may forget, in what a definition called ``only`` reaches; None
    where that is nothing."""
    row = next((r for r in teaching(found) if r.man.casefold() == man.casefold()), None)
    if row is None or not only:
        return row
    topics = frozenset(_topics(found, only))
    new, gone = (
        tuple(job for job in jobs if job[0].casefold() in topics) for jobs in (row.new, row.gone)
    )
    return Teaching(row.man, new, gone) if new or gone else None


def _topics(found: Comparison, only: str) -> Iterator[str]:
    """What a job may be filed under, in lower case: the thing itself, and each concept that it
    reaches."""
    yield only.casefold()
    reached = _reached(found, only)
    changed = (play for c in found.changed if c.spoken in reached for play in (c.was, c.now))
    others = (p for p in (*found.added, *found.dropped) if _has(p, only))
    yield from (p.call.concept.casefold() for p in (*changed, *others) if p is not None)


def _reached(found: Comparison, only: str) -> frozenset[str]:
    """The changed calls that a definition of this name reaches."""
    named = (c for c in found.definitions if only.casefold() in names_of(c))
    own = (
        c.spoken
        for c in found.changed
        for play in (c.was, c.now)
        if play is not None and play.call.concept.casefold() == only.casefold()
    )
    return frozenset((*own, *(call for change in named for call in change.calls)))


def _has(play: Play, only: str) -> bool:
    """Whether a call is made of something of this name."""
    call = play.call
    parts = (call.concept, call.formation, call.motion, play.protection, *call.tags)
    return only.casefold() in map(str.casefold, parts)

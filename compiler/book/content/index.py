"""The indexes: every call under its formation, or by its own name, and by its tags, in columns.

Columns are filled here and not by the layout engine: they come out equally long over all pages of
the index, no heading stands last in one, and laying them out costs next to nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from stemline.book.paper import Paper, room
from stemline.football.play import Play


@dataclass(frozen=True)
class IndexLine:
    """A call and the id it stands at."""

    call: str
    id: str


@dataclass(frozen=True)
class IndexGroup:
    """Index lines under one formation or tag."""

    title: str
    lines: tuple[IndexLine, ...]


@dataclass(frozen=True)
class IndexItem:
    """One line of a column of the index: ``kind`` is "index", "group" or "call".

    ``id`` is what it links to, or for an index its own id; ``height`` is in points.
    """

    kind: str
    text: str
    id: str
    height: float


@dataclass(frozen=True)
class Index:
    """The three indexes, and the same lines set in columns: a page holds ``across`` of them."""

    calls: tuple[IndexLine, ...]
    formations: tuple[IndexGroup, ...]
    tags: tuple[IndexGroup, ...]
    across: int
    pages: tuple[tuple[tuple[IndexItem, ...], ...], ...]

    @property
    def heads(self) -> tuple[IndexItem, ...]:
        """The heading of each index."""
        items = (item for page in self.pages for column in page for item in column)
        return tuple(item for item in items if item.kind == "index")


NARROW = 42
"""Letters of a call that a third of a page holds on one line at the index's size; measured."""

HEAD = 44.0
"""Points that the heading of the index's first page takes."""

HEIGHTS = {"index": 26.0, "group": 16.0, "call": 10.4}
"""Points of a column that each kind of line takes: the calls are set in 7.8 and 8.4 points."""


def index(plays: tuple[Play, ...], ids: tuple[str, ...], paper: Paper) -> Index:
    """The indexes of ``plays``, which stand in the book under ``ids``."""
    lines = tuple(IndexLine(play.call.spoken, id_) for play, id_ in zip(plays, ids, strict=True))
    formations: dict[str, list[IndexLine]] = {}
    tags: dict[str, list[IndexLine]] = {}
    for play, line in zip(plays, lines, strict=True):
        formations.setdefault(play.call.formation, []).append(line)
        for tag in play.call.tags:
            tags.setdefault(tag, []).append(line)
    calls, by_formation, by_tag = _sorted(lines), _groups(formations), _groups(tags)
    named = IndexGroup("Calls of one word", _sorted(tuple(_named(plays, lines))))
    items = (
        *_items("Index by call", "by-call", (*((named,) if named.lines else ()), *by_formation)),
        *_items("Index by tag", "by-tag", by_tag),
    )
    longest = max((len(line.call) for line in lines), default=0)
    across = 3 if longest <= NARROW else 2
    pages = set_columns(items, across, room(paper) - HEAD)
    return Index(calls, by_formation, by_tag, across, pages)


def set_columns(
    items: tuple[IndexItem, ...], across: int, height: float, least: int = 1
) -> tuple[tuple[tuple[IndexItem, ...], ...], ...]:
    """``items`` on as few pages of ``across`` columns as hold them, the columns equally full. No
    column begins or ends with fewer than ``least`` calls of a group that has more."""
    fewest = len(_filled(items, height, least))
    pages = -(-fewest // across)
    limit = sum(item.height for item in items) / max(1, pages * across)
    while len(columns := _filled(items, min(limit, height), least)) > pages * across:
        limit += HEIGHTS["call"] / 2
    return tuple(columns[i : i + across] for i in range(0, len(columns), across))


def _filled(
    items: tuple[IndexItem, ...], limit: float, least: int
) -> tuple[tuple[IndexItem, ...], ...]:
    """Columns of at most ``limit`` points; headings stand with the calls under them."""
    columns: list[list[IndexItem]] = []
    left = 0.0
    for together in _together(items, least):
        height = sum(each.height for each in together)
        if height > left:
            columns.append([])
            left = limit
        columns[-1] += together
        left -= height
    return tuple(tuple(column) for column in columns)


def _together(items: tuple[IndexItem, ...], least: int) -> Iterator[list[IndexItem]]:
    """What no column parts: the headings over a group with its first calls, and its last ones."""
    heads: list[IndexItem] = []
    for is_calls, group in groupby(items, lambda item: item.kind == "call"):
        if not is_calls:
            heads = [*group]
            continue
        calls = [*group]
        if len(calls) < 2 * least:
            yield [*heads, *calls]
            continue
        last = len(calls) - least
        yield [*heads, *calls[:least]]
        yield from ([call] for call in calls[least:last])
        yield calls[last:]


def _items(title: str, id_: str, groups: tuple[IndexGroup, ...]) -> Iterator[IndexItem]:
    if not any(group.lines for group in groups):
        return
    yield IndexItem("index", title, id_, HEIGHTS["index"])
    for group in groups:
        if group.title:
            yield IndexItem("group", group.title, "", HEIGHTS["group"])
        for line in group.lines:
            yield IndexItem("call", line.call, line.id, HEIGHTS["call"])


def _named(plays: tuple[Play, ...], lines: tuple[IndexLine, ...]) -> Iterator[IndexLine]:
    """The lines of calls with a name of their own, which no formation begins."""
    for play, line in zip(plays, lines, strict=True):
        if not line.call.startswith(f"{play.call.formation} "):
            yield line


def _groups(groups: dict[str, list[IndexLine]]) -> tuple[IndexGroup, ...]:
    ordered = sorted(groups, key=lambda title: (title.casefold(), title))
    return tuple(IndexGroup(title, _sorted(tuple(groups[title]))) for title in ordered)


def _sorted(lines: tuple[IndexLine, ...]) -> tuple[IndexLine, ...]:
    return tuple(sorted(lines, key=lambda line: (line.call.casefold(), line.call)))

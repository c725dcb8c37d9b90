"""The indexes: every call by its name, by its formation and by its tags."""

from __future__ import annotations

from stemline.book.model import Index, IndexGroup, IndexLine
from stemline.football.play import Play

NARROW = 36
"""Letters of a call that a third of a page holds on one line at the index's size; measured."""


def index(plays: tuple[Play, ...], ids: tuple[str, ...]) -> Index:
    """The indexes of ``plays``, which stand in the book under ``ids``."""
    lines = tuple(
        IndexLine(play.call.spoken, id_) for play, id_ in zip(plays, ids, strict=True)
    )
    formations: dict[str, list[IndexLine]] = {}
    tags: dict[str, list[IndexLine]] = {}
    for play, line in zip(plays, lines, strict=True):
        formations.setdefault(play.call.formation, []).append(line)
        for tag in play.call.tags:
            tags.setdefault(tag, []).append(line)
    longest = max((len(line.call) for line in lines), default=0)
    return Index(
        calls=_sorted(lines),
        formations=_groups(formations),
        tags=_groups(tags),
        columns=3 if longest <= NARROW else 2,
    )


def _groups(groups: dict[str, list[IndexLine]]) -> tuple[IndexGroup, ...]:
    ordered = sorted(groups, key=lambda title: (title.casefold(), title))
    return tuple(IndexGroup(title, _sorted(tuple(groups[title]))) for title in ordered)


def _sorted(lines: tuple[IndexLine, ...]) -> tuple[IndexLine, ...]:
    return tuple(sorted(lines, key=lambda line: (line.call.casefold(), line.call)))

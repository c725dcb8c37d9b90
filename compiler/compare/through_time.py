"""A definition through its playbook's revisions: what each changed, since when a line stands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.compare.definitions import Definition, SaidLine, definitions
from stemline.compare.line_changes import LineChange, line_changes
from stemline.compare.renames import matched
from stemline.syntax.tree import Document


@dataclass(frozen=True)
class Revision:
    """A commit of the playbook: its short name, its day, who made it, and the texts' trees."""

    name: str
    day: str
    who: str
    trees: tuple[Document, ...]


@dataclass(frozen=True)
class RevisionTurn:
    """A revision that changed the definition.

    ``was`` is None where it came, ``now`` where it went.
    """

    revision: Revision
    was: Definition | None
    now: Definition | None
    lines: tuple[LineChange, ...]


@dataclass(frozen=True)
class LineStanding:
    """A line as it stands, and the revision since which it does."""

    line: SaidLine
    since: Revision


def turns(revisions: Sequence[Revision], name: str) -> tuple[RevisionTurn, ...]:
    """Every revision, oldest first, that changed what is called ``name`` at the end, or its tags.

    The name is followed back through renames.
    """
    found: list[RevisionTurn] = []
    asked = {name.casefold()}
    for older, newer in reversed(list(zip((None, *revisions), revisions, strict=False))):
        new = definitions(newer.trees)
        old = definitions(older.trees) if older is not None else {}
        pairs = matched(old, new)
        for was, now in pairs.pairs:
            if not _is(now, asked):
                continue
            lines = line_changes(was.lines, now.lines, pairs.words(was), now.kind)
            if lines or was.name.casefold() != now.name.casefold():
                found.append(RevisionTurn(newer, was, now, lines))
            if now.kind != "tag" and was.name.casefold() != now.name.casefold():
                asked.add(was.name.casefold())
        found += [RevisionTurn(newer, None, d, ()) for d in pairs.come if _is(d, asked)]
        found += [RevisionTurn(newer, d, None, ()) for d in pairs.gone if _is(d, asked)]
    return tuple(reversed(found))


def _is(one: Definition, asked: set[str]) -> bool:
    return one.kind != "dress" and bool({one.name.casefold(), one.owner.casefold()} & asked)


def standing(revisions: Sequence[Revision], name: str) -> Iterator[LineStanding]:
    """Each line that the definition has now, with the revision that wrote it so."""
    if not revisions:
        return
    last = definitions(revisions[-1].trees)
    for one in (d for d in last.values() if d.name.casefold() == name.casefold()):
        since: dict[tuple[str, ...], Revision] = {}
        for revision in revisions:
            here = definitions(revision.trees).get(one.key)
            lines = {line.alike for line in here.lines} if here is not None else set()
            since = {key: since.get(key, revision) for key in lines}
        for line in one.lines:
            yield LineStanding(line, since[line.alike])

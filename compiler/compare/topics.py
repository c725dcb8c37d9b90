"""A comparison cut into topics, as a staff goes through it: concept by concept, then the rest.

What hangs together is one topic: a concept with its tags, its dress-up and the calls that came or
went; a protection that took another's place with the concepts that have it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from stemline.compare.comparison import Comparison, DefinitionChange
from stemline.compare.line_changes import LineChange
from stemline.football.play import Play

_CONCEPTS = ("concept", "run", "tag", "dress")
_ORDER = (
    "protection", "route", "formation", "motion", "personnel", "look", "playbook", "week", "install"
)  # fmt: skip
"""Of what is no concept: what the men learn first, what only the coaches read last."""


@dataclass(frozen=True)
class ConceptTopic:
    """What happened to a concept or run: to ``itself``, its tags, its dress-up and its calls."""

    name: str
    itself: DefinitionChange | None
    tags: tuple[DefinitionChange, ...]
    dress: DefinitionChange | None
    added: tuple[Play, ...]
    dropped: tuple[Play, ...]


@dataclass(frozen=True)
class Replacement:
    """A protection that took the place of another, in concepts by name."""

    was: DefinitionChange
    now: DefinitionChange
    concepts: tuple[str, ...]
    calls: tuple[str, ...]


@dataclass(frozen=True)
class Topics:
    """All of a comparison once: ``others`` are in the order in which they are gone through."""

    concepts: tuple[ConceptTopic, ...]
    replaced: tuple[Replacement, ...]
    others: tuple[DefinitionChange, ...]


def topics(found: Comparison, only: str = "") -> Topics:
    """The topics; ``only`` those about a definition of this name, as it was or is."""
    wanted = [c for c in found.definitions if not only or only.casefold() in names_of(c)]
    plays = [
        [p for p in side if not only or p.call.concept.casefold() == only.casefold()]
        for side in (found.added, found.dropped)
    ]
    wanted, replaced = _replacements(wanted)
    in_concepts = [c for c in wanted if c.one.kind in _CONCEPTS]
    others = [c for c in wanted if c.one.kind not in _CONCEPTS]
    others.sort(key=lambda c: _ORDER.index(c.one.kind) if c.one.kind in _ORDER else 0)
    return Topics(tuple(_concepts(in_concepts, *plays)), tuple(replaced), tuple(others))


def names_of(change: DefinitionChange) -> frozenset[str]:
    """What a change is about, by every name it has or had, in lower case."""
    sides = [d for d in (change.was, change.now) if d is not None]
    return frozenset(text.casefold() for d in sides for text in (d.name, d.owner) if text)


def _concepts(
    wanted: Sequence[DefinitionChange], added: Sequence[Play], dropped: Sequence[Play]
) -> Iterable[ConceptTopic]:
    names = [_concept(c) for c in wanted] + [p.call.concept for p in (*added, *dropped)]
    for name in {name.casefold(): name for name in names}.values():
        mine = [c for c in wanted if _concept(c).casefold() == name.casefold()]
        itself = next((c for c in mine if c.one.kind in ("concept", "run")), None)
        tags = tuple(c for c in mine if c.one.kind == "tag")
        dress = next((c for c in mine if c.one.kind == "dress"), None)
        topic = ConceptTopic(
            name, itself, tags, _undressed(dress, tags),
            *(tuple(p for p in side if p.call.concept == name) for side in (added, dropped)),
        )  # fmt: skip
        if any((topic.itself, topic.tags, topic.dress, topic.added, topic.dropped)):
            yield topic


def _concept(change: DefinitionChange) -> str:
    return change.one.owner if change.one.kind == "tag" else change.one.name


def _undressed(
    dress: DefinitionChange | None, tags: Iterable[DefinitionChange]
) -> DefinitionChange | None:
    """The dress-up's lines but for those that only take in, or leave out, a tag that came or
    went; None where nothing is left."""
    if dress is None or dress.was is None or dress.now is None:
        return None
    gone = {c.one.name.casefold() for c in tags if c.now is None or c.was is None}
    lines = tuple(line for line in dress.lines if not _of_tags(line, gone))
    return replace(dress, lines=lines) if lines else None


def _of_tags(line: LineChange, tags: set[str]) -> bool:
    """Whether the line says nothing else but for these tags."""
    sides = [_words(side.value) if side is not None else None for side in (line.was, line.now)]
    bare = [_words(_without(side, tags)) if side is not None else None for side in sides]
    if None in sides:
        return sides != bare
    return bare[0] == bare[1]


def _words(text: str) -> str:
    return " ".join(text.casefold().replace(",", " ").split())


def _without(text: str, names: Iterable[str]) -> str:
    for name in names:
        text = f" {text} ".replace(f" {name} ", " ").strip()
    return text


def _replacements(
    changes: Sequence[DefinitionChange],
) -> tuple[list[DefinitionChange], list[Replacement]]:
    """The changes without those that say, in a concept, that one protection is now another."""
    come = {c.one.name.casefold(): c for c in changes if _is_protection(c) and c.was is None}
    gone = {c.one.name.casefold(): c for c in changes if _is_protection(c) and c.now is None}
    found: dict[tuple[str, str], list[DefinitionChange]] = {}
    rest: list[DefinitionChange] = []
    for change in changes:
        kept = []
        for line in change.lines:
            pair = _protects(line)
            if pair[0] in gone and pair[1] in come:
                found.setdefault(pair, []).append(change)
            else:
                kept.append(line)
        if kept or not change.lines or change.roles or change.likeness is not None:
            rest.append(replace(change, lines=tuple(kept)))
    rows = [
        Replacement(
            gone[a], come[b],
            tuple(dict.fromkeys(_concept(c) for c in here)),
            tuple(dict.fromkeys(call for c in here for call in c.calls)),
        )
        for (a, b), here in found.items()
    ]  # fmt: skip
    told = {id(side.one) for row in rows for side in (row.was, row.now)}
    return [c for c in rest if id(c.one) not in told], rows


def _is_protection(change: DefinitionChange) -> bool:
    return change.one.kind == "protection"


def _protects(line: LineChange) -> tuple[str, str]:
    if line.was is None or line.now is None or line.now.verb != "protect":
        return "", ""
    return line.was.value.casefold(), line.now.value.casefold()

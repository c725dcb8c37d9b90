"""Lines in a form of earlier books, and the form that is read aloud better.

Both are read and mean the same. `format` writes the newer one, a check counts the older ones, and a
comparison takes them for one. A line of which it is not sure stays as it is.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace

from stemline.source import Span
from stemline.syntax.tree import (
    Atom,
    AtomKind,
    Block,
    Document,
    Fact,
    Linked,
    Mark,
    Phrase,
    Series,
    Value,
    items,
)
from stemline.syntax.writing import written_fact

_TECHNIQUE = re.compile(r"\d{1,2}i?")
_SHAPES = ("triangle", "high-low", "stretch")
_DRAWN_FROM = {
    "middle": "from middle",
    "strength to field": "strong to field",
    "strength to boundary": "strong to boundary",
}
_WAYS = (("away", "from"), ("same", "side", "as"), ("toward",), ("across", "from"))


@dataclass(frozen=True)
class OlderForm:
    """A line as it is written and as it is now, without their margins."""

    old: str
    new: str
    span: Span


def older_forms(documents: Iterable[Document]) -> tuple[OlderForm, ...]:
    """The lines of these texts that have a newer form, in their order."""
    documents = tuple(documents)
    names = names_of(documents)
    return tuple(
        OlderForm(written_fact(fact), written_fact(now), fact.span)
        for document in documents
        for block in document.blocks
        for fact in block.facts
        if (now := newer(block.kind, fact, names)) is not fact
    )


def names_of(documents: Iterable[Document]) -> frozenset[tuple[str, ...]]:
    """What these texts call roles and spots, as words: where one name ends and the next begins."""
    blocks = [block for document in documents for block in document.blocks]
    return frozenset(
        tuple(atom.word for atom in name.atoms)
        for block in blocks
        for fact in block.facts
        for name in _named(block, fact)
    )


def _named(block: Block, fact: Fact) -> Sequence[Phrase]:
    if fact.key == "spot" and isinstance(fact.value, Linked):
        return [fact.value.head] if isinstance(fact.value.head, Phrase) else []
    return fact.subject if block.kind in ("concept", "run", "tag") else ()


def newer(kind: str, fact: Fact, names: Collection[tuple[str, ...]]) -> Fact:
    """The line in its newer form; the line itself where it has none, or where that is not sure.

    ``names`` are those of roles and spots that are known.
    """
    match kind, fact.key:
        case "look", "at":
            return _technique(fact)
        case "motion", "starts":
            return _seconds(fact)
        case "playbook", "picture":
            return _drawn(fact)
        case "concept" | "run" | "tag", "claims":
            return _claim(fact, names)
        case "concept" | "run" | "tag", "runs":
            return _way_first(fact)
    return fact


def _technique(fact: Fact) -> Fact:
    """``T at 3, strong`` → ``T in 3, strong``: in a technique, at a place."""
    first = next(iter(items(next(iter(items(fact.value, Mark.AND)), None), Mark.OR)), None)
    if fact.verb is None or not isinstance(first, Phrase) or len(first.atoms) > 1:
        return fact
    if not _TECHNIQUE.fullmatch(first.atoms[0].word):
        return fact
    return replace(fact, verb=replace(fact.verb, text="in"))


def _seconds(fact: Fact) -> Fact:
    """``W starts 3, set`` → ``W starts 3 seconds, set``."""
    first, *others = items(fact.value, Mark.AND) or (None,)
    if not isinstance(first, Phrase) or len(first.atoms) > 1:
        return fact
    number = first.atoms[0]
    if number.kind is not AtomKind.NUMBER:
        return fact
    unit = "second" if number.number == 1 else "seconds"
    said = _phrase(number, Atom(AtomKind.WORD, unit, number.span))
    return replace(fact, value=Series(Mark.AND, (said, *others)) if others else said)


def _drawn(fact: Fact) -> Fact:
    """``picture strength to field`` → ``draw strong to field``."""
    value = fact.value
    now = _DRAWN_FROM.get(value.text.casefold()) if isinstance(value, Phrase) else None
    if now is None or value is None or fact.label is None:
        return fact
    atoms = (Atom(AtomKind.WORD, word, value.span) for word in now.split())
    return replace(fact, label=replace(fact.label, text="draw"), value=_phrase(*atoms))


def _claim(fact: Fact, names: Collection[tuple[str, ...]]) -> Fact:
    """``claims stretch wide seam other wide`` → ``claims stretch wide, seam, other wide``."""
    value = fact.value
    head = value.head if isinstance(value, Linked) else value
    if not isinstance(head, Phrase) or head.atoms[0].word not in _SHAPES:
        return fact
    parted = _parted(head.atoms[1:], names)
    if len(parted) < 2:
        return fact
    first, *others = parted
    now = Series(Mark.AND, (_phrase(head.atoms[0], *first), *(Phrase(tuple(o)) for o in others)))
    linked: Value = replace(value, head=now) if isinstance(value, Linked) else now
    return replace(fact, value=linked)


def _parted(atoms: Sequence[Atom], names: Collection[tuple[str, ...]]) -> list[Sequence[Atom]]:
    """Words as names side by side, each the longest that is known; none where one is not."""
    made: list[Sequence[Atom]] = []
    at = 0
    while at < len(atoms):
        words = [atom.word for atom in atoms[at:]]
        length = max((len(n) for n in names if tuple(words[: len(n)]) == n), default=0)
        if not length:
            return []
        made.append(atoms[at : at + length])
        at += length
    return made


def _way_first(fact: Fact) -> Fact:
    """``shoot to 6 outside tackle same side as stick`` → the side before the distance."""
    first, *others = items(fact.value, Mark.THEN) or (None,)
    if not isinstance(first, Phrase):
        return fact
    words = [atom.word for atom in first.atoms]
    to = next((i for i, word in enumerate(words) if word == "to" and i), None)
    way = next(
        (i for i in range(len(words)) for w in _WAYS if tuple(words[i : i + len(w)]) == w), None
    )
    if to is None or way is None or way < to:
        return fact
    atoms = first.atoms
    now = Phrase((*atoms[:to], *atoms[way:], *atoms[to:way]))
    return replace(fact, value=Series(Mark.THEN, (now, *others)) if others else now)


def _phrase(*atoms: Atom) -> Phrase:
    return Phrase(atoms)

"""A man of another letter: found between two playbooks, and written wherever a text means him.

Letters stand in personnel, formations, motions, bodies and calls (*Stick X Fade*). One that is also
a gap is left where a gap may stand, and a name that holds it stays. What is made is read and
compared, so a place that was missed or meant something else is refused, and never changes a play.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from enum import Enum

from stemline.compare.renaming import names
from stemline.session import Session
from stemline.source import Source, Span
from stemline.syntax.tree import Atom, AtomKind, Block, Document, Fact, Phrase, phrases

_BODIES = ("concept", "run", "tag", "protection")
_KINDS = (*_BODIES, "personnel", "formation", "motion", "dress", "week", "install")
_BEFORE_A_GAP = ("playside", "backside", "strong", "weak")
LETTER = re.compile(r"[A-Z][A-Za-z0-9]?")
Letters = tuple[tuple[str, str], ...]
"""Men's letters: as they were, as they are."""


def lettered(trees: Sequence[Document], old: str, new: str) -> tuple[Source, ...]:
    """The texts in which the man ``old`` is ``new``."""
    longer = [tuple(name.split()) for name in names(trees) if _holds(name.split(), old)]
    made = []
    for tree in trees:
        lines = list(tree.source.lines)
        spans = {span for block in tree.blocks for span in _meant(block, old, longer)}
        for span in sorted(spans, reverse=True):
            line = lines[span.line - 1]
            lines[span.line - 1] = line[: span.column - 1] + new + line[span.end - 1 :]
        made.append(Source(tree.source.name, "\n".join(lines)))
    return tuple(made)


def left_alone(trees: Iterable[Document], sources: Iterable[Source], old: str) -> Iterator[str]:
    """The lines of texts that still have the letter as a word: sentences, comments, gaps, names;
    not those of looks, where it is a defender's."""
    word = re.compile(rf"(?<![\w-]){re.escape(old)}(?![\w-])")
    for tree, source in zip(trees, sources, strict=True):
        looks = {f.span.line for b in tree.blocks if b.kind == "look" for f in b.facts}
        for number, line in enumerate(source.lines, 1):
            if number not in looks and word.search(line):
                yield f"{source.name}:{number}:\n    {line.strip()}"


def same_plays(before: Session, after: Session, letters: tuple[str, str]) -> bool:
    """Whether each call's play is what it was, but for what one man of it is called."""
    words = re.compile(rf"\b(?:{'|'.join(map(re.escape, letters))})\b", re.IGNORECASE)
    sides = [[order for _, order in side.calls.orders] for side in (before, after)]
    return len(sides[0]) == len(sides[1]) and all(
        _alike(a.spoken, b.spoken, words) and _alike(before.drawn(a)[0], after.drawn(b)[0], words)
        for a, b in zip(*sides, strict=True)
    )


def _alike(a: object, b: object, words: re.Pattern[str]) -> bool:
    """Whether two values are the same but for these words, and for places in a text."""
    if type(a) is not type(b):
        return False
    if isinstance(a, Span):
        return True
    if isinstance(a, str) and isinstance(b, str) and not isinstance(a, Enum):
        return words.sub("", a) == words.sub("", b)
    if isinstance(a, Mapping) and isinstance(b, Mapping):
        return _alike(tuple(a.items()), tuple(b.items()), words)
    if isinstance(a, tuple) and isinstance(b, tuple):
        return len(a) == len(b) and all(_alike(x, y, words) for x, y in zip(a, b, strict=True))
    if is_dataclass(a):
        names_of = (field.name for field in fields(a))
        return all(_alike(getattr(a, name), getattr(b, name), words) for name in names_of)
    return a == b


def as_lettered(old: Session, new: Session) -> tuple[Session, Letters]:
    """The old side with its men called by the letters that they have on the new one, and which are
    others: a letter that went, with one that came in the same formations at the same position."""
    changed: list[tuple[str, str]] = []
    side = old
    assert old.book is not None and new.book is not None, "both sides were read"
    gone = [p for key, p in old.book.people.items() if key not in new.book.people]
    come = [p for key, p in new.book.people.items() if key not in old.book.people]
    if not gone or not come:
        return old, ()
    before, after = _sets(old), _sets(new)
    for man in gone:
        same = [
            p.letter
            for p in come
            if p.position is man.position and before[man.letter] == after[p.letter]
        ]
        if len(same) != 1:
            continue
        trees = [tree for tree, _ in side.trees]
        named = Session(lettered(trees, man.letter, same[0]), "", beside=new)
        if named.book is not None and not any(d.is_error for d in named.definitions):
            side = named
            changed.append((man.letter, same[0]))
    return side, tuple(changed)


def _sets(session: Session) -> dict[str, frozenset[str]]:
    """The formations, by their names, that say where a man stands, by his letter."""
    assert session.book is not None, "it was read"
    found: dict[str, set[str]] = {person.letter: set() for person in session.book.people.values()}
    for tree, _ in session.trees:
        for block in tree.blocks:
            if block.kind == "formation":
                for fact in block.facts:
                    for subject in fact.subject:
                        found.get(subject.text, set()).add(block.name.text.casefold())
    return {letter: frozenset(sets) for letter, sets in found.items()}


def _holds(words: Sequence[str], letter: str) -> bool:
    return letter in words and len(words) > 1


def _meant(block: Block, old: str, longer: Sequence[tuple[str, ...]]) -> Iterator[Span]:
    if block.kind not in _KINDS or (block.kind in _BODIES and _has_own(block, old)):
        return
    for fact in block.facts:
        yield from _in_fact(fact, old, longer)


def _has_own(block: Block, name: str) -> bool:
    """Whether a role of the block has this name: there the letter means the role."""
    return any(
        subject.text == name for fact in block.facts if fact.key == "is" for subject in fact.subject
    )


def _in_fact(fact: Fact, old: str, longer: Sequence[tuple[str, ...]]) -> Iterator[Span]:
    for phrase in (*fact.subject, *phrases(fact.value), *phrases(fact.guard)):
        yield from _in_phrase(phrase, old, longer)
    for row in fact.rows:
        yield from _in_fact(row, old, longer)


def _in_phrase(phrase: Phrase, old: str, longer: Sequence[tuple[str, ...]]) -> Iterator[Span]:
    atoms = phrase.atoms
    at = 0
    while at < len(atoms):
        words = tuple(atom.text for atom in atoms[at:])
        named = max((len(name) for name in longer if words[: len(name)] == name), default=0)
        atom = atoms[at]
        if not named and atom.kind is AtomKind.WORD and atom.text == old and not _gap(atoms, at):
            yield atom.span
        at += max(named, 1)


def _gap(atoms: Sequence[Atom], at: int) -> bool:
    """Whether the letter may be a gap's."""
    before = atoms[at - 1].word if at else ""
    after = atoms[at + 1].word if at + 1 < len(atoms) else ""
    return before in _BEFORE_A_GAP or after == "gap"

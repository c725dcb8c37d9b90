"""Another name for a definition or a role, wherever the texts use it.

Places come from the trees: a word in a comment or a sentence stays. What is made is compared with
what was: a new name that moves a man, or that is already somebody's, is refused.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from stemline.read.read_any import read_any
from stemline.source import Source, Span
from stemline.syntax.tree import (
    Atom,
    AtomKind,
    Block,
    Document,
    Fact,
    Linked,
    Phrase,
    Value,
    phrases,
)

_CONCEPTS = ("concept", "run")
_OTHERS = ("formation", "motion", "protection", "look", "personnel", "route", "tag")
_KINDS = (*_CONCEPTS, *_OTHERS)
_USES: Mapping[tuple[str, str], frozenset[str]] = {
    ("dress", "in"): frozenset({"formation", "motion", "tag"}),
    ("dress", "motion"): frozenset({"motion"}),
    ("dress", "with"): frozenset({"tag"}),
    ("dress", "never"): frozenset({"formation", "motion", "tag"}),
    ("dress", "only"): frozenset({"formation", "motion", "tag"}),
    ("dress", "call"): frozenset({"formation", "motion", "concept", "run", "tag"}),
    ("dress", "against"): frozenset({"look"}),
    ("playbook", "against"): frozenset({"look"}),
    ("formation", "people"): frozenset({"personnel"}),
    **{(kind, "protect"): frozenset({"protection"}) for kind in ("concept", "run", "tag")},
    **{(kind, "join"): frozenset({"concept", "run"}) for kind in ("concept", "tag")},
    **{(kind, "runs"): frozenset({"route"}) for kind in ("concept", "run", "tag")},
}
"""In which lines a definition of each kind is named; in a week it is any."""
_IN_WEEKS = frozenset({"formation", "motion", *_CONCEPTS, "tag", "look"})
_IN_INSTALLS = frozenset({"formation", "motion", "protection", *_CONCEPTS, "tag"})


@dataclass(frozen=True)
class RenameTarget:
    """What is to be renamed: a definition, or a role (``kind`` "role") of ``owner``."""

    kind: str
    name: str
    owner: str = ""

    @property
    def title(self) -> str:
        of = {"tag": " for ", "role": " of "}.get(self.kind, " ")
        return f"{self.kind} {self.name}" + (f"{of}{self.owner}" if self.owner else "")


def targets(trees: Iterable[Document], name: str) -> tuple[RenameTarget, ...]:
    """Everything of this name, however its letters are."""
    asked = name.casefold()
    found: dict[RenameTarget, None] = {}
    for tree in trees:
        for block in tree.blocks:
            called = block.name.text
            owner = ", ".join(phrase.text for phrase in block.joined("for"))
            if block.kind in _KINDS and called.casefold() == asked:
                found[RenameTarget(block.kind, called, owner)] = None
            if block.kind in (*_CONCEPTS, "protection"):
                for fact in block.facts:
                    for subject in fact.subject:
                        if fact.key == "is" and subject.text.casefold() == asked:
                            found[RenameTarget("role", subject.text, called)] = None
    return tuple(found)


def names(trees: Iterable[Document]) -> frozenset[str]:
    """Every name that `targets` knows, for a message about one that it does not."""
    found = set()
    for tree in trees:
        for block in tree.blocks:
            if block.kind in _KINDS:
                found.add(block.name.text)
            found |= {s.text for fact in block.facts if fact.key == "is" for s in fact.subject}
    return frozenset(found)


def renamed(trees: Sequence[Document], target: RenameTarget, new: str) -> tuple[Source, ...]:
    """The texts with the new name in the place of the old one."""
    family, longer = _family(trees, target), _longer(trees, target)
    return tuple(
        Source(
            tree.source.name,
            _replaced(tree.source, list(_spans(tree, target, family, longer)), new),
        )
        for tree in trees
    )


def _longer(trees: Sequence[Document], target: RenameTarget) -> tuple[tuple[str, ...], ...]:
    """Names that hold the target's own, as words: where one of them stands, it is not meant."""
    words = tuple(target.name.casefold().split())
    all_names = (tuple(name.casefold().split()) for name in names(trees))
    return tuple(
        name
        for name in all_names
        if len(name) > len(words)
        and any(name[n : n + len(words)] == words for n in range(len(name)))
    )


def _family(trees: Sequence[Document], target: RenameTarget) -> frozenset[str]:
    """The concepts whose lines know the roles of the target's owner: itself, what extends it."""
    family = {target.owner.casefold()}
    grown = True
    while grown:
        more = {
            block.name.text.casefold()
            for tree in trees
            for block in tree.blocks
            if (parent := block.join("extends")) is not None and parent.text.casefold() in family
        }
        grown = not more <= family
        family |= more
    return frozenset(family)


def _spans(
    tree: Document,
    target: RenameTarget,
    family: frozenset[str],
    longer: tuple[tuple[str, ...], ...],
) -> Iterator[Span]:
    words = tuple(target.name.casefold().split())
    for block in tree.blocks:
        if target.kind == "role":
            if _knows_roles(block, family):
                for fact in block.facts:
                    for phrase in (*fact.subject, *_phrases(fact)):
                        yield from _runs(phrase, words, longer)
            continue
        yield from _header(block, target, words)
        for fact in block.facts:
            yield from _used(block, fact, target, words, longer)


def _knows_roles(block: Block, family: frozenset[str]) -> bool:
    names = [phrase.text.casefold() for phrase in block.joined("for") or (block.name,)]
    return block.kind in (*_CONCEPTS, "protection", "tag") and not family.isdisjoint(names)


def _header(block: Block, target: RenameTarget, words: tuple[str, ...]) -> Iterator[Span]:
    """The definition's own name, and the headers that name it."""
    owners = block.joined("for")
    concept = target.kind in _CONCEPTS
    mine = block.kind == target.kind and (
        target.kind != "tag" or ", ".join(p.text for p in owners) == target.owner
    )
    if mine or (concept and block.kind == "dress"):
        for name in (block.name, *block.also):
            yield from _whole(name, words)
    if block.kind == target.kind or (concept and block.kind in _CONCEPTS):
        for parent in block.joined("extends"):
            yield from _whole(parent, words)
    for owner in owners if concept else ():
        if (many := read_any(owner)) is not None:  # `any pass but Crossers`
            for left_out in many.but:
                yield from _whole(left_out, words)
        else:
            yield from _whole(owner, words)


def _used(
    block: Block,
    fact: Fact,
    target: RenameTarget,
    words: tuple[str, ...],
    longer: tuple[tuple[str, ...], ...],
) -> Iterator[Span]:
    if block.kind == "week":
        yield from _used_in_week(fact, target, words, longer)
        return
    if block.kind == "install":
        for row in fact.rows:
            yield from _used_in_install(row, target, words)
        return
    if target.kind == "formation" and block.kind in (*_CONCEPTS, "tag"):
        for phrase in phrases(fact.guard):  # `when Trey`
            yield from _whole(phrase, words)
    if target.kind not in _USES.get((block.kind, fact.key), ()):
        return
    if target.kind == "tag" and not _for_one_of(target, (block.name, *block.also)):
        return
    value: Value | None = fact.value
    if fact.key == "call" and isinstance(value, Linked):
        value = value.head  # what stands behind `as` is the call's own name
    for phrase in (*fact.subject, *phrases(value)) if block.kind == "dress" else phrases(value):
        yield from _runs(phrase, words, longer)


def _for_one_of(target: RenameTarget, concepts: Iterable[Phrase]) -> bool:
    """Whether a tag may be one of a concept's: that of any pass may be of every one."""
    owners = {owner.strip().casefold() for owner in target.owner.split(",")}
    many = any(owner.split()[:1] == ["any"] for owner in owners)
    return many or not owners.isdisjoint(name.text.casefold() for name in concepts)


def _used_in_week(
    fact: Fact,
    target: RenameTarget,
    words: tuple[str, ...],
    longer: tuple[tuple[str, ...], ...],
) -> Iterator[Span]:
    """A week names calls and looks; a tag is meant where its concept stands before it."""
    if target.kind not in _IN_WEEKS or fact.key == "say":
        return
    owners = [tuple(owner.split()) for owner in target.owner.casefold().split(",")]
    everywhere = any(owner[:1] in ((), ("any",)) for owner in owners)
    for phrase in (*phrases(fact.value), *phrases(fact.guard)):
        after = (phrase.atoms[n:] for n in range(len(phrase.atoms)))
        if everywhere or any(_starts(atoms, owner) for atoms in after for owner in owners):
            yield from _runs(phrase, words, longer)
    for row in fact.rows:
        yield from _used_in_week(row, target, words, longer)


def _used_in_install(row: Fact, target: RenameTarget, words: tuple[str, ...]) -> Iterator[Span]:
    """A day names whole definitions; a tag stands before `for` and its concept."""
    if target.kind not in _IN_INSTALLS:
        return
    linked = row.value if isinstance(row.value, Linked) else None
    owners = [p for link in linked.links for p in phrases(link.value)] if linked else []
    named = list(phrases(linked.head if linked else row.value))
    if target.kind == "tag":
        if not any(p.text.casefold() == target.owner.casefold() for p in owners):
            return
    elif linked:
        named = owners
    for phrase in named:
        again = phrase.atoms[0].word == "again" and len(phrase.atoms) > 1
        yield from _whole(Phrase(phrase.atoms[1:]) if again else phrase, words)


def _phrases(fact: Fact) -> Iterator[Phrase]:
    if fact.key not in ("say", "says", "idea", "caution", "family"):
        yield from phrases(fact.value)
        yield from phrases(fact.guard)


def _whole(phrase: Phrase, words: tuple[str, ...]) -> Iterator[Span]:
    if tuple(phrase.text.casefold().split()) == words:
        yield phrase.span


def _runs(
    phrase: Phrase, words: tuple[str, ...], longer: tuple[tuple[str, ...], ...]
) -> Iterator[Span]:
    """Where the words stand side by side in a phrase, quoted as one or not."""
    atoms: tuple[Atom, ...] = phrase.atoms
    at = 0
    while at < len(atoms):
        atom = atoms[at]
        other = max((len(w) for w in longer if _starts(atoms[at:], w)), default=0)
        if other:
            at += other
            continue
        run = atoms[at : at + len(words)]
        if atom.kind is AtomKind.STRING and tuple(atom.word.split()) == words:
            yield atom.span
        elif tuple(a.word for a in run) == words:
            yield run[0].span.to(run[-1].span)
            at += len(words) - 1
        at += 1


def _starts(atoms: Sequence[Atom], words: tuple[str, ...]) -> bool:
    return tuple(a.word for a in atoms[: len(words)]) == words


def _replaced(source: Source, spans: Sequence[Span], new: str) -> str:
    lines = list(source.lines)
    for span in sorted(set(spans), reverse=True):
        line = lines[span.line - 1]
        lines[span.line - 1] = line[: span.column - 1] + new + line[span.end - 1 :]
    return "\n".join(lines)

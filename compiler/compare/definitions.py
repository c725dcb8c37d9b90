"""The definitions of a playbook as keyed lines: what a text says, whatever its layout.

Two texts that say the same have the same definitions: the order of files, blocks and lines, the
margins, the comments, capital letters of names, and subjects gathered on one line make none. Rows
stand in the order of the text, which is told where it says something (`row_order`).
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from stemline.source import Span
from stemline.syntax.older_forms import names_of, newer
from stemline.syntax.tree import Block, Document, Fact, Mark, Series, Value, items
from stemline.syntax.writing import written, written_fact

_GATHERED = {
    "dress": frozenset({"in", "with", "to", "motion", "from"}),
    "tag": frozenset({"keeps"}),
    "playbook": frozenset({"lower"}),
}
"""Labels whose commas part things of one kind: each counts for itself, in any order."""


@dataclass(frozen=True)
class DefinitionKey:
    """What a line is about: (kind, name, owner), names in lower case."""

    kind: str
    name: str
    owner: str = ""


@dataclass(frozen=True)
class SaidLine:
    """One line: ``subject`` "" where it opens with a label, ``verb`` the label or the verb.

    ``guard`` is what stands behind `when`, "" without one.
    """

    subject: str
    verb: str
    value: str
    guard: str
    span: Span

    @property
    def about(self) -> tuple[str, str, str]:
        """The key under which two lines are the same thing with another value."""
        return self.subject.casefold(), self.verb, self.guard.casefold()

    @property
    def alike(self) -> tuple[str, str, str, str]:
        """The whole line as it is compared: a coach's own sentences letter by letter."""
        return *self.about, folded(self.value)

    @property
    def text(self) -> str:
        when = f"when {self.guard}" if self.guard else ""
        return " ".join(filter(None, (self.subject, self.verb, self.value, when)))


@dataclass(frozen=True)
class Definition:
    """A definition, all its blocks together; ``parent`` is what it extends, "" for nothing.

    ``name`` and ``owner`` (the concept a tag is for) are as written.
    """

    kind: str
    name: str
    owner: str
    parent: str
    lines: tuple[SaidLine, ...]
    span: Span

    @property
    def key(self) -> DefinitionKey:
        return DefinitionKey(self.kind, self.name.casefold(), self.owner.casefold())

    @property
    def title(self) -> str:
        """ "tag Wheel for Crossers"."""
        return f"{self.kind} {self.name}" + (f" for {self.owner}" if self.owner else "")


def folded(text: str) -> str:
    """A text in lower case but for what stands in quotes."""
    parts = text.split('"')
    return '"'.join(p if n % 2 else p.casefold() for n, p in enumerate(parts))


def definitions(trees: Iterable[Document]) -> Mapping[DefinitionKey, Definition]:
    """Every definition of a playbook, in the order of its texts."""
    found: dict[DefinitionKey, Definition] = {}
    trees = tuple(trees)
    names = names_of(trees)
    for tree in trees:
        for block in (one for written_block in tree.blocks for one in written_block.apart):
            one = _definition(block, names)
            there = found.get(one.key)
            if there is not None:
                one = Definition(
                    one.kind, there.name, there.owner, there.parent or one.parent,
                    (*there.lines, *one.lines), there.span,
                )  # fmt: skip
            found[one.key] = one
    return found


def _definition(block: Block, names: Collection[tuple[str, ...]]) -> Definition:
    owner, parent = block.join("for"), block.join("extends")
    lines = tuple(
        line for fact in block.facts for line in _lines(block.kind, newer(block.kind, fact, names))
    )
    return Definition(
        block.kind,
        written(block.name),
        written(owner) if owner is not None else "",
        written(parent) if parent is not None else "",
        lines,
        block.span,
    )


def _lines(kind: str, fact: Fact) -> Iterator[SaidLine]:
    guard = _guard(fact.guard)
    if fact.rows:
        opener = written_fact(replace(fact, rows=()))
        for row in fact.rows:
            verb = row.key
            yield SaidLine(opener, verb, written(row.value), _guard(row.guard), row.span)
        return
    if fact.label is not None:
        word = fact.label.word
        gathered = word in _GATHERED.get(kind, ())
        values = items(fact.value, Mark.AND) if gathered else (fact.value,)
        yield from (SaidLine("", word, written(value), guard, fact.span) for value in values)
        return
    for subject in fact.subject:
        yield SaidLine(written(subject), fact.key, written(fact.value), guard, fact.span)


def _guard(guard: Value | None) -> str:
    """A guard's commas part what must hold together, in any order."""
    if isinstance(guard, Series) and guard.mark is Mark.AND:
        return ", ".join(sorted(map(written, guard.items), key=str.casefold))
    return written(guard)

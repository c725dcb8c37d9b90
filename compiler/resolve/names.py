"""Definitions by name: duplicates, unknown names, and what extends what."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from itertools import zip_longest

from stemline.diagnostics.model import Diagnostic, Related, diagnose
from stemline.diagnostics.nearest import nearest
from stemline.source import Span
from stemline.syntax.tree import Block, Document, Fact, Phrase

Key = tuple[str, str, str]
"""Kind, name and, for a tag, the concept it is for; all in lower case."""


class Blocks:
    """Every block of a playbook by kind and name; the first of two with one name stands."""

    def __init__(self, documents: Iterable[Document], mistakes: Iterable[Diagnostic]) -> None:
        self.by_key: dict[Key, Block] = {}
        self.found: list[Diagnostic] = []
        self.broken: set[int] = set()
        wrong = [d.span for d in mistakes if d.is_error]
        for document in documents:
            ends = [b.span.line for b in document.blocks[1:]]
            for block, end in zip_longest(document.blocks, ends):
                self._add(block)
                if any(_within(span, block.span, end) for span in wrong):
                    self.broken.add(id(block))

    def is_broken(self, block: Block, found: Iterable[Diagnostic] = ()) -> bool:
        """Whether a line of the block, or of what it extends, was not read, or was not found.

        ``found`` is what its reading gave: an error among it breaks the block too.
        """
        if any(d.is_error for d in found):
            return True
        return any(id(b) in self.broken for b in (block, *self.ancestors(block)))

    def _add(self, block: Block) -> None:
        key = key_of(block)
        first = self.by_key.setdefault(key, block)
        if first is not block:
            self.found.append(
                diagnose(
                    "E301",
                    block.name.span,
                    related=(Related(first.name.span, "first defined here"),),
                    kind=block.kind,
                    name=block.name.text,
                )
            )

    def of(self, kind: str) -> list[Block]:
        return [b for (k, _, _), b in self.by_key.items() if k == kind]

    def names(self, kind: str) -> list[str]:
        return [b.name.text for b in self.of(kind)]

    def facts(self, block: Block) -> list[Fact]:
        """The block's facts after those of what it extends, whose keys it does not say itself."""
        facts = _one_subject_each(block)
        said = {fact_key(f) for f in facts}
        for ancestor in self.ancestors(block):
            inherited = [f for f in _one_subject_each(ancestor) if fact_key(f) not in said]
            said |= {fact_key(f) for f in inherited}
            facts = inherited + facts
        return facts

    def ancestors(self, block: Block) -> list[Block]:
        """What the block extends, nearest first; stops at an unknown name or a circle."""
        chain: list[Block] = []
        at: Block | None = block
        while at is not None:
            at = self._parent(at)
            if at is None or at is block or at in chain:
                break
            chain.append(at)
        return chain

    def _parent(self, block: Block) -> Block | None:
        name = block.join("extends")
        return None if name is None else self.by_key.get((block.kind, name_key(name), ""))

    def check_extends(self) -> list[Diagnostic]:
        """Unknown parents and circles, each circle once, at its first block in the text."""
        found: list[Diagnostic] = []
        seen: set[frozenset[str]] = set()
        for (kind, _, _), block in self.by_key.items():
            name = block.join("extends")
            if name is None:
                continue
            if self._parent(block) is None:
                near = nearest(name.text, self.names(kind))
                found.append(diagnose("E302", name.span, nearest=near, kind=kind, name=name.text))
                self.broken.add(id(block))
                continue
            circle = self._circle(block)
            if circle:
                self.broken.add(id(block))
            if circle and frozenset(circle) not in seen:
                seen.add(frozenset(circle))
                path = " extends ".join([*circle, circle[0]])
                found.append(diagnose("E303", name.span, kind=kind, path=path))
        return found

    def _circle(self, block: Block) -> list[str]:
        names, at = [block.name.text], self._parent(block)
        visited = {id(block)}
        while at is not None and id(at) not in visited:
            visited.add(id(at))
            names.append(at.name.text)
            at = self._parent(at)
        return names if at is block else []


def _one_subject_each(block: Block) -> list[Fact]:
    """``over, under runs return`` as two facts, so that a child may replace one of them."""
    facts: list[Fact] = []
    for fact in block.facts:
        facts += [replace(fact, subject=(one,)) for one in fact.subject] or [fact]
    return facts


def _within(span: Span, first: Span, end: int | None) -> bool:
    """Whether a span lies on the lines of a block that starts at ``first``."""
    return (
        span.source == first.source and first.line <= span.line and (end is None or span.line < end)
    )


def key_of(block: Block) -> Key:
    owner = block.join("for")
    return block.kind, name_key(block.name), name_key(owner) if owner else ""


def name_key(name: Phrase) -> str:
    return name.text.casefold()


_DOES = ("runs", "blocks", "aims")
"""Verbs that give a role his job: a child that says one of them says it all."""


def fact_key(fact: Fact) -> tuple[str, str]:
    """What a fact speaks of: a child's fact of the same key takes the place of its parent's."""
    if fact.key == "pair":
        return "claims", ""  # a claim by another word
    if fact.key in _DOES and fact.subject:
        return "runs", fact.subject[0].text.casefold()  # one man, one job
    subject = fact.subject[0].text.casefold() if fact.subject else ""
    if fact.label is not None and fact.key == "spot" and fact.value is not None:
        head = getattr(fact.value, "head", None)
        subject = head.text.casefold() if isinstance(head, Phrase) else ""
    return fact.key, subject

"""The tree as compact text, one line a fact."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from stemline.source import Source, Span
from stemline.syntax.parser import parse
from stemline.syntax.tree import Atom, AtomKind, Block, Fact, Linked, Phrase, Series, Value

_SIGNS = {
    AtomKind.WORD: "",
    AtomKind.NUMBER: "n:",
    AtomKind.RANGE: "r:",
    AtomKind.RANK: "",
    AtomKind.SHAPE: "s:",
    AtomKind.STRING: "t:",
}


def _atom(atom: Atom) -> str:
    return _SIGNS[atom.kind] + (f"<{atom.text}>" if atom.kind is AtomKind.STRING else atom.text)


def write(value: Value) -> str:
    """Series as ``(mark a | b)``, linked values as ``[head on x]``, phrases as they stand."""
    match value:
        case Phrase(atoms):
            return " ".join(_atom(a) for a in atoms)
        case Series(mark, items):
            return f"({mark.value} " + " | ".join(write(i) for i in items) + ")"
        case Linked(head, links):
            parts = [] if head is None else [write(head)]
            parts += [f"@{k.connector.text} {write(k.value)}" for k in links]
            return "[" + " ".join(parts) + "]"


def _span(span: Span) -> str:
    return f"{span.line}:{span.column}-{span.end}"


def write_fact(fact: Fact) -> str:
    subject = ", ".join(write(p) for p in fact.subject)
    turn = fact.label or fact.verb
    assert turn is not None and fact.value is not None
    opening = f"{turn.text}:" if fact.label else f"{subject} <{turn.text}>"
    guard = f" WHEN {write(fact.guard)}" if fact.guard else ""
    return f"{_span(fact.span)} {opening} {write(fact.value)}{guard}"


def write_block(block: Block) -> str:
    joins = "".join(f" @{j.connector.text} {write(j.value)}" for j in block.joins)
    lines = [f"{_span(block.span)} {block.kind} {write(block.name)}{joins}"]
    return "\n".join(lines + ["  " + write_fact(f) for f in block.facts])


@pytest.fixture
def tree() -> Callable[[str], str]:
    """A text's tree as text, then its comments, then its mistakes by code and place."""

    def dump(text: str) -> str:
        document, found = parse(Source("test.play", text))
        parts = [write_block(b) for b in document.blocks]
        parts += [
            f"{_span(c.span)} {'own line' if c.own_line else 'line end'}: {c.text}"
            for c in document.comments
        ]
        parts += [f"{_span(d.span)} {d.code}" for d in found]
        return "\n".join(parts) + "\n"

    return dump


@pytest.fixture
def fact() -> Callable[..., str]:
    """One line of a block, as text without its place; the line must be free of mistakes."""

    def dump(line: str, header: str = "concept Test") -> str:
        document, found = parse(Source("test.play", f"{header}\n    {line}\n"))
        assert not found, [d.code for d in found]
        return write_fact(document.blocks[0].facts[0]).partition(" ")[2]

    return dump

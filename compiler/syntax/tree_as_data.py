"""A text's tree as plain data, and back: lists, words and numbers, nothing that runs.

A place is its line, column and end: all of a file's are in the file itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from stemline.source import Source, Span
from stemline.syntax.tree import (
    Atom,
    AtomKind,
    Block,
    Comment,
    Document,
    Fact,
    Link,
    Linked,
    Mark,
    Phrase,
    Series,
    Value,
)

_KINDS = {kind.value: kind for kind in AtomKind}
_MARKS = {mark.value: mark for mark in Mark}
_PHRASE, _LINKED = "phrase", "linked"
"""What stands before the parts of a value; a series has its mark there."""


def as_data(tree: Document) -> list[object]:
    blocks = [
        [
            b.kind, _value(b.name), _links(b.joins), list(map(_fact, b.facts)), _place(b.span),
            list(map(_value, b.also)),
        ]
        for b in tree.blocks
    ]  # fmt: skip
    return [blocks, [[c.text, c.own_line, _place(c.span)] for c in tree.comments]]


def from_data(held: Any, source: Source) -> Document:
    """Raises ValueError, LookupError or TypeError for what `as_data` does not write."""
    blocks, comments = held
    reading = _Reading(source.name)
    return Document(
        source, tuple(map(reading.block, blocks)), tuple(map(reading.comment, comments))
    )


def _place(span: Span) -> list[int]:
    return [span.line, span.column, span.end]


def _atom(atom: Atom) -> list[object]:
    return [atom.kind.value, atom.text, *_place(atom.span)]


def _links(links: Sequence[Link]) -> list[object]:
    return [[_atom(link.connector), _value(link.value)] for link in links]


def _value(value: Value | None) -> list[object] | None:
    match value:
        case None:
            return None
        case Phrase():
            return [_PHRASE, *map(_atom, value.atoms)]
        case Series():
            return [value.mark.value, *map(_value, value.items)]
        case Linked():
            return [_LINKED, _value(value.head), *_links(value.links)]


def _fact(fact: Fact) -> list[object]:
    return [
        _atom(fact.label) if fact.label is not None else None,
        list(map(_value, fact.subject)),
        _atom(fact.verb) if fact.verb is not None else None,
        _value(fact.value),
        _value(fact.guard),
        _place(fact.span),
        list(map(_fact, fact.rows)),
    ]


class _Reading:
    """Reads the data of one file, called ``name``."""

    def __init__(self, name: str) -> None:
        self._name = name

    def block(self, held: Any) -> Block:
        kind, name, joins, facts, place, also = held
        links = tuple(map(self._link, joins))
        return Block(
            _word(kind), self._phrase(name), links, tuple(map(self._fact, facts)),
            self._span(*place), tuple(map(self._phrase, also)),
        )  # fmt: skip

    def comment(self, held: Any) -> Comment:
        text, own_line, place = held
        if type(own_line) is not bool:
            raise ValueError(held)
        return Comment(_word(text), self._span(*place), own_line)

    def _fact(self, held: Any) -> Fact:
        label, subject, verb, value, guard, place, rows = held
        return Fact(
            self._atom(label) if label is not None else None,
            tuple(map(self._phrase, subject)),
            self._atom(verb) if verb is not None else None,
            self._value(value) if value is not None else None,
            self._value(guard) if guard is not None else None,
            self._span(*place),
            tuple(map(self._fact, rows)),
        )

    def _value(self, held: Any) -> Value:
        kind, *parts = held
        if kind == _PHRASE:
            return Phrase(tuple(map(self._atom, parts)))
        if kind == _LINKED:
            head, *links = parts
            first = self._value(head) if head is not None else None
            return Linked(first, tuple(map(self._link, links)))
        return Series(_MARKS[kind], tuple(map(self._value, parts)))

    def _phrase(self, held: Any) -> Phrase:
        value = self._value(held)
        if not isinstance(value, Phrase):
            raise ValueError(held)
        return value

    def _link(self, held: Any) -> Link:
        connector, value = held
        return Link(self._atom(connector), self._value(value))

    def _atom(self, held: Any) -> Atom:
        kind, text, line, column, end = held
        return Atom(_KINDS[kind], _word(text), self._span(line, column, end))

    def _span(self, line: int, column: int, end: int) -> Span:
        if not (type(line) is type(column) is type(end) is int):
            raise ValueError(line, column, end)
        return Span(self._name, line, column, end)


def _word(held: Any) -> str:
    if type(held) is not str:
        raise ValueError(held)
    return held

"""What the coach wrote, as values: one dataclass a form, each with its span. No football here.

A value is built from three forms only: a `Phrase` (words side by side), a `Series` (items
between one kind of mark) and a `Linked` (a head with connectors). A form with a single item
collapses to that item, so ``runs dig 12`` is a plain phrase.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum
from itertools import product

from stemline.source import Source, Span


class AtomKind(Enum):
    WORD = "word"  # Wheel, inside, 2i, high-low
    NUMBER = "number"  # 12, 1.5
    RANGE = "range"  # 10-12
    RANK = "rank"  # #2
    SHAPE = "shape"  # 3x1
    STRING = "string"  # "any text", quotes taken off


class Mark(Enum):
    """The marks that part a series, loosest first; connectors stand between ORDER and THEN."""

    ORDER = ">"
    THEN = "then"
    AND = ","
    OR = "or"
    TOGETHER = "+"


@dataclass(frozen=True)
class Atom:
    """The smallest piece of a value; ``text`` is as written, a string without its quotes and
    with one space for each run of blanks in it."""

    kind: AtomKind
    text: str
    span: Span

    @property
    def number(self) -> float:
        """The value of a NUMBER or the digits of a RANK; a RANGE gives its middle.

        Raises ValueError for the other kinds.
        """
        if self.kind is AtomKind.RANGE:
            low, high = self.text.split("-")
            return (float(low) + float(high)) / 2
        return float(self.text.lstrip("#"))

    @property
    def word(self) -> str:
        """The text as it is compared: lower case."""
        return self.text.casefold()


@dataclass(frozen=True)
class Phrase:
    """One or more atoms side by side: ``strong #2``, ``sit 8 over ball``."""

    atoms: tuple[Atom, ...]

    @property
    def span(self) -> Span:
        return self.atoms[0].span.to(self.atoms[-1].span)

    @property
    def text(self) -> str:
        return " ".join(a.text for a in self.atoms)


@dataclass(frozen=True)
class Series:
    """Two or more items between marks of one kind."""

    mark: Mark
    items: tuple[Value, ...]

    @property
    def span(self) -> Span:
        return self.items[0].span.to(self.items[-1].span)


@dataclass(frozen=True)
class Link:
    """A connector and what follows it: ``on quick``."""

    connector: Atom
    value: Value


@dataclass(frozen=True)
class Linked:
    """A head and its connectors; ``head`` is None where the value opens with a connector."""

    head: Value | None
    links: tuple[Link, ...]

    @property
    def span(self) -> Span:
        first = self.head.span if self.head is not None else self.links[0].connector.span
        return first.to(self.links[-1].value.span)

    def link(self, connector: str) -> Value | None:
        """What follows ``connector``, or None where it is not written."""
        for link in self.links:
            if link.connector.word == connector:
                return link.value
        return None


Value = Phrase | Series | Linked


def items(value: Value | None, mark: Mark) -> tuple[Value, ...]:
    """The items of a series of ``mark``; any other value is a series of itself, None of none."""
    if value is None:
        return ()
    if isinstance(value, Series) and value.mark is mark:
        return value.items
    return (value,)


def phrases(value: Value | None) -> Iterator[Phrase]:
    """Every phrase of a value, in order of writing."""
    match value:
        case None:
            return
        case Phrase():
            yield value
        case Series():
            for item in value.items:
                yield from phrases(item)
        case Linked():
            yield from phrases(value.head)
            for link in value.links:
                yield from phrases(link.value)


@dataclass(frozen=True)
class Comment:
    """A ``//`` comment, its slashes kept in ``text``; ``own_line`` tells one that stands before a
    line from one at its end."""

    text: str
    span: Span
    own_line: bool


@dataclass(frozen=True)
class Fact:
    """One line of a block: ``label value`` or ``subject verb value``, perhaps ``when guard``.

    Either ``label`` is set, or ``subject`` (one phrase or more) and ``verb`` are; a row under an
    opener may have none of them. ``rows`` stand under an opener, which is a label.
    """

    label: Atom | None
    subject: tuple[Phrase, ...]
    verb: Atom | None
    value: Value | None
    guard: Value | None
    span: Span
    rows: tuple[Fact, ...] = ()

    @property
    def key(self) -> str:
        """The label or the verb: what kind of fact this is; "" for a row without one."""
        word = self.label or self.verb
        return word.text.casefold() if word is not None else ""


@dataclass(frozen=True)
class Block:
    """A definition: ``kind name [extends other | for other]`` and its facts.

    ``also`` are further names: one text of several things, ``dress Slants, Bench``.
    """

    kind: str
    name: Phrase
    joins: tuple[Link, ...]
    facts: tuple[Fact, ...]
    span: Span
    also: tuple[Phrase, ...] = ()

    def join(self, word: str) -> Phrase | None:
        """What follows ``word`` in the header, the first of several; None where it is not there."""
        return next(iter(self.joined(word)), None)

    def joined(self, word: str) -> tuple[Phrase, ...]:
        """All that follows ``word`` in the header: ``for Stick, Snag``."""
        return tuple(p for x in self.joins if x.connector.word == word for p in phrases(x.value))

    @property
    def apart(self) -> tuple[Block, ...]:
        """The same as blocks of one name each, each for one thing; what a block extends it does
        with all of its lines."""
        joins = [
            [Link(x.connector, one) for one in phrases(x.value)]
            if x.connector.word == "for"
            else [x]
            for x in self.joins
        ]
        return tuple(
            replace(self, name=name, also=(), joins=joined)
            for name in (self.name, *self.also)
            for joined in product(*joins)
        )


@dataclass(frozen=True)
class Document:
    """One file, read: its blocks and comments in order."""

    source: Source
    blocks: tuple[Block, ...]
    comments: tuple[Comment, ...]

"""A word that two coaches gave to two things, each without the other's knowing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from stemline.syntax.tree import Document, Fact, Linked
from stemline.syntax.writing import written, written_header

_Given = dict[str, tuple[str, str, str]]
"""A word in lower case → what has it, and its line and the first line of its block as written."""


@dataclass(frozen=True)
class GivenTwice:
    """The line of theirs that gives a word which ours gave to another thing; ``header`` is the
    first line of its block, ``told`` the word and both things."""

    header: str
    line: str
    told: str


def given_twice(base: Document, ours: Document, theirs: Document) -> tuple[GivenTwice, ...]:
    """The words that ours and theirs have each given to another thing since ``base``."""
    was, mine, yours = (dict(_given(tree)) for tree in (base, ours, theirs))
    return tuple(
        GivenTwice(header, line, f"the word {word}: {mine[word][0]} and {thing}")
        for word, (thing, line, header) in yours.items()
        if word in mine and thing != mine[word][0]
        and was.get(word, ("",))[0] not in (thing, mine[word][0])
    )  # fmt: skip


def _given(tree: Document) -> Iterator[tuple[str, tuple[str, str, str]]]:
    for block in tree.blocks:
        for fact in block.facts:
            word, thing = _word(fact)
            if word:
                of = thing or written_header(block)
                at = tree.source.lines[block.span.line - 1].strip()
                line = tree.source.lines[fact.span.line - 1].strip()
                yield word.casefold().strip('"'), (of, line, at)


def _word(fact: Fact) -> tuple[str, str]:
    """The word that a line gives, and the call that has it: "" where the block does."""
    if fact.label is None:
        return "", ""
    if fact.key == "word":
        return written(fact.value), ""
    if fact.key == "call" and isinstance(fact.value, Linked):
        return written(fact.value.link("as")), f"call {written(fact.value.head)}"
    return "", ""

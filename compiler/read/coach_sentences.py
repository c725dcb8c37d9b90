"""The coach's own sentences, looked at before a player reads them: nobody blocks with his head."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from stemline.diagnostics.catalogue.coaching_notes import W890
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.rulebook.care_rules import HEAD
from stemline.football.rulebook.head_contact import head_contact
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Document, Phrase, phrases

TOLD = ("say", "says", "idea", "caution", "hot")
"""The labels and verbs behind which a coach's own words stand."""


def check_sentences(documents: Sequence[Document]) -> tuple[Diagnostic, ...]:
    """A warning at each sentence that puts a head, helmet, face or neck into a block or tackle."""
    return tuple(_found(_sentences(documents)))


def _sentences(documents: Iterable[Document]) -> Iterator[Phrase]:
    for document in documents:
        for block in document.blocks:
            for fact in block.facts:
                if fact.key in TOLD:
                    yield from phrases(fact.value)
                for row in fact.rows:
                    yield from filter(_quoted, phrases(row.value))


def _quoted(said: Phrase) -> bool:
    """A note of a row: what stands there without quotes are names."""
    return [atom.kind for atom in said.atoms] == [AtomKind.STRING]


def _found(sentences: Iterable[Phrase]) -> Iterator[Diagnostic]:
    for said in sentences:
        place = head_contact(said.text)
        if place is None:
            continue
        start, end = place
        words = said.text[start:end]
        yield W890(words=words, care=HEAD).at(_span(said, start, end))


def _span(said: Phrase, start: int, end: int) -> Span:
    """Under the words; under all of the text where it holds signs that are written otherwise."""
    span, first = said.span, said.atoms[0]
    quotes = 2 if len(said.atoms) == 1 and first.kind is AtomKind.STRING else 0
    if span.end - span.column != len(said.text) + quotes:
        return span
    at = span.column + quotes // 2
    return Span(span.source, span.line, at + start, at + end)

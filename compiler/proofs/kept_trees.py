"""A text's tree, from what is kept, else parsed and kept: a text without a mistake is parsed once.

What parses is loaded only for a text that is new.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.outside.program import program
from stemline.proofs.kept_proofs import KeptAnswers
from stemline.proofs.reading import Reading, ReadPart
from stemline.source import Source
from stemline.syntax.tree_as_data import as_data, from_data

if TYPE_CHECKING:
    from stemline.syntax.tree import Document

Parsed = tuple["Document", tuple[Diagnostic, ...]]


def parsed(source: Source, kept: KeptAnswers) -> Parsed:
    """As `stemline.syntax.parser.parse`."""

    def work() -> Parsed:
        from stemline.syntax.parser import parse

        tree, found = parse(source)
        return tree, tuple(found)

    def write(made: Parsed, _: Reading) -> object:
        tree, found = made
        if found:
            raise ValueError("a text with mistakes is not kept")
        return as_data(tree)

    def read(held: object, _: Reading) -> Parsed:
        return from_data(held, source), ()

    reading = lambda: Reading((ReadPart((program(), _grammar(), source.text)),))  # noqa: E731
    return kept.answer("tree", reading, work, write, read)


def parsed_beside(made: Parsed, source: Source) -> Parsed | None:
    """The tree of ``source`` from that of the same text under another name; None where the text
    has mistakes, whose places are its own."""
    tree, found = made
    if tree.source == source:
        return made
    return None if found else (from_data(as_data(tree), source), ())


@cache
def _grammar() -> str:
    return files("stemline.grammar").joinpath("stemline.lark").read_text("utf-8")

"""Everything that is printed of a page as words, cell by cell, and what no cell may hold."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from itertools import pairwise

from stemline.book.content.job_rows import JobChange, LineJobs, Row
from stemline.book.content.page import Remark
from stemline.book.content.quarterback_strip import Quarterback
from stemline.football.play import Play

Cell = tuple[str, str]
"""Where words stand, and the words."""
_PLAIN = {"id", "sort", "family", "calls", "clock"}
"""Names and links: no words of a page."""


def cells(of: object, where: str = "") -> Iterator[Cell]:
    """Each text of a page model, and those that are printed one after another in one cell."""
    if isinstance(of, str):
        yield where, of
    elif isinstance(of, tuple):
        if where.rpartition(".")[2] in ("says", "cautions"):
            yield where, " ".join(str(line) for line in of)
        for one in of:
            yield from cells(one, where)
    elif is_dataclass(of) and not isinstance(of, Play):
        if isinstance(of, Row):
            yield f"{where}.job", of.job
        if isinstance(of, Row | LineJobs | Quarterback):
            yield from ((f"{where}.changes", note.words) for note in of.changes)
        name = getattr(of, "name", "") if not isinstance(of, Row | LineJobs) else ""
        for field in fields(of):
            if field.name not in _PLAIN:
                inner = f"{where} {name}".strip() + f".{field.name}"
                yield from cells(getattr(of, field.name), inner)


def lists(of: object) -> Iterator[tuple[object, ...]]:
    """Every list of notes, changes or rows of a page model."""
    if isinstance(of, tuple):
        if of and isinstance(of[0], Remark | JobChange | Row):
            yield of
        for one in of:
            yield from lists(one)
    elif is_dataclass(of) and not isinstance(of, Play):
        for field in fields(of):
            yield from lists(getattr(of, field.name))
        if isinstance(of, Row | LineJobs | Quarterback):
            yield of.changes


def badly_said(of: object) -> Iterator[str]:
    """What is said twice, or runs together, in the words of a page."""
    for where, words in cells(of):
        if re.search(
            r"[a-z0-9)\]][.!?;,][A-Z\[]|[.!?,;:] ?[.,;:](?!\.)|\S  +\S| [.,;:!?](?= |$)", words
        ):
            yield f"{where} runs together: {words}"
        said = re.split(r"(?<=[.!?]) +", words.strip())
        if any(a.casefold() == b.casefold() for a, b in pairwise(said)):
            yield f"{where} says a sentence twice: {words}"
        if re.search(r"(?:^|[,.:;] )([\w#]+(?: [\w#]+)*), \1(?=[,.;]|$)", words):
            yield f"{where} names one twice: {words}"
        if re.search(r"\b([A-Z][A-Z0-9]?) \1\b", words):
            yield f"{where} names a man twice: {words}"
    for notes in lists(of):
        if len(set(map(repr, notes))) < len(notes):
            yield f"a note twice: {notes}"
        for note in notes:
            label = note.label if isinstance(note, Remark) else ""
            label = note.calls if isinstance(note, JobChange) else label
            items = label.split(", ")
            letters = (
                re.findall(r"(?<![\w])[A-Z][A-Z0-9]?(?![\w])", label) if "," not in label else []
            )
            if len(set(items)) < len(items) or len(set(letters)) < len(letters):
                yield f"a label names one twice: {label}"

"""A mistake set into a small correct playbook: what the corpus and the errors page are run with.

A case holds only the blocks that matter and the base the rest. A block of the case takes the
place of the base's block of the same kind and name; a case with a playbook block of its own, or
one that is said to stand alone, is compiled by itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from corpus.remembering import Remembering
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.render import in_order, render
from stemline.session import Session
from stemline.source import Source

CORPUS = Path(__file__).parent
PROVED = Remembering()
"""What all cases have of the base is proved by the first of them."""
_HEADER = re.compile(r"^[^\s/].*$", re.MULTILINE)


@dataclass(frozen=True)
class Outcome:
    """What the compiler said: every diagnostic as it was found, and the print-out."""

    found: tuple[Diagnostic, ...]
    shown: str

    @property
    def codes(self) -> list[str]:
        """Codes in the order of the print-out."""
        return [d.code for d in in_order(self.found)]


def base() -> tuple[Source, ...]:
    """The files of the base playbook, named as a coach sees them."""
    paths = sorted((CORPUS / "base").glob("*.play"))
    return tuple(Source(f"base/{p.name}", p.read_text("utf-8")) for p in paths)


CLOCK = ("W80", "E666")
"""What the clock says: left out of a case that is not about the clock."""


def compile_case(name: str, text: str, *, alone: bool = False, clock: bool = False) -> Outcome:
    """The case compiled within the base; ``name`` is its file's name."""
    alone = alone or any(line.startswith("playbook") for line in text.split("\n"))
    sources = (*(() if alone else _less(base(), text)), Source(name, text))
    found = Session(sources, name.removesuffix(".play"), store=PROVED).diagnostics
    return outcome(sources, (d for d in found if clock or not d.code.startswith(CLOCK)))


def outcome(sources: Iterable[Source], found: Iterable[Diagnostic]) -> Outcome:
    found = tuple(found)
    return Outcome(found, render(found, {s.name: s for s in sources}))


def _less(sources: Iterable[Source], text: str) -> Iterable[Source]:
    """The sources less every block that ``text`` says itself; other lines keep their numbers."""
    mine = {_block(header) for header in _HEADER.findall(text)}
    for source in sources:
        lines, dropped = [], False
        for line in source.lines:
            if _HEADER.match(line):
                dropped = _block(line) in mine
            lines.append("" if dropped else line)
        yield Source(source.name, "\n".join(lines))


def _block(header: str) -> str:
    """A header without what it extends."""
    return header.split(" extends ")[0].strip()

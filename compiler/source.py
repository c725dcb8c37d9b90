"""A file's text and a range in it: the ground every later value points back to."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from pathlib import PurePosixPath


@dataclass(frozen=True)
class Source:
    """One text file of a playbook.

    ``name`` is the path shown to the coach, relative to where he ran the command;
    ``text`` uses ``\\n`` line ends.
    """

    name: str
    text: str

    @cached_property
    def lines(self) -> tuple[str, ...]:
        return tuple(self.text.split("\n"))

    @property
    def stem(self) -> str:
        return PurePosixPath(self.name).stem


@dataclass(frozen=True, order=True)
class Span:
    """A range on one line of a source: line and column from 1, ``end`` one past the last column."""

    source: str
    line: int
    column: int
    end: int

    @classmethod
    def over(cls, source: str, text: str) -> Span:
        """All of a text of one line: what was said to an option, or called."""
        return cls(source, 1, 1, len(text) + 1)

    def to(self, other: Span) -> Span:
        """The range from here to ``other``; on another line, up to where this span ends."""
        if other.line != self.line or other.source != self.source:
            return self
        return Span(self.source, self.line, self.column, max(self.end, other.end))


NOWHERE = Span("", 0, 0, 0)
"""Where a default comes from: no text says it."""

"""What a question reads, as a key; and places of its answer, told by what was read.

An answer is kept under all that it was worked out from, places by their line among the lines that
were read. A text that moves keeps its answers, and each of their places is found again. Which line
comes first, and which two things stand on one, goes into the key: some checks ask for it.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from functools import cached_property

from stemline.resolve.sealing import Line, sealed_with_places
from stemline.source import NOWHERE, Span

Place = tuple[int, int, int]
"""The line's number among those read, column and end; line -1 for `NOWHERE`."""


class ReadPart:
    """One value that is read: a digest of it, and the lines that it came from."""

    def __init__(self, value: object) -> None:
        sealed, self.lines = sealed_with_places(value)
        self.digest = hashlib.sha256(sealed).digest()


class Reading:
    """All that is read for an answer, in order."""

    def __init__(self, parts: Sequence[ReadPart]) -> None:
        self.parts = tuple(parts)

    def and_also(self, *parts: ReadPart) -> Reading:
        return Reading((*self.parts, *parts))

    @cached_property
    def digest(self) -> bytes:
        """The same where the same things were read, in whatever places."""
        digest = hashlib.sha256()
        numbers = self._numbers
        for part in self.parts:
            digest.update(part.digest)
            digest.update(repr([numbers[line] for line in part.lines]).encode())
        return digest.digest()

    @cached_property
    def _lines(self) -> list[Line]:
        return sorted({line for part in self.parts for line in part.lines})

    @cached_property
    def _numbers(self) -> dict[Line, int]:
        return {line: number for number, line in enumerate(self._lines)}

    def place(self, span: Span) -> Place:
        """A place among what was read. Raises KeyError for another."""
        if span == NOWHERE:
            return -1, 0, 0
        return self._numbers[span.source, span.line], span.column, span.end

    def span(self, place: Place) -> Span:
        """Where that place is now. Raises IndexError where there is none."""
        number, column, end = place
        if number == -1:
            return NOWHERE
        if number < 0:
            raise IndexError(number)
        return Span(*self._lines[number], column, end)


def key_of(kind: str, reading: Reading) -> str:
    """What an answer to a question of that kind is kept under."""
    return hashlib.sha256(kind.encode() + b"\0" + reading.digest).hexdigest()[:40]

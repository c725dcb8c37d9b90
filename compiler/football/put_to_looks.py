"""What a pass has against each look, as a page prints it: a value to be kept, with no play in it.

Planning figures throughout, as all of the clock's.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class ReadAtLook:
    """A read against a look: how it is covered, by the name of its `Cover`; yards to the nearest
    defender at the catch and his letter; whether a man runs it."""

    cover: str
    yards: float
    nearest: str
    run: bool


@dataclass(frozen=True)
class LookAnswered:
    """A look: each read against it, and the place among them of the one that is thrown to.

    ``out`` is when the ball leaves the hand where that one is open, ``rusher`` when a free rusher
    is at the passer, both in seconds after the snap; ``hot`` is whom the answer to him goes to.
    Each is None where there is none. ``told`` is what is printed of that answer: the protection's
    hot too, which no clock has.
    """

    look: str
    reads: tuple[ReadAtLook, ...]
    best: int | None
    out: float | None
    hot: str | None
    rusher: float | None
    told: str = ""

    @property
    def leaves_nobody(self) -> bool:
        """Whether nobody is thrown to."""
        return self.best is None and self.hot is None


@dataclass(frozen=True)
class PutToLooks:
    """A concept's first call from its formation: its reads as they are numbered, with where each
    goes, and a row a look. ``theirs`` and ``ours`` are the letters of all men in these plays."""

    concept: str
    formation: str
    reads: tuple[tuple[str, str], ...]
    rows: tuple[LookAnswered, ...]
    theirs: tuple[str, ...]
    ours: tuple[str, ...]

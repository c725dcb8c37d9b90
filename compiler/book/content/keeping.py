"""What a page hangs on, by which it may be kept: told by the page's maker, known by who keeps."""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum
from typing import Protocol, TypeVar

Made = TypeVar("Made")


class Reads(Enum):
    """What a part of a book is made from, besides the words that its maker names."""

    CALLS = "what every call is called, its protection, and all definitions but concepts and tags"
    CONCEPT = "one concept or run, its tags and calls, and all that these are made of"
    ROUTES = "what `CALLS` says, and every concept and tag without the coach's own words"
    ALL = "the whole playbook"


class KeepPart(Protocol):
    """Gives what ``make`` makes, from before where all that it reads is as it was.

    ``what`` names the part and ``kind`` is its type, ``more`` is read besides: plain values, or
    frozen ones of such; of `Reads.CONCEPT` ``concept`` is the name.
    """

    def __call__(
        self,
        reads: Reads,
        what: str,
        kind: type[Made],
        more: object,
        make: Callable[[], Made],
        concept: str = "",
    ) -> Made: ...


def anew(
    reads: Reads,
    what: str,
    kind: type[Made],
    more: object,
    make: Callable[[], Made],
    concept: str = "",
) -> Made:
    """A `KeepPart` that keeps nothing."""
    return make()

"""What the pages of a book read of the playbook, as digests that they are kept under.

A page is made of plays, of the coach's own words, and of what every call is called: all of that
goes into its digest, and rather too much than too little.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import cached_property

from stemline.football.play import Play
from stemline.outside.program import program
from stemline.playbook.dress_ups import Dress
from stemline.playbook.playbook import Playbook, Settings
from stemline.proofs.call_readings import CallReadings
from stemline.proofs.reading import ReadPart
from stemline.resolve.kills import second_calls
from stemline.resolve.order import Order
from stemline.source import NOWHERE


class PageReadings:
    """Digests of one playbook, for a book of ``plays``; ``whole`` tells that these are all of its
    calls. ``made`` are all calls that dress-ups make, with these."""

    def __init__(
        self,
        book: Playbook,
        readings: CallReadings,
        made: Iterable[tuple[Dress, Order]],
        plays: Sequence[Play],
        *,
        whole: bool,
    ) -> None:
        self._book, self._readings, self._plays, self._whole = book, readings, plays, whole
        self._made = {order.spoken: (dress, order) for dress, order in made}
        self._concepts: dict[str, str] = {}

    @cached_property
    def calls(self) -> str:
        """What every call is called, and every definition but concepts and tags."""
        told = [
            (
                replace(p.call, not_from=frozenset()),
                sorted(spot.value for spot in p.call.not_from),  # a set is printed in any order
                (p.family, p.kind.value, p.shape, p.protection, p.ball.value),
            )
            for p in self._plays
        ]
        return _digest(self._settings, *self._shared, repr((told, self._whole)).encode())

    @cached_property
    def routes(self) -> str:
        """`calls`, and every concept and tag without the coach's own words."""
        return _digest(self.calls.encode(), *self._readings.bodies())

    @cached_property
    def all(self) -> str:
        """The whole playbook, and so every page before one too."""
        book = self._book
        rest = book.settings, book.weeks, book.install
        return _digest(self._every_call.encode(), ReadPart(rest).digest)

    @cached_property
    def _every_call(self) -> str:
        """All that any call is made of, and is called."""
        book = self._book
        parts = [ReadPart((key, one)).digest for key, one in book.concepts.items()]
        parts += [ReadPart((key, one)).digest for key, one in book.tags.items()]
        return _digest(self.calls.encode(), *parts)

    def concept(self, name: str) -> str:
        """A concept with its tags and calls, and all that these are made of."""
        if name not in self._concepts:
            self._concepts[name] = self._concept(name)
        return self._concepts[name]

    def _concept(self, name: str) -> str:
        book, key = self._book, name.casefold()
        made = [self._made[p.call.spoken] for p in self._plays if p.call.concept == name]
        parts = [ReadPart((key, book.concepts[key])).digest]
        parts += [ReadPart((k, tag)).digest for k, tag in book.tags.items() if k[0] == key]
        for dress, order in made:
            bare = replace(order, tags=(), spoken="") if order.tags else None
            parts += [part.digest for part in self._readings.call(order, bare, dress).parts]
        if any(True for _, order in made for _ in second_calls(book, order)):
            parts.append(self._every_call.encode())  # what a call becomes may be any other
        return _digest(self._settings, *self._faced, *parts, repr(self._whole).encode())

    @cached_property
    def _settings(self) -> bytes:
        """What is read of the settings; what only the cover prints it says itself."""
        book = self._book
        read = program(), _printed(book.settings), book.people, book.taught, book.routes
        return ReadPart(read).digest

    @cached_property
    def _faced(self) -> list[bytes]:
        """Looks and protections."""
        book = self._book
        looks = [self._readings.look(key).digest for key in (*book.looks, book.base_look)]
        said = tuple(book.looks), book.base_look, tuple(book.protections.items())
        return [*looks, ReadPart(said).digest]

    @cached_property
    def _shared(self) -> list[bytes]:
        book = self._book
        stands = [part.digest for part in self._readings.formations().parts]
        return [*self._faced, *stands, ReadPart(tuple(book.motions.items())).digest]


def _printed(settings: Settings) -> Settings:
    return replace(
        settings, name="", season="", says=(), cautions=(), span=NOWHERE, lowered=(), theme="",
        theme_span=NOWHERE, sections=(),
    )  # fmt: skip


def _digest(*parts: bytes) -> str:
    digest = hashlib.sha256()
    for part in parts:
        digest.update(hashlib.sha256(part).digest())
    return digest.hexdigest()

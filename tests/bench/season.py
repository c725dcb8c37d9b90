"""A check of a whole season, as `stemline check` makes it: proofs, then each pass by each look."""

from __future__ import annotations

import gc
import os
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeVar

from stemline.analysis.answer_lines import answer_lines
from stemline.analysis.passes_against_looks import POOL, face
from stemline.checks.proving import prove
from stemline.football.play import Season
from stemline.outside.cache import Cache
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.expand import Expander
from stemline.resolve.order import Order

from .calls import fresh_book

T = TypeVar("T")


@dataclass(frozen=True)
class Spent:
    """Seconds of all processors, other processes among them, and of a person who waits."""

    cpu: float
    wall: float

    def __add__(self, other: Spent) -> Spent:
        return Spent(self.cpu + other.cpu, self.wall + other.wall)


def unanswered(
    book: Playbook, calls: Calls, season: Season, cache: Cache, *, pool: int = POOL
) -> tuple[str, ...]:
    """What a check says of the passes of ``season`` that have no answer to a look, as lines."""
    orders = calls.by_name
    passes = [orders[play.call.spoken] for play in season.plays if play.reads]
    return tuple(answer_lines(face(book, passes, cache, pool=pool)))


def checked(name: str, orders: Sequence[Order], most: int) -> Iterator[tuple[str, float, int]]:
    """What each part of a check costs, in seconds, for so many pairs of calls and looks: cold,
    with everything known, and with one concept changed."""
    book = fresh_book(name)
    dresses = {dress.concept: dress for dress in book.dresses}
    calls = Calls(tuple((dresses[order.concept], order) for order in orders))
    gc.disable()
    (season, _), proving = _timed(lambda: prove(book, calls, Expander(book)))
    book = replace(book, looks=dict(list(book.looks.items())[:most]))
    with tempfile.TemporaryDirectory() as place:
        nowhere, kept = Cache(Path(name), None), Cache(Path(name), Path(place))
        pairs = len(orders) * len(book.looks)
        one, alone = _timed(lambda: unanswered(book, calls, season, nowhere, pool=10**9))
        many, cold = _timed(lambda: unanswered(book, calls, season, kept))
        warm_lines, warm = _timed(lambda: unanswered(book, calls, season, kept))
        changed, told = _changed(book, orders)
        _, edited = _timed(lambda: unanswered(changed, calls, season, kept))
    gc.enable()
    assert one == many == warm_lines, "the answers hang on neither processes nor the cache"
    yield "prove every call", proving.cpu, len(orders)
    yield "by looks, one process", alone.cpu, pairs
    yield "by looks, all processors", cold.cpu, pairs
    yield "by looks, all known", warm.cpu, pairs
    yield f"by looks, {told} calls changed", edited.cpu, pairs
    yield "a check, cold", (proving + cold).cpu, pairs
    yield "a check, cold, by the clock", (proving + cold).wall, pairs
    yield "a check, all known", (proving + warm).cpu, pairs
    yield "a check, all known, by the clock", (proving + warm).wall, pairs


def _changed(book: Playbook, orders: Sequence[Order]) -> tuple[Playbook, int]:
    """The book with one line more in its first pass, and how many calls that touches."""
    key = next(o.concept for o in orders if book.concepts[o.concept].body.read)
    concept = book.concepts[key]
    body = replace(concept.body, says=(*concept.body.says, "changed"))
    concepts = {**book.concepts, key: replace(concept, body=body)}
    return replace(book, concepts=concepts), sum(o.concept == key for o in orders)


def _timed(work: Callable[[], T]) -> tuple[T, Spent]:
    cpu, wall = sum(os.times()[:4]), time.perf_counter()
    made = work()
    return made, Spent(sum(os.times()[:4]) - cpu, time.perf_counter() - wall)

"""Two revisions of a playbook of as many calls as are asked for, compared, by what it costs to read
it and to make each of its plays once."""

from __future__ import annotations

import gc
import time
from collections.abc import Iterator, Sequence

from stemline.analysis.passes_against_looks import unanswered
from stemline.checks.proving import prove
from stemline.compare.comparing import compared
from stemline.compare.following import with_consequences
from stemline.outside.cache import Cache
from stemline.outside.project import read_files
from stemline.resolve.expand import Order
from stemline.resolve.season import Calls
from stemline.session import Session
from stemline.source import Source

from .calls import PLAYBOOKS

EDITS = {
    "one concept": ("    dig runs dig 14 over ball\n", "    dig runs dig 12 over ball\n"),
    "a formation": ("    H at call, 4 outside tackle, off line\n    S at call, 5 outside H,",
                    "    H at call, 3 outside tackle, off line\n    S at call, 5 outside H,"),
}  # fmt: skip
"""What a coach may change between two revisions: a little, and what much hangs on."""


def revisions(name: str, orders: Sequence[Order]) -> Iterator[tuple[str, float, float]]:
    """(what, seconds, times as long as to make each play once), CPU time of this process."""
    sources = read_files(PLAYBOOKS / name).sources
    gc.disable()
    once = _took(lambda: _resolved(sources, orders))
    yield "read it and make each play", once, 1.0
    every = _took(lambda: _checked(sources, orders))
    yield "check it: proofs, each pass by each look", every, every / once
    for what, (was, now) in EDITS.items():
        changed = tuple(Source(s.name, s.text.replace(was, now)) for s in sources)
        assert changed != sources, f"{name} has no such line: {was}"
        plain = _took(lambda texts=changed: compared(*_sides(sources, texts, orders)))
        yield f"compare, {what} changed", plain, plain / once
        whole = _took(lambda texts=changed: _followed(*_sides(sources, texts, orders)))
        yield f"with what follows, {what} changed", whole, whole / once
    gc.enable()


def _session(sources: Sequence[Source], orders: Sequence[Order]) -> Session:
    """The playbook with these calls in the place of its own."""
    session = Session(tuple(sources), "bench")
    assert session.book is not None
    dresses = {dress.concept: dress for dress in session.book.dresses}
    session.__dict__["calls"] = Calls(tuple((dresses[order.concept], order) for order in orders))
    return session


def _sides(
    old: Sequence[Source], new: Sequence[Source], orders: Sequence[Order]
) -> tuple[Session, Session]:
    return _session(old, orders), _session(new, orders)


def _resolved(sources: Sequence[Source], orders: Sequence[Order]) -> None:
    session = _session(sources, orders)
    for order in orders:
        session.drawn(order)


def _checked(sources: Sequence[Source], orders: Sequence[Order]) -> None:
    session = _session(sources, orders)
    book, calls = session.book, session.calls
    assert book is not None
    season, _ = prove(book, calls, session.expander)
    unanswered(book, calls, season, Cache(PLAYBOOKS, None), pool=10**9)


def _followed(old: Session, new: Session) -> None:
    with_consequences(compared(old, new), old, new, Cache(PLAYBOOKS, None))


def _took(work: object) -> float:
    assert callable(work)
    began = time.process_time()
    work()
    return time.process_time() - began

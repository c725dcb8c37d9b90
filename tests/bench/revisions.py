"""Two revisions of a playbook of as many calls as are asked for, compared, by what it costs to read
it and make each of its plays once, and to resolve its season: each play made and proved."""

from __future__ import annotations

import gc
import resource
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from stemline.analysis.passes_against_looks import unanswered
from stemline.checks.proving import prove
from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison
from stemline.compare.following import with_consequences
from stemline.outside.cache import Cache
from stemline.outside.store import Store
from stemline.session import Session
from stemline.source import Source

from .calls import PLAYBOOKS, many_texts

EDITS = {
    "one concept": ("    dig runs dig 14 over ball\n", "    dig runs dig 12 over ball\n"),
    "a formation of many calls": (
        "    H at call, 4 outside tackle, off line\n    S at call, 5 outside H,",
        "    H at call, 3 outside tackle, off line\n    S at call, 5 outside H,",
    ),
    "the look runs are drawn against": ("    M at 10, strong\n", "    M at 30, strong\n"),
    "a protection": (
        "    centre, playside guard, playside tackle blocks slide\n",
        "    centre, playside guard, playside tackle blocks man\n",
    ),
}
"""What a coach may change between two revisions, of the Herons' texts: the first place each."""


@dataclass(frozen=True)
class _Took:
    """What a piece of work took: seconds by the clock, and of all processors together."""

    clock: float
    cpu: float


def revisions(name: str, calls: int) -> Iterator[str]:
    """A row for each piece of work: seconds by the clock and of processors, and how many times the
    processor time of making each play, and of resolving the season."""
    sources = many_texts(name, calls)
    gc.disable()
    _made(sources)  # what is loaded for the first time is nobody's
    once, proved = _took(lambda: _made(sources)), _took(lambda: _resolved(sources))
    yield f"{'':52}{'clock':>8}{'CPU':>8}{'x made':>9}{'x season':>9}"

    def row(what: str, took: _Took) -> str:
        times = f"{took.cpu / once.cpu:9.2f}{took.cpu / proved.cpu:9.2f}"
        return f"{what:52}{took.clock:8.2f}{took.cpu:8.2f}{times}"

    yield row(f"read {len(Session(sources, name).calls.orders)} calls, make each play", once)
    yield row("resolve the season: make and prove them", proved)
    yield row("check it: each pass by each look besides", _took(lambda: _checked(sources)))
    for what, edit in EDITS.items():
        changed = _edited(sources, *edit)
        plain: list[Comparison] = []
        took = _took(partial(_compared, sources, changed, plain))
        yield row(f"{what}: {len(plain[0].changed)} calls changed, nothing followed", took)
        with tempfile.TemporaryDirectory() as kept:
            for when in ("what follows", "a second time", "another new side"):
                texts = _edited(changed, "season 2026", "season 2027") if "new" in when else changed
                took = _took(partial(_followed, sources, texts, Path(kept)))
                yield row(f"    {when}", took)
    gc.enable()


def _edited(sources: Sequence[Source], was: str, now: str) -> tuple[Source, ...]:
    done = [Source(s.name, s.text.replace(was, now, 1)) for s in sources]
    assert any(a != b for a, b in zip(sources, done, strict=True)), f"no text has the line: {was}"
    return tuple(done)


def _sides(old: Sequence[Source], new: Sequence[Source]) -> tuple[Session, Session]:
    before = Session(old, "bench")
    return before, Session(new, "bench", beside=before)


def _made(sources: Sequence[Source]) -> None:
    session = Session(sources, "bench")
    for _, order in session.calls.orders:
        session.drawn(order)


def _resolved(sources: Sequence[Source]) -> None:
    session = Session(sources, "bench")
    assert session.book is not None
    prove(session.book, session.calls, session.expander)


def _checked(sources: Sequence[Source]) -> None:
    session = Session(sources, "bench")
    assert session.book is not None
    season, _ = prove(session.book, session.calls, session.expander)
    unanswered(session.book, session.calls, season, Cache(PLAYBOOKS, None))


def _compared(old: Sequence[Source], new: Sequence[Source], into: list[Comparison]) -> None:
    into.append(compared(*_sides(old, new)))


def _followed(was: Sequence[Source], now: Sequence[Source], kept: Path) -> None:
    old, new = _sides(was, now)
    with Store(kept) as store:
        with_consequences(compared(old, new), old, new, Cache(PLAYBOOKS, kept / "rows"), store)


def _took(work: Callable[[], object]) -> _Took:
    began, cpu = time.perf_counter(), _cpu()
    work()
    return _Took(time.perf_counter() - began, _cpu() - cpu)


def _cpu() -> float:
    """CPU seconds of this process and of those that it started; one that ends a little later than
    its work counts in the row after."""
    whose = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
    used = [resource.getrusage(who) for who in whose]
    return sum(each.ru_utime + each.ru_stime for each in used)

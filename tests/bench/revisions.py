"""Two revisions of a playbook of as many calls as are asked for, compared, by what it costs to read
it and make each of its plays once, to resolve its season (each play made and proved), and to check
it (each pass put to each look besides, which a comparison does too)."""

from __future__ import annotations

import gc
import resource
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from multiprocessing import active_children
from pathlib import Path

from stemline.checks.proving import prove
from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison
from stemline.compare.following import with_consequences
from stemline.outside.cache import Cache
from stemline.outside.store import Store
from stemline.session import Session
from stemline.source import Source

from .calls import PLAYBOOKS, many_texts
from .season import unanswered

EDITS = {
    "one concept": ("    dig runs dig 14 over ball\n", "    dig runs dig 12 over ball\n"),
    "a formation of many calls": (
        "    H at call, 4 outside tackle, off line\n    S at call, 5 outside H,",
        "    H at call, 3 outside tackle, off line\n    S at call, 5 outside H,",
    ),
    "the look runs are drawn against": ("    M in 10, strong\n", "    M in 30, strong\n"),
    "a protection": (
        "    centre, playside guard, playside tackle blocks slide\n",
        "    centre, playside guard, playside tackle blocks man\n",
    ),
}
"""What a coach may change between two revisions, of the Herons' texts: the first place each."""


@dataclass(frozen=True)
class _Took:
    """What a piece of work took: seconds by the clock, of all processors together, and of that
    which worked longest: what the clock would say where two are free."""

    clock: float
    cpu: float
    longest: float


def revisions(name: str, calls: int) -> Iterator[str]:
    """A row for each piece of work: seconds by the clock and of processors, and how many times the
    processor time of making each play, of resolving the season, and of checking it."""
    sources = many_texts(name, calls)
    gc.disable()
    _made(sources)  # what is loaded for the first time is nobody's
    once, proved = _took(lambda: _made(sources)), _took(lambda: _resolved(sources))
    checked = _took(lambda: _checked(sources))
    heads = ("clock", "CPU", "longest", "x made", "x season", "x check")
    yield f"{'':52}{''.join(f'{head:>9}' for head in heads)}"

    def row(what: str, took: _Took) -> str:
        times = (took.cpu / each.cpu for each in (once, proved, checked))
        figures = (took.clock, took.cpu, took.longest, *times)
        return f"{what:52}{''.join(f'{figure:9.2f}' for figure in figures)}"

    yield row(f"read {len(Session(sources, name).calls.orders)} calls, make each play", once)
    yield row("resolve the season: make and prove them", proved)
    yield row("check it: each pass by each look besides", checked)
    with tempfile.TemporaryDirectory() as kept:
        _check(sources, Path(kept))
        for what, edit in EDITS.items():
            changed = _edited(sources, *edit)
            _check(changed, Path(kept))
            took = _took(partial(_followed, sources, changed, Path(kept)))
            yield row(f"{what}: both checked before", took)
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


def _sides(
    old: Sequence[Source], new: Sequence[Source], store: Store | None = None
) -> tuple[Session, Session]:
    before = Session(old, "bench", store=store)
    return before, Session(new, "bench", store=store, beside=before)


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


def _check(sources: Sequence[Source], kept: Path) -> None:
    """What `stemline check` keeps."""
    with Store(kept) as store:
        session = Session(sources, "bench", store=store)
        session.checked("")
        session.faced(session.read_calls(""), Cache(PLAYBOOKS, kept / "rows"))


def _compared(old: Sequence[Source], new: Sequence[Source], into: list[Comparison]) -> None:
    into.append(compared(*_sides(old, new)))


def _followed(was: Sequence[Source], now: Sequence[Source], kept: Path) -> None:
    with Store(kept) as store:
        old, new = _sides(was, now, store)
        with_consequences(compared(old, new), old, new, Cache(PLAYBOOKS, kept / "rows"), store)


def _took(work: Callable[[], object]) -> _Took:
    began, before = time.perf_counter(), _cpu()
    work()
    clock = time.perf_counter() - began
    while active_children():  # one that still ends is of this work
        time.sleep(0.01)
    used = [now - then for now, then in zip(_cpu(), before, strict=True)]
    return _Took(clock, sum(used), max(used))


def _cpu() -> tuple[float, float]:
    """CPU seconds of this process, and of those that it started and that have ended."""
    whose = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
    own, others = (resource.getrusage(who) for who in whose)
    return own.ru_utime + own.ru_stime, others.ru_utime + others.ru_stime

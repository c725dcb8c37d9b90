"""The same work on many values, in as many processes as there are processors.

The one that asks is one of them: while it waits it does what nobody has begun. The others are
started afresh, the same on every system, and end with it. Where none can be started, or one fails,
the caller does the work itself: the answers are the same. What starts the others is loaded when
they are: a single picture needs none.
"""

from __future__ import annotations

import gc
import os
import pickle
import signal
import tempfile
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from functools import cached_property
from typing import TYPE_CHECKING, Any

from stemline.emit.carried import carried

if TYPE_CHECKING:
    from concurrent.futures import ProcessPoolExecutor

_MOST = 8
"""Processes: each takes some 150 MB."""


class SideBySide:
    """Processes that hold what ``make(*values)`` gives, a function of a module, and do work by it;
    started when they are first asked. ``number`` counts the one that asks."""

    def __init__(self, make: Callable[..., Any], *values: Any) -> None:
        self._begin = make, values
        self._executor: ProcessPoolExecutor | None = None
        self.number = min(_processors(), _MOST)

    def each(self, method: str, values: Sequence[Any]) -> Iterator[Any]:
        """``method`` of what they hold, of each value, in order, each as soon as it is there; it
        ends early where one cannot be had. As long as the next is not there, the first that nobody
        has begun is done here."""
        if self.number < 2:
            return
        own: dict[int, Any] = {}
        try:
            if self._executor is None:
                self._executor = self._started()
            jobs = [(method, carried(value)) for value in values]
            with _unheard():
                done = [self._executor.submit(_work, job) for job in jobs]
            after = 0
            for at, answer in enumerate(done):
                after = max(after, at)
                while after < len(done) and not answer.done():
                    if done[after].cancel():
                        own[after] = getattr(self._own, method)(values[after])
                    after += 1
                yield own.pop(at) if at in own else answer.result()
        except Exception:  # whatever it is, it is met again here, where it can be told
            self.end()
            self.number = 1

    @cached_property
    def _own(self) -> Any:
        make, values = self._begin
        return make(*values)

    def _started(self) -> ProcessPoolExecutor:
        from concurrent.futures import ProcessPoolExecutor
        from multiprocessing import get_context

        return ProcessPoolExecutor(
            self.number - 1, mp_context=get_context("spawn"), initializer=_begin,
            initargs=(carried(self._begin), tempfile.tempdir),
        )  # fmt: skip

    @property
    def started(self) -> bool:
        """Whether they are there, so that one value is worth giving them."""
        return self._executor is not None

    def end(self) -> None:
        executor, self._executor = self._executor, None
        if executor is not None:
            executor.shutdown(wait=False, cancel_futures=True)


@contextmanager
def _unheard() -> Iterator[None]:
    """A terminal interrupts all processes at once. Those that are started while it is entered never
    hear it, not even before they are told so; this one hears it afterwards."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    from multiprocessing import resource_tracker

    resource_tracker.ensure_running()  # it would lift the mask when it starts
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


_held: list[Any] = []


def _begin(begin: bytes, room: str | None) -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the one that waits hears it
    threading.Thread(target=_end_with_parent, daemon=True).start()
    tempfile.tempdir = room
    gc.disable()
    make, values = pickle.loads(begin)
    _held.append(make(*values))
    gc.freeze()


def _end_with_parent() -> None:
    from multiprocessing import parent_process
    from multiprocessing.connection import wait

    parent = parent_process()
    if parent is not None:
        wait([parent.sentinel])
        os._exit(1)


def _work(job: tuple[str, bytes]) -> Any:
    method, value = job
    return getattr(_held[0], method)(pickle.loads(value))


def _processors() -> int:
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1

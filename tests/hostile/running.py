"""Texts judged in a process of their own, so that one that never ends is only one of them."""

from __future__ import annotations

import multiprocessing
import resource
from collections.abc import Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess

from .judging import Judged, judge, warm
from .texts import text_of

_MEMORY = 3 << 30
"""Bytes that a check may take."""
_WAIT = 12
"""Seconds of the clock for each CPU second: the machine has other work."""


@dataclass(frozen=True)
class Result:
    """What came of one text."""

    seed: int
    number: int
    done: str
    size: int
    judged: Judged


class _Worker:
    """A forked process that judges one text after another."""

    def __init__(self, seconds: float) -> None:
        self.seconds = seconds
        self.number = -1
        self._seed = 0
        context = multiprocessing.get_context("fork")
        self.ours, theirs = context.Pipe()
        self.process: BaseProcess = context.Process(target=_work, args=(theirs, seconds))
        self.process.start()
        theirs.close()

    def begin(self, seed: int, number: int) -> None:
        self._seed, self.number = seed, number
        self.ours.send((seed, number))

    def result(self) -> Result:
        """What came of the text; it is told, too, when the process died of it or never came back.

        Raises BrokenPipeError nowhere: a dead process is a result.
        """
        done, raw = text_of(self._seed, self.number)
        judged = Judged(self.seconds * _WAIT, False, "never came back")
        if self.ours.poll(self.seconds * _WAIT):
            judged = Judged(self.seconds, False, "the process died")
            with suppress(EOFError, ConnectionError):
                judged = self.ours.recv()
        return Result(self._seed, self.number, done, len(raw), judged)

    @property
    def alive(self) -> bool:
        return self.process.is_alive() and not self.ours.closed

    def stop(self) -> None:
        self.process.kill()
        self.process.join()
        self.ours.close()


def _work(pipe: Connection, seconds: float) -> None:
    resource.setrlimit(resource.RLIMIT_AS, (_MEMORY, _MEMORY))
    while True:
        try:
            seed, number = pipe.recv()
        except EOFError:
            return
        _, raw = text_of(seed, number)
        # No answer is waited for much longer than it may take.
        pipe.send(judge(raw))


def results(seed: int, numbers: Iterable[int], seconds: float, jobs: int = 1) -> Iterator[Result]:
    """The result of each numbered text, in order; a process that was lost is replaced."""
    warm()
    workers = [_Worker(seconds) for _ in range(jobs)]
    busy: list[_Worker] = []
    try:
        for number in numbers:
            if len(busy) == jobs:
                yield _finished(busy.pop(0), workers)
            free = next(w for w in workers if w not in busy)
            free.begin(seed, number)
            busy.append(free)
        while busy:
            yield _finished(busy.pop(0), workers)
    finally:
        for worker in workers:
            worker.stop()


def _finished(worker: _Worker, workers: list[_Worker]) -> Result:
    result = worker.result()
    if result.judged.fault in ("never came back", "the process died"):
        worker.stop()
        workers[workers.index(worker)] = _Worker(worker.seconds)
    return result

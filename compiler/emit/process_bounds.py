"""Time and room of this process, where it was started to set a theme's pages; else no bounds.

Systems differ in what they can hold a process to. On those without `resource` only the clock of
the process that waits bounds it.
"""

from __future__ import annotations

import signal
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from types import FrameType

_bound = False


class TooLong(Exception):
    """The time for it is over."""


def bind(seconds: int, end: int, memory: int) -> None:
    """Hold this process for good: asked to stop after ``seconds`` of a processor, and again after
    each one more, and ended at ``end``; ``memory`` is bytes of addresses."""
    global _bound
    try:
        import resource
    except ImportError:
        return
    for what, soft, hard in (
        (resource.RLIMIT_CPU, seconds, end),
        (resource.RLIMIT_AS, memory, memory),
        (resource.RLIMIT_CORE, 0, 0),
    ):
        with suppress(OSError, ValueError):
            resource.setrlimit(what, (soft, hard))
    signal.signal(signal.SIGXCPU, _over)
    _bound = True


@contextmanager
def in_time(seconds: int) -> Iterator[None]:
    """Raises `TooLong` in a bound process when the block has had a processor for ``seconds``."""
    if not _bound:
        yield
        return
    before = signal.signal(signal.SIGPROF, _over)
    signal.setitimer(signal.ITIMER_PROF, seconds, 1)  # again, where a library has caught the first
    try:
        yield
    except TooLong as why:
        why.args = (f"it takes longer than {seconds} seconds",)
        raise
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def _over(number: int, frame: FrameType | None) -> None:
    raise TooLong("the time is over")

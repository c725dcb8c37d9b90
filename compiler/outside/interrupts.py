"""Ctrl-C, heard wherever it falls.

A library may catch every exception around its own work, and Python passes over one that is raised
while an object is taken down: the interrupt is then lost and half a book would be called whole. So
it is noted where it comes, and asked for again before anything is written.
"""

from __future__ import annotations

import signal
import threading
from types import FrameType, TracebackType


class Interrupts:
    """While it is entered, an interrupt raises `KeyboardInterrupt` as ever and is remembered."""

    def __init__(self) -> None:
        self._came = False
        self._before: object = None

    def __enter__(self) -> Interrupts:
        ours = threading.current_thread() is threading.main_thread()
        if ours and signal.getsignal(signal.SIGINT) is signal.default_int_handler:
            self._before = signal.signal(signal.SIGINT, self._note)
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._before is not None:
            signal.signal(signal.SIGINT, signal.default_int_handler)

    def _note(self, number: int, frame: FrameType | None) -> None:
        self._came = True
        raise KeyboardInterrupt

    def heed(self) -> None:
        """Raise `KeyboardInterrupt` if one came and was lost on the way."""
        if self._came:
            raise KeyboardInterrupt

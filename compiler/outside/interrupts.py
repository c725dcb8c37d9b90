"""Ctrl-C, heard wherever it falls.

A library may catch every exception around its own work, or make another error of it, and Python
passes over one that is raised while an object is taken down: the interrupt is then lost and half a
book would be called whole. So it is noted where it comes, and asked for again before anything is
written and when the program ends; that Python passed over it is not printed.
"""

from __future__ import annotations

import signal
import sys
import threading
from collections.abc import Callable
from types import FrameType, TracebackType
from typing import Any


class Interrupts:
    """While it is entered, an interrupt does what it did before, and is remembered: by the
    outermost, which those inside it are. ``then`` is what one does afterwards."""

    def __init__(self, then: signal.Handlers | None = None) -> None:
        self.came = False
        self._then = then
        self._before: Callable[[int, FrameType | None], Any] | None = None
        self._tells = sys.unraisablehook

    def __enter__(self) -> Interrupts:
        before = signal.getsignal(signal.SIGINT)
        outermost = getattr(before, "__self__", None)
        if isinstance(outermost, Interrupts):
            return outermost
        if threading.current_thread() is threading.main_thread() and callable(before):
            self._before, self._tells = before, sys.unraisablehook
            sys.unraisablehook = self._passed_over
            signal.signal(signal.SIGINT, self._note)
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._before is not None:
            signal.signal(signal.SIGINT, self._before if self._then is None else self._then)
            sys.unraisablehook = self._tells

    def _note(self, number: int, frame: FrameType | None) -> None:
        self.came = True
        if self._before is not None:
            self._before(number, frame)

    def _passed_over(self, lost: Any) -> None:
        if lost.exc_type is not KeyboardInterrupt:
            self._tells(lost)

    def heed(self) -> None:
        """Raise `KeyboardInterrupt` if one came and was lost on the way."""
        if self.came:
            raise KeyboardInterrupt

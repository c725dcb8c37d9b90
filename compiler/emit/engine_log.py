"""What the PDF engine only logs, heard: a picture that it cannot draw is no picture.

The engine catches every exception while it loads or draws an image, an interrupt among them, logs
an error and goes on without the picture. A handler of ours raises it again from inside the log.
"""

from __future__ import annotations

import logging
import re
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from stemline.emit.process_bounds import TooLong

_PICTURE = re.compile(r"stemline:[\w/.-]+")


class PictureFailed(RuntimeError):
    """An image could not be drawn whole: ``address`` is the one it has in the document, or its
    name, "" where the engine does not say; ``why`` is what went wrong."""

    def __init__(self, address: str, why: str) -> None:
        super().__init__(f"{address or 'a picture'} cannot be drawn: {why}")
        self.address, self.why = address, why


class _Listener(logging.Handler):
    """Raises what the engine has caught: as it is where it ends the work, else by its picture. A
    defect that the engine only warns of is not one of these."""

    def emit(self, record: logging.LogRecord) -> None:
        caught = sys.exc_info()[1]
        if caught is None:
            return
        if not isinstance(caught, Exception) or isinstance(caught, TooLong | MemoryError):
            raise caught
        said = record.getMessage()
        named = _PICTURE.search(said)
        raise PictureFailed(named[0] if named else "", _why(caught) or said) from caught


def _why(caught: BaseException) -> str:
    """The reason at the bottom of it, in its own words; its kind where it has none."""
    while caught.__cause__ is not None:
        caught = caught.__cause__
    return " ".join(str(caught).split()) or type(caught).__name__


@contextmanager
def heard() -> Iterator[None]:
    """While it is entered, whatever the engine catches and logs as an error raises.

    An interrupt raises itself, everything else `PictureFailed`.
    """
    log, listener = logging.getLogger("weasyprint"), _Listener(logging.ERROR)
    # Whoever sets up logging for a program of his own may have turned this log off.
    was, log.disabled = log.disabled, False
    log.addHandler(listener)
    try:
        yield
    finally:
        log.removeHandler(listener)
        log.disabled = was

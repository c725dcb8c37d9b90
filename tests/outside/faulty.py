"""A process whose file operations end it, or fail, at a chosen one.

The interpreter tells of each operation before it is done ("Audit events table", Python's library
reference), so nothing of the program is replaced by a stand-in.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from pathlib import Path

EVENTS = {"open", "os.rename", "os.remove", "os.mkdir", "os.rmdir"}
KILLED = 9


def forked(work: Callable[[], None]) -> int:
    """The exit code of a process that does ``work``: 0 for done, 1 for an exception."""
    child = os.fork()
    if child == 0:
        code = 1
        try:
            work()
            code = 0
        finally:
            os._exit(code)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def at_operation(number: int, below: Path, act: Callable[[], None]) -> None:
    """Call ``act`` before operation ``number``, counted from 0, on a path below ``below``."""
    seen = 0

    def hook(event: str, args: tuple[object, ...]) -> None:
        nonlocal seen
        if event not in EVENTS or not isinstance(args[0], str | bytes | os.PathLike):
            return
        if not os.fsdecode(args[0]).startswith(str(below)):
            return
        seen += 1
        if seen - 1 == number:
            act()

    sys.addaudithook(hook)


def kill() -> None:
    os._exit(KILLED)

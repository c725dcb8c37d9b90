"""Room for what is needed only while output is made: the page setter lays its fonts there.

A killed command cannot clear its own away, so each holds a lock on its own, and the next clears
whatever room of this user's nobody holds.
"""

from __future__ import annotations

import os
import shutil
import stat
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from filelock import FileLock, Timeout

from stemline.diagnostics.catalogue.output import E959
from stemline.outside.not_written import NotWritten, reason

_PREFIX, _LOCK = "stemline-work-", "lock"
_NEWBORN = 3600.0
"""Seconds after which an empty room without a lock is nobody's that is just being made."""


@contextmanager
def workroom() -> Iterator[Path]:
    """A folder in which all temporary files are made while it is entered.

    Raises `NotWritten` for whatever the system refuses in it, a full disk above all.
    """
    before, place = tempfile.tempdir, Path(os.devnull)
    try:
        place = Path(tempfile.gettempdir())
        _clear_dead(place)
        with (
            tempfile.TemporaryDirectory(prefix=_PREFIX, ignore_cleanup_errors=True) as made,
            FileLock(Path(made) / _LOCK),
        ):
            tempfile.tempdir = made
            yield Path(made)
    except OSError as error:
        raise NotWritten(E959(why=reason(error)), place) from error
    finally:
        tempfile.tempdir = before


def _clear_dead(place: Path) -> None:
    for room in place.glob(f"{_PREFIX}*"):
        with suppress(OSError, Timeout):
            about = room.lstat()
            if hasattr(os, "getuid") and about.st_uid != os.getuid():
                continue
            if stat.S_ISDIR(about.st_mode) and (room / _LOCK).is_file():
                with FileLock(room / _LOCK, timeout=0):
                    shutil.rmtree(room, ignore_errors=True)
            elif time.time() - about.st_mtime > _NEWBORN:
                room.rmdir()

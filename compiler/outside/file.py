"""One file that a command was asked for: it takes its place whole, or the one before it stays."""

from __future__ import annotations

import os
import tempfile
from contextlib import suppress
from pathlib import Path

from stemline.diagnostics.catalogue.output import E952
from stemline.outside.not_written import NotWritten, reason


def write_file(path: Path, data: bytes) -> None:
    """Write ``data`` to ``path``: through a link to where it leads, straight into a pipe or device.

    Raises `NotWritten`; a file that was there is then as it was.
    """
    try:
        if path.exists() and not path.is_file():
            path.write_bytes(data)
            return
        _replace(path.resolve(), data)
    except OSError as error:
        raise NotWritten(E952(why=reason(error)), path) from error


def _replace(path: Path, data: bytes) -> None:
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:40]}-", suffix=".new")
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        Path(name).chmod(_mode(path))
        Path(name).replace(path)
    except BaseException:
        with suppress(OSError):
            Path(name).unlink()
        raise


def _mode(path: Path) -> int:
    """The rights of the file that is replaced; of a new one those that this user's files have."""
    with suppress(OSError):
        return path.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask

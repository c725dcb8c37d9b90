"""Results kept between commands, as bytes by key: one database in the user's cache.

Nothing here decides what comes out: a key says all that its bytes hang on, and a row that is
missing, broken or not this user's own (`private.py`: each row is signed) only costs the time to
work it out again. Rows are data, never a program. Those that were used longest ago go first.

Two commands may use it at once; what one cannot write while the other does is not kept. A command
that is killed leaves it as it was before its last `flush` or after it (SQLite, "Atomic Commit").
"""

from __future__ import annotations

import hashlib
import hmac
import os
import stat
import time
import zlib
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from stemline.outside.private import is_private, key_of, new_key

if TYPE_CHECKING:
    import sqlite3

MOST_BYTES = 100_000_000
"""Bytes of all rows together: those of a book of two hundred calls some twenty times over."""
_PAGE = 4096
_ROOM = 2
"""The file is at most so many times as large: a page is never quite full."""
_PATIENCE = 2.0
"""Seconds that a command waits for another that writes."""
_AT_ONCE = 64
_LARGE = 100_000
"""Rows that are written together, and their bytes: a command that is killed loses no more. Two or
three sections of a book are as much."""
_DAY = 86_400
_NAME = "results.db"
_PASSES = {5, 6, 9, 10, 13, 14}
"""Results of SQLite ("Result and Error Codes") that say nothing against the file: busy, locked,
interrupted, not read, full, not opened."""
_TABLE = """
CREATE TABLE IF NOT EXISTS result (
    key TEXT PRIMARY KEY, size INTEGER NOT NULL, used INTEGER NOT NULL, seal BLOB NOT NULL,
    data BLOB NOT NULL
) WITHOUT ROWID"""
_ROW = "REPLACE INTO result (key, data, seal, size, used) VALUES (?, ?, ?, ?, ?)"


class Store:
    """The rows that are kept in a folder; ``place`` None keeps nothing and knows nothing. One that
    is not ``adding`` takes what is there, keeps nothing new and makes no file."""

    def __init__(self, place: Path | None, most: int = MOST_BYTES, *, adding: bool = True) -> None:
        self._place, self._most, self.adding = place, most, adding
        self._base: sqlite3.Connection | None = None
        self._key = b""
        self._new: dict[str, bytes] = {}
        self._waiting, self._room = 0, 0
        self._used: set[str] = set()
        if place is not None:
            self._begin(place)

    def __enter__(self) -> Store:
        return self

    def __exit__(self, *_: object) -> None:
        self.flush()
        self._close()

    @property
    def keeps(self) -> bool:
        """Whether anything is kept: what only serves that need not be worked out elsewhere."""
        return self._base is not None

    def get(self, key: str) -> bytes | None:
        """The bytes that are kept under ``key``; None where there are none of this user's own."""
        if key in self._new:
            return self._new[key]
        for held, seal, used in self._asked(key):
            if hmac.compare_digest(seal, self._seal(key, held)):
                if used != _today():
                    self._used.add(key)
                with suppress(zlib.error):
                    return zlib.decompress(held)
        return None

    def put(self, key: str, data: bytes) -> None:
        if self._base is not None and self.adding:
            self._new[key] = data
            self._waiting += len(data)
            if len(self._new) >= _AT_ONCE or self._waiting >= _LARGE:
                self.flush()

    def flush(self) -> None:
        """Write what is new, and let the oldest go where there is no more room."""
        new, self._new, self._waiting = self._new, {}, 0
        if self._base is None or not (new or self._used):
            return
        import sqlite3

        packed = ((key, zlib.compress(data, 1)) for key, data in new.items())
        rows = [(key, held, self._seal(key, held), len(held), _today()) for key, held in packed]
        try:
            with self._base:
                self._base.execute("BEGIN IMMEDIATE")
                self._base.executemany(
                    "UPDATE result SET used = ? WHERE key = ?",
                    [(_today(), key) for key in sorted(self._used)],
                )
                self._base.executemany(_ROW, rows)
                self._drop_oldest(self._base, sum(len(held) for _, held, *_ in rows))
            self._used.clear()
        except sqlite3.Error as error:
            self._failed(error)

    def _begin(self, place: Path) -> None:
        try:
            import sqlite3

            self._key = key_of(place) or (new_key(place) if self.adding else b"")
            file = place / _NAME
            if not self._key:
                return
            if not os.path.lexists(file):
                if not self.adding:
                    return
                os.close(os.open(file, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
            if not is_private(file, stat.S_ISREG):
                return
            # Opened by a name that no other program's words can be in: the file's own, whole.
            self._base = sqlite3.connect(file, timeout=_PATIENCE, isolation_level=None)
            self._base.execute("PRAGMA synchronous = OFF")
            self._base.execute(f"PRAGMA page_size = {_PAGE}")
            self._base.execute(f"PRAGMA max_page_count = {self._most * _ROOM // _PAGE + 16}")
            self._base.execute(_TABLE)
            self._base.execute("SELECT key, data, seal, size, used FROM result LIMIT 0")
        except (OSError, ImportError):
            self._base = None
        except sqlite3.Error as error:
            self._failed(error)

    def _asked(self, key: str) -> list[tuple[bytes, bytes, int]]:
        if self._base is None:
            return []
        import sqlite3

        try:
            found = self._base.execute("SELECT data, seal, used FROM result WHERE key = ?", (key,))
            return [
                (bytes(held), bytes(seal), used)
                for held, seal, used in found
                if isinstance(held, bytes) and isinstance(seal, bytes)
            ]
        except sqlite3.Error as error:
            self._failed(error)
            return []

    def _drop_oldest(self, base: sqlite3.Connection, more: int) -> None:
        """``more`` bytes were written: all are counted only when there may be no room left."""
        self._room -= more
        if self._room > 0:
            return
        size = base.execute("SELECT total(size) FROM result").fetchone()[0]
        gone = []
        if size > self._most:
            rows = base.execute("SELECT key, size FROM result ORDER BY used, key").fetchall()
            for key, held in rows:
                if size <= self._most * 3 // 4:
                    break
                gone.append((key,))
                size -= held
        base.executemany("DELETE FROM result WHERE key = ?", gone)
        self._room = self._most - size

    def _failed(self, error: sqlite3.Error) -> None:
        """A file that is no database of ours is worth nothing: the next command begins another.

        One that another command writes just now, or for which there is no room, stays.
        """
        if getattr(error, "sqlite_errorcode", 0) & 0xFF in _PASSES:
            return
        self._close()
        assert self._place is not None, "a store that was begun has a place"
        for name in (_NAME, f"{_NAME}-journal"):
            with suppress(OSError):
                (self._place / name).unlink()

    def _close(self) -> None:
        base, self._base = self._base, None
        if base is not None:
            base.close()

    def _seal(self, key: str, data: bytes) -> bytes:
        return hmac.new(self._key, key.encode() + b"\0" + data, hashlib.sha256).digest()


def _today() -> int:
    """The day, to tell which rows are of no use any more; it is in nothing that is made."""
    return int(time.time() / _DAY)

"""What a check has worked out, kept on disk for the next: a file a playbook, in the user's cache.

Nothing here decides what a check says. A file that is missing, broken or cannot be written only
costs the time to work it out again; it is replaced whole or not at all.

An answer that somebody else has put there would be believed, so what is read must have been
written by this user: the folder is his alone (0700), and each file is signed (HMAC, RFC 2104, over
SHA-256) with a key of random bytes that is made once and kept in it, for him alone (0600). A folder
that others own or may write to, a key that others may read, and a file with another signature are
worth nothing. Whoever can read the key can do all else that the user can. Where a system has no
such permissions, as Windows, the folder is the user's own by its place.
"""

from __future__ import annotations

import hashlib
import hmac
import json
import os
import secrets
import stat
import sys
import tempfile
from collections.abc import Callable, Mapping
from contextlib import suppress
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from itertools import islice
from pathlib import Path

import platformdirs

import stemline

Row = tuple[bool, bool, float | None] | None
"""An answer as it is kept: a read is open or nearly, the hot throw beats the rush, when it comes;
None for nothing to say."""

MOST_ROWS = 20_000
"""Rows of a playbook that are kept: a season of 600 calls by 8 looks some four times over."""
MOST_FILES = 40
"""Playbooks that are kept, those checked last: 60 megabytes at the very most."""


LARGEST_FILE = 8_000_000
"""Bytes of a file that is read: twice what the most rows take."""

_KEY = "key"
_KEY_LENGTH = 32
"""Bytes: as long as the sum, as RFC 2104 has it."""


class Signed:
    """A file of JSON that only this user's programs have written."""

    def __init__(self, file: Path) -> None:
        self._file = file

    def read(self) -> object:
        """What it holds; None where it is not as this user wrote it."""
        try:
            key = _key(self._file.parent)
            check, _, text = _text(self._file).partition("\n")
            if not key or not hmac.compare_digest(check.encode(), _signature(key, text).encode()):
                return None
            found: object = json.loads(text)
            return found
        except (OSError, ValueError, RecursionError):
            return None

    def write(self, value: object) -> None:
        """Replaces it whole, or leaves it as it is."""
        text = json.dumps(value, separators=(",", ":"))
        with suppress(OSError):
            key = _key(self._file.parent) or _new_key(self._file.parent)
            if key:
                _replace(self._file, f"{_signature(key, text)}\n{text}".encode())
                _drop_oldest(self._file.parent)


class Cache:
    """The rows of one playbook's folder; ``place`` None keeps nothing."""

    def __init__(self, folder: Path, place: Path | None) -> None:
        self._file = place / f"{_digest(str(folder.resolve()))}.json" if place else None

    def rows(self) -> dict[str, Row]:
        """All that is known, by key; nothing where the file is not as this user wrote it."""
        kept = Signed(self._file).read() if self._file is not None else None
        try:
            return {k: _row(v) for k, v in kept.items()} if isinstance(kept, dict) else {}
        except (ValueError, TypeError):
            return {}

    def keep(self, used: Mapping[str, Row], known: Mapping[str, Row]) -> None:
        """Keep the rows in use, and of those known before as many as there is room for."""
        if self._file is None or used.keys() <= known.keys():
            return
        rows = dict(islice({**used, **known}.items(), max(MOST_ROWS, len(used))))
        Signed(self._file).write(rows)


def place() -> Path:
    """Where this user's programs keep what they can do without."""
    return platformdirs.user_cache_path("stemline", appauthor=False) / "answers"


@cache
def program() -> str:
    """A digest of the program that runs and of what it counts with; "" where it cannot be told."""
    try:
        return digest_of(Path(stemline.__file__ or "").parent, stemline.BEGAN)
    except (OSError, PackageNotFoundError):
        return ""


def digest_of(home: Path, began: float) -> str:
    """A digest of every module below ``home``; "" without one, and where one of them was written
    since ``began``, in seconds: another text than the one that was loaded."""
    files = sorted(home.rglob("*.py"))
    if not files or any(file.stat().st_mtime >= began for file in files):
        return ""
    digest = hashlib.sha256(f"{sys.version} {version('numpy')}\n".encode())
    for file in files:
        text = file.read_bytes()
        digest.update(f"{file.relative_to(home).as_posix()} {len(text)}\n".encode() + text)
    return digest.hexdigest()


def _row(value: object) -> Row:
    match value:
        case None:
            return None
        case [bool(nearly), bool(hot), float() | None as rusher]:
            return nearly, hot, rusher
    raise ValueError(value)


def _sum(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()


def _digest(text: str) -> str:
    return _sum(text)[:16]


def _signature(key: bytes, text: str) -> str:
    return hmac.new(key, text.encode(), hashlib.sha256).hexdigest()


def _key(folder: Path) -> bytes:
    """The key of the folder; b"" where there is none, or where it is not this user's alone."""
    file = folder / _KEY
    if not os.path.lexists(file):
        return b""
    if not (_private(folder, stat.S_ISDIR) and _private(file, stat.S_ISREG)):
        return b""
    key = file.read_bytes()
    return key if len(key) == _KEY_LENGTH else b""


def _new_key(folder: Path) -> bytes:
    """A new key in the folder, which is made where it is missing and made this user's alone where
    it is his; b"" where it is not."""
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    if hasattr(os, "getuid"):
        if folder.is_symlink() or folder.stat().st_uid != os.getuid():
            return b""
        folder.chmod(0o700)
    key = secrets.token_bytes(_KEY_LENGTH)
    _replace(folder / _KEY, key)
    return key


def _private(file: Path, kind: Callable[[int], bool]) -> bool:
    """Whether it is of that kind, no link, this user's, and nobody else may do anything with it."""
    held = file.lstat()
    if not kind(held.st_mode):
        return False
    return not hasattr(os, "getuid") or (held.st_uid == os.getuid() and not held.st_mode & 0o077)


def _text(file: Path) -> str:
    """A plain file's text. Raises OSError for another, or one that is too large."""
    if not stat.S_ISREG(file.lstat().st_mode) or file.stat().st_size > LARGEST_FILE:
        raise OSError(f"{file} is no file of ours")
    return file.read_text("utf-8")


def _replace(file: Path, data: bytes) -> None:
    """The file as ``data``, whole or not at all, for this user alone, as `mkstemp` makes it."""
    handle, name = tempfile.mkstemp(dir=file.parent, suffix=".new")
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
        Path(name).replace(file)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _drop_oldest(folder: Path) -> None:
    """All but the files written last; what a broken-off write has left behind goes too."""
    kept = (file for file in folder.iterdir() if file.name != _KEY)
    files = sorted(kept, key=lambda f: f.lstat().st_mtime, reverse=True)
    for file in files[MOST_FILES:]:
        file.unlink(missing_ok=True)

"""Files that this user alone can have written, for what is kept between two commands.

What somebody else has put there would be believed, so the folder is the user's alone (0700), and
each file is signed (HMAC, RFC 2104, over SHA-256) with a key of random bytes that is made once and
kept in it, for him alone (0600). A folder that others own or may write to, a key that others may
read, and a file with another signature are worth nothing. Whoever can read the key can do all else
that the user can. Where a system has no such permissions, as Windows, the folder is the user's own
by its place.
"""

from __future__ import annotations

import hashlib
import hmac
import os
import secrets
import stat
import tempfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

KEY = "key"
"""The file of the key, in the folder of what it signs."""
_KEY_LENGTH = 32
"""Bytes: as long as the sum, as RFC 2104 has it."""


def kept_text(file: Path, most: int) -> str:
    """What `keep_text` wrote there, of ``most`` bytes at most; "" where it is not as this user
    wrote it. Raises OSError and ValueError for what is no text of ours."""
    key = key_of(file.parent)
    check, _, text = _plain_text(file, most).partition("\n")
    signed = bool(key) and hmac.compare_digest(
        check.encode(), signature(key, text.encode()).encode()
    )
    return text if signed else ""


def keep_text(file: Path, text: str, most_files: int) -> None:
    """Put ``text`` there, whole or not at all; of the folder's files the newest ``most_files`` stay
    and the others go. Where it cannot be written nothing is kept."""
    with suppress(OSError):
        key = key_of(file.parent) or new_key(file.parent)
        if key:
            replace_file(file, f"{signature(key, text.encode())}\n{text}".encode())
            _drop_oldest(file.parent, most_files)


def signature(key: bytes, data: bytes) -> str:
    return hmac.new(key, data, hashlib.sha256).hexdigest()


def key_of(folder: Path) -> bytes:
    """The key of the folder; b"" where there is none, or where it is not this user's alone."""
    file = folder / KEY
    if not os.path.lexists(file):
        return b""
    if not (is_private(folder, stat.S_ISDIR) and is_private(file, stat.S_ISREG)):
        return b""
    key = file.read_bytes()
    return key if len(key) == _KEY_LENGTH else b""


def new_key(folder: Path) -> bytes:
    """A new key in the folder, which is made where it is missing and made this user's alone where
    it is his; b"" where it is not."""
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    if hasattr(os, "getuid"):
        if folder.is_symlink() or folder.stat().st_uid != os.getuid():
            return b""
        folder.chmod(0o700)
    key = secrets.token_bytes(_KEY_LENGTH)
    replace_file(folder / KEY, key)
    return key


def is_private(file: Path, kind: Callable[[int], bool]) -> bool:
    """Whether it is of that kind, no link, this user's, and nobody else may do anything with it."""
    held = file.lstat()
    if not kind(held.st_mode):
        return False
    return not hasattr(os, "getuid") or (held.st_uid == os.getuid() and not held.st_mode & 0o077)


def replace_file(file: Path, data: bytes) -> None:
    """The file as ``data``, whole or not at all, for this user alone, as `mkstemp` makes it."""
    handle, name = tempfile.mkstemp(dir=file.parent, suffix=".new")
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
        Path(name).replace(file)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _plain_text(file: Path, most: int) -> str:
    """A plain file's text. Raises OSError for another, or one that is too large."""
    if not stat.S_ISREG(file.lstat().st_mode) or file.stat().st_size > most:
        raise OSError(f"{file} is no file of ours")
    return file.read_text("utf-8")


def _drop_oldest(folder: Path, most: int) -> None:
    """All but the files written last; what a broken-off write has left behind goes too."""
    kept = (file for file in folder.iterdir() if file.name != KEY)
    files = sorted(kept, key=lambda f: f.lstat().st_mtime, reverse=True)
    for file in files[most:]:
        file.unlink(missing_ok=True)

"""What a check has worked out, kept on disk for the next: a file a playbook, in the user's cache.

Nothing here decides what a check says. A file that is missing, broken or cannot be written only
costs the time to work it out again; it is replaced whole or not at all.
"""

from __future__ import annotations

import hashlib
import json
import os
import sys
import tempfile
from collections.abc import Mapping
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


class Cache:
    """The rows of one playbook's folder; ``place`` None keeps nothing."""

    def __init__(self, folder: Path, place: Path | None) -> None:
        self._file = place / f"{_digest(str(folder.resolve()))}.json" if place else None

    def rows(self) -> dict[str, Row]:
        """All that is known, by key; nothing where the file is not as it was written."""
        if self._file is None:
            return {}
        try:
            check, _, text = self._file.read_text("utf-8").partition("\n")
            return {k: _row(v) for k, v in json.loads(text).items()} if check == _sum(text) else {}
        except (OSError, ValueError, TypeError, AttributeError):
            return {}

    def keep(self, used: Mapping[str, Row], known: Mapping[str, Row]) -> None:
        """Keep the rows in use, and of those known before as many as there is room for."""
        if self._file is None or used.keys() <= known.keys():
            return
        rows = dict(islice({**used, **known}.items(), max(MOST_ROWS, len(used))))
        text = json.dumps(rows, separators=(",", ":"))
        with suppress(OSError):
            _replace(self._file, f"{_sum(text)}\n{text}")
            _drop_oldest(self._file.parent)


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
    return hashlib.sha256(text.encode()).hexdigest()


def _digest(text: str) -> str:
    return _sum(text)[:16]


def _replace(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(dir=file.parent, suffix=".new")
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as out:
            out.write(text)
        Path(name).replace(file)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _drop_oldest(folder: Path) -> None:
    """All but the files written last; what a broken-off write has left behind goes too."""
    files = sorted(folder.iterdir(), key=lambda f: f.stat().st_mtime, reverse=True)
    for file in files[MOST_FILES:]:
        file.unlink(missing_ok=True)

"""What a check has worked out, kept on disk for the next: a file a playbook, in the user's cache.

Nothing here decides what a check says. A file that is missing, broken, not this user's own
(`private.py`) or cannot be written only costs the time to work it out again; it is replaced whole
or not at all.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from itertools import islice
from pathlib import Path

import platformdirs

from stemline.outside.private import keep_text, kept_text

Row = tuple[bool, bool, float | None] | None
"""An answer as it is kept: a read is open or nearly, the hot throw beats the rush, when it comes;
None for nothing to say."""

MOST_ROWS = 20_000
"""Rows of a playbook that are kept: a season of 600 calls by 8 looks some four times over."""
MOST_FILES = 40
"""Playbooks that are kept, those checked last: 60 megabytes at the very most."""


LARGEST_FILE = 8_000_000
"""Bytes of a file that is read: twice what the most rows take."""


class Cache:
    """The rows of one playbook's folder; ``place`` None keeps nothing."""

    def __init__(self, folder: Path, place: Path | None) -> None:
        self._file = place / f"{_digest(str(folder.resolve()))}.json" if place else None

    def rows(self) -> dict[str, Row]:
        """All that is known, by key; nothing where the file is not as this user wrote it."""
        if self._file is None:
            return {}
        try:
            text = kept_text(self._file, LARGEST_FILE)
            return {k: _row(v) for k, v in json.loads(text).items()} if text else {}
        except (OSError, ValueError, TypeError, AttributeError, RecursionError):
            return {}

    def keep(self, used: Mapping[str, Row], known: Mapping[str, Row]) -> None:
        """Keep the rows in use, and of those known before as many as there is room for."""
        if self._file is None or used.keys() <= known.keys():
            return
        rows = dict(islice({**used, **known}.items(), max(MOST_ROWS, len(used))))
        keep_text(self._file, json.dumps(rows, separators=(",", ":")), MOST_FILES)


def place(shelf: str = "answers") -> Path:
    """Where this user's programs keep what they can do without, by what it is."""
    return platformdirs.user_cache_path("stemline", appauthor=False) / shelf


def _row(value: object) -> Row:
    match value:
        case None:
            return None
        case [bool(nearly), bool(hot), float() | None as rusher]:
            return nearly, hot, rusher
    raise ValueError(value)


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:16]

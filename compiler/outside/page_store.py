"""The pages of a playbook's calls, kept in the user's cache for its next week.

Laying the book out takes most of a week's time, and nothing of a week changes it. What is kept is
known by a digest of all that it hangs on, the program too; a file that is missing, broken or not
this user's only costs the time.
"""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

from stemline.outside.cache import place
from stemline.outside.private import keep_text, kept_text
from stemline.outside.program import program

MOST_FILES = 40
"""Playbooks whose pages are kept, those asked last."""
LARGEST_FILE = 1_000_000
"""Bytes: a season of 1,000 calls takes a twentieth."""


class PageStore:
    """The pages of one playbook's folder; None for a folder keeps nothing."""

    def __init__(self, folder: Path | None) -> None:
        self._file: Path | None = None
        if folder is not None and program():
            name = hashlib.sha256(str(folder.resolve()).encode("utf-8", "surrogatepass"))
            self._file = place("pages") / f"{name.hexdigest()[:16]}.json"

    def read(self, key: str) -> dict[str, int] | None:
        """The pages kept under ``key``; None where none are."""
        if self._file is None:
            return None
        try:
            text = kept_text(self._file, LARGEST_FILE)
            kept = json.loads(text) if text else None
        except (OSError, ValueError, RecursionError):
            return None
        if not isinstance(kept, dict) or kept.get("key") != self._key(key):
            return None
        pages = kept.get("pages")
        if not isinstance(pages, dict) or not all(type(page) is int for page in pages.values()):
            return None
        return {str(call): page for call, page in pages.items()}

    def keep(self, key: str, pages: dict[str, int]) -> None:
        """Keeps the pages in place of those kept before."""
        if self._file is not None:
            kept = {"key": self._key(key), "pages": pages}
            keep_text(self._file, json.dumps(kept, separators=(",", ":")), MOST_FILES)

    @staticmethod
    def _key(key: str) -> str:
        return f"{program()} {key}"

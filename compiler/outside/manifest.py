"""What stemline wrote into a folder: each file's name and the digest of what stood in it.

The list lies in a hidden folder of the output's own, and is believed only as far as it is safe: a
name in it leads nowhere but into the folder, and a file is ours only while it is as we wrote it.
"""

from __future__ import annotations

import hashlib
import json
import re
import stat
from collections.abc import Mapping
from pathlib import Path

Digests = Mapping[str, str]
"""Files by their name below the folder, "pictures/stick.svg", with the SHA-256 of each."""

_SAFE = re.compile(r"(?:[a-z0-9][a-z0-9-]*/)?[a-z0-9][a-z0-9-]*\.[a-z0-9]+")
_DIGEST = re.compile(r"[0-9a-f]{64}")
_LARGEST = 4_000_000
"""Bytes of a list; one of ten thousand pictures has a quarter of it."""


def written(files: Digests) -> bytes:
    """The list as it lies on disk."""
    held = {"made by": "stemline", "files": dict(sorted(files.items()))}
    return (json.dumps(held, indent=0) + "\n").encode()


def read(path: Path) -> dict[str, str]:
    """The list at ``path``; nothing where there is none, or where any of it is not as we write.

    Raises OSError where it is there and cannot be read: nothing may be concluded from that.
    """
    try:
        if not is_file(path) or path.lstat().st_size > _LARGEST:
            return {}
        held = json.loads(path.read_bytes())["files"]
        sound = all(_is_sound(name, digest) for name, digest in held.items())
        return dict(held) if sound else {}
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return {}


def _is_sound(name: object, digest: object) -> bool:
    texts = isinstance(name, str) and isinstance(digest, str)
    return texts and bool(_SAFE.fullmatch(str(name)) and _DIGEST.fullmatch(str(digest)))


def digest_of(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def digest_at(path: Path) -> str:
    """The digest of a plain file; "" for anything else, a link among them, or what is not ours
    to read."""
    try:
        return digest_of(path.read_bytes()) if is_file(path) else ""
    except PermissionError:
        return ""


def is_file(path: Path) -> bool:
    """Whether a plain file stands there itself: no link, no folder, no device."""
    try:
        return stat.S_ISREG(path.lstat().st_mode)
    except OSError:
        return False

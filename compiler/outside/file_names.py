"""What a call's file is called: readable, the same every time, and good on every system.

Small letters, figures and hyphens only: no system tells capitals from small letters for certain,
and some know a few words as devices ("Naming Files, Paths, and Namespaces", Microsoft's developer
pages, 2024).
"""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections import Counter
from collections.abc import Iterable

LONGEST = 80
"""Characters of a name without its ending. Systems allow 255 bytes; with folders before it a path
of 260 is the least that one of them takes."""

_DEVICES = {
    "con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10)),
}  # fmt: skip
_MARK = 6
"""Figures of the digest that tells two names apart which read alike."""


def file_name(name: str) -> str:
    """A file's name for ``name``, without an ending; what it cannot say is told by a digest."""
    stem = _stem(name)
    return stem if _says_all(name, stem) else f"{stem}-{_digest(name)[:_MARK]}"


def file_names(names: Iterable[str]) -> dict[str, str]:
    """A file's name for each of ``names``, no two alike, whatever their order.

    Of names that would read alike the one that its file's name says whole keeps it bare, and the
    others get a digest of their own; so does a name of which nothing can be said.
    """
    once = dict.fromkeys(names)
    stems = {name: _stem(name) for name in once}
    alike = Counter(stems.values())
    whole = Counter(stem for name, stem in stems.items() if _says_all(name, stem))
    given: dict[str, str] = {}
    taken = set(stems.values())
    for name, stem in sorted(stems.items()):
        alone = alike[stem] == 1 and stem not in _UNSAID
        if alone or (whole[stem] == 1 and _says_all(name, stem)):
            given[name] = stem
            continue
        digest = _digest(name)
        length = next(n for n in range(_MARK, 65) if f"{stem}-{digest[:n]}" not in taken)
        given[name] = f"{stem}-{digest[:length]}"
        taken.add(given[name])
    return {name: given[name] for name in once}


_UNSAID = {"call"}
"""What stands for a name without a letter or figure that a file's name could hold."""


def _stem(name: str) -> str:
    """The letters and figures of a name, its accents off, cut to length; "call" for nothing."""
    bare = unicodedata.normalize("NFKD", name.casefold()).encode("ascii", "ignore").decode()
    stem = re.sub(r"[^a-z0-9]+", "-", bare).strip("-")[:LONGEST].strip("-")
    return f"{stem}-call" if stem in _DEVICES else stem or "call"


def _says_all(name: str, stem: str) -> bool:
    """Whether the stem holds the whole name, its capitals apart."""
    return stem.replace("-", " ") == name.casefold()


def _digest(name: str) -> str:
    return hashlib.sha256(name.encode("utf-8", "surrogatepass")).hexdigest()

"""How tall sections were, kept between commands: only sections that changed are measured again."""

from __future__ import annotations

import hashlib
import json

from stemline.book.layout.plans import Heights
from stemline.outside.program import loaded, program, surroundings
from stemline.outside.store import Store


class KeptHeights:
    """A memory of `stemline.emit.measuring` in ``store``, for this program on this machine.

    The page setter measures with libraries of the system, so it must be loaded by the time that
    the memory is first asked. Where it cannot be told what they are, nothing is kept.
    """

    def __init__(self, store: Store) -> None:
        self._store = store
        self._known: dict[str, Heights] = {}
        self._begun: str | None = None

    def __contains__(self, key: object, /) -> bool:
        if key not in self._known and isinstance(key, str) and self._here():
            held = _read(self._store.get(self._here() + key))
            if held is not None:
                self._known[key] = held
        return key in self._known

    def __getitem__(self, key: str, /) -> Heights:
        if key not in self:
            raise KeyError(key)
        return self._known[key]

    def __setitem__(self, key: str, heights: Heights, /) -> None:
        self._known[key] = heights
        if here := self._here():
            data = json.dumps(dict(heights), separators=(",", ":"))
            self._store.put(here + key, data.encode("utf-8", "surrogatepass"))

    def _here(self) -> str:
        """A digest of the program, the fonts and the libraries; "" where it cannot be told."""
        if self._begun is None:
            parts = program(), surroundings(), loaded()
            digest = hashlib.sha256(repr(parts).encode("utf-8", "surrogateescape")).hexdigest()
            self._begun = f"heights {digest[:32]} " if all(parts) else ""
        return self._begun


def _read(data: bytes | None) -> Heights | None:
    """Kept heights; None where there are none, or they are not as we write."""
    try:
        held = json.loads(data) if data else None
    except (ValueError, RecursionError):
        return None
    if isinstance(held, dict) and all(isinstance(each, int | float) for each in held.values()):
        return held
    return None

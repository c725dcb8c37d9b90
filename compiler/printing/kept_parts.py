"""A book's sections, kept between commands: how tall they were, and as they were set. Only those
that changed are measured and set again."""

from __future__ import annotations

import hashlib
import json
from math import inf

from stemline.book.layout.plans import Heights
from stemline.emit.fragments import Fragment, unpacked
from stemline.outside.program import loaded, program, surroundings
from stemline.outside.store import Store


class KeptHeights:
    """A memory of `stemline.emit.measuring` in ``store``, for this program on this machine.

    The page setter works with libraries of the system, so it must be loaded by the time that the
    memory is first asked. Where it cannot be told what they are, nothing is kept.
    """

    def __init__(self, store: Store) -> None:
        self.store = store
        self._known: dict[str, Heights] = {}
        self._begun: str | None = None

    def __contains__(self, key: object, /) -> bool:
        if key not in self._known and isinstance(key, str) and self.here():
            held = _read(self.store.get(f"heights {self.here()}{key}"))
            if held is not None:
                self._known[key] = held
        return key in self._known

    def __getitem__(self, key: str, /) -> Heights:
        if key not in self:
            raise KeyError(key)
        return self._known[key]

    def __setitem__(self, key: str, heights: Heights, /) -> None:
        self._known[key] = heights
        if here := self.here():
            data = json.dumps(dict(heights), separators=(",", ":"))
            self.store.put(f"heights {here}{key}", data.encode("utf-8", "surrogatepass"))

    def here(self) -> str:
        """A digest of the program, the fonts and the libraries; "" where it cannot be told."""
        if self._begun is None:
            parts = program(), surroundings(), loaded()
            digest = hashlib.sha256(repr(parts).encode("utf-8", "surrogateescape")).hexdigest()
            self._begun = f"{digest[:32]} " if all(parts) else ""
        return self._begun


class KeptFragments:
    """Parts of books as they were set, for `stemline.emit.parts`: where the heights are kept, and
    under the same digest, since the setter may load more libraries as it works."""

    def __init__(self, heights: KeptHeights) -> None:
        self._heights = heights

    def get(self, key: str, /) -> Fragment | None:
        here = self._heights.here()
        held = self._heights.store.get(f"part {here}{key}") if here else None
        return unpacked(held) if held else None

    def put(self, key: str, piece: Fragment, /) -> None:
        if here := self._heights.here():
            self._heights.store.put(f"part {here}{key}", piece.packed())

    def named(self, outline: str, /) -> str | None:
        here = self._heights.here()
        held = self._heights.store.get(f"filled {here}{outline}") if here else None
        return held.decode("ascii", "replace") if held else None

    def name(self, outline: str, key: str, /) -> None:
        if here := self._heights.here():
            self._heights.store.put(f"filled {here}{outline}", key.encode("ascii"))


def _read(data: bytes | None) -> Heights | None:
    """Kept heights; None where there are none, or they are not as we write."""
    try:
        held = json.loads(data) if data else None
    except (ValueError, RecursionError):
        return None
    if isinstance(held, dict) and all(map(_is_height, held.values())):
        return held
    return None


def _is_height(held: object) -> bool:
    return type(held) is not bool and isinstance(held, int | float) and 0 <= held < inf

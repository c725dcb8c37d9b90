"""What a comparison said, kept: the same two sides asked the same again are not compared again.

It is kept under every text of both sides, what was asked, the program and its grammar, as plain
text, so a stale answer cannot come out. A side with a mistake is told of and never kept.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Sequence

from stemline.compare.aloud import ToldLine
from stemline.outside.program import bundled, program
from stemline.outside.store import Store
from stemline.source import Source

Telling = tuple[bool, tuple[ToldLine, ...]]
"""Whether both sides are the same, and the lines that are printed."""


class KeptTelling:
    """The telling of one comparison, in ``store``; ``asked`` is all that it hangs on besides the
    texts of both sides. Nothing is kept of a program that cannot be told."""

    def __init__(
        self, store: Store, sides: Iterable[Sequence[Source]], asked: Sequence[object]
    ) -> None:
        self._store = store if program() else Store(None)
        digest = hashlib.sha256(f"{program()} {bundled()} {[*map(repr, asked)]}".encode())
        for texts in sides:
            digest.update(f"\0{len(texts)}".encode())
            for source in texts:
                for said in (source.name, source.text):
                    data = said.encode("utf-8", "surrogatepass")
                    digest.update(f"\0{len(data)}\0".encode() + data)
        self._key = f"compare{digest.hexdigest()[:40]}"

    def held(self) -> Telling | None:
        """What was said the last time; None where it is not known, or is not as we write."""
        data = self._store.get(self._key)
        if data is None:
            return None
        try:
            match json.loads(data):
                case [bool(same), list(lines)]:
                    return same, tuple(map(_line, lines))
        except (ValueError, TypeError, RecursionError):
            pass
        return None

    def keep(self, telling: Telling) -> None:
        same, lines = telling
        data = json.dumps([same, [[*line] for line in lines]], separators=(",", ":"))
        self._store.put(self._key, data.encode("utf-8", "surrogatepass"))


def _line(row: object) -> ToldLine:
    match row:
        case [str(kind), str(text)]:
            return ToldLine(kind, text)
    raise ValueError(row)

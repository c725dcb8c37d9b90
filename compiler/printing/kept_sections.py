"""Parts of a book given back whole, with the pictures on them: from what is kept, else made.

A part is kept under all that it reads of the playbook, and its pictures by name under that and the
theme: so for a part that is as it was no play is made. A row that is not as we write costs the time
to make the part again.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterable

from stemline.book.content.keeping import Made, Reads
from stemline.book.content.part_as_data import part_as_data, part_of_kind
from stemline.outside.store import Store
from stemline.proofs.page_readings import PageReadings
from stemline.theme import Theme


class KeptSections:
    """A `KeepPart` in ``store``; the digests are those of ``readings``."""

    def __init__(self, store: Store, readings: PageReadings, theme: Theme) -> None:
        self._store, self._readings, self._theme = store, readings, theme
        self._parts: dict[str, str] = {}
        self._drawn: dict[str, dict[str, str]] = {}
        self._new: set[str] = set()

    def keep(
        self,
        reads: Reads,
        what: str,
        kind: type[Made],
        more: object,
        make: Callable[[], Made],
        concept: str = "",
    ) -> Made:
        """What ``make`` makes."""
        said = repr((reads.name, what, more, concept)).encode("utf-8", "surrogatepass")
        digest = hashlib.sha256(self._read(reads, concept).encode())
        digest.update(hashlib.sha256(said).digest())
        key = digest.hexdigest()[:40]
        held = self._held(key, kind, make)
        if held is not None:
            return held[0]
        made = make()
        try:
            data, entries = part_as_data(made)
        except ValueError:
            return made
        self._store.put(f"pages {key}", data)
        self._note(key, entries)
        return made

    def _held(self, key: str, kind: object, make: Callable[[], Made]) -> tuple[Made] | None:
        data = self._store.get(f"pages {key}")
        if data is None:
            return None
        try:
            made, entries = part_of_kind(kind, data, make)
        except (ValueError, LookupError, TypeError, RecursionError):
            return None
        self._note(key, entries)
        return (made,)

    def _note(self, key: str, names: Iterable[str]) -> None:
        self._parts.update(dict.fromkeys(names, key))

    def _read(self, reads: Reads, concept: str) -> str:
        match reads:
            case Reads.CALLS:
                return self._readings.calls
            case Reads.CONCEPT:
                return self._readings.concept(concept)
            case Reads.ROUTES:
                return self._readings.routes
            case Reads.ALL:
                return self._readings.all

    # Pictures.

    def drawing(self, name: str, of: str = "") -> str:
        """What the picture of that name is kept under; "" where it is not known. ``of`` is a
        picture of a part that this one hangs on too, where it is not of the part itself."""
        part = self._parts.get(of or name)
        return self._names(part).get(name, "") if part is not None else ""

    def own_name(self, name: str, of: str) -> str:
        """A name to keep a picture under that is drawn from its part and the theme alone; "" where
        the part is not kept."""
        part = self._parts.get(of)
        said = f"{name} {part} {self._theme.digest}".encode()
        return hashlib.sha256(said).hexdigest()[:40] if part is not None else ""

    def drew(self, name: str, drawing: str, of: str = "") -> None:
        """A picture was drawn, and is kept under ``drawing``."""
        part = self._parts.get(of or name)
        if part is not None and self._names(part).get(name) != drawing:
            self._names(part)[name] = drawing
            self._new.add(part)

    def write(self) -> None:
        """Keep the names of pictures that were drawn."""
        for part in sorted(self._new):
            self._store.put(self._row(part), json.dumps(self._drawn[part]).encode())
        self._new.clear()

    def _names(self, part: str) -> dict[str, str]:
        if part not in self._drawn:
            self._drawn[part] = _read_names(self._store.get(self._row(part)))
        return self._drawn[part]

    def _row(self, part: str) -> str:
        return f"drawn {part} {self._theme.digest}"


def _read_names(data: bytes | None) -> dict[str, str]:
    try:
        held = json.loads(data) if data else None
    except (ValueError, RecursionError):
        return {}
    if isinstance(held, dict) and all(isinstance(each, str) for each in held.values()):
        return held
    return {}

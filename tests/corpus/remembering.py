"""What a check proves, kept for the checks that this process makes later, and on no disk."""

from __future__ import annotations

from stemline.outside.store import Store


class Remembering(Store):
    """A store that is gone with its process. What it gives is asked for by all that was read for
    it: that nothing else comes of it is what `tests/proofs` holds."""

    def __init__(self) -> None:
        super().__init__(None)
        self._rows: dict[str, bytes] = {}

    @property
    def keeps(self) -> bool:
        return True

    def get(self, key: str) -> bytes | None:
        return self._rows.get(key)

    def put(self, key: str, data: bytes) -> None:
        self._rows[key] = data

"""A man who cannot be put on the field."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Diagnostic


class Unplaced(Exception):
    """Caught where the men of a formation are lined up or moved, never let out of this room."""

    def __init__(self, diagnostic: Diagnostic) -> None:
        super().__init__(diagnostic.code)
        self.diagnostic = diagnostic

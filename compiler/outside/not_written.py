"""Why something was not written, as a mistake with its place."""

from __future__ import annotations

from pathlib import Path

from stemline.diagnostics.diagnostic import Mistake
from stemline.source import Span


class NotWritten(Exception):
    """Output that cannot take its place; the last good one stands as it was unless ``found`` says
    otherwise."""

    def __init__(self, said: Mistake, path: Path) -> None:
        self.found = said.at(Span(str(path), 0, 0, 0))
        super().__init__(f"{said.code} {path}")


def reason(error: OSError) -> str:
    """What the system says of it, in its words."""
    return (error.strerror or "it cannot be opened").casefold()

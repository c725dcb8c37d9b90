"""Codes of a word that is none of a closed list."""

from __future__ import annotations

from typing import ClassVar

from stemline.diagnostics.diagnostic import Mistake


class Misspelt(Mistake):
    """What was found in place of one of the choices."""

    found: str
    choices: str

    wanted: ClassVar[str] = ""
    """What is missing where the line ends before it: nothing was written that is wrong."""

"""Any text as a terminal may be given it: one line, nothing in it that the terminal would obey."""

from __future__ import annotations

import unicodedata

_JOINERS = "\u200c\u200d"
"""Marks that some scripts want between letters."""
_PICTURES = 0x2400
"""The Unicode block Control Pictures: a sign for each of the first 32 control characters."""
_DELETE = 0x7F


def plain(text: str) -> str:
    """The text with a sign in place of each character that is no letter, mark or blank.

    As many characters as before, so that what stands under it still does.
    """
    return text if text.isprintable() else "".join(map(_sign, text))


def shortened(text: str, most: int) -> str:
    """The text, or its beginning where it is longer than ``most`` characters."""
    return text if len(text) <= most else text[: most - 3] + "..."


def _sign(char: str) -> str:
    if char.isprintable() or char in _JOINERS:
        return char
    if char == "\t":
        return " "
    if ord(char) < ord(" "):
        return chr(_PICTURES + ord(char))
    if ord(char) == _DELETE:
        return "\u2421"
    match unicodedata.category(char):
        case "Zs":
            return " "
        case "Co" | "Cn":
            return char
    return "\ufffd"

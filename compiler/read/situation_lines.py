"""Down and distance as coaches write it on a call sheet (``3rd & 7+``): the line to type instead.

Common practice, no published source.
"""

from __future__ import annotations

import re

from stemline.football.situations import ORDINALS

_SAID = ("first", "second", "third", "fourth")
_AND = r"\s*(?:-?and-?|&|/|\bn\b)\s*"
_MORE = r"\+|plus|or (?:longer|greater|over|up|beyond)|and (?:longer|more|over|up)"
_HEAD = re.compile(
    rf"\b(?P<down>{'|'.join((*ORDINALS, *_SAID))})(?: down)?{_AND}"
    r"(?:(?P<word>goal|long|medium|short|inches)\b"
    rf"|(?P<low>\d+)\s*(?:[-–—]|to)\s*(?P<high>\d+)"
    rf"|(?P<least>\d+)\s*(?:(?:{_MORE}|or more)(?!\w))"
    r"|(?:(?P<below><(?!=)|under|less than)|<=|up to|at most)\s*(?P<under>\d+)"
    r"|(?P<most>\d+)\s*(?:or (?:less|fewer|under|shorter)|and (?:less|under)|-(?!\d))"
    r"|(?P<yards>\d+)(?![\d.]))",
    re.IGNORECASE,
)


def head_line(line: str) -> str:
    """The line with each down and distance as the notation has it; "" where none is said another
    way."""
    told = _HEAD.sub(_written, line)
    return told if told != line else ""


def _written(found: re.Match[str]) -> str:
    down = found["down"].casefold()
    down = ORDINALS[_SAID.index(down)] if down in _SAID else down
    return f"{down} and {_distance(found)}"


def _distance(found: re.Match[str]) -> str:
    if found["low"]:
        return f"{found['low']} to {found['high']}"
    if found["least"]:
        return f"{found['least']} or more"
    if found["under"]:
        most = int(found["under"]) - bool(found["below"])
        return f"{most} or less" if most > 0 else found["under"]
    if found["most"]:
        return f"{found['most']} or less"
    return found["word"] or found["yards"]

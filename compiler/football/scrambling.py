"""What each man does once the quarterback leaves the pocket: words for the page, no path."""

from __future__ import annotations

from collections.abc import Mapping

SCRAMBLES: Mapping[str, str] = {
    "deep": "go deep",
    "back": "come back to him",
    "along": "slide along with him",
    "block": "block the man nearest to him",
}
"""What a man may be told, and as he reads it."""
GOES: Mapping[str, str] = {
    "goes deep": "deep", "comes back": "back", "slides along": "along", "blocks": "block",
}  # fmt: skip
"""As the rule for all is said: `scramble short goes deep`."""
SHORT, DEEP = "short", "deep"
SHORT_ENDS = 10.0
"""Yards past the line up to which a route's end is short. Common practice, no published source."""


def told(way: str) -> str:
    """The sentence for a man's job."""
    return f"Scramble: {SCRAMBLES[way]}." if way else ""

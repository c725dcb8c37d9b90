"""Numbers of things in words."""

from __future__ import annotations


def how_many(number: int, what: str) -> str:
    """``no calls``, ``1 call``, ``2 calls``."""
    return f"{number or 'no'} {what}{'s' * (number != 1)}"

"""A theme's lengths at each size: one number for all, two, or three.

Of two numbers, ``[large, small]``, the quarter-page size lies between.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from stemline.theme.theme import Size

_BETWEEN = 0.25
"""How far from the small number towards the large one the quarter page's lies."""
_DIGITS = 2
"""Decimals of a number between two others."""


def at_size(said: Any, size: Size) -> float:
    """A length of a theme at one size."""
    return _of(said, size) if isinstance(said, list) else float(said)


def dash_at(said: Sequence[Any], size: Size) -> tuple[float, ...]:
    """Dashes at one size: one list for all, or two or three lists."""
    if not said or not isinstance(said[0], list):
        return tuple(float(part) for part in said)
    if len(said) == len(Size):
        return tuple(float(part) for part in said[size.value])
    large, small = said
    if size is not Size.QUARTER:
        return tuple(float(part) for part in (large if size is Size.FULL else small))
    if len(large) != len(small):
        return tuple(float(part) for part in small)
    return tuple(_of(list(pair), size) for pair in zip(large, small, strict=True))


def _of(said: Sequence[Any], size: Size) -> float:
    if len(said) == len(Size):
        return float(said[size.value])
    large, small = float(said[0]), float(said[1])
    if size is Size.FULL:
        return large
    return small if size is Size.THUMB else round(small + _BETWEEN * (large - small), _DIGITS)

"""Lists, numbers of things and distances, as a sentence has them."""

from __future__ import annotations

import re
from collections.abc import Iterable

BETWEEN_SIGNS = " · "
_MARKED = re.compile(r"\[([A-Z][A-Z0-9]?)\]")


def either(names: Iterable[str]) -> str:
    """``a``, ``a or b``, ``a, b or c``; "" of none."""
    return _series(names, "or")


def together(names: Iterable[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``; "" of none."""
    return _series(names, "and")


def _series(names: Iterable[str], last: str) -> str:
    *before, end = [*names] or [""]
    return f"{', '.join(before)} {last} {end}" if before else end


def theirs(letter: str) -> str:
    """``[M]``: a man of the defence, told from one of ours of the same letter; "" of nobody."""
    return f"[{letter}]" if letter else ""


def bare(words: str) -> str:
    """``words`` without the marks of `theirs`: where all men meant are theirs, or where they would
    be read out."""
    return _MARKED.sub(r"\1", words)


def how_many(number: int, what: str) -> str:
    """``no calls``, ``1 call``, ``2 calls``."""
    return f"{number or 'no'} {what}{'s' * (number != 1)}"


def half_yards(length: float) -> str:
    """A length of at least 0 to the nearest half yard: nobody counts finer by eye."""
    return f"{int(2 * length + 0.5) / 2:g}"


def each_sign_once(*marks: str) -> str:
    """Marks of several things, such as ``1, 2: order of his eyes · wedge: unblocked``, in one line:
    each sign told once, as it was told first."""
    told: dict[str, str] = {}
    for words in (each for said in marks for each in said.split(BETWEEN_SIGNS) if each):
        told.setdefault(words.partition(":")[0].removeprefix("short "), words)
    return BETWEEN_SIGNS.join(told.values())

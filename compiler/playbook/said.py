"""What definitions are made of: a value, its condition, and the line that says it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Generic, TypeVar

from stemline.football.conditions import Guard
from stemline.source import Span

T_co = TypeVar("T_co", covariant=True)


@dataclass(frozen=True)
class Said(Generic[T_co]):
    """A value with the guard under which it holds and the line that says it."""

    value: T_co
    guard: Guard
    span: Span


class SideWord(Enum):
    """The words for a side, each with one meaning."""

    CALL = "call"
    AWAY = "away"
    STRONG = "strong"
    WEAK = "weak"
    FIELD = "field"
    BOUNDARY = "boundary"
    LEFT = "left"
    RIGHT = "right"
    PLAYSIDE = "playside"
    BACKSIDE = "backside"

    @property
    def opposite(self) -> SideWord:
        return _OPPOSITE[self]


_PAIRS = (
    (SideWord.CALL, SideWord.AWAY),
    (SideWord.STRONG, SideWord.WEAK),
    (SideWord.FIELD, SideWord.BOUNDARY),
    (SideWord.LEFT, SideWord.RIGHT),
    (SideWord.PLAYSIDE, SideWord.BACKSIDE),
)
_OPPOSITE = {a: b for pair in _PAIRS for a, b in (pair, pair[::-1])}

"""Positions: what a man is, whatever letter he wears."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from functools import cached_property

HIGHEST_NUMBER = 99
"""Jerseys are numbered from 0 to 99."""
FASTEST_FORTY, SLOWEST_FORTY = 4.0, 8.0
"""Seconds for 40 yards that a stopwatch on a practice field may show; the limits only catch a slip
of the pen. Common practice, no published source."""


class Position(Enum):
    """Positions by their trade names. The letters a coach uses for them are his own choice."""

    QUARTERBACK = "quarterback"
    BACK = "back"
    FULLBACK = "fullback"
    WIDEOUT = "wideout"
    SLOT = "slot"
    SLOTBACK = "slotback"
    TIGHT_END = "tight end"
    WING = "wing"
    TACKLE = "tackle"
    GUARD = "guard"
    CENTRE = "centre"

    @cached_property
    def interior(self) -> bool:
        return self in (Position.TACKLE, Position.GUARD, Position.CENTRE)

    @property
    def back(self) -> bool:
        """Whether a personnel counts him as a back."""
        return self in (Position.BACK, Position.FULLBACK)


def grouping(positions: Iterable[Position], players: int) -> str:
    """A personnel in the staff's two digits, backs and tight ends: "12 personnel of 11".

    The digits leave the wide receivers to be counted from the men of the code, so the same two mean
    another group in the twelve-man game, and the code's number of men is said with them.
    """
    men = tuple(positions)
    ends = sum(p is Position.TIGHT_END for p in men)
    return f"{sum(p.back for p in men)}{ends} personnel of {players}"

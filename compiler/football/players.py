"""Positions: what a man is, whatever letter he wears."""

from __future__ import annotations

from enum import Enum


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

    @property
    def interior(self) -> bool:
        return self in (Position.TACKLE, Position.GUARD, Position.CENTRE)

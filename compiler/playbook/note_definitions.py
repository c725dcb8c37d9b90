"""A coach's word to somebody, with what it holds for: a man, a position, the line, everybody."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from stemline.football.conditions import Guard
from stemline.football.players import Position
from stemline.playbook.role_rules import Choice
from stemline.playbook.run_definitions import LineSpot
from stemline.source import Span


class Addressed(Enum):
    """Men who are spoken to together, and the whole page."""

    LINEMEN = "linemen"
    ALL = "all"


Told = str | Position | Addressed | LineSpot | Choice
"""To whom: a role's name, a position, a group, a place on the line, or a man by where he stands."""


@dataclass(frozen=True)
class Note:
    """``quarterback says "Back shoulder." when press``: printed where it holds; several may hold.

    ``who`` is `Addressed.ALL` for a ``say`` of the concept itself.
    """

    who: Told
    words: str
    guard: Guard
    span: Span = field(compare=False)

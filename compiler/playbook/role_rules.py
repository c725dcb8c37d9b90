"""Who plays a role, as the coach wrote it: a choice of rules, the first that finds a man counts."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from stemline.playbook.said import SideWord
from stemline.source import Span


class Which(Enum):
    INSIDE = "inside"
    OUTSIDE = "outside"


@dataclass(frozen=True)
class Ranked:
    """strong #2"""

    side: SideWord
    number: int


@dataclass(frozen=True)
class ByRole:
    """The side another role comes from, or the one across from it; ``across`` where the text says
    `across from`, which also tells of a man that he stands there."""

    role: str
    opposite: bool
    span: Span = field(compare=False)
    across: bool = False


@dataclass(frozen=True)
class Relative:
    """weak inside: the innermost man on that side who is still free."""

    which: Which
    side: SideWord | ByRole


@dataclass(frozen=True)
class TightEnd:
    side: SideWord | None


@dataclass(frozen=True)
class Back:
    """The deepest free back; with a side, the one who stands there."""

    side: SideWord | None


@dataclass(frozen=True)
class Fullback:
    """The back nearest the line, where two or more stand behind the ball."""


@dataclass(frozen=True)
class Wing:
    """A man off the line, close outside the last man on it."""

    side: SideWord | None


@dataclass(frozen=True)
class Passer:
    """The quarterback, who carries the ball himself."""


@dataclass(frozen=True)
class Snapper:
    """The centre, who goes out for a pass in a code where every man may."""


@dataclass(frozen=True)
class ByLetter:
    """The man of this letter, wherever he stands."""

    letter: str


@dataclass(frozen=True)
class Nobody:
    pass


Choice = (
    Ranked | Relative | TightEnd | Back | Fullback | Wing | Passer | Snapper | ByLetter | Nobody
)


@dataclass(frozen=True)
class RoleRule:
    """Choices in order; ``words`` as written, choice by choice."""

    choices: tuple[Choice, ...]
    words: tuple[str, ...]

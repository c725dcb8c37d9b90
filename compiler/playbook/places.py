"""Where a man stands or goes to, as the coach wrote it."""

from __future__ import annotations

from dataclasses import dataclass, field

from stemline.football.offence.landmarks import Landmark
from stemline.playbook.said import SideWord
from stemline.source import Span


@dataclass(frozen=True)
class AtLandmark:
    landmark: Landmark
    outside: float


@dataclass(frozen=True)
class AtMan:
    """``outside`` yards from another man, away from the ball; ``beside`` him he is as deep as
    that man where no depth is said, and ``behind`` him deeper by `STACKED`."""

    man: str
    outside: float
    beside: bool = False
    behind: bool = False


STACKED = 2.0
"""Yards from a man to one who stands behind him: custom."""


@dataclass(frozen=True)
class Between:
    """Half way between two places."""

    first: AtLandmark | AtMan
    second: AtLandmark | AtMan


@dataclass(frozen=True)
class FromHere:
    """``outside`` yards from where a mover is, away from the ball; only a motion says it."""

    outside: float


@dataclass(frozen=True)
class Home:
    """Where a mover lined up; only a motion says it."""


Where = AtLandmark | AtMan | Between | FromHere | Home


@dataclass(frozen=True)
class Place:
    """``side`` is None for a place that another man's side decides; ``depth`` yards behind the
    line, None where the text does not say; ``on_line`` for a line player."""

    side: SideWord | None
    where: Where
    depth: float | None
    on_line: bool
    span: Span = field(compare=False)

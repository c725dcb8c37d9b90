"""How the ball goes, as the coach wrote it: men by role or by rule, places by side words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from stemline.football.exchanges import BallMoves
from stemline.playbook.role_rules import Choice
from stemline.playbook.run_definitions import AimPoint
from stemline.source import Span

QUARTERBACK, SNAPPER_SAID = "quarterback", "centre"
"""The two men who need no role to give or take the ball."""


@dataclass(frozen=True)
class ExchangePlace:
    """``5 deep, backside guard``: yards behind the line, or ``behind`` the giver, and over whom;
    each None where not said."""

    deep: float | None
    behind: float | None
    over: AimPoint | None
    words: str


@dataclass(frozen=True)
class ExchangeDef:
    """``carrier hands to taker at 5 deep``; ``others`` are whom a thrower may throw to instead,
    ``runs`` whether he may keep it, ``by_place`` the rules of men named by where they stand."""

    kind: BallMoves
    giver: str
    taker: str
    place: ExchangePlace | None
    after: float | None
    others: tuple[str, ...]
    runs: bool
    by_place: Mapping[str, Choice] = field(hash=False)
    span: Span = field(compare=False)

    @property
    def written(self) -> str:
        """The line as it is said again in a message."""
        return f"{self.giver} {self.kind.value} to {self.taker}"

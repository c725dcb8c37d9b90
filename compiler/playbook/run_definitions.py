"""Runs as the coach wrote them: blocking rules, aiming points, keys; sides are still "playside"."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from stemline.football.blocking.run_rules import BlockWay
from stemline.source import Span

if TYPE_CHECKING:
    from stemline.playbook.said import SideWord


@dataclass(frozen=True)
class LineSpot:
    """A man of the line by his place: ``place`` is guard, tackle, outside tackle, end or centre,
    counted from the ball outward on ``side`` (None for the centre and for the whole line)."""

    side: SideWord | None
    place: str

    def __str__(self) -> str:
        return f"{self.side.value} {self.place}" if self.side else self.place


WHOLE_LINE = LineSpot(None, "line")
"""Every lineman who has no line of his own."""


@dataclass(frozen=True)
class TargetDef:
    """A described defender; ``side`` None where the text gives none."""

    what: str
    side: SideWord | None


@dataclass(frozen=True)
class RuleDef:
    """One choice. A partner without a side is the neighbour of that name on the blocker's side."""

    way: BlockWay
    partner: LineSpot | None
    target: TargetDef | None


@dataclass(frozen=True)
class BlockRules:
    """``blocks down or double with guard then backside linebacker``; ``words`` as written."""

    rules: tuple[RuleDef, ...]
    then: tuple[TargetDef, ...]
    words: str


@dataclass(frozen=True)
class AimPoint:
    """``point`` is a gap (A to D), a lineman (guard, tackle, end, centre) or "edge", a yard and a
    half outside the last man on the line; ``side`` None is the playside."""

    point: str
    side: SideWord | None


@dataclass(frozen=True)
class Aim:
    """Where a man runs with the ball, or as if he had it; the last of the points is the hole."""

    points: tuple[AimPoint, ...]
    words: str


@dataclass(frozen=True)
class Toward:
    """The playside: a side word, or the side of a tight end, of the back or of a man by his
    letter; ``away`` turns it."""

    side: SideWord | None
    man: str = ""
    away: bool = False


@dataclass(frozen=True)
class KeyDef:
    """A defender who is read; ``words`` as written, ``name`` what he is called, "" without one."""

    target: TargetDef
    words: str
    span: Span = field(compare=False)
    name: str = ""


@dataclass(frozen=True)
class Reaction:
    """``give if he widens``: ``does`` is give, pull, keep, throw or pitch, ``to`` the role of a
    throw, ``off`` the second defender that a pitch is read from. ``cases`` are what keys do that
    have a name, each with its action: ``gives if end stays``."""

    does: str
    to: str
    when: str
    off: KeyDef | None
    span: Span = field(compare=False)
    cases: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class Join:
    """``join run Power``: a pass that shows a run; ``name`` is the run's key."""

    name: str
    span: Span


CARRIER = "carrier"
"""The role of the man who runs with the ball."""

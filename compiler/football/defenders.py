"""A look lined up against one set of the offence: defenders, where they stand and what they do.

Distances in yards: x right of the ball as the offence faces, y past the line of scrimmage.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from stemline.football.field import Side
from stemline.geometry.paths import Point
from stemline.source import Span


class Level(Enum):
    """Where a defender stands: on the line, behind it in or beside the box, or deep."""

    LINE = "line"
    SECOND = "second level"
    DEEP = "secondary"


class DutyKind(Enum):
    """What a defender is there for on a pass, by the trade's terms."""

    RUSH = "rush"
    MAN = "man"
    FLAT = "flat"
    CURL = "curl"
    HOOK = "hook"
    HOLE = "hole"
    ROBBER = "robber"
    QUARTER = "quarter"
    THIRD = "third"
    HALF = "half"


@dataclass(frozen=True)
class Duty:
    """One defender's responsibility.

    ``words`` for a table ("man on #2 strong", "deep third, middle"); ``man`` is the label of the
    receiver he has ("" in zone); ``to`` the landmark he drops to or the gap he rushes through,
    None for a man who follows a receiver; ``gap`` the gap of a rusher in words ("B strong").
    """

    kind: DutyKind
    words: str
    man: str
    to: Point | None
    gap: str = ""


@dataclass(frozen=True)
class Defender:
    """A defender lined up. ``technique`` is his number ("3", "2i", "30") or gap ("A gap"), ""
    for one who is placed by a receiver or a landmark.

    ``says`` are the coach's own words for him.
    """

    label: str
    at: Point
    level: Level
    technique: str
    duty: Duty | None
    span: Span
    says: tuple[str, ...] = ()

    @property
    def rushes(self) -> bool:
        return self.duty is not None and self.duty.kind is DutyKind.RUSH

    @property
    def comes(self) -> bool:
        """Whether he rushes on a pass: a man of the front does who has no duty."""
        return self.rushes or (self.duty is None and self.level is Level.LINE)


@dataclass(frozen=True)
class Defence:
    """A look lined up.

    ``strong`` is the side the look calls strong; ``shows`` are the words of the looks that it
    makes true ("zone", "press", "middle closed"), computed from what its men do.
    """

    name: str
    strong: Side
    defenders: tuple[Defender, ...]
    shows: tuple[str, ...]
    span: Span

    @property
    def rushers(self) -> tuple[Defender, ...]:
        return tuple(d for d in self.defenders if d.rushes)

    def defender(self, label: str) -> Defender:
        return next(d for d in self.defenders if d.label == label)

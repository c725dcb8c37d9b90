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

    A rusher of a stunt waits until the man ``behind`` whom he comes has passed, and goes round
    ``via``, or ``after`` so many seconds from the snap.
    """

    kind: DutyKind
    words: str
    man: str
    to: Point | None
    gap: str = ""
    behind: str = ""
    after: float = 0.0
    via: Point | None = None


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
    makes true ("zone", "press", "middle closed"), computed from what its men do, and ``disguise``
    those that it shows before the snap and does not play.
    """

    name: str
    strong: Side
    defenders: tuple[Defender, ...]
    shows: tuple[str, ...]
    span: Span
    disguise: tuple[str, ...] = ()

    @property
    def rush_words(self) -> str:
        """How many rush where some of them do not stand on the line: "4 rush, 2 from the second
        level"; else ""."""
        told = [
            f"{many} from the {level.value}"
            for level in (Level.SECOND, Level.DEEP)
            if (many := sum(d.level is level for d in self.rushers))
        ]
        return ", ".join((f"{len(self.rushers)} rush", *told)) if told else ""

    @property
    def rushers(self) -> tuple[Defender, ...]:
        return tuple(d for d in self.defenders if d.rushes)

    def defender(self, label: str) -> Defender:
        return next(d for d in self.defenders if d.label == label)

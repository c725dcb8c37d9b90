"""A week as the coach wrote it: calls are still texts, situations are values."""

from __future__ import annotations

from dataclasses import dataclass, field

from stemline.football.contact_limits import HitLevel
from stemline.football.field import BallSpot
from stemline.football.situations import Situation
from stemline.playbook.kill_definitions import Sights
from stemline.source import Span


@dataclass(frozen=True)
class Named:
    """A name as it is written, and where."""

    text: str
    span: Span


TEMPOS = ("fast", "normal", "slow", "look", "freeze")


@dataclass(frozen=True)
class RowDef:
    """One call of a list, or a situation whose calls stand here in their order.

    ``when`` is the look or the condition it is called on; ``against`` the look that it is practised
    against; ``after`` the call it stands behind ("" for the end of the list), ``first`` puts it at
    the head. ``reps`` 0 is as the tempo has it. ``kill_to`` is what it is killed to at the line, on
    what ``when`` says; ``sights`` is that as it was read, () for what only a plan can know.
    """

    call: Named
    spot: BallSpot | None = None
    when: Named | None = None
    against: Named | None = None
    tempo: str = ""
    note: str = ""
    reps: int = 0
    first: bool = False
    after: Named | None = None
    kill_to: Named | None = None
    sights: Sights = ()
    situation: Situation | None = None

    @property
    def span(self) -> Span:
        return self.call.span


@dataclass(frozen=True)
class ListDef:
    """A situation and its calls in order."""

    situation: Situation
    rows: tuple[RowDef, ...]
    span: Span


@dataclass(frozen=True)
class HeldSituation:
    """A situation that is pointed to; ``span`` is where."""

    situation: Situation
    span: Span


@dataclass(frozen=True)
class BandDef:
    """A wristband: ``men`` are letters (none: everybody), ``holds`` nothing for all of the plan.

    ``width`` and ``height`` are inches of one window, ``windows`` fold on each other.
    """

    name: str
    men: tuple[Named, ...]
    width: float
    height: float
    windows: int
    holds: tuple[HeldSituation, ...]
    span: Span


@dataclass(frozen=True)
class ScoutDef:
    """Cards for the look team."""

    name: str
    rows: tuple[RowDef, ...]
    span: Span


@dataclass(frozen=True)
class PeriodDef:
    """A period of a practice: ``groups`` none for everybody, ``day`` "" where none is said."""

    name: str
    minutes: int
    contact: HitLevel
    day: str
    groups: tuple[str, ...]
    rows: tuple[RowDef, ...]
    span: Span


@dataclass(frozen=True)
class QuizDef:
    """A quiz for men by letter; ``day`` "" where none is said."""

    men: tuple[Named, ...]
    day: str
    span: Span


@dataclass(frozen=True)
class DropDef:
    """What a week leaves out of the one it starts from: a call (of one situation, or of all), all
    of a situation, or a part by ``kind`` and name."""

    call: Named | None
    situation: Situation | None
    kind: str
    name: str
    span: Span


@dataclass(frozen=True)
class MoveDef:
    """A call that goes to another list, behind ``after`` or to its end; ``source`` None for
    wherever it stands."""

    call: Named
    source: Situation | None
    to: Situation
    after: Named | None
    span: Span


@dataclass(frozen=True)
class ShortDef:
    """A name, or a whole call, as it stands on a wristband."""

    name: Named
    short: str
    span: Span


@dataclass(frozen=True)
class NumberDef:
    """A call that keeps its number every week."""

    call: Named
    number: int
    span: Span


@dataclass(frozen=True)
class Numbering:
    """How numbers are given: families ``together`` or apart, and a seed of the coach's own."""

    together: bool = False
    seed: str = ""


@dataclass(frozen=True)
class WeekDef:
    """A week block, read; ``broken`` where a line of it could not be. ``parent`` is the week it
    starts from, as written."""

    number: int
    opponent: str
    span: Span
    broken: bool = False
    parent: Named | None = None
    date: str = ""
    faces: tuple[Named, ...] = ()
    drops: tuple[DropDef, ...] = ()
    moves: tuple[MoveDef, ...] = ()
    lists: tuple[ListDef, ...] = ()
    bands: tuple[BandDef, ...] = ()
    scouts: tuple[ScoutDef, ...] = ()
    periods: tuple[PeriodDef, ...] = ()
    quizzes: tuple[QuizDef, ...] = ()
    shorts: tuple[ShortDef, ...] = ()
    frozen: tuple[NumberDef, ...] = ()
    numbering: Numbering | None = None
    says: tuple[str, ...] = ()
    starts: tuple[tuple[str, int], ...] = field(default=())
    """Practices by day, and when each begins in minutes after midnight."""

    @property
    def name(self) -> str:
        return f"{self.number} {self.opponent}"

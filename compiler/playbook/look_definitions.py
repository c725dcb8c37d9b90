"""A look as the coach wrote it: sides are still "strong", places still rules.

The sides in it are the look's own: its ``strength`` says what it calls strong.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import TYPE_CHECKING

from stemline.football.conditions import Guard, LookWord
from stemline.football.defence.techniques import Gap
from stemline.football.defenders import DutyKind
from stemline.football.offence.landmarks import Landmark
from stemline.source import Span

if TYPE_CHECKING:
    from stemline.playbook.said import Said


BASE_FRONT = "\0base front"
"""The key of the front that a playbook without a look is drawn against: no look has this name."""


class Strength(Enum):
    """Which side a look calls strong. ``PASSING`` is the side with more receivers."""

    PASSING = "strong"
    WEAK = "weak"
    CALL = "call"
    FIELD = "field"
    BOUNDARY = "boundary"
    TIGHT_END = "tight end"
    LEFT = "left"
    RIGHT = "right"


class LookSide(Enum):
    """The words for a side in a look; MIDDLE and EITHER only where the line's form has them."""

    STRONG = "strong"
    WEAK = "weak"
    FIELD = "field"
    BOUNDARY = "boundary"
    LEFT = "left"
    RIGHT = "right"


# Where a defender stands.


@dataclass(frozen=True)
class AtTechnique:
    """``name`` is a technique or a linebacker's number."""

    name: str


@dataclass(frozen=True)
class InGap:
    gap: Gap


@dataclass(frozen=True)
class OverReceiver:
    """The receiver as counted on a side; ``outside`` yards away from the ball from him."""

    number: int


@dataclass(frozen=True)
class OverEnd:
    """The tight end by place."""


@dataclass(frozen=True)
class Apex:
    """Half way between the inmost man who is split out and the end man on the line."""


@dataclass(frozen=True)
class AtField:
    """A landmark; the field's middle where ``landmark`` is None."""

    landmark: Landmark | None


@dataclass(frozen=True)
class Halfway:
    first: OverReceiver | OverEnd | AtField
    second: OverReceiver | OverEnd | AtField


Stands = AtTechnique | InGap | OverReceiver | OverEnd | Apex | AtField | Halfway


@dataclass(frozen=True)
class Stand:
    """One choice of a place. ``depth`` yards off the line, None for a man on it (a technique) or
    where the number's own depth holds; ``words`` as written."""

    where: Stands
    side: LookSide | None
    outside: float
    depth: float | None
    words: str


# What he does on a pass.


@dataclass(frozen=True)
class ManMark:
    """Whom a man defender has: a receiver as counted, the tight end, or a back.

    ``number`` 0 with ``back`` 0 is the tight end; ``back`` counts backs from the deepest, and
    with a side only those who stand there. ``mover`` is the motion man, whoever he is, ``letter`` a
    man by his own.
    """

    side: LookSide | None
    number: int
    back: int
    mover: bool = False
    letter: str = ""


@dataclass(frozen=True)
class ZoneDuty:
    """``side`` None is the middle."""

    kind: DutyKind
    side: LookSide | None


@dataclass(frozen=True)
class Rush:
    """``gap`` None is contain; ``side`` None is the side he stands on.

    He waits until ``behind``, another rusher, has passed, or ``after`` so many seconds.
    """

    gap: Gap | None
    side: LookSide | None
    behind: str = ""
    after: float = 0.0


Task = ManMark | ZoneDuty | Rush


@dataclass(frozen=True)
class Choices:
    """Choices of a duty in order, with the words of each."""

    tasks: tuple[Task, ...]
    words: tuple[str, ...]


@dataclass(frozen=True)
class FacedSet:
    """Whom a look is for: a ``formation`` by its key, or ("") sets of which ``guard`` is true."""

    formation: str
    guard: Guard


@dataclass(frozen=True)
class LookDef:
    """A look block, read; ``broken`` where a line of it could not be.

    ``stands`` and ``duties`` go from a defender's label to his lines, each with its guard. It is
    played ``only_for`` these sets, against every one where there are none, and ``never_for`` those.
    ``shown`` is what is seen of it before the snap where that is not what it plays.
    """

    name: str
    says: tuple[str, ...]
    span: Span
    broken: bool
    strength: Strength = Strength.PASSING
    part: bool = False
    """Whether it is a front or a coverage alone, which only others extend."""
    stands: Mapping[str, tuple[Said[tuple[Stand, ...]], ...]] = field(default_factory=dict)
    duties: Mapping[str, tuple[Said[Choices], ...]] = field(default_factory=dict)
    man_says: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    only_for: tuple[FacedSet, ...] = ()
    never_for: tuple[FacedSet, ...] = ()
    shown: tuple[LookWord, ...] = ()

    @property
    def sets(self) -> str:
        """Whom it is for in words: "only for Jumbo, three backs"."""
        said = (("only for", self.only_for), ("never for", self.never_for))
        return ", ".join(
            f"{word} {', '.join(one.formation.title() or one.guard.text for one in sets)}"
            for word, sets in said
            if sets
        )

    @property
    def limited(self) -> bool:
        """Whether some set may never meet it."""
        return bool(self.only_for or self.never_for)

"""A playbook's text, read: every name known, every value checked against its closed list.

This is what the coach said, not yet what any call does: guards are still open, sides are still
"call" and "strong". `expand` turns it into plays. A definition is ``broken`` when a line of it
could not be read: it is known by name, but nothing is proved of it, since every finding would
only repeat the first mistake.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import TYPE_CHECKING, Generic, TypeVar

from stemline.football.codes import Code
from stemline.football.landmarks import Landmark
from stemline.football.play import Kind
from stemline.football.players import Position
from stemline.football.strokes import Decide, Depth, Route, Stroke, Target
from stemline.football.timing.levels import HIGH_SCHOOL, Level
from stemline.football.worlds import Guard, Look
from stemline.resolve.look_definitions import BASE_FRONT, LookDef
from stemline.resolve.run_definitions import (
    Aim,
    BlockRules,
    Join,
    KeyDef,
    LineSpot,
    Reaction,
    Toward,
)
from stemline.source import NOWHERE, Span

if TYPE_CHECKING:
    from stemline.resolve.protection_definitions import Protection

T_co = TypeVar("T_co", covariant=True)


@dataclass(frozen=True)
class Said(Generic[T_co]):
    """A value with the guard under which it holds and the line that says it."""

    value: T_co
    guard: Guard
    span: Span


class SideWord(Enum):
    """The words for a side, each with one meaning."""

    CALL = "call"
    AWAY = "away"
    STRONG = "strong"
    WEAK = "weak"
    FIELD = "field"
    BOUNDARY = "boundary"
    LEFT = "left"
    RIGHT = "right"
    PLAYSIDE = "playside"
    BACKSIDE = "backside"


# Where a man lines up or moves to.


@dataclass(frozen=True)
class AtLandmark:
    landmark: Landmark
    outside: float


@dataclass(frozen=True)
class AtMan:
    """``outside`` yards from another man, away from the ball; ``beside`` him he is as deep as
    that man where no depth is said."""

    man: str
    outside: float
    beside: bool = False


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


@dataclass(frozen=True)
class LineDef:
    """The interior line from left to right when called right: labels, and yards between
    neighbours (None for the usual splits)."""

    labels: tuple[str, ...]
    split: float | None
    span: Span


@dataclass(frozen=True)
class Formation:
    """``line`` is None for the code's own line; ``people`` the name of the personnel that plays it,
    "" where not said; ``man_says`` the words for a man, by letter."""

    name: str
    men: Mapping[str, tuple[Said[Place], ...]]
    says: tuple[str, ...]
    span: Span
    broken: bool
    line: LineDef | None = None
    people: str = ""
    man_says: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True)
class Mover:
    """Who moves: a letter, a receiver as counted where he lines up, or the deepest back."""

    letter: str
    side: SideWord | None
    number: int
    span: Span = field(compare=False)
    back: bool = False


@dataclass(frozen=True)
class Move:
    """One man's motion: to places in turn, or from somewhere else to where the formation has him.

    ``from_depth`` is that far behind his place (a waggle), ``start`` a place of its own. ``starts``
    is when he begins, in seconds before the snap, None where he simply arrives in time; ``speed``
    his own at the snap, None for the motion's.
    """

    mover: Mover
    to: tuple[Place, ...]
    from_depth: float | None
    span: Span = field(compare=False)
    start: Place | None = None
    starts: float | None = None
    speed: float | None = None


@dataclass(frozen=True)
class MotionDef:
    """``speed`` yards a second at the snap; 0 means that he is set."""

    name: str
    moves: tuple[Move, ...]
    speed: float
    span: Span
    broken: bool


# Who plays a role.


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
    """The side another role comes from, or the one across from it."""

    role: str
    opposite: bool
    span: Span = field(compare=False)


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
class Nobody:
    pass


Choice = Ranked | Relative | TightEnd | Back | Fullback | Wing | Passer | Snapper | Nobody


@dataclass(frozen=True)
class RoleRule:
    """Choices in order; ``words`` as written, choice by choice."""

    choices: tuple[Choice, ...]
    words: tuple[str, ...]


# What a role does.


@dataclass(frozen=True)
class Run:
    """``route`` with its called depth; ``target`` moves its end, ``way`` decides which side is
    out for him, ``then`` is run after it. ``words`` is the line for the assignment table; ``end``
    is how deep his ``target`` is, None for the depth that the route has there."""

    route: Route
    depth: float | None
    target: Target | None
    way: SideWord | ByRole | None
    then: tuple[Stroke, ...]
    words: str
    end: Depth | None = None


@dataclass(frozen=True)
class Block:
    job: str


Job = Run | Block | Aim | BlockRules
"""What a role may do: run a route, block as a receiver or back, carry the ball, block by rule."""


# Where and in which order the quarterback looks.


@dataclass(frozen=True)
class SpotRule:
    """x: over a landmark on a side, or ``outside`` yards outside the tackle; depth in yards."""

    side: SideWord | ByRole | None
    landmark: Landmark
    outside: float
    depth: float


@dataclass(frozen=True)
class LookAt:
    """One look: a spot or role, the foot that throws it, a partner in the same glance."""

    target: str
    foot: str
    partner: str
    span: Span = field(compare=False)


@dataclass(frozen=True)
class FootDef:
    """A piece of the feet; ``side`` is where a moving launch goes, None for the first read's."""

    name: str
    side: SideWord | None = None


@dataclass(frozen=True)
class ClaimDef:
    kind: str
    targets: tuple[tuple[str, Span], ...]
    on: str
    guard: Guard
    span: Span


@dataclass(frozen=True)
class Need:
    """``role`` must be within ``yards`` of a landmark on his side at the snap."""

    role: str
    yards: float
    landmark: Landmark
    span: Span


@dataclass(frozen=True)
class AlertDef:
    target: str
    guard: Guard
    on: str
    span: Span


@dataclass(frozen=True)
class Swap:
    first: str
    second: str
    span: Span


class Keep(Enum):
    """What a tag may promise to leave as it was."""

    READ = "read"
    FEET = "feet"
    PRESSURE = "pressure"
    SPOTS = "spots"


@dataclass(frozen=True)
class Body:
    """The facts of a concept or a tag. Mappings go from a role's or spot's name.

    ``line`` goes from a place on the line; ``first`` are the roles that bind before the others,
    such as the carrier of a joined run; ``no_claims`` says that it claims nothing; ``handoffs``
    are the roles through whose hands the ball goes on its way to the carrier, in order.
    """

    rules: Mapping[str, tuple[Said[RoleRule], ...]] = field(default_factory=dict)
    jobs: Mapping[str, tuple[Said[Job], ...]] = field(default_factory=dict)
    decides: Mapping[str, tuple[Said[Decide], ...]] = field(default_factory=dict)
    spots: Mapping[str, tuple[Said[SpotRule], ...]] = field(default_factory=dict)
    role_says: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    feet: tuple[Said[tuple[FootDef, ...]], ...] = ()
    read: tuple[Said[tuple[LookAt, ...]], ...] = ()
    pressure: tuple[Said[tuple[LookAt, ...]], ...] = ()
    protect: tuple[Said[str], ...] = ()
    pick: tuple[Said[str], ...] = ()
    claims: tuple[ClaimDef, ...] = ()
    no_claims: bool = False
    needs: tuple[Need, ...] = ()
    alerts: tuple[AlertDef, ...] = ()
    says: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    swaps: tuple[Swap, ...] = ()
    line: Mapping[LineSpot, tuple[Said[BlockRules], ...]] = field(default_factory=dict)
    toward: tuple[Said[Toward], ...] = ()
    keys: tuple[KeyDef, ...] = ()
    reactions: tuple[Reaction, ...] = ()
    joins: tuple[Join, ...] = ()
    first: tuple[str, ...] = ()
    handoffs: tuple[Said[tuple[str, ...]], ...] = ()


@dataclass(frozen=True)
class Concept:
    """A concept or a run: what a call is made of besides its formation, motion and tags."""

    name: str
    family: str
    body: Body
    span: Span
    broken: bool
    kind: Kind = Kind.PASS


@dataclass(frozen=True)
class Tag:
    name: str
    concept: str
    body: Body
    keeps: tuple[tuple[Keep, Span], ...]
    span: Span
    broken: bool


# Dress-ups.


@dataclass(frozen=True)
class Pattern:
    """Which calls a `never` or `only` line speaks of; an empty part means any."""

    formations: tuple[str, ...]
    tags: tuple[tuple[str, ...], ...]
    sides: tuple[str, ...]
    motions: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class DressIn:
    formation: str
    motions: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class DressWith:
    tags: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class Alias:
    """A call given a name of its own: ``text`` as written."""

    text: str
    name: str
    span: Span


@dataclass(frozen=True)
class Dress:
    """``against`` are words that a defence shows, ``looks`` the keys of looks named instead."""

    concept: str
    formations: tuple[DressIn, ...]
    withs: tuple[DressWith, ...]
    sides: tuple[str, ...]
    motions: tuple[str, ...]
    spots: tuple[str, ...]
    against: tuple[tuple[Look, ...], ...]
    never: tuple[Pattern, ...]
    only: tuple[Pattern, ...]
    aliases: tuple[Alias, ...]
    span: Span
    looks: tuple[str, ...] = ()


@dataclass(frozen=True)
class Person:
    """``forty`` is his own time for 40 yards in seconds, None where nobody says it."""

    letter: str
    position: Position
    right_handed: bool
    span: Span
    number: int | None = None
    forty: float | None = None


@dataclass(frozen=True)
class Settings:
    """The playbook block: the code, and the house's own figures over the code's.

    ``against`` is the key of the look that runs are drawn against, "" where none is named;
    ``lowered`` are the codes of warnings that are counted and not printed; ``level`` is how fast
    they play, for the clock. ``theme`` is the name of the theme, said at ``theme_span``; "" for the
    usual one.
    """

    name: str
    code: Code
    season: str
    numbers: float
    gun_depth: float
    right_handed: bool
    picture: str
    sections: tuple[tuple[str, Span], ...]
    says: tuple[str, ...]
    cautions: tuple[str, ...]
    span: Span
    against: str = ""
    lowered: tuple[str, ...] = ()
    level: Level = HIGH_SCHOOL
    theme: str = ""
    theme_span: Span = NOWHERE


@dataclass(frozen=True)
class Playbook:
    """Every definition by its key, the name in lower case. Runs stand among the concepts."""

    settings: Settings
    people: Mapping[str, Person]
    formations: Mapping[str, Formation]
    motions: Mapping[str, MotionDef]
    routes: Mapping[str, Route]
    concepts: Mapping[str, Concept]
    tags: Mapping[tuple[str, str], Tag]
    dresses: tuple[Dress, ...]
    looks: Mapping[str, LookDef] = field(default_factory=dict)
    protections: Mapping[str, Protection] = field(default_factory=dict)

    @property
    def base_look(self) -> str:
        """The key of the look that runs and protections are drawn against: the playbook's own
        choice, else the first by name, or where there is none the base front of its code."""
        if self.settings.against in self.looks:
            return self.settings.against
        return min(self.looks, default=BASE_FRONT)

    @property
    def families(self) -> tuple[str, ...]:
        """The book's sections in order: those that `sections` lists, then as the text has them."""
        written = dict.fromkeys(c.family for c in self.concepts.values())
        order = [name.casefold() for name, _ in self.settings.sections]
        listed = [f for f in written if f.casefold() in order]
        listed.sort(key=lambda f: order.index(f.casefold()))
        return tuple(dict.fromkeys((*listed, *written)))

    @property
    def receivers(self) -> int:
        """Eligible men besides the quarterback: what shapes are counted from."""
        return self.settings.code.receivers

    def is_broken(self, formation: str, motion: str, concept: str, tags: tuple[str, ...]) -> bool:
        """Whether any definition that a call is made of has a line that was not read."""
        parts: list[Formation | MotionDef | Concept | Tag] = [
            self.formations[formation],
            self.concepts[concept],
            *(self.tags[concept, tag] for tag in tags),
        ]
        if motion:
            parts.append(self.motions[motion])
        return any(part.broken for part in parts)

"""A playbook's text, read: every name known, every value checked against its closed list.

This is what the coach said, not yet what any call does: guards are still open, sides are still
"call" and "strong". `expand` turns it into plays. A definition is ``broken`` when a line of it
could not be read: it is known by name, but nothing is proved of it, since every finding would
only repeat the first mistake.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import Enum

from stemline.football.conditions import Guard
from stemline.football.offence.landmarks import Landmark
from stemline.football.offence.rails import Rail
from stemline.football.offence.strokes import Decide, Depth, Route, Stroke, Target
from stemline.football.play import Kind
from stemline.playbook.exchange_definitions import ExchangeDef
from stemline.playbook.kill_definitions import KillDef
from stemline.playbook.note_definitions import Note
from stemline.playbook.pass_block import PassBlock
from stemline.playbook.role_rules import ByRole, Choice, RoleRule
from stemline.playbook.run_definitions import (
    Aim,
    BlockRules,
    Join,
    KeyDef,
    LineSpot,
    Reaction,
    Toward,
)
from stemline.playbook.said import Said, SideWord
from stemline.source import NOWHERE, Span

# What a role does.


@dataclass(frozen=True)
class RouteJob:
    """``route`` with its called depth; ``target`` moves its end, ``way`` decides which side is
    out for him, ``then`` is run after it. ``words`` is the line for the assignment table; ``end``
    is how deep his ``target`` is, None for the depth that the route has there; ``rail`` the line on
    which its stem is run, ``looks`` whom he looks for first where the text says it of a check."""

    route: Route
    depth: float | None
    target: Target | None
    way: SideWord | ByRole | None
    then: tuple[Stroke, ...]
    words: str
    end: Depth | None = None
    rail: Rail | None = None
    looks: PassBlock | None = None


@dataclass(frozen=True)
class BlockSaid:
    """``side`` is that of an edge which is not the man's own."""

    job: str
    side: SideWord | None = None


Job = RouteJob | BlockSaid | Aim | BlockRules
"""What a role may do: run a route, block as a receiver or back, carry the ball, block by rule."""


# Where and in which order the quarterback looks.


@dataclass(frozen=True)
class SpotRule:
    """x: over a landmark on a side, or ``outside`` yards outside the tackle; depth in yards."""

    side: SideWord | ByRole | None
    landmark: Landmark
    outside: float
    depth: float


REST = "rest"
LAST = ("run", "throw away")
"""What a quarterback does when no look is open; it stands last in a read order."""


@dataclass(frozen=True)
class LookAt:
    """One look: a spot or role, the foot that throws it, a partner in the same glance.

    ``target`` is `REST` where a tag goes on with the concept's own order. What ends the order has
    no target but ``last``, of the words of `LAST`.
    """

    target: str
    foot: str
    partner: str
    span: Span = field(compare=False)
    last: tuple[str, ...] = ()


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
    such as the carrier of a joined run, and ``joined`` its other blockers; ``shown`` is what that
    carrier does in the run; ``no_claims`` says that it claims nothing; ``handoffs`` are the roles
    through whose hands the ball goes on its way to the carrier, in order. ``others`` is what
    everyone does whom no line names, by the words that say who is meant (`everyone else`).
    ``called`` are men whom a tag gives a route or a block by where they stand, whatever role they
    have: they leave it. ``exchanges`` are how the ball goes, by the man who gives it, and by him
    with "fakes" behind where he only shows it; ``scrambles`` what men do when the quarterback runs.
    ``pointed`` are men of whom lines speak by their letters, or count by the call, whatever role
    they have.
    ``kills`` are the plays that it may become at the line, ``notes`` words to men who have no role
    of that name, or that do not always hold. ``idea`` is what it is for, in the coach's sentence;
    "" where he does not say.
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
    idea: str = ""
    says: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    swaps: tuple[Swap, ...] = ()
    line: Mapping[LineSpot, tuple[Said[BlockRules], ...]] = field(default_factory=dict)
    toward: tuple[Said[Toward], ...] = ()
    keys: tuple[KeyDef, ...] = ()
    reactions: tuple[Reaction, ...] = ()
    joins: tuple[Join, ...] = ()
    first: tuple[str, ...] = ()
    joined: frozenset[str] = frozenset()
    shown: tuple[Said[Job], ...] = ()
    handoffs: tuple[Said[tuple[str, ...]], ...] = ()
    others: Mapping[str, tuple[Said[Job], ...]] = field(default_factory=dict)
    called: Mapping[str, Said[Choice]] = field(default_factory=dict)
    pointed: Mapping[str, tuple[Said[Choice], ...]] = field(default_factory=dict)
    exchanges: Mapping[str, tuple[Said[ExchangeDef], ...]] = field(default_factory=dict)
    scrambles: Mapping[str, tuple[Said[str], ...]] = field(default_factory=dict)
    kills: tuple[KillDef, ...] = ()
    notes: tuple[Note, ...] = ()


@dataclass(frozen=True)
class Concept:
    """A concept or a run: what a call is made of besides its formation, motion and tags."""

    name: str
    family: str
    body: Body
    span: Span
    broken: bool
    kind: Kind = Kind.PASS
    last: Span = NOWHERE
    """The last line of its own text."""

    @property
    def kind_word(self) -> str:
        """As a coach says it: a pass or a run."""
        return "run" if self.kind is Kind.RUN else "pass"


@dataclass(frozen=True)
class Tag:
    """A tag as it is for one concept; ``shared`` where its text is for several, of which some may
    never be called with it; ``tempo`` is how fast it has the call go, "" where it says nothing."""

    name: str
    concept: str
    body: Body
    keeps: tuple[tuple[Keep, Span], ...]
    span: Span
    broken: bool
    shared: bool = False
    tempo: str = ""

    @property
    def silent(self) -> bool:
        """Whether it changes no man's job: the play is that without it."""
        body = replace(self.body, says=(), cautions=(), idea="")
        return bool(self.tempo) and not self.keeps and body == Body()


# Dress-ups.

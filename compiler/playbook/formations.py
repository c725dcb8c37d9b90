"""Personnel, formations and motions as the coach wrote them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from stemline.football.players import Position
from stemline.playbook.places import Place
from stemline.playbook.said import Said, SideWord
from stemline.source import Span


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
    "" where not said; ``man_says`` the words for a man, by letter; ``snap_to`` who takes the snap
    in the quarterback's place, "" where he does himself."""

    name: str
    men: Mapping[str, tuple[Said[Place], ...]]
    says: tuple[str, ...]
    span: Span
    broken: bool
    line: LineDef | None = None
    people: str = ""
    man_says: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    snap_to: str = ""


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


@dataclass(frozen=True)
class Person:
    """``forty`` is his own time for 40 yards in seconds, None where nobody says it."""

    letter: str
    position: Position
    right_handed: bool
    span: Span
    number: int | None = None
    forty: float | None = None

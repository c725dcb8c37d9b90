"""A dress-up as the coach wrote it: where a concept is called from, and how."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.source import Span


@dataclass(frozen=True)
class Pattern:
    """Which calls a `never`, `only` or `best` line speaks of; an empty part means any.

    ``limits`` is what an `only` line limits where it says so itself: `Wheel only to right`.
    ``spots`` are those that a `best` line names, or a `never` line that speaks of spots alone;
    ``line`` is that line without them.
    """

    formations: tuple[str, ...]
    tags: tuple[tuple[str, ...], ...]
    sides: tuple[str, ...]
    motions: tuple[str, ...]
    span: Span
    limits: Pattern | None = None
    spots: tuple[BallSpot, ...] = ()
    line: str = ""


@dataclass(frozen=True)
class DressWith:
    tags: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class DressIn:
    """A formation; what it says of motions, tags and sides itself stands in the place of what the
    whole dress-up says."""

    formation: str
    motions: tuple[str, ...]
    span: Span
    withs: tuple[DressWith, ...] = ()
    sides: tuple[str, ...] = ()


@dataclass(frozen=True)
class Alias:
    """A call given a name of its own: ``text`` as written."""

    text: str
    name: str
    span: Span


@dataclass(frozen=True)
class Dress:
    """``against`` are words that a defence shows, ``looks`` the keys of looks named instead;
    ``goal`` is how many yards from their goal line it is called, None for anywhere."""

    concept: str
    formations: tuple[DressIn, ...]
    withs: tuple[DressWith, ...]
    sides: tuple[str, ...]
    motions: tuple[str, ...]
    spots: tuple[str, ...]
    against: tuple[tuple[LookWord, ...], ...]
    never: tuple[Pattern, ...]
    only: tuple[Pattern, ...]
    aliases: tuple[Alias, ...]
    span: Span
    looks: tuple[str, ...] = ()
    goal: int | None = None
    best: tuple[Pattern, ...] = ()

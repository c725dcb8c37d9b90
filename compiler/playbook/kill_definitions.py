"""Two plays at the line, as the coach wrote them: what the call becomes, and on what he sees.

What he sees is asked of a look that is lined up, and not of the worlds of a guard: a count of the
box would multiply those by dozens.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from enum import Enum

from stemline.football.conditions import LookWord
from stemline.playbook.said import SideWord
from stemline.source import Span


@dataclass(frozen=True)
class BoxCount:
    """So many men in the box; ``most`` None for any number from ``least`` on."""

    least: int
    most: int | None


@dataclass(frozen=True)
class Shows:
    """What the whole look shows: `press`, `middle open`."""

    look: LookWord


class Leverage(Enum):
    """Where a man stands to his receiver."""

    PRESS = "press"
    OFF = "off"
    INSIDE = "inside"
    OUTSIDE = "outside"


@dataclass(frozen=True)
class Plays:
    """``weak corner off``: ``who`` is the corner or the overhang of ``side``."""

    who: str
    side: SideWord
    how: Leverage


@dataclass(frozen=True)
class HasTechnique:
    """``3 technique playside``: somebody stands in it there; ``side`` None for either."""

    technique: str
    side: SideWord | None


@dataclass(frozen=True)
class IsLook:
    """A look of the playbook, by its key."""

    key: str


Sight = BoxCount | Shows | Plays | HasTechnique | IsLook
Sights = tuple[tuple[Sight, ...], ...]
"""All of these must hold, and of each any one."""


@dataclass(frozen=True)
class KillDef:
    """``kill to Stick Wheel away when 8 or more in box``.

    ``to`` are the words behind ``to`` in lower case, ``said`` as written; ``text`` is what he sees,
    in words. ``tag`` is the tag that says it, "" where the concept does; ``named`` is where the
    words behind ``to`` stand.
    """

    to: tuple[str, ...]
    said: str
    when: Sights
    text: str
    span: Span = field(compare=False)
    named: Span = field(compare=False)
    tag: str = ""

    @property
    def target(self) -> str:
        """What the line speaks of: a tag's kill to the same play takes its place."""
        return " ".join(self.to)


def joined_kills(
    own: tuple[KillDef, ...], others: tuple[KillDef, ...], tag: str
) -> Iterator[KillDef]:
    """``own`` with those of a tag laid over them, each in the place of one to the same play."""
    told = {kill.target for kill in others}
    yield from (kill for kill in own if kill.target not in told)
    for kill in others:
        yield replace(kill, tag=kill.tag or tag)

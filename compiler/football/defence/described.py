"""A defender as an offence describes him: the man a rule or a key speaks of."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.field import Side


@dataclass(frozen=True)
class Described:
    """A defender as an offence's rule describes him; ``side`` None where the rule's own side, or
    none, is meant."""

    what: str
    side: Side | None

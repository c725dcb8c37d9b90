"""Whether a look is played against a set: `only for` and `never for`."""

from __future__ import annotations

from stemline.lineup.lined_up import LinedUp
from stemline.playbook.look_definitions import FacedSet, LookDef


def plays_against(look: LookDef, formation: str, picture: LinedUp) -> bool:
    """``formation`` is the key of the one that the men of ``picture`` stand in."""
    if any(_is(one, formation, picture) for one in look.never_for):
        return False
    return not look.only_for or any(_is(one, formation, picture) for one in look.only_for)


def _is(one: FacedSet, formation: str, picture: LinedUp) -> bool:
    if one.formation:
        return one.formation == formation
    return bool(one.guard.worlds & picture.worlds(None))

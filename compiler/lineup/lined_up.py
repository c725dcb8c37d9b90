"""The men at the snap, counted: what rules are bound against."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from stemline.football.conditions import LookWord, Where, possible
from stemline.football.field import Field, Side
from stemline.football.offence.counting import Count
from stemline.football.play import Man
from stemline.lineup.alignment import called_of, lie_of
from stemline.playbook.look_definitions import FacedSet, LookDef
from stemline.playbook.said import SideWord


@dataclass(frozen=True)
class LinedUp:
    """The men at the snap, counted: what rules are bound against.

    ``toward`` is the playside of a run or a slide; None where nothing says it. ``came`` are the men
    who came behind the ball in motion, by the number that they had before it.
    """

    men: tuple[Man, ...]
    count: Count
    field: Field
    called: Side
    receivers: int
    toward: Side | None = None
    came: tuple[tuple[Side, int, str], ...] = ()

    def man(self, label: str) -> Man:
        return self._men[label]

    def side_of(self, label: str) -> Side | None:
        return Side.at(self._men[label].snap.x)

    def worlds(self, side: Side | None, against: tuple[LookWord, ...] = ()) -> Where:
        """What may still be so on a side (None for neither) where these looks show."""
        lie, called = lie_of(side, self.field), called_of(self.called, self.field)
        return possible(self.receivers, self.count.shape, lie, called, against)

    def side(self, word: SideWord) -> Side:
        """One meaning a word; from the middle the field side is the strong one where the staff
        calls none so."""
        return self._sides[word]

    @cached_property
    def _men(self) -> Mapping[str, Man]:
        return {m.label: m for m in reversed(self.men)}

    @cached_property
    def _sides(self) -> Mapping[SideWord, Side]:
        wide = self.field.field_side or self.count.strong
        toward = self.toward or self.count.strong
        return {
            SideWord.CALL: self.called,
            SideWord.AWAY: self.called.other,
            SideWord.STRONG: self.count.strong,
            SideWord.WEAK: self.count.weak,
            SideWord.FIELD: wide,
            SideWord.BOUNDARY: wide.other,
            SideWord.LEFT: Side.LEFT,
            SideWord.RIGHT: Side.RIGHT,
            SideWord.PLAYSIDE: toward,
            SideWord.BACKSIDE: toward.other,
        }


def plays_against(look: LookDef, formation: str, picture: LinedUp) -> bool:
    """Whether a look is played against a set: `only for` and `never for`. ``formation`` is the key
    of the one that the men of ``picture`` stand in."""
    if any(_is(one, formation, picture) for one in look.never_for):
        return False
    return not look.only_for or any(_is(one, formation, picture) for one in look.only_for)


def _is(one: FacedSet, formation: str, picture: LinedUp) -> bool:
    if one.formation:
        return one.formation == formation
    return bool(one.guard.worlds & picture.worlds(None))

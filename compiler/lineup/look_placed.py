"""A look + the men at the snap → a `Defence`: every defender placed and given his duty.

What it reports names no formation: a look is lined up against every formation of the book, and
one cause is said once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

from stemline.diagnostics.catalogue.looks import E488, E490, W489, W492, W494
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.in_words import theirs
from stemline.football.defence.techniques import WORDS as TECHNIQUE_WORDS
from stemline.football.defence.zones import DEEP
from stemline.football.defenders import Defence, Defender, Level
from stemline.football.field import Side
from stemline.football.offence.counting import tight_ends
from stemline.football.play import Motion
from stemline.lineup.defender_duties import DutyMaker, first_side
from stemline.lineup.lined_up import LinedUp
from stemline.lineup.motion_man import NOBODY, motion_man, move_of
from stemline.lineup.shows import shown
from stemline.lineup.stands import LINEBACKER_DEPTH, Nowhere, Offence, level_of
from stemline.playbook.guards import narrowest
from stemline.playbook.look_definitions import (
    AtTechnique,
    Choices,
    InGap,
    LookDef,
    LookSide,
    Stand,
    Strength,
)
from stemline.playbook.said import Said, SideWord

T = TypeVar("T")

ROOM = 0.8
"""Two defenders nearer than this stand on one spot. Common practice: as for the offence."""
_NEAR = 5.0
"""Yards off the line of a defender of whom no depth is said: for a line that is shown to a coach.
Common practice."""
_STEP_BACK = 1.0
"""How far a defender steps back from one who stands where he would. Common practice."""
_STEPS = 6


def _last_choice(stands: Sequence[Stand]) -> Stand:
    """A place that every set has: outside the end man, as deep as the coach has him. Custom."""
    last = stands[-1]
    side, depth = last.side or LookSide.STRONG, last.depth or _NEAR
    words = f"outside end, {side.value}, {depth:g} deep"
    return Stand(AtTechnique(TECHNIQUE_WORDS["outside end"]), side, 0.0, depth, words)


def line_up_defence(
    look: LookDef, picture: LinedUp, motions: Mapping[str, Motion] = NOBODY
) -> tuple[Defence | None, tuple[Diagnostic, ...]]:
    """The look against these men, of whom some came in ``motions``; None, with the reasons, where
    it cannot line up.

    A look of which a line could not be read lines up nowhere: the line itself was reported.
    """
    if look.broken:
        return None, ()
    lining = _Lining(look, picture, motions)
    defenders = lining.placed()
    if any(d.is_error for d in lining.found):
        return None, tuple(lining.found)
    defenders = lining.with_duties(defenders)
    defence = Defence(look.name, lining.ground.strong, defenders, (), look.span)
    shows = shown(defence, picture.field)
    disguise = tuple(word.value for word in look.shown if word.value not in shows)
    return replace(defence, shows=shows, disguise=disguise), tuple(lining.found)


def strong_side(strength: Strength, picture: LinedUp) -> Side:
    """The side that a look calls strong: with no tight end, or one on each side, the passing
    strength stands for his side."""
    if strength is Strength.TIGHT_END:
        sides = {picture.side_of(label) for label in tight_ends(picture.men)} - {None}
        only = sides.pop() if len(sides) == 1 else None
        return only or picture.count.strong
    return picture.side(SideWord(strength.value))


class _Lining:
    """One look against one picture of the offence."""

    def __init__(self, look: LookDef, picture: LinedUp, motions: Mapping[str, Motion]) -> None:
        self.look = look
        self.picture = picture
        self.ground = Offence(picture, strong_side(look.strength, picture))
        self.mover = motion_man(motions)
        self.move = move_of(self.mover, motions, picture)
        self.found: list[Diagnostic] = []

    def placed(self) -> tuple[Defender, ...]:
        """Every defender at his place, without his duty, in the order of his label."""
        stands: list[tuple[Stand, Defender]] = []
        for label, said in sorted(self.look.stands.items()):
            line = self._holds(said, [s.value[0].side for s in said])
            if line is None:
                missing = E488(look=self.look.name, man=label, formations=self._against)
                self.found.append(missing.at(said[0].span))
                continue
            try:
                stand, at = self.ground.stand(line.value)
            except Nowhere as nowhere:
                last = _last_choice(line.value)
                places = " or ".join(choice.words for choice in (*line.value, last))
                no_place = W489(
                    look=self.look.name, man=label, formations=self._against, why=str(nowhere),
                    line=f"{label} at {places}",
                )  # fmt: skip
                self.found.append(no_place.at(line.span))
                stand, at = self.ground.stand((last,))
            technique = _technique(stand)
            level = level_of(stand, at)
            says = self.look.man_says.get(label, ())
            stands.append((stand, Defender(label, at, level, technique, None, line.span, says)))
        return self._apart(stands)

    def _holds(self, said: Sequence[Said[T]], sides: Sequence[LookSide | None]) -> Said[T] | None:
        """The narrowest line whose guard holds; a side decides whether it is the wide one."""
        if len(said) == 1 and not said[0].guard.text:
            return said[0]
        holding = []
        for one, word in zip(said, sides, strict=True):
            side = self.ground.side(word) if word else self.ground.strong
            if one.guard.worlds & self.picture.worlds(side) and self.move & one.guard.moves:
                holding.append(one)
        return narrowest(holding)

    def _apart(self, stands: Sequence[tuple[Stand, Defender]]) -> tuple[Defender, ...]:
        """The defenders with room between them.

        Two on the line, or two told to stand in one place, are a mistake. Where men off the line
        meet because the offence brings its receivers together, the deeper one steps back.
        """
        order = sorted(stands, key=lambda s: (s[1].at.y, s[1].label))
        apart: list[tuple[Stand, Defender]] = []
        for stand, defender in order:
            at = defender.at
            for _ in range(_STEPS):
                near = [(s, d) for s, d in apart if d.at.distance(at) < ROOM]
                if not near:
                    break
                other_stand, other = near[0]
                if defender.level is Level.LINE or _same(stand, other_stand):
                    self._one_spot((stand, defender), (other_stand, other))
                    break
                at = replace(at, y=at.y + _STEP_BACK)
            moved = defender if at is defender.at else replace(defender, at=at)
            apart.append((stand, moved))
        return tuple(sorted((d for _, d in apart), key=lambda d: d.label))

    def _one_spot(self, *two: tuple[Stand, Defender]) -> None:
        (stand, later), (_, other) = sorted(two, key=lambda one: one[1].span, reverse=True)
        related = (Related(other.span, f"{theirs(other.label)} is here"),)
        shared = E490(
            look=self.look.name, man=later.label, formations=self._against, other=other.label,
            deeper=_deeper(stand, later),
        )  # fmt: skip
        self.found.append(shared.at(later.span, related=related))

    def with_duties(self, defenders: tuple[Defender, ...]) -> tuple[Defender, ...]:
        """The defenders with what each does on a pass."""
        lines = [self._duty_line(d) for d in defenders]
        told = [
            (d, line.value if line is not None else None)
            for d, line in zip(defenders, lines, strict=True)
        ]
        given, look = [], self.look.name
        found = zip(defenders, lines, DutyMaker(self.ground, self.mover).all(told), strict=True)
        for defender, line, (duty, why) in found:
            if duty is None and line is not None:
                nobody = W492(look=look, man=defender.label, formations=self._against, why=why)
                self.found.append(nobody.at(line.span))
            elif duty is None:
                idle = W494(look=look, man=defender.label, formations=self._against)
                self.found.append(idle.at(defender.span))
            level = defender.level
            if duty is not None and duty.kind in DEEP and level is Level.SECOND:
                level = Level.DEEP
            given.append(replace(defender, duty=duty, level=level))
        return tuple(given)

    def _duty_line(self, defender: Defender) -> Said[Choices] | None:
        said = self.look.duties.get(defender.label, ())
        return self._holds(said, [first_side(s.value) for s in said])

    @property
    def _against(self) -> str:
        return self.picture.count.shape_word


def _deeper(stand: Stand, man: Defender) -> str:
    """The line of a man on the line who may be a linebacker behind another."""
    if man.level is not Level.LINE or stand.depth is not None:
        return ""
    at = "" if stand.words.startswith("over ") else "at "
    line = f"{man.label} {at}{stand.words}, {LINEBACKER_DEPTH:g} deep"
    return f"; a linebacker says how deep he stands behind him: `{line}`"


def _same(first: Stand, second: Stand) -> bool:
    """Whether two defenders are told to stand in one place."""
    return replace(first, words="") == replace(second, words="")


def _technique(stand: Stand) -> str:
    match stand.where:
        case AtTechnique(name):
            return name
        case InGap(gap):
            return f"{gap.value} gap"
        case _:
            return ""

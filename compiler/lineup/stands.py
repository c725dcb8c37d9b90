"""Where a defender stands: his place as written → a point, against the men of one picture."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.football.defence.techniques import (
    LINEBACKERS,
    TECHNIQUES,
    On,
    Surface,
    gap_x,
    surface,
    technique_x,
)
from stemline.football.defence.zones import middle_of
from stemline.football.defenders import Level
from stemline.football.field import Side
from stemline.football.offence.counting import tight_ends
from stemline.football.offence.landmarks import Landmark, x_of
from stemline.geometry.paths import Point
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.look_definitions import (
    Apex,
    AtField,
    AtTechnique,
    Halfway,
    InGap,
    LookSide,
    OverEnd,
    OverReceiver,
    Stand,
    Stands,
)
from stemline.playbook.said import SideWord

# Common practice, no published source: linemen half a foot to a yard off the ball (a yard where
# the code asks for it), inside linebackers 4 to 5 yards.
LINE_DEPTH = 0.8
LINEBACKER_DEPTH = 4.5
NEAR_LINE = 2.0
"""A man in a gap or at a technique no deeper than this is on the line. Common practice."""
DEEP_DEPTH = 8.0
"""A man this deep is of the secondary whatever he covers. Common practice: linebackers stand 4 to
5 yards deep, nickels 4 to 6, safeties 10 to 14."""
IN_BOUNDS = 1.0
"""Nobody lines up nearer to the sideline than this. Common practice."""


_OF_THE_LINE = (Landmark.BALL, Landmark.GUARD, Landmark.TACKLE, Landmark.END)


class Nowhere(Exception):
    """No choice of a place is there in this picture; says why. Caught where the man is placed."""


class Offence:
    """What defenders are lined up by: the men of the offence, and which side is strong."""

    def __init__(self, picture: LinedUp, strong: Side) -> None:
        self.picture = picture
        self.strong = strong
        self.surfaces = {side: surface(picture.men, side) for side in Side}
        self.ends = tight_ends(picture.men)

    def side(self, word: LookSide) -> Side:
        """Left or right for a side word of a look."""
        match word:
            case LookSide.STRONG:
                return self.strong
            case LookSide.WEAK:
                return self.strong.other
            case _:
                return self.picture.side(SideWord(word.value))

    def line(self, side: Side) -> Surface:
        return self.surfaces[side]

    def receiver(self, side: Side, number: int) -> str | None:
        """The label of a receiver as counted at the snap."""
        men = self.picture.count.on(side)
        return men[number - 1] if 0 < number <= len(men) else None

    def tight_end(self, side: Side) -> str | None:
        return next((x for x in self.ends if self.picture.side_of(x) is side), None)

    def stand(self, choices: Sequence[Stand]) -> tuple[Stand, Point]:
        """The first choice that is there, and its point. Raises Nowhere."""
        reasons = []
        for n, choice in enumerate(choices, 1):
            side = self.side(choice.side) if choice.side is not None else self.strong
            x = self._x(choice.where, side)
            # On an end who is not there stands only who has no other place: `9 or 5` is a 5 then.
            if x is not None and (n == len(choices) or not self._on_nobody(choice.where, side)):
                return choice, Point(self._in_bounds(x, choice, side), self._depth(choice))
            reasons.append(f"there is no {choice.words.partition(',')[0]}")
        raise Nowhere(" and ".join(reasons))

    def _on_nobody(self, where: Stands, side: Side) -> bool:
        """Whether a technique is on the end of a side that has none."""
        if not isinstance(where, AtTechnique):
            return False
        on, line = TECHNIQUES[LINEBACKERS.get(where.name, where.name)].on, self.line(side)
        return on is On.END and line.tight is None and line.last < line.end

    def _in_bounds(self, x: float, choice: Stand, side: Side) -> float:
        """``outside`` is away from the ball on the man's own side; nobody stands out of bounds."""
        field = self.picture.field
        x += side.value * choice.outside
        least, most = field.sideline(Side.LEFT) + IN_BOUNDS, field.sideline(Side.RIGHT) - IN_BOUNDS
        return max(least, min(most, x))

    def _depth(self, choice: Stand) -> float:
        if choice.depth is not None:
            return choice.depth
        where = choice.where
        if isinstance(where, AtTechnique) and where.name in LINEBACKERS:
            return LINEBACKER_DEPTH
        return max(LINE_DEPTH, self.picture.field.code.restraining.value)

    def _x(self, where: Stands, side: Side) -> float | None:
        """x of a place; None where the man it hangs on is not there."""
        match where:
            case AtTechnique(name):
                return technique_x(name, self.line(side))
            case InGap(gap):
                return gap_x(gap, self.line(side))
            case Apex():
                return self._apex(side)
            case Halfway(first, second):
                ends = [self._x(one, side) for one in (first, second)]
                one, two = ends
                return None if one is None or two is None else (one + two) / 2
            case AtField(landmark):
                return self._landmark(landmark, side)
            case OverReceiver(number):
                return self._man(self.receiver(side, number))
            case OverEnd():
                return self._man(self.tight_end(side))

    def _man(self, label: str | None) -> float | None:
        return None if label is None else self.picture.man(label).snap.x

    def _landmark(self, landmark: Landmark | None, side: Side) -> float:
        """A landmark of the field, or the middle of it; guard, tackle and end are the men there."""
        if landmark is None:
            return middle_of(self.picture.field)
        line = self.line(side)
        drawn = {
            Landmark.GUARD: line.guard,
            Landmark.TACKLE: line.tackle,
            Landmark.END: line.of(On.END),
        }.get(landmark)
        return x_of(landmark, side, self.picture.field) if drawn is None else side.value * drawn

    def _apex(self, side: Side) -> float | None:
        """Between the inmost man who is split out and the end man on the line."""
        split = [x for x in self.picture.count.on(side) if x not in self.ends]
        if not split:
            return None
        return (self.picture.man(split[-1]).snap.x + side.value * self.line(side).last) / 2


def level_of(stand: Stand, at: Point) -> Level:
    """Of the line, the second level or the secondary, by where he stands.

    Whoever is over a side's widest receiver is a corner, however near he stands.
    """
    match stand.where:
        case AtTechnique(name) if name in TECHNIQUES and at.y <= NEAR_LINE:
            return Level.LINE
        case InGap() | OverEnd() if at.y <= NEAR_LINE:
            return Level.LINE
        case AtField(landmark) if landmark in _OF_THE_LINE and at.y <= NEAR_LINE:
            return Level.LINE
        case OverReceiver(1):
            return Level.DEEP
        case _:
            return Level.DEEP if at.y >= DEEP_DEPTH else Level.SECOND

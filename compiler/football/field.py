"""The field around one ball spot: where the sidelines, hashes and numbers are from the ball."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from functools import cached_property

from stemline.football.line import LineMarks
from stemline.football.rulebook.codes import Code


class Side(Enum):
    """Left or right as the offence faces."""

    LEFT = -1
    RIGHT = 1

    @classmethod
    def at(cls, x: float) -> Side | None:
        """The side of a place ``x`` yards right of the ball; None over it."""
        return None if x == 0 else cls.RIGHT if x > 0 else cls.LEFT

    @cached_property
    def other(self) -> Side:
        return Side(-self.value)

    @property
    def word(self) -> str:
        return self.name.lower()


class BallSpot(Enum):
    """Where the ball is snapped from."""

    LEFT_HASH = "left hash"
    MIDDLE = "middle"
    RIGHT_HASH = "right hash"

    @cached_property
    def mirrored(self) -> BallSpot:
        return {
            BallSpot.LEFT_HASH: BallSpot.RIGHT_HASH,
            BallSpot.RIGHT_HASH: BallSpot.LEFT_HASH,
        }.get(self, self)

    @property
    def wide_side(self) -> Side | None:
        """The side on which more of the field is; None from the middle."""
        return {BallSpot.LEFT_HASH: Side.RIGHT, BallSpot.RIGHT_HASH: Side.LEFT}.get(self)


class Way(Enum):
    """Where a call goes, as it is called: to a side, or to the wide or the short one."""

    RIGHT = "right"
    LEFT = "left"
    FIELD = "field"
    BOUNDARY = "boundary"

    @property
    def word(self) -> str:
        return self.value

    @property
    def by_field(self) -> bool:
        """Whether the ball's spot decides the side."""
        return self in (Way.FIELD, Way.BOUNDARY)

    def at(self, spot: BallSpot, middle: Side | None) -> Side | None:
        """The true side from a spot. ``middle`` is the field side from the middle, where no side
        is wider; None for none, and then a call by the field has no side from there."""
        if not self.by_field:
            return Side[self.name]
        wide = spot.wide_side or middle
        return wide.other if wide is not None and self is Way.BOUNDARY else wide


@dataclass(frozen=True)
class Field:
    """One code's field seen from one ball spot. All x in yards from the ball, right positive.

    ``line`` is the interior line that stands on it, None for the code's own at its usual splits:
    men line up and run by the tackle as they do by the hash. ``goal`` is how many yards ahead
    their goal line is, None where nobody says it. ``middle`` is the side that the staff calls the
    field from the middle, None where it calls none so.
    """

    code: Code
    spot: BallSpot
    numbers_from_sideline: float
    line: LineMarks | None = None
    goal: int | None = None
    middle: Side | None = None

    @cached_property
    def marks(self) -> LineMarks:
        """The interior line that guard, tackle and end are read from."""
        return self.line or LineMarks.of(self.code.line)

    @cached_property
    def ball_from_left(self) -> float:
        """Yards from the left sideline to the ball."""
        width, mark = self.code.width.value, self.code.hash_from_sideline.value
        return {
            BallSpot.LEFT_HASH: mark,
            BallSpot.MIDDLE: width / 2,
            BallSpot.RIGHT_HASH: width - mark,
        }[self.spot]

    def sideline(self, side: Side) -> float:
        if side is Side.LEFT:
            return -self.ball_from_left
        return self.code.width.value - self.ball_from_left

    @property
    def end(self) -> float | None:
        """Yards ahead to the end line; None where the goal line's place is not known."""
        return None if self.goal is None else self.goal + self.code.end_zone.value

    def hash_mark(self, side: Side) -> float:
        return self.sideline(side) - side.value * self.code.hash_from_sideline.value

    def numbers(self, side: Side) -> float:
        return self.sideline(side) - side.value * self.numbers_from_sideline

    @cached_property
    def wide_side(self) -> Side | None:
        """The wide side; None from the middle."""
        return self.spot.wide_side

    @cached_property
    def field_side(self) -> Side | None:
        """The wide side, from the middle the one that the staff calls so, None for none."""
        return self.wide_side or self.middle

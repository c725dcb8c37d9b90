"""Landmarks: the places a coach lines men up on and runs them to, as distances from the ball."""

from __future__ import annotations

from enum import Enum

from stemline.football.field import Field, Side
from stemline.football.line import SPLIT, LineMarks

# The line of five at its usual splits. Common practice, no published source: guards stand 1.0 to
# 1.3 yards from the centre, tackles 2.2 to 2.6, a tight end about 1.3 outside the tackle.
TACKLE_SPLIT = 2 * SPLIT
END_SPLIT = LineMarks().end(1)

OFF_LINE_DEPTH = 1.0
"""How deep a man off the line stands. Common practice: he must clear the snapper's waist."""
UNDER_CENTRE_DEPTH = 1.0
"""The quarterback under centre. Common practice."""
TIGHT_END_REACH = 2.0
"""A man on the line within this of the tackle is a tight end by place. Common practice."""
SHORT_END_REACH = 3.5
"""The same where the codes have fewer linemen and no tackles: an end of six or eight men stands
three yards out, and is the end of the line all the same. Common practice, no published source."""


class Landmark(Enum):
    """A place on one side of the ball."""

    BALL = "ball"
    GUARD = "guard"
    TACKLE = "tackle"
    END = "end"
    HASH = "hash"
    NUMBERS = "numbers"
    DIVIDE = "divide"
    SIDELINE = "sideline"


def x_of(landmark: Landmark, side: Side, field: Field) -> float:
    """x of the landmark on ``side``, in yards right of the ball.

    Guard, tackle and end are those of the line as drawn (``field.marks``). From a hash the hash
    mark on that side is under the ball. The divide is half way between hash and numbers (common
    practice, no published source).
    """
    match landmark:
        case Landmark.BALL:
            return 0.0
        case Landmark.GUARD:
            return field.marks.guard(side.value)
        case Landmark.TACKLE:
            return field.marks.tackle(side.value)
        case Landmark.END:
            return field.marks.end(side.value)
        case Landmark.HASH:
            return field.hash_mark(side)
        case Landmark.NUMBERS:
            return field.numbers(side)
        case Landmark.DIVIDE:
            return (field.hash_mark(side) + field.numbers(side)) / 2
        case Landmark.SIDELINE:
            return field.sideline(side)

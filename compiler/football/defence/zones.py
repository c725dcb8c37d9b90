"""Zones of the secondary and the linebackers: where a defender drops to when a pass shows.

x in yards right of the ball, y past the line of scrimmage.
"""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.conditions import LookWord
from stemline.football.defenders import Defence, DutyKind
from stemline.football.field import Field, Side
from stemline.football.offence.landmarks import TACKLE_SPLIT, Landmark, x_of
from stemline.geometry.paths import Point

# All depths: common practice, no published source. Hook and curl 10 to 12 yards, flat 5 to 7,
# thirds past 18, halves 15 to 18, quarters between them; each drawn in the middle of its range.
DEPTH: dict[DutyKind, float] = {
    DutyKind.FLAT: 6.0,
    DutyKind.CURL: 11.0,
    DutyKind.HOOK: 11.0,
    DutyKind.HOLE: 11.0,
    DutyKind.ROBBER: 11.0,
    DutyKind.QUARTER: 15.0,
    DutyKind.HALF: 16.5,
    DutyKind.THIRD: 18.0,
}

DEEP = (DutyKind.QUARTER, DutyKind.HALF, DutyKind.THIRD)
"""Zones with nobody behind them."""
NO_HELP = "no deep help"
"""What is printed where no zone is deep: `middle open` would say that two safeties are."""


def shown_words(defence: Defence) -> tuple[str, ...]:
    """What a look shows, as it is printed."""
    if any(d.duty is not None and d.duty.kind in DEEP for d in defence.defenders):
        return defence.shows
    return tuple(NO_HELP if w == LookWord.OPEN.value else w for w in defence.shows)


CURL_WIDTH = 12.0
"""Yards from the ball to a curl zone; inside the numbers where they are nearer. Common practice."""
HOOK_WIDTH = (TACKLE_SPLIT + 2.0, 9.0)
"""A hook zone is over the hash, but no nearer to the ball and no wider than this. A published
high-school three-deep sheet puts hook and curl 3 to 4 yards either side of the hash; from a hash
the mark on that side is under the ball, so the zone hangs on the tackle. Common practice."""


@dataclass(frozen=True)
class Share:
    """A part of the field's width: the ``nth`` of ``parts``, counted from the sideline."""

    parts: int
    nth: int


def zone_point(kind: DutyKind, side: Side | None, field: Field, *, inner: bool = False) -> Point:
    """The middle of a zone. ``side`` None is the middle of the field; ``inner`` is the inside one
    of two quarters on a side."""
    depth = DEPTH[kind]
    if side is None:
        x = middle_of(field) if kind in DEEP else 0.0
        return Point(x, depth)
    match kind:
        case DutyKind.FLAT:
            x = x_of(Landmark.NUMBERS, side, field)
        case DutyKind.CURL:
            wide = abs(x_of(Landmark.NUMBERS, side, field)) - 2
            x = side.value * min(CURL_WIDTH, wide)
        case DutyKind.HOOK:
            least, most = HOOK_WIDTH
            x = side.value * max(least, min(most, field.hash_mark(side) * side.value))
        case DutyKind.QUARTER:
            x = share_x(Share(4, 2 if inner else 1), side, field)
        case DutyKind.HALF:
            x = share_x(Share(2, 1), side, field)
        case DutyKind.THIRD:
            x = share_x(Share(3, 1), side, field)
        case _:
            x = 0.0
    return Point(x, depth)


def share_x(share: Share, side: Side, field: Field) -> float:
    """x of the middle of one of equal parts of the field's width, counted in from ``side``."""
    width = field.sideline(Side.RIGHT) - field.sideline(Side.LEFT)
    return field.sideline(side) - side.value * width * (share.nth - 0.5) / share.parts


def middle_of(field: Field) -> float:
    """x of the middle between the sidelines."""
    return (field.sideline(Side.RIGHT) + field.sideline(Side.LEFT)) / 2

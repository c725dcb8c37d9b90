"""A line, its helpers and a rush by techniques, for the tests of protections.

Distances in yards: x right of the ball, y past the line.
"""

from __future__ import annotations

from collections.abc import Sequence

from stemline.football.blocking.protecting import (
    Blocker,
    How,
    ProtectionRule,
    Rusher,
    pick_up,
    unblocked,
)
from stemline.football.field import Side
from stemline.geometry.paths import Point

PLACES = {"LT": -2.6, "LG": -1.3, "C": 0.0, "RG": 1.3, "RT": 2.6}
SHOULDER = 0.45
_ON = {"0": 0.0, "1": 0.45, "2i": 0.85, "2": 1.3, "3": 1.75, "4i": 2.15, "4": 2.6, "5": 3.05,
       "9": 4.35}  # fmt: skip
GAPS = {"A": 0.65, "B": 1.95, "C": 3.25, "D": 4.6}


def line(**rules: ProtectionRule) -> list[Blocker]:
    """Five linemen: ``line(LT=Rule.MAN, ...)``; the others slide."""
    return [
        Blocker(label, Point(x, 0), rules.get(label, ProtectionRule.SLIDE), True)
        for label, x in PLACES.items()
    ]


def half_slide(toward: Side) -> list[Blocker]:
    """Centre and the two on that side slide, the other two have men."""
    left = toward is Side.LEFT
    return line(**dict.fromkeys(("RG", "RT") if left else ("LG", "LT"), ProtectionRule.MAN))


def back(
    side: Side, rule: ProtectionRule = ProtectionRule.SCAN, wants: tuple[str, ...] = ()
) -> Blocker:
    """The back, who works on a side."""
    return Blocker("B", Point(2.0 * side.value, -5), rule, False, side, wants)


def down(label: str, technique: str, side: Side, through: str = "") -> Rusher:
    """A big man by technique; through his own side's gap, or head-up through any."""
    x = _ON[technique] * side.value
    aim = GAPS[through] * side.value if through else x
    return Rusher(label, Point(x, 1), Point(aim, 0), True)


def comes(label: str, through: str, side: Side) -> Rusher:
    """A linebacker or a man of the secondary, through a gap."""
    x = GAPS[through] * side.value
    return Rusher(label, Point(x, 4.5), Point(x, 0), False)


def owners(
    blockers: Sequence[Blocker], rushers: Sequence[Rusher], toward: Side | None, point: str = ""
) -> dict[str, str]:
    """Who takes whom: rusher by blocker, owners only."""
    taken = pick_up(blockers, rushers, toward, point)
    return {t.blocker: t.rusher for t in taken if t.how is not How.HELP}


def free(
    blockers: Sequence[Blocker], rushers: Sequence[Rusher], toward: Side | None
) -> tuple[str, ...]:
    return tuple(r.label for r in unblocked(rushers, pick_up(blockers, rushers, toward)))

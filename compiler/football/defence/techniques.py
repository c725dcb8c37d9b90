"""Techniques: where a defender stands on the offence's line, by number, and the gap that is his.

x in yards away from the ball on one side; `Surface` is the line as it is actually drawn there, so
that a technique moves with splits, tight ends and unbalanced lines.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from stemline.football.field import Side
from stemline.football.line import FULL_LINE, SPLIT
from stemline.football.offence.counting import tackles, tight_ends
from stemline.football.play import Man

SHOULDER = 0.45
"""From a lineman's middle to where a defender on his shoulder stands. Common practice, no
published source: half a man, the width of his shoulders being about 0.9 of a yard with pads."""


PAST_END = 2.5
"""Yards outside the last man of the line within which a man on the line has a gap. Common practice,
no published source."""


class On(Enum):
    """Whom a technique is counted from, from the ball outward."""

    CENTRE = "centre"
    GUARD = "guard"
    TACKLE = "tackle"
    END = "end"


class Shade(Enum):
    """Which part of the man: inside shoulder, nose, outside shoulder, or a man wider than he."""

    INSIDE = -SHOULDER
    HEAD = 0.0
    OUTSIDE = SHOULDER
    WIDE = SPLIT


class Gap(Enum):
    """The gaps from the ball outward. A is between centre and guard, B guard and tackle, C tackle
    and tight end, D outside him; with no tight end C is the first one outside the tackle."""

    A = "A"
    B = "B"
    C = "C"
    D = "D"


GAPS: dict[str, Gap] = {f"{gap.value} gap": gap for gap in Gap}
"""A place in a gap, in words."""


@dataclass(frozen=True)
class Technique:
    """``on`` and ``shade`` say where; ``gap`` is the one gap he has when nothing else is said."""

    on: On
    shade: Shade
    gap: Gap


# Numbering: Bryant, Building a Championship Football Team, 1960, as restated in a college coaches'
# clinic note of 2009: an even figure is head-up; 3, 5 and 9 are the outside shoulders of guard,
# tackle and end; 7 is the end's inside shoulder; 2i and 4i are inside eyes. 6i and 8, and the
# column of gaps, are common practice without a published source.
TECHNIQUES: dict[str, Technique] = {
    "0": Technique(On.CENTRE, Shade.HEAD, Gap.A),
    "1": Technique(On.CENTRE, Shade.OUTSIDE, Gap.A),
    "2i": Technique(On.GUARD, Shade.INSIDE, Gap.A),
    "2": Technique(On.GUARD, Shade.HEAD, Gap.B),
    "3": Technique(On.GUARD, Shade.OUTSIDE, Gap.B),
    "4i": Technique(On.TACKLE, Shade.INSIDE, Gap.B),
    "4": Technique(On.TACKLE, Shade.HEAD, Gap.C),
    "5": Technique(On.TACKLE, Shade.OUTSIDE, Gap.C),
    "6i": Technique(On.END, Shade.INSIDE, Gap.C),
    "6": Technique(On.END, Shade.HEAD, Gap.D),
    "7": Technique(On.END, Shade.INSIDE, Gap.C),
    "8": Technique(On.END, Shade.WIDE, Gap.D),
    "9": Technique(On.END, Shade.OUTSIDE, Gap.D),
}

LINEBACKERS: dict[str, str] = {f"{n}0": str(n) for n in range(7)}
"""A linebacker's number is a lineman's with a nought behind it: 30 stands as a 3, but off the
line. Common practice, no published source."""

WORDS: dict[str, str] = {
    "over centre": "0",
    "over center": "0",
    "inside guard": "2i",
    "over guard": "2",
    "outside guard": "3",
    "inside tackle": "4i",
    "over tackle": "4",
    "outside tackle": "5",
    "inside end": "6i",
    "over end": "6",
    "outside end": "9",
}
"""Techniques in words, by number. Over is head-up."""

BOTH_SIDES = ("0", "00")
"""Techniques over the ball: they need no side."""


@dataclass(frozen=True)
class Surface:
    """The line on one side of the ball: yards from the ball to each man, where a ghost stands for
    one who is not there; ``last`` to the end man on the line, ``tight`` to a tight end beside the
    guard or the centre of a short line, None where there is none."""

    side: Side
    guard: float
    tackle: float
    end: float
    last: float
    tight: float | None = None

    def of(self, on: On) -> float:
        return {
            On.CENTRE: 0.0,
            On.GUARD: self.guard,
            On.TACKLE: self.tackle,
            On.END: self.end if self.tight is None else self.tight,
        }[on]


def surface(men: Iterable[Man], side: Side) -> Surface:
    """The line on ``side`` at the snap: the linemen and any tight end, from the ball outward.

    The first man is the guard, the second the tackle, the third the end, whoever they are: so an
    unbalanced line is numbered by where its men stand. Where the codes have fewer than five
    linemen, and no tackles, a tight end is the end all the same. Common practice.
    """
    men = tuple(men)
    ends, (left, right) = tight_ends(men), tackles(men)
    line = [m for m in men if m.label in ends or (m.interior and left <= m.snap.x <= right)]
    places = sorted(m.snap.x * side.value for m in line if m.snap.x * side.value > 0)
    guard = places[0] if places else SPLIT
    tackle = places[1] if len(places) > 1 else guard + SPLIT
    end = places[2] if len(places) > 2 else tackle + SPLIT
    short = len([m for m in men if m.interior]) < FULL_LINE
    tight = min(
        (x for m in line if m.label in ends and (x := m.snap.x * side.value) > 0), default=0
    )
    beside = tight if short and 0 < tight < end else None
    return Surface(side, guard, tackle, end, places[-1] if places else 0.0, beside)


def technique_x(name: str, line: Surface) -> float:
    """x of a technique ("3", "2i", "30") on a surface, in yards right of the ball."""
    technique = TECHNIQUES[LINEBACKERS.get(name, name)]
    return line.side.value * (line.of(technique.on) + technique.shade.value)


def gap_at(x: float, line: Surface) -> Gap | None:
    """The gap that a man on the line stands in or beside, x yards right of the ball; None for who
    stands wide of everybody."""
    if x * line.side.value > line.last + PAST_END:
        return None
    there = [gap for gap in Gap if gap is not Gap.D or line.last >= line.end]
    return min(there, key=lambda gap: round(abs(gap_x(gap, line) - x), 3))


def gap_x(gap: Gap, line: Surface) -> float:
    """x of the middle of a gap on a surface, in yards right of the ball."""
    away = {
        Gap.A: line.guard / 2,
        Gap.B: (line.guard + line.tackle) / 2,
        Gap.C: (line.tackle + line.end) / 2,
        Gap.D: max(line.end, line.last) + SPLIT / 2,
    }[gap]
    return line.side.value * away

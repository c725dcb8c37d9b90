"""A front lined up against the offence's line: who is over whom, who is in which gap, who is who.

x in yards right of the ball. A `Front` knows the line as it is actually drawn (linemen and tight
ends, balanced or not, five men or fewer or more), the defenders and the playside; from these it
answers the questions that blocking rules ask. Common practice throughout, no published source,
where a comment does not say otherwise.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from stemline.football.defence.described import Described
from stemline.football.defenders import Defence, Defender, DutyKind, Level
from stemline.football.field import Side
from stemline.football.offence.counting import edge_of, tight_ends
from stemline.football.play import Man

HEAD_UP = 0.25
"""Yards off a lineman's nose within which a defender is head-up and in no gap: half a shade."""
TOUCH = 0.65
"""Yards off his nose within which a defender covers a lineman: half a split of the base line."""
EDGE = 3.0
"""Yards outside the last man of the line up to which a man on the line belongs to the front: a
wide end outside a tight end who is not there."""
INSIDE_BOX = 1.0
"""Yards outside the last lineman, tight ends apart, up to which a man of the second level counts
as a linebacker of the box before those who hang over an end: the usual definition of the box, on
which public pages differ by a yard or two."""
PRESSED = 3.25
"""Yards off the line up to which a man of the second level between the ends fills his gap as a
lineman does: a goal-line backer is in the hole before anybody can pass him by."""
BOX_DEPTH = 6.25
"""Yards off the line up to which a man is in the box on a run: five in the American game and six
in the Canadian, which starts a yard off, by the same pages; deeper men come late."""
BOX = 1.5
"""Yards outside the last man of the line up to which a man of the second level is in the box."""
OVERHANG_DEPTH, OVERHANG_WIDTH = 8.0, 8.0
"""Yards off the line and outside its last man up to which a man hangs over the edge: near enough
to come up on a run at once."""
OVER_BALL = 1.0
"""Yards past the ball to the backside within which a linebacker is still over it."""
OVER = 1.5
"""Yards to each side of a receiver within which a man outside the line is over him, and so not in
the box."""
INSIDE_DEEP = 6.0
"""Yards outside the line up to which one of the secondary is climbed to."""
AS_DEEP = 3.0
"""Yards by which one safety may stand deeper than another of his half: more, and he is alone deep
there, and from the middle of the field on both halves."""
IN_THE_MIDDLE = 3.0
"""Yards off the middle of the field within which a safety has both halves."""
OF_A_CORNER = 4.0
"""Yards inside the widest receiver within which the last man of the secondary is a corner. Common
practice, no published source, all four."""
WING_REACH = 1.8
"""Yards outside and behind the last man of the line within which a man off it is a wing."""


def wings(men: Iterable[Man]) -> tuple[str, ...]:
    """Men who are wings by place: off the line, close outside the last man on it."""
    men = tuple(men)
    found = []
    for side in Side:
        last = max((m.snap.x * side.value for m in line_of(men)), default=0.0)
        found += [
            m
            for m in men
            if not m.on_line
            and not m.interior
            and -HEAD_UP <= m.snap.x * side.value - last <= WING_REACH
            and -WING_REACH <= m.snap.y < 0
        ]
    return tuple(m.label for m in found)


def overhangs(
    defenders: Iterable[Defender], side: Side, edge: float, wide: Iterable[float]
) -> tuple[Defender, ...]:
    """Men off the line who hang over the edge of a side, ``edge`` yards from the ball, from inside
    out: however wide the apex is, who stands at it is one. ``wide`` is x of the men split out."""
    split = min((x * side.value for x in wide if x * side.value > edge), default=edge)
    most = max(edge + OVERHANG_WIDTH, (edge + split) / 2 + HEAD_UP)
    there = [
        d
        for d in defenders
        if d.level is not Level.LINE
        and d.at.y <= OVERHANG_DEPTH
        and edge - HEAD_UP < d.at.x * side.value <= most
    ]
    return tuple(sorted(there, key=lambda d: (d.at.x * side.value, d.label)))


def line_of(men: Iterable[Man]) -> tuple[Man, ...]:
    """Linemen and tight ends, from left to right."""
    men = tuple(men)
    ends = tight_ends(men)
    line = [m for m in men if m.interior or m.label in ends]
    return tuple(sorted(line, key=lambda m: (m.snap.x, m.label)))


def at_place(men: Iterable[Man], place: str, side: Side | None) -> str:
    """Who stands at a place of the line: guard, tackle, outside tackle (the interior men on that
    side from the ball outward), end (the first tight end there) or centre; "" for nobody."""
    line = line_of(men)
    if side is None:
        return next((m.label for m in line if m.interior and m.snap.x == 0), "")
    there = sorted(
        (m for m in line if m.snap.x * side.value > 0), key=lambda m: m.snap.x * side.value
    )
    if place == "end":
        return next((m.label for m in there if not m.interior), "")
    interior = [m.label for m in there if m.interior]
    n = ("guard", "tackle", "outside tackle").index(place)
    return interior[n] if n < len(interior) else ""


@dataclass(frozen=True)
class Front:
    """The line from left to right, the men who face it, and the side the ball goes to.

    ``wide`` is x of each receiver away from the line, ``hole`` x of the ball's aim on a run; None
    where no run is blocked, ``middle`` x of the middle of the field.
    """

    line: tuple[Man, ...]
    defenders: tuple[Defender, ...]
    toward: Side
    wide: tuple[float, ...] = ()
    hole: float | None = None
    middle: float = 0.0

    # Who is there.

    @cached_property
    def first_level(self) -> tuple[Defender, ...]:
        """Men on the line of the front, from left to right; on a run also who fills a gap."""
        there = self._within(Level.LINE, EDGE)
        if self.hole is None:
            return there
        filling = [d for d in self._within(Level.SECOND, HEAD_UP) if self._fills(d)]
        return tuple(sorted((*there, *filling), key=lambda d: (d.at.x, d.label)))

    @cached_property
    def _down(self) -> tuple[Defender, ...]:
        """Men on the line itself."""
        return tuple(d for d in self.first_level if d.level is Level.LINE)

    def _fills(self, defender: Defender) -> bool:
        last = max((abs(m.snap.x) for m in self.line if m.interior), default=0.0)
        # A centre alone has no gaps: whoever is behind the line there is a linebacker.
        return last > 0 and defender.at.y <= PRESSED and abs(defender.at.x) <= last

    @cached_property
    def second_level(self) -> tuple[Defender, ...]:
        """Men of the box behind the line, from left to right; who hangs outside it over a
        receiver is not in the box."""
        left, right = self.end(Side.LEFT), self.end(Side.RIGHT)
        return tuple(
            d
            for d in self._within(Level.SECOND, BOX)
            if (left <= d.at.x <= right or all(abs(d.at.x - x) > OVER for x in self.wide))
            and (self.hole is None or (d.at.y <= BOX_DEPTH and not self._fills(d)))
        )

    @property
    def box(self) -> tuple[Defender, ...]:
        return self.first_level + self.second_level

    def _within(self, level: Level, reach: float) -> tuple[Defender, ...]:
        left, right = self.end(Side.LEFT) - reach, self.end(Side.RIGHT) + reach
        there = [d for d in self.defenders if d.level is level and left <= d.at.x <= right]
        return tuple(sorted(there, key=lambda d: (d.at.x, d.label)))

    def end(self, side: Side) -> float:
        """x where the line ends on a side."""
        return self._ends[side]

    @cached_property
    def _ends(self) -> Mapping[Side, float]:
        return {side: side.value * edge_of(self.line, side) for side in Side}

    # Gaps and shades, seen from one man of the line.

    def out(self, x: float) -> Side:
        """Away from the ball; for the centre the playside."""
        return Side.at(x) or self.toward

    def neighbour(self, x: float, side: Side) -> Man | None:
        """The next man of the line on a side of x."""
        there = [m for m in self.line if (m.snap.x - x) * side.value > HEAD_UP]
        return min(there, key=lambda m: abs(m.snap.x - x), default=None)

    def over(self, x: float) -> tuple[Defender, ...]:
        """Those who cover a man at x, the nearest first; of two as near, the playside one.

        A man half way between two linemen covers the one he leaves on his playside: when in
        doubt a lineman is covered to the playside.
        """
        there = [d for d in self._down if abs(d.at.x - x) <= TOUCH]
        return self._nearest(there, x)

    def in_gap(self, x: float, side: Side, *, heads: bool = False) -> tuple[Defender, ...]:
        """Those between a man at x and his neighbour on a side, the nearest first.

        Outside the last man the gap reaches to the edge of the front. With ``heads`` a man
        head-up on the neighbour counts too.
        """
        beside = self.neighbour(x, side)
        stop = EDGE if beside is None else abs(beside.snap.x - x) + (HEAD_UP if heads else -HEAD_UP)
        there = [d for d in self.first_level if HEAD_UP < (d.at.x - x) * side.value <= stop]
        return self._nearest(there, x)

    def between(self, a: float, b: float) -> tuple[Defender, ...]:
        """Those whom two neighbours at a and b can double: from nose to nose."""
        low, high = min(a, b) - HEAD_UP, max(a, b) + HEAD_UP
        there = [d for d in self._down if low <= d.at.x <= high]
        return self._nearest(there, (a + b) / 2)

    def _nearest(self, there: Sequence[Defender], x: float) -> tuple[Defender, ...]:
        way = self.toward.value
        return tuple(
            sorted(there, key=lambda d: (round(abs(d.at.x - x), 3), -d.at.x * way, d.label))
        )

    # Described defenders.

    def described(self, target: Described, x: float) -> tuple[Defender, ...]:
        """Who answers a description, best first; x is where the man stands who asks."""
        side = target.side or self.toward
        outward = sorted(self.first_level, key=lambda d: (d.at.x * side.value, d.label))
        match target.what:
            case "end man on line":
                there = [d for d in outward if d.at.x * side.value > HEAD_UP]
                return tuple(there[::-1][:1]) + self.overhangs(side)
            case "nose":
                return tuple(d for d in self.over(0.0))
            case "first man past centre":
                return tuple(d for d in outward if d.at.x * side.value > HEAD_UP)
            case "first man outside guard":
                return self._outside("guard", side)
            case "first man outside tackle":
                return self._outside("tackle", side)
            case "second man outside tackle":
                return self._outside("tackle", side)[1:]
            case "linebacker":
                return self._any_linebacker(target.side, x)
            case "near linebacker":
                return self._linebackers(side)
            case "far linebacker":
                near = self._linebackers(side)
                inside = tuple(d for d in near if not self.hangs(d))
                return inside[1:] + inside[:1] + tuple(d for d in near if self.hangs(d))
            case "middle linebacker":
                return self._nearest(self.second_level, 0.0)
            case "overhang":
                return self.hanging(side) + self._linebackers(side)
            case "force defender":
                return self.forces(side)
            case "corner":
                return self._deep(side)[::-1]
            case "safety":
                deep = [d for d in self.defenders if d.level is Level.DEEP]
                return tuple(sorted(deep, key=lambda d: (-d.at.y, abs(d.at.x), d.label)))
            case "near safety":
                near = self._safeties(side)
                if self.hole is not None:  # who is blocked is the one by whom the ball runs
                    hole = self._hole(side)
                    near = tuple(sorted(near, key=lambda d: abs(d.at.x - hole)))
                return self._then_deep(near, side)
            case "flat defender" | "curl defender" | "hook defender":
                return self._by_duty(DutyKind[target.what.split()[0].upper()], side)
        return ()

    def read_as(self, target: Described) -> tuple[Defender, ...]:
        """Who is read by a description, best first: a block that finds no overhang has the next
        man inside, and the quarterback who finds none reads nobody."""
        if target.what == "overhang":
            outside = self.overhangs(target.side or self.toward)
            return tuple(d for d in outside if self.hangs(d))
        if target.what == "near safety":
            side = target.side or self.toward
            return self._then_deep(self._safeties(side), side)
        return self.described(target, 0.0)

    def _linebackers(self, side: Side) -> tuple[Defender, ...]:
        """The box behind the line, counted from the hole: the near one first and so on to the far
        side; who hangs over the playside end comes after those inside him and before whoever is
        away from the play, and who hangs over the other end last.

        With two at one distance the one nearer the ball is first.
        """
        hole = self._hole(side)
        return tuple(
            sorted(
                self.second_level,
                key=lambda d: (
                    self._turn(d, side),
                    round(abs(d.at.x - hole), 3),
                    round(abs(d.at.x), 3),
                    -d.at.x * side.value,
                    d.label,
                ),
            )
        )

    def _turn(self, defender: Defender, side: Side) -> int:
        if self.hangs(defender):
            return 1 if defender.at.x * side.value > 0 else 3
        return 0 if defender.at.x * side.value >= -OVER_BALL else 2

    def hangs(self, defender: Defender) -> bool:
        """Whether a man of the second level is outside the tackles, over an end or beyond him."""
        last = max((abs(m.snap.x) for m in self.line if m.interior), default=0.0)
        return abs(defender.at.x) > last + INSIDE_BOX

    def _hole(self, side: Side) -> float:
        """x of the point of attack; half way from guard to tackle where no run says it."""
        if self.hole is not None and self.hole * side.value > 0:
            return self.hole
        places = [at_place(self.line, place, side) for place in ("guard", "tackle")]
        xs = [m.snap.x for m in self.line if m.label in places]
        return sum(xs) / len(xs) if xs else 0.0

    def _any_linebacker(self, side: Side | None, x: float) -> tuple[Defender, ...]:
        """The nearest of the box behind the line; for a tight end first who hangs over his edge."""
        if side is not None:
            return self._linebackers(side)
        nearest = tuple(sorted(self._nearest(self.second_level, x), key=self.hangs))
        last = max((abs(m.snap.x) for m in self.line if m.interior), default=0.0)
        if abs(x) <= last + HEAD_UP:
            return nearest
        side = self.out(x)
        outside = [d for d in nearest if d.at.x * side.value >= last]
        outside += [d for d in self.overhangs(side) if d not in outside]
        outside.sort(key=lambda d: (round(abs(d.at.x - x) + d.at.y / 4, 3), d.label))
        return (*outside, *(d for d in nearest if d not in outside))

    def _outside(self, place: str, side: Side) -> tuple[Defender, ...]:
        """Men on the line from a lineman's inside shoulder outward, then those of the box stacked
        behind or outside them, then those who hang over the edge. The first man on or outside the
        tackle may be a 4i, and the second stand behind him: "The Count System", option blog,
        January 2015."""
        x = next(
            (m.snap.x for m in self.line if m.label == at_place(self.line, place, side)),
            self.end(side),
        )
        on = TOUCH if place == "tackle" else HEAD_UP
        there = [d for d in self.first_level if (d.at.x - x) * side.value >= -on]
        there.sort(key=lambda d: (d.at.x * side.value, d.label))
        stacked = [d for d in self.second_level if (d.at.x - x) * side.value >= HEAD_UP]
        stacked.sort(key=lambda d: (d.at.x * side.value, d.label))
        outside = self._come_up(side, self.overhangs(side))
        return (*there, *stacked, *(d for d in outside if d not in stacked))

    def overhangs(self, side: Side) -> tuple[Defender, ...]:
        """Men off the line who hang over the edge or the last man, from inside out."""
        return overhangs(self.defenders, side, self.end(side) * side.value, self.wide)

    def hanging(self, side: Side) -> tuple[Defender, ...]:
        """Those, but one who stands over the tackle after all who are outside of him."""
        return tuple(sorted(self.overhangs(side), key=lambda d: not self.hangs(d)))

    def forces(self, side: Side) -> tuple[Defender, ...]:
        """Who turns a run outside the end back in: the overhang, those of the box's depth first,
        else whoever of the secondary comes first on that side."""
        return self._come_up(side, self.hanging(side))

    def _come_up(self, side: Side, near: Sequence[Defender]) -> tuple[Defender, ...]:
        """Those ``near`` the edge, the box's depth first, then the secondary of the side."""
        hanging = tuple(sorted(near, key=lambda d: d.at.y > BOX_DEPTH))
        others = [d for d in self._deep(side) if d not in hanging]
        others.sort(key=lambda d: (abs(d.at.x - self.end(side)) + d.at.y, d.label))
        return hanging + tuple(others)

    def _deep(self, side: Side) -> tuple[Defender, ...]:
        there = [d for d in self.defenders if d.level is Level.DEEP and d.at.x * side.value >= 0]
        return tuple(sorted(there, key=lambda d: (d.at.x * side.value, d.label)))

    def deep_inside(self, side: Side) -> tuple[Defender, ...]:
        """The secondary of a side that is not far outside the line, the deepest first."""
        deep = [d for d in self._deep(side) if abs(d.at.x) <= abs(self.end(side)) + INSIDE_DEEP]
        return tuple(sorted(deep, key=lambda d: (-d.at.y, d.label)))

    def _safeties(self, side: Side) -> tuple[Defender, ...]:
        """The deepest of each half of the field but the corners, the nearest to a side first: the
        ball may lie on a hash, so that both stand to one side of it. One who is alone deep in the
        middle is near to both."""
        corners = {d.label for each in Side for d in self._deep(each)[-1:] if self._is_wide(d)}
        deep = [d for d in self.defenders if d.level is Level.DEEP and d.label not in corners]
        there = [d for d in deep if not any(self._behind(other, d) for other in deep)]
        return tuple(sorted(there, key=lambda d: (-d.at.x * side.value, d.label)))

    def _then_deep(self, near: tuple[Defender, ...], side: Side) -> tuple[Defender, ...]:
        """Those, and then the rest of the secondary that is not far outside the line."""
        return (*near, *(d for d in self.deep_inside(side) if d not in near))

    def _behind(self, deeper: Defender, man: Defender) -> bool:
        """Whether a man stands so far behind another, on his half or in the middle, that the other
        is none of the deep safeties."""
        at, his = deeper.at.x - self.middle, man.at.x - self.middle
        same = abs(at) <= IN_THE_MIDDLE or Side.at(at) is Side.at(his)
        return same and deeper.at.y > man.at.y + AS_DEEP

    def _is_wide(self, defender: Defender) -> bool:
        """Whether he stands over, near or outside the widest man of his side of the ball."""
        side = Side.at(defender.at.x) or self.toward
        widest = max((x * side.value for x in (*self.wide, self.end(side))), default=0.0)
        return defender.at.x * side.value >= widest - OF_A_CORNER

    def _by_duty(self, kind: DutyKind, side: Side) -> tuple[Defender, ...]:
        there = [d for d in self.defenders if d.duty is not None and d.duty.kind is kind]
        there.sort(key=lambda d: (d.at.x * side.value < 0, -d.at.x * side.value, d.label))
        return tuple(there) or self.overhangs(side)


def front_of(
    men: Iterable[Man],
    defence: Defence,
    toward: Side,
    hole: float | None = None,
    middle: float = 0.0,
) -> Front:
    """The front that a defence makes against these men; ``hole`` is x of a run's aim, ``middle``
    that of the middle of the field."""
    men = tuple(men)
    line, close = line_of(men), wings(men)
    edges = [abs(m.snap.x) for m in line] or [0.0]
    wide = tuple(
        m.snap.x
        for m in men
        if m not in line and m.label not in close and abs(m.snap.x) > max(edges)
    )
    return Front(line, defence.defenders, toward, wide, hole, middle)

"""What a run's blockers know while their blocks are worked out: who is taken by whom, and whom a
rule asks for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from stemline.football.blocking.run_answers import once, strong, weak
from stemline.football.blocking.run_rules import MEANINGS, PULLS, BlockWay, Rule, Task
from stemline.football.defence.described import Described
from stemline.football.defence.fronts import (
    BOX_DEPTH,
    HEAD_UP,
    INSIDE_BOX,
    OVER_BALL,
    OVERHANG_DEPTH,
    TOUCH,
    WING_REACH,
    Front,
)
from stemline.football.defenders import Defender, Level
from stemline.football.field import Side
from stemline.football.play import Man
from stemline.geometry.paths import Point

NOBODY = ""
_SHUT = (BlockWay.DOWN, BlockWay.PIN)
"""Rules by which the last man of the line shuts whoever is inside him."""
_LEAVE = (*PULLS, BlockWay.LEAD)
"""Rules by which a man of the line leaves a wider gap to the one outside him."""
_NEAR = Described("near linebacker", None)
_AROUND = (BlockWay.PULL, BlockWay.KICK, BlockWay.LEAD)
"""Rules by which a man goes around the end, or out at it."""


class RunBoard:
    """The work on one front.

    ``choice`` is every man's rule, by its index (one past the last for none), with the man of the
    line it gives him; ``owners`` are the blockers of each such man; ``climbs`` whom each man goes
    to off the line.
    """

    def __init__(
        self,
        front: Front,
        tasks: Sequence[Task],
        men: Mapping[str, Man],
        keys: frozenset[str],
        hold: bool,
        may_throw: bool = False,
        throw: Point | None = None,
    ) -> None:
        self.front = front
        self.at = {t.man: men[t.man].snap for t in tasks}
        # From the playside in, so that ties fall alike whichever way the ball goes.
        ordered = sorted(tasks, key=lambda t: -round(self.at[t.man].x * front.toward.value, 3))
        self.tasks = {t.man: t for t in ordered}
        self.interior = {t.man for t in tasks if men[t.man].interior}
        self.line = {m.label for m in front.line}
        self.keys = keys
        self.hold = hold
        self.may_throw = may_throw
        self.throw = throw
        self.given: dict[str, str] = {}  # step 1: man → defender
        self.choice: dict[str, tuple[int, str]] = {}  # man → index of his rule, defender
        self.owners: dict[str, list[str]] = {}
        self.climbs: dict[str, str] = {}  # step 5: man → defender off the line

    def from_ball(self, man: str) -> tuple[float, float, str]:
        """The order of the line from the ball outward, the playside first."""
        x = self.at[man].x
        return round(abs(x), 3), -round(x * self.front.toward.value, 3), man

    def _runs_wide(self) -> bool:
        """Whether the run goes around the end of the line."""
        last = abs(self.front.end(self.front.toward))
        return abs(self.front.hole or 0.0) > last

    @property
    def _reserved(self) -> set[str]:
        return {*self.keys, *self.given.values()}

    def _described(self, man: str, rule: Rule) -> tuple[Defender, ...]:
        """The defenders that a rule with a description asks for."""
        target = rule.target
        if target is None or (target.side is None and rule.way is BlockWay.SIFT):
            what = target.what if target else MEANINGS[rule.way].target
            side = self.front.toward.other if rule.way is BlockWay.SIFT else None
            target = Described(what, side)
        if rule.way in (BlockWay.WRAP, BlockWay.LEAD) and rule.target is None:
            target = Described(target.what, self.front.toward)
        if rule.way is BlockWay.ARC and target.side is None:
            # He goes around the man who is read on his own side, and never across the ball.
            target = Described(target.what, Side.at(self.at[man].x))
        side = target.side or self.front.toward
        there = self.front.described(target, self.at[man].x)
        if rule.way is BlockWay.LEAD and rule.target is None and self._runs_wide():
            # Around the end nobody turns back in: he has the next man outside. "Phrase of the Day:
            # Toss Sweep", fan site, August 2017.
            forces = self.front.forces(side)
            outside = [d for d in (*forces, *there) if d.at.x * side.value > OVER_BALL]
            there = once(outside, forces, there)
        if target.what == "end man on line" and rule.way is BlockWay.KICK:
            there = tuple(d for d in there if not self._shut(d, side))
            there = tuple(sorted(there, key=lambda d: self._shows(d, side)))
            there = there or self._first_to_show(side)
        if target.what == "overhang" and rule.way in _AROUND:
            inner = self._outside_tackle(side)
            past = () if rule.way is BlockWay.PULL else self._past_end(side)
            there = once(past, self.front.hanging(side), inner)
            there = once(there, self.front.forces(side))
            there = tuple(d for d in there if d.label not in self.owners)
            there = self._outside_wing(there, side) if rule.way is BlockWay.KICK else there
        if target.what == "force defender" and rule.way is BlockWay.KICK and self._runs_wide():
            there = once(self._past_wing(there, side), there)
        if target.what == "far linebacker" and self._names_middle():
            # Near, middle and far are three men then, and the far one is the farthest.
            first = {d.label for d in self.front.described(_NEAR, 0.0)[:1]}
            far = [d for d in there if not self.front.hangs(d) and d.label not in first]
            there = once(far[::-1], there)
        if target.what == "force defender" and rule.way in _AROUND and man in self.interior:
            # Who goes around the end turns back in to nobody.
            there = tuple(d for d in there if d.at.x * side.value >= self._last(side))
        if rule.way is BlockWay.ARC:  # a linebacker stacked on who is read is left to the line
            read = [d.at.x for d in self.front.defenders if d.label in self.keys]
            beside = [
                d for d in there
                if self.front.hangs(d) or all(abs(d.at.x - x) > TOUCH for x in read)
            ]  # fmt: skip
            there = once(beside, there)
        if _takes_overhang(rule) and man not in self.line:
            x = self.at[man].x * side.value
            near = [d for d in self.front.overhangs(side) if d.at.x * side.value < x]
            there = once(near, self.front.described(Described("near linebacker", side), x))
        return there

    def _shows(self, defender: Defender, side: Side) -> tuple[bool, bool, float]:
        """How soon a man comes to the end of the line: the line, who is near, the secondary."""
        away = abs(defender.at.x - self.front.end(side)) + defender.at.y
        return defender.at.y > BOX_DEPTH, defender.level is not Level.LINE, round(away, 3)

    def _first_to_show(self, side: Side) -> tuple[Defender, ...]:
        """Off the line, whom a kick meets outside the hole where the edge is shut."""
        hole = self.front.hole or 0.0
        there = [d for d in self.front.second_level if (d.at.x - hole) * side.value > HEAD_UP]
        return tuple(sorted(there, key=lambda d: (d.at.x * side.value, d.label)))

    def _names_middle(self) -> bool:
        targets = [r.target for task in self.tasks.values() for r in task.rules]
        return any(t is not None and t.what == "middle linebacker" for t in targets)

    def _last(self, side: Side) -> float:
        """Yards out to ``side`` of the last lineman, tight ends apart."""
        return max((m.snap.x * side.value for m in self.front.line if m.interior), default=0.0)

    def _outside_tackle(self, side: Side) -> tuple[Defender, ...]:
        """Of the box behind the line each man outside the last lineman, the outermost first."""
        last = max((abs(m.snap.x) for m in self.front.line if m.interior), default=0.0)
        there = [d for d in self.front.second_level if d.at.x * side.value > last]
        return tuple(sorted(there, key=lambda d: (-d.at.x * side.value, d.label)))

    def _outside_wing(self, there: Sequence[Defender], side: Side) -> tuple[Defender, ...]:
        """Of those at the edge the ones outside a wing who takes the overhang inside him, where
        one is near enough, else whoever gets there first: a kick goes to the first man outside
        that wing. "How to Install Buck Sweep", coaching site."""
        wing = max(
            (
                self.at[m].x * side.value for m, task in self.tasks.items()
                if m not in self.line and any(_takes_overhang(r) for r in task.rules)
            ),
            default=0.0,
        )  # fmt: skip
        outside = [d for d in there if d.at.x * side.value >= wing and d.at.y <= OVERHANG_DEPTH]
        if outside or not wing:
            return tuple(outside) or tuple(there)
        nearest = sorted(there, key=lambda d: round(abs(d.at.x * side.value - wing) + d.at.y, 3))
        return tuple(nearest)

    def _past_wing(self, there: Sequence[Defender], side: Side) -> tuple[Defender, ...]:
        """Of those who turn a run back in the ones outside a wing who blocks inside: the kick is
        on the first man outside him, whoever stays inside is the wall's. "How to Install Buck
        Sweep", coaching site."""
        end = self.front.end(side) * side.value
        inside = [x for x in self._shutting_wings(side) if 0 < x - end <= WING_REACH]
        return tuple(d for d in there if inside and d.at.x * side.value >= max(inside))

    def _shutting_wings(self, side: Side) -> list[float]:
        """Yards out to ``side`` of the men beside the line who block down."""
        return [
            self.at[m].x * side.value for m, task in self.tasks.items()
            if m not in self.line and any(r.way in _SHUT for r in task.rules)
        ]  # fmt: skip

    def _past_end(self, side: Side) -> tuple[Defender, ...]:
        """Men of the line outside everybody who blocks down at that end, a wing too."""
        end = max((self.front.end(side) * side.value, *self._shutting_wings(side)))
        there = self.front.described(Described("end man on line", side), 0.0)
        return tuple(
            d for d in there if d.level is Level.LINE and d.at.x * side.value > end + HEAD_UP
        )

    def _shut(self, defender: Defender, side: Side) -> bool:
        """Whether he is inside the last man of the line or a wing, who blocks down on him: then
        the one to kick is the first to show outside. B. Turner, "Counter Trey: Down, Kickout and
        Wrap"."""
        end, x = self.front.end(side) * side.value, defender.at.x * side.value
        if defender.level is Level.LINE and end + HEAD_UP < x:
            return any(x < wing - HEAD_UP for wing in self._shutting_wings(side))
        last = max(self.front.line, key=lambda m: m.snap.x * side.value)
        inside = (last.snap.x - defender.at.x) * side.value >= HEAD_UP
        task = self.tasks.get(last.label)
        shuts = (*_SHUT, BlockWay.DOUBLE) if inside else ()
        return task is not None and any(r.way in shuts for r in task.rules)

    def _strong(self, man: str, rule: Rule) -> tuple[Defender, ...]:
        partner, x = self.at.get(rule.partner), self.at[man].x
        if rule.way is BlockWay.HINGE and man not in self.line:
            return self._behind_pullers()
        there = strong(self.front, x, rule.way, partner.x if partner else None)
        if rule.way in _SHUT and not there:
            there = self._past_puller(x)
        return there

    def _behind_pullers(self) -> tuple[Defender, ...]:
        """For a back who shuts the door behind those who pull: the backside from inside out, as
        far as a man on the tackle's outside shoulder."""
        back = self.front.toward.other.value
        last = self._last(self.front.toward.other)
        there = [d for d in self.front.first_level if HEAD_UP < d.at.x * back <= last + INSIDE_BOX]
        return tuple(sorted(there, key=lambda d: (d.at.x * back, d.label)))

    def _past_puller(self, x: float) -> tuple[Defender, ...]:
        """Whom a man blocks down on whose inside neighbour has pulled: the gap is wider by him."""
        inside = self.front.out(x).other
        beside = self.front.neighbour(x, inside)
        task = self.tasks.get(beside.label) if beside else None
        if x == 0 or beside is None or task is None or task.rules[0].way not in _LEAVE:
            return ()
        there = once(self.front.over(beside.snap.x), self.front.in_gap(beside.snap.x, inside))
        own = [m.snap.x for m in self.front.line if m.label != beside.label]
        return tuple(
            d for d in there
            if d.at.x * inside.other.value > HEAD_UP
            and all(abs(d.at.x - place) > TOUCH for place in own)
        )  # fmt: skip

    def _weak(self, man: str, rule: Rule) -> tuple[Defender, ...]:
        return weak(self.front, self.at[man].x, rule.way)

    def _way(self, man: str) -> BlockWay | None:
        """The rule that holds for a man, None where none does."""
        n, rules = self.choice[man][0], self.tasks[man].rules
        return rules[n].way if n < len(rules) else None

    def _owned(self, man: str) -> bool:
        """Whether he has a man of the line."""
        return bool(self.choice[man][1])

    def _free_on_line(self) -> list[Defender]:
        taken = {*self.owners, *self._reserved, *self.climbs.values()}
        return [d for d in self.front.first_level if d.label not in taken]

    def _take(self, man: str, n: int, defender: str) -> None:
        old = self.choice[man][1]
        if old:
            self.owners[old].remove(man)
            if not self.owners[old]:
                del self.owners[old]
        self.choice[man] = n, defender
        self.owners.setdefault(defender, []).append(man)

    def _over_line(self) -> tuple[Defender, ...]:
        """Men too deep for the box who stand over the line."""
        hole, last = self.front.hole or 0.0, abs(self.front.end(self.front.toward))
        there = [
            d for d in self.front.defenders
            if d.at.y <= OVERHANG_DEPTH + HEAD_UP and abs(d.at.x) < last
            and d.level is not Level.LINE
        ]  # fmt: skip
        return tuple(sorted(there, key=lambda d: (round(abs(d.at.x - hole), 3), d.label)))

    def _left_in_gaps(self) -> tuple[Defender, ...]:
        """Whoever fills a gap of the playside that nobody shuts, from inside out: backers, and men
        of the line inside the tackle."""
        play = self.front.toward.value
        last = self._last(self.front.toward)
        there = [
            d for d in self._free_on_line()
            if d.at.x * play > HEAD_UP and (d.level is not Level.LINE or d.at.x * play < last)
        ]  # fmt: skip
        return tuple(sorted(there, key=lambda d: d.at.x * play))


def _takes_overhang(rule: Rule) -> bool:
    target = rule.target
    return rule.way is BlockWay.CLIMB and target is not None and target.what == "overhang"

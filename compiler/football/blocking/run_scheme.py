"""Who blocks whom on a run: every man's rules put to one front, and the answers made to agree.

A rule alone only asks "is somebody there?". Together they must keep what every line coach asks
for: a double team has two men who both know of it; nobody is blocked by three; of two men who
climb each has his own linebacker; and no man of the front is left alone while two block another
and one of the two could have had him. The steps, in order:

1. Men to be kicked out, trapped or sifted belong to those who do it, and men who are read to
   nobody; everyone else's rules pass them by.
2. Linemen take the first of their rules that is true. A double team that only one man wants, and
   a third man on one defender, are taken back and the next rule is tried, until all agree.
3. Who scoops, cuts off or hinges takes a man of the line who is still free.
4. A man of the line who is still free goes to whoever can be spared for him, if need be by passing
   men along the line: an augmenting path in the graph of rules and defenders.
5. The second level: pullers and lead blockers first, then men who climb, then double teams.
6. A man for whom nothing is true helps inside, or climbs to the nearest man who is free.
7. All of it is looked over (`run_climbs`) and neighbours trade (`run_trades`): no two climbers
   cross, and who is left over is the farthest from the hole.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import inf

from stemline.football.blocking.run_answers import once
from stemline.football.blocking.run_board import NOBODY
from stemline.football.blocking.run_receivers import Receivers
from stemline.football.blocking.run_rules import MEANINGS, BlockWay, Takes, Task
from stemline.football.blocking.run_trades import CLIMB_REACH, WALL_REACH
from stemline.football.defence.fronts import BOX_DEPTH, HEAD_UP, OVER_BALL, TOUCH, Front
from stemline.football.defenders import Defender, Level
from stemline.football.play import Man
from stemline.geometry.paths import Point

_FROM_THE_LINE = (BlockWay.ON, BlockWay.DOWN, BlockWay.PIN, BlockWay.OUT)
"""Rules of a wing who goes on to a linebacker where they find nobody, as the line does."""
_CLAIMS = (
    BlockWay.WRAP,
    BlockWay.LEAD,
    BlockWay.PULL,
    BlockWay.ARC,
    BlockWay.LEAVE,
    BlockWay.CLIMB,
    BlockWay.KICK,
    BlockWay.TRAP,
    BlockWay.SIFT,
)
"""In which order men are given to those who go to a described one; double teams come last."""
_AS_TOLD = (BlockWay.BACK, BlockWay.OUT, BlockWay.HINGE, BlockWay.KICK)
"""Rules that keep their word whoever it is."""


@dataclass(frozen=True)
class BlockTaken:
    """What came of one man's rules.

    ``way`` is the rule that held, None where none did; ``defender`` whom he takes ("" for nobody),
    ``with_`` the others on the same man, ``climb`` the man he goes on to.
    """

    man: str
    way: BlockWay | None
    defender: str
    with_: tuple[str, ...]
    climb: str


@dataclass(frozen=True)
class Scheme:
    """Every blocker's block, in the order of the tasks; ``free`` are the men of the box whom
    nobody takes, and who hangs over an end that a receiver's block does not reach, the nearest to
    the hole first; those who are read apart."""

    blocks: tuple[BlockTaken, ...]
    free: tuple[str, ...]

    def of(self, man: str) -> BlockTaken | None:
        return next((b for b in self.blocks if b.man == man), None)


def scheme(
    front: Front,
    tasks: Sequence[Task],
    men: Mapping[str, Man],
    keys: Iterable[str] = (),
    *,
    hold: bool = False,
    may_throw: bool = False,
    throw: Point | None = None,
) -> Scheme:
    """The blocks of ``tasks`` against ``front``; ``men`` by label, ``keys`` are read and left.

    ``hold`` keeps linemen at the line, for a pass that shows a run. On a run that ``may_throw`` a
    double team goes on only where its text sends it. ``throw`` is where a screen is caught, in
    yards from the ball: receivers take who is near their way to it.
    """
    return _Solver(front, tasks, men, frozenset(keys), hold, may_throw, throw).solved()


class _Solver(Receivers):
    """The whole of it; in ``climbs`` stands "" for one whose partner in a double team goes on."""

    def solved(self) -> Scheme:
        self.block_line()
        self._second_level()
        while self._next_rule():
            self._second_level()
        self._last_resort()
        self.look_over()
        return self._scheme()

    # Step 5.

    def _second_level(self) -> None:
        """Exact descriptions first, then those who take the nearest, then whoever is left over."""
        aims = self._aims()
        for exact in (True, False):
            for man, targets in aims:
                if man in self.climbs:
                    continue
                asked = [d for d in targets if d.label not in self._reserved]
                if exact and self._goes_on(man):
                    # The first man who is nobody's: two who lead do not wait for each other.
                    near = [d for d in asked if d is asked[0] or self._near(man, d)]
                    asked = [d for d in near if self._is_free(d)]
                there = asked[:1] if exact else once(asked, self._who_shows(man))
                free = [d for d in there if self._is_free(d)]
                if free and not (free[0].level is Level.LINE and self._owned(man)):
                    self._climb(man, free[0])
            if exact:
                self._nearest_climbs()
                self._receivers()

    def _aims(self) -> list[tuple[str, tuple[Defender, ...]]]:
        """Who goes to a described man of the second level, in order of claim; of a double team
        first the one who came to help, and of two alike the nearer."""
        claims: list[tuple[int, bool, float, str, tuple[Defender, ...]]] = []
        for man, task in self.tasks.items():
            n, own = self.choice[man]
            rule = task.rules[n] if n < len(task.rules) else None
            if self.hold and man in self.interior:
                continue
            if own and task.then and len(self.owners[own]) > 1:
                there = self._then(task)
                away = self.at[man].distance(there[0].at) if there else 0.0
                owns = rule is None or rule.way is not BlockWay.DOUBLE
                claims.append((len(_CLAIMS), owns, round(away, 3), man, there))
            elif rule is not None and not own and rule.way in _CLAIMS:
                if rule.target is None and task.then:
                    claims.append((_CLAIMS.index(rule.way), False, 0.0, man, self._then(task)))
                elif rule.target is not None or rule.way not in (BlockWay.CLIMB, BlockWay.LEAVE):
                    there = self._described(man, rule)
                    if rule.way is BlockWay.WRAP:
                        there = once(self._left_in_gaps(), there)
                    if rule.way is BlockWay.CLIMB and man in self.interior:
                        there = tuple(d for d in there if not self.front.hangs(d))
                    claims.append((self._claim(rule.way), False, 0.0, man, there))
        claims.sort(key=lambda c: c[:3])
        return self._nearer_first([(man, there) for _, _, _, man, there in claims])

    def _nearer_first(
        self, aims: list[tuple[str, tuple[Defender, ...]]]
    ) -> list[tuple[str, tuple[Defender, ...]]]:
        """Of men of the line who climb to one and the same man away from the play the nearer
        first, in each other's places."""
        far = [
            n for n, (man, there) in enumerate(aims)
            if there and self._sent_far(man) and self._way(man) is BlockWay.CLIMB
        ]  # fmt: skip
        nearer = sorted(far, key=lambda n: round(self.at[aims[n][0]].distance(aims[n][1][0].at), 3))
        placed = dict(zip(far, nearer, strict=True))
        return [aims[placed.get(n, n)] for n in range(len(aims))]

    def _goes_on(self, man: str) -> bool:
        """Whether he takes the next man at once where the first is somebody's: who leads and
        wraps, and on a run around the end whoever builds its wall."""
        way = self._way(man)
        wall = way is BlockWay.CLIMB and self._runs_wide() and not self._owned(man)
        return wall or way in (BlockWay.WRAP, BlockWay.LEAD)

    def _near(self, man: str, defender: Defender) -> bool:
        """Whether a second man is one for him: a lead goes to nobody behind the ball."""
        if self._way(man) is BlockWay.LEAD:
            return defender.at.x * self.front.toward.value >= -OVER_BALL
        climbs = self._way(man) is BlockWay.CLIMB
        return not climbs or abs(defender.at.x - self.at[man].x) <= WALL_REACH

    def _claim(self, way: BlockWay) -> int:
        """A run around the end lets the down blockers climb first: who pulls comes to the wall
        from outside and takes whoever is left inside of it."""
        if way is BlockWay.WRAP and self._runs_wide():
            return _CLAIMS.index(BlockWay.CLIMB) + 1
        return _CLAIMS.index(way)

    def _who_shows(self, man: str) -> tuple[Defender, ...]:
        """Whom a puller or a lead blocker meets where his own man is not: the playside end of the
        line, else the force."""
        if self._way(man) not in (BlockWay.WRAP, BlockWay.LEAD, BlockWay.PULL):
            return ()
        side = self.front.toward
        ends = [d for d in self.front.first_level if d.at.x * side.value > HEAD_UP]
        if self._way(man) is BlockWay.PULL:
            ends = []  # who pulls around the end kicks nobody out unless he is told to
        return (*ends[:: -side.value], *self.front.forces(side), *self._over_line())

    def _then(self, task: Task) -> tuple[Defender, ...]:
        x = self.at[task.man].x
        there = once(*(self.front.described(t, x) for t in task.then))
        if x * self.front.toward.value >= 0:
            return there
        return tuple(d for d in there if abs(d.at.x - x) <= CLIMB_REACH or d.at.x * x > 0)

    def _climb(self, man: str, to: Defender) -> None:
        """A man without a first block takes him; one of a double team goes on to him, and his
        partner stays."""
        self.climbs[man] = to.label
        own = self.choice[man][1]
        for partner in self.owners.get(own, ()) if own else ():
            self.climbs.setdefault(partner, NOBODY)

    def _nearest_climbs(self) -> None:
        """Those who only climb: of all pairs the nearest first, so that no two cross."""
        self._pair_nearest({m for m in self.tasks if self._climbs_free(m)})

    def _climbs_free(self, man: str) -> bool:
        """Whether a man goes to whichever linebacker is nearest."""
        n, own = self.choice[man]
        rules = self.tasks[man].rules
        if own or man in self.climbs or n >= len(rules) or (self.hold and man in self.interior):
            return False
        rule = rules[n]
        plain = rule.way in (BlockWay.CLIMB, BlockWay.LEAVE, BlockWay.SCOOP) and rule.target is None
        return plain and not (self.tasks[man].then and rule.way is not BlockWay.SCOOP)

    def _next_rule(self) -> bool:
        """Whether somebody whose climb, lead or arc found nobody has gone on to his next rule."""
        moved = False
        for man, task in self.tasks.items():
            n, own = self.choice[man]
            if own or self.climbs.get(man) or self._way(man) is BlockWay.HINGE:
                continue
            free = self._free_on_line()
            for i, rule in enumerate(task.rules[n + 1 :], n + 1):
                there = [d for d in self._strong(man, rule) if d in free]
                if there and rule.way is not BlockWay.DOUBLE:
                    self._take(man, i, there[0].label)
                elif MEANINGS[rule.way].takes in (Takes.SECOND, Takes.FIRST):
                    self.choice[man] = i, NOBODY
                else:
                    continue
                moved = True
                break
        return moved

    # Step 6, and the answer.

    def _last_resort(self) -> None:
        """A man of the line for whom nothing is true, or nobody is left, takes a man who is free
        on him or inside him, else helps inside and climbs; of those who climb the nearest first."""
        waiting, wings = set(), set()
        for man in sorted(self.tasks, key=self.from_ball):
            way = self._way(man)
            if self._owned(man) or self.climbs.get(man):
                continue
            if man not in self.line:
                if all(rule.way in _FROM_THE_LINE for rule in self.tasks[man].rules):
                    wings.add(man)
                continue
            if way is not None and way not in (BlockWay.CLIMB, BlockWay.SCOOP, BlockWay.LEAVE):
                continue
            x, free_on_line = self.at[man].x, self._free_on_line()
            near = once(self.front.over(x), self.front.in_gap(x, self.front.out(x).other))
            lone = [d.label for d in near if d in free_on_line]
            helped = lone[0] if lone else self.helps(man)
            if helped is not None:
                self._take(man, len(self.tasks[man].rules), helped)
            if not lone and not self.hold:
                waiting.add(man)
        self._pair_nearest(waiting)
        self._pair_nearest(wings, WALL_REACH)

    def _pair_nearest(self, waiting: set[str], wide: float = inf) -> None:
        """Men and free linebackers in their reach, of all pairs the nearest first; ``wide`` is how
        far a man who stands off the line goes."""
        while waiting:
            pairs = [
                (round(self.at[m].distance(d.at), 3), self.from_ball(m), m, d.label)
                for m in waiting
                for d in self.front.second_level
                if self._is_free(d)
                and abs(self.at[m].x - d.at.x) <= (CLIMB_REACH if m in self.line else wide)
            ]
            if not pairs:
                return
            _, _, man, backer = min(pairs)
            self.climbs[man] = backer
            waiting.discard(man)

    def _scheme(self) -> Scheme:
        blocks = []
        for man in self.tasks:
            way, own, climb = self._way(man), self.choice[man][1], self.climbs.get(man, NOBODY)
            if own and man not in self.given:
                way = self._honest(man, own)
            elif way is BlockWay.CRACK and climb and not self._is_inside(man, climb):
                way = BlockWay.STALK
            first, second = (own, climb) if own else (climb, NOBODY)
            others = tuple(m for m in self.owners.get(own, ()) if m != man) if own else ()
            blocks.append(BlockTaken(man, way, first, others, second))
        taken = {*self.owners, *self.keys, *self.climbs.values()}
        free = [d for d in (*self.front.box, *self._not_reached()) if d.label not in taken]
        hole = self.front.hole or 0.0
        free.sort(key=lambda d: (round(abs(d.at.x - hole), 3), d.at.x, d.label))
        return Scheme(tuple(blocks), tuple(d.label for d in free))

    def _not_reached(self) -> tuple[Defender, ...]:
        """Who hangs over the playside end outside the box, where a crack or stalk of that side
        reaches nobody, or the run goes around the end: he is unblocked where the ball goes."""
        side = self.front.toward
        waiting = [*self._waiting(BlockWay.CRACK), *self._waiting(BlockWay.STALK)]
        missed = any(self.at[m].x * side.value > 0 for m in waiting)
        wide = self._runs_wide()
        if self.hold or not (missed or wide):
            return ()
        there = [d for d in self.front.overhangs(side) if d not in self.front.box]
        return tuple(d for d in there if missed or d.at.y <= BOX_DEPTH)

    def _honest(self, man: str, defender: str) -> BlockWay | None:
        """The rule that got him his man, or the word for the block it became when he was passed
        along the line; None for one who helps."""
        way = self._way(man)
        who = next(d for d in self.front.defenders if d.label == defender)
        if way is None and self.owners[defender][0] != man:
            return None
        if way is not None:
            rule = self.tasks[man].rules[self.choice[man][0]]
            if way in _AS_TOLD or who in self._strong(man, rule):
                return way
        x = self.at[man].x
        away = (who.at.x - x) * self.front.out(x).value
        return BlockWay.ON if abs(away) <= TOUCH else BlockWay.OUT if away > 0 else BlockWay.DOWN

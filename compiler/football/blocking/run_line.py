"""The line's part of a run: men of the front given to the men of the line (steps 1 to 4 of
`run_scheme`, which says what each step is for)."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.football.blocking.run_answers import once
from stemline.football.blocking.run_board import NOBODY, RunBoard
from stemline.football.blocking.run_rules import MEANINGS, PULLS, BlockWay, Rule, Takes
from stemline.football.defence.described import Described
from stemline.football.defence.fronts import HEAD_UP, OVER_BALL, TOUCH
from stemline.football.defenders import Defender, Level
from stemline.football.field import Side

CRACK_REACH = 12.0
"""Yards from him within which a receiver comes back inside to a block. Common practice."""
_END_REACH = 8.0
"""Yards inside him within which a receiver gets back to the end man on the line in time. Common
practice."""


_ON_LINE = (
    "end man on line", "nose", "first man past centre", "first man outside guard",
    "first man outside tackle",
)  # fmt: skip
"""Descriptions of a man of the line."""


def _seals(rule: Rule) -> bool:
    """Whether a pull is told to go around a man of the line and shut him in."""
    return rule.way is BlockWay.PULL and rule.target is not None and rule.target.what in _ON_LINE


class LineBlocks(RunBoard):
    """Each step leaves `choice` and `owners` nearer to the answer."""

    def block_line(self) -> None:
        """Steps 1 to 4."""
        self._give_first()
        banned: set[tuple[str, int]] = set()
        while True:
            self._agree(banned)
            wrong = self._left_over()
            if wrong is None:
                break
            banned.add(wrong)
        play = self.front.toward.value
        free = self._free_on_line()
        free.sort(key=lambda d: (round(abs(d.at.x), 3), -d.at.x * play, d.label))
        for defender in free:
            if not self._find_owner(defender.label, set()):
                self._kicked_by_puller(defender)
        self._inside_first()
        self._line_before_fillers()
        self._puller_stays()
        self._kick_first_outside()

    # Step 1.

    def _give_first(self) -> None:
        for task in self.tasks.values():
            rule = task.rules[0]
            if MEANINGS[rule.way].takes is Takes.FIRST or _seals(rule):
                taken = {*self.keys, *self.given.values()}
                holds = self.hold and task.man in self.interior
                there = [
                    d.label for d in self._described(task.man, rule)
                    if d.label not in taken and not (holds and d.level is not Level.LINE)
                ]  # fmt: skip
                if there:
                    self.given[task.man] = there[0]
        for task in sorted(self.tasks.values(), key=lambda t: self.from_ball(t.man)):
            first = task.rules[0]
            if first.way is BlockWay.CRACK and not self.hold:
                if first.target is None:
                    self._crack_end(task.man)
                else:
                    self._crack_named(task.man, first)

    def _crack_named(self, man: str, rule: Rule) -> None:
        """Who cracks a described man has him before the line, wherever he can be cracked."""
        there = [d for d in self._described(man, rule) if d.label not in self._reserved]
        for defender in there:
            if self._can_crack(man, defender):
                self.given[man] = defender.label
                return

    def _can_crack(self, man: str, defender: Defender) -> bool:
        """Whether a receiver can come back inside to him, on his own side of the ball."""
        at, inside = self.at[man], self.front.out(self.at[man].x).other.value
        beyond = (defender.at.x - at.x) * inside > HEAD_UP
        here = defender.at.x * inside <= OVER_BALL
        return beyond and here and defender.at.distance(at) <= CRACK_REACH

    def _crack_end(self, man: str) -> None:
        """Who cracks takes the end man, where nobody of the line is outside of him: "Phrase of
        the Day: Toss Sweep", fan site, August 2017."""
        x, side = self.at[man].x, self.front.out(self.at[man].x)
        last = self.front.end(side)
        for end in self.front.described(Described("end man on line", side), x)[:1]:
            outside, away = (end.at.x - last) * side.value, (x - end.at.x) * side.value
            near = outside > HEAD_UP and HEAD_UP < away <= _END_REACH
            if near and end.label not in self._reserved:
                self.given[man] = end.label

    # Step 2.

    def _agree(self, banned: set[tuple[str, int]]) -> None:
        banned = set(banned)
        while True:
            self.choice = {man: self._first_true(man, banned) for man in self.tasks}
            wrong = self._lonely_double() or self._third_man()
            if wrong is None:
                break
            banned.add(wrong)
        self.owners = {}
        for man, (_, defender) in self.choice.items():
            if defender:
                self.owners.setdefault(defender, []).append(man)

    def _first_true(self, man: str, banned: set[tuple[str, int]]) -> tuple[int, str]:
        task, reserved = self.tasks[man], self._reserved
        for n, rule in enumerate(task.rules):
            if (man, n) in banned:
                continue
            match MEANINGS[rule.way].takes:
                case Takes.FIRST:
                    if n > 0:  # a kick that is only a second choice: of whoever is left
                        return n, NOBODY
                    if man in self.given:
                        return n, self.given[man]
                    if self.hold and man in self.interior and len(task.rules) == 1:
                        return n, NOBODY  # he shows his pull all the same
                case Takes.LINE:
                    there = [d for d in self._strong(man, rule) if d.label not in reserved]
                    if rule.way is BlockWay.DOUBLE:
                        there = [d for d in there if self._may_take(rule.partner, man, d)]
                    if there:
                        return n, there[0].label
                case Takes.LEFT_OVER:
                    return n, NOBODY
                case Takes.SECOND:
                    if n == 0 and man in self.given:
                        return n, self.given[man]
                    over = self.front.over(self.at[man].x)
                    if rule.way is not BlockWay.LEAVE or (over and over[0].label in reserved):
                        return n, NOBODY
        return len(task.rules), NOBODY

    def _may_take(self, man: str, other: str, defender: Defender) -> bool:
        """Whether any rule of a partner could bring him to the same defender."""
        task = self.tasks.get(man)
        if task is None:
            return False
        return any(
            MEANINGS[r.way].takes is Takes.LINE
            and (r.way is not BlockWay.DOUBLE or r.partner == other)
            and defender in self._strong(man, r)
            for r in task.rules
        )

    def _lonely_double(self) -> tuple[str, int] | None:
        """A double team whose partner is elsewhere; one whose partner is settled comes first,
        for the other may still find its second man."""
        lonely: dict[str, str] = {}
        for man, (n, defender) in self.choice.items():
            rules = self.tasks[man].rules
            if n < len(rules) and rules[n].way is BlockWay.DOUBLE:
                partner = rules[n].partner
                if self.choice.get(partner, (0, NOBODY))[1] != defender:
                    lonely[man] = partner
        settled = [m for m, partner in lonely.items() if partner not in lonely]
        if not lonely:
            return None
        man = settled[0] if settled else list(lonely)[-1]
        return man, self.choice[man][0]

    def _third_man(self) -> tuple[str, int] | None:
        takers: dict[str, list[str]] = {}
        for man, (_, defender) in self.choice.items():
            if defender:
                takers.setdefault(defender, []).append(man)
        for defender, there in takers.items():
            if len(there) > 2:
                x = next(d.at.x for d in self.front.defenders if d.label == defender)
                last = max(there, key=lambda m: (self.choice[m][0], abs(self.at[m].x - x)))
                return last, self.choice[last][0]
        return None

    # Steps 3 and 4.

    def _left_over(self) -> tuple[str, int] | None:
        """Free men of the line for those who scoop, cut off or hinge, from the ball outward, and
        then for backs; a cut off with nobody to cut off is not true, and is returned."""
        for man in sorted(self.tasks, key=lambda m: (m not in self.line, self.from_ball(m))):
            n, _ = self.choice[man]
            rules = self.tasks[man].rules
            if n >= len(rules) or MEANINGS[rules[n].way].takes is not Takes.LEFT_OVER:
                continue
            free = self._free_on_line()
            there = [d for d in self._strong(man, rules[n]) if d in free]
            if there:
                self._take(man, n, there[0].label)
            elif rules[n].way is BlockWay.CUT_OFF:
                return man, n
            elif rules[n].way is BlockWay.SCOOP:
                self._overtake(man, n)
        return None

    def _overtake(self, man: str, n: int) -> None:
        """Who scoops with nobody in his gap goes through the man over his neighbour, who leaves:
        "A Beginner's Guide to Zone: Covered and Uncovered Rules", coaching blog, November 2017."""
        x = self.at[man].x
        beside = self.front.neighbour(x, self.front.toward)
        ahead = [
            d for d in self.front.over(x)
            if (d.at.x - x) * self.front.toward.value > -HEAD_UP
        ]  # fmt: skip
        if beside is None or ahead:
            return
        own = self.choice.get(beside.label, (0, NOBODY))[1]
        near = [d.label for d in self.front.between(x, beside.snap.x)]
        if own in near and self.owners.get(own) == [beside.label]:
            self._take(man, n, own)

    def _inside_first(self) -> None:
        """No man leaves a threat in his inside gap for one farther out: where somebody of the
        front is free inside, the line takes him and leaves the last man of the backside, whom the
        ball runs away from. Common practice, no published source."""
        hole = self.front.hole
        if hole is None:
            return
        edge = [d for d in self.front.first_level if self._backside_edge(d)]
        while any(self._taken_for(d, edge, hole) for d in self._free_on_line()):
            pass  # who is left now may himself be inside of another
        self._sift_first(edge)

    def _taken_for(self, free: Defender, edge: Sequence[Defender], hole: float) -> bool:
        """Whether a free man got an owner, for one of the edge farther from the hole."""
        far = [d.label for d in edge if abs(d.at.x - hole) > abs(free.at.x - hole)]
        return bool(far) and self._find_owner(free.label, set(), frozenset(far))

    def _line_before_fillers(self) -> None:
        """Whoever shuts a gap that a backer fills, past a free man of the line on himself, takes
        that man: the backer is the wrap's, or his inside neighbour's who can be spared."""
        play = self.front.toward.value
        wraps = any(self._way(m) is BlockWay.WRAP for m in self.tasks)
        filling = {d.label for d in self.front.first_level if d.level is not Level.LINE}
        for defender in self._free_on_line():
            if defender.label in filling or defender.at.x * play <= HEAD_UP:
                continue
            for man in [m for m in self.tasks if self.choice[m][1] in filling]:
                own, x = self.choice[man][1], self.at[man].x
                beside = self.front.neighbour(x, self.front.out(x).other)
                inner = beside.label if beside is not None else NOBODY
                shared = self.owners.get(self.choice.get(inner, (0, NOBODY))[1], ())
                if defender in self.front.over(x) and (wraps or len(shared) > 1):
                    self._take(man, len(self.tasks[man].rules), defender.label)
                    if not wraps:
                        self._take(inner, len(self.tasks[inner].rules), own)
                    break

    def _puller_stays(self) -> None:
        """A second puller with a free man inside him or on his nose stays on him, and an end who
        would arc: a threat in the inside gap is left by nobody. Common practice, no published
        source."""
        ends = sorted(self.tasks.keys() & self.line - self.interior)
        arcs = [m for m in ends if self._way(m) is BlockWay.ARC]
        for man in [*arcs, *(m for m in self.interior if self._way(m) is BlockWay.WRAP)]:
            x, free = self.at[man].x, self._free_on_line()
            near = once(self.front.in_gap(x, self.front.out(x).other), self.front.over(x))
            there = [d for d in near if d in free and abs(d.at.x) <= abs(x) + HEAD_UP]
            if there and not self._owned(man):
                self._take(man, len(self.tasks[man].rules), there[0].label)

    def _backside_edge(self, defender: Defender) -> bool:
        """Whether he is outside the last lineman of the backside, tight ends apart."""
        side = self.front.toward.other
        last = self._last(side)
        return defender.at.x * side.value > last + HEAD_UP

    def _sift_first(self, edge: Sequence[Defender]) -> None:
        """Who sifts works from inside out: of two on the edge the inner one is his."""
        free = [d.label for d in self._free_on_line()]
        for man, own in list(self.given.items()):
            ends = [d.label for d in sorted(edge, key=lambda d: abs(d.at.x))]
            if self.tasks[man].rules[0].way is BlockWay.SIFT and own in ends:
                inner = [d for d in ends[: ends.index(own)] if d in free]
                if inner:
                    self.given[man] = inner[0]
                    self._take(man, 0, inner[0])

    def _kick_first_outside(self) -> None:
        """Who kicks the end man works from inside out: where another man of the front is free
        between the line and him, that one is his. B. Turner, "Counter Trey: Down, Kickout and
        Wrap"."""
        side = self.front.toward
        last = self._last(side)
        free = [d for d in self._free_on_line() if d.at.x * side.value > last + HEAD_UP]
        for man, own in self.given.items():
            rule = self.tasks[man].rules[0]
            end = rule.target is None or rule.target.what == "end man on line"
            if rule.way is BlockWay.KICK and end:
                who = next(d for d in self.front.defenders if d.label == own)
                inner = [d for d in free if d.at.x * side.value < who.at.x * side.value]
                if inner:
                    first = min(inner, key=lambda d: d.at.x * side.value)
                    self.given[man] = first.label
                    self._take(man, 0, first.label)
                    return

    def _find_owner(
        self, defender: str, asked: set[str], left: frozenset[str] = frozenset()
    ) -> bool:
        """An augmenting path: a man who can be spared, or whose own man another can take, or may
        be ``left``."""
        who = next(d for d in self.front.defenders if d.label == defender)
        near = sorted(self.tasks, key=lambda m: round(abs(self.at[m].x - who.at.x), 3))
        for man in near:
            n = self._reaches(man, who)
            if man in asked or n is None:
                continue
            asked.add(man)
            own = self.choice[man][1]
            spared = not own or len(self.owners[own]) > 1
            if self._wide(who) and (self._covered(man, who) or not spared):
                continue
            if spared or own in left or self._find_owner(own, asked, left):
                self._take(man, n, defender)
                return True
        return False

    def _wide(self, defender: Defender) -> bool:
        """Whether he is outside everybody of the line: nobody is handed on for his sake."""
        side = Side.RIGHT if defender.at.x > 0 else Side.LEFT
        past = (defender.at.x - self.front.end(side)) * side.value
        return past > (TOUCH if side is self.front.toward else HEAD_UP)

    def _covered(self, man: str, other: Defender) -> bool:
        """Whether anybody else covers a man: he does not leave him for one farther out."""
        return any(d != other for d in self.front.over(self.at[man].x))

    def _kicked_by_puller(self, defender: Defender) -> None:
        """A man of the playside line whom nobody can have stands in the way of whoever pulls
        around there: the nearest of those who are told to kick instead takes him."""
        if defender.at.x * self.front.toward.value <= HEAD_UP:
            return
        kicks = {
            man: next((n for n, r in enumerate(task.rules) if r.way is BlockWay.KICK), None)
            for man, task in self.tasks.items()
            if self._way(man) is BlockWay.PULL and not self._owned(man)
        }
        told = {man: n for man, n in kicks.items() if n is not None}
        if told:
            man = min(told, key=lambda m: round(self.at[m].distance(defender.at), 3))
            self._take(man, told[man], defender.label)

    def _reaches(self, man: str, defender: Defender) -> int | None:
        """The first rule by which a man of the line could take a defender instead of what he has;
        a rule that stands after a climb is never reached, and who pulls is not called back."""
        n, own = self.choice[man]
        rules = self.tasks[man].rules
        if man in self.given or own == defender.label or (self._way(man) in PULLS and not own):
            return None
        busy = n < len(rules) and not own and MEANINGS[rules[n].way].takes is Takes.SECOND
        for i, rule in enumerate(rules[:n] if busy else rules):
            if rule.way is not BlockWay.DOUBLE and defender in once(
                self._strong(man, rule), self._weak(man, rule)
            ):
                return i
        return None

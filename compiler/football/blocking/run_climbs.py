"""The last look over a run's blocks: nobody idle, nobody spared for nothing, no two who cross.

`run_scheme` gives every man his rule's answer; here the line looks at all of it together, as it
does on the board (step 7).
"""

from __future__ import annotations

from itertools import pairwise

from stemline.football.blocking.run_answers import once
from stemline.football.blocking.run_line import NOBODY, LineBlocks
from stemline.football.blocking.run_rules import PULLS, BlockWay
from stemline.football.defence.described import Described
from stemline.football.defenders import Defender

_OTHERS = (*PULLS, BlockWay.LEAD, BlockWay.ARC, BlockWay.STALK, BlockWay.CRACK, BlockWay.HINGE)
"""Rules of men who do not climb from where they stand."""
CLIMB_REACH = 5.5
"""Yards sideways that a man of the line gets to a linebacker in time. Common practice."""
_NEARER = 0.3
"""Yards by which one linebacker has to be nearer the hole than another to be blocked for him."""


class Climbers(LineBlocks):
    """``climbs`` gets better in place, and with it who is doubled by whom."""

    def look_over(self) -> None:
        """Everything below, in order."""
        self._fill_idle()
        if not self.hold:
            self._cut_off_first()
            self._send_up()
            self._shorten()
            self._point_first()
        self._uncross()
        self._fill_idle()
        self._uncross()
        self._outside_first()

    def _outside_first(self) -> None:
        """A wing who climbs takes the linebacker who hangs over his end, and a man of the line who
        would come across to that one takes the wing's, or helps where he stands."""
        hanging = {d.label: d.at.x for d in self.front.second_level if self.front.hangs(d)}
        wings = [m for m in self.tasks if m not in self.line and self._way(m) is BlockWay.CLIMB]
        for wing in sorted((w for w in wings if not self._owned(w)), key=self.from_ball):
            for man in self._climbers():
                x = hanging.get(self.climbs[man])
                if x is None or abs(x - self.at[wing].x) >= abs(x - self.at[man].x):
                    continue
                inner = self.climbs.get(wing, NOBODY)
                if inner in hanging or self._owned(man):
                    continue
                self.climbs[wing] = self.climbs.pop(man)
                helped = None if inner else self._helps(man)
                if inner:
                    self.climbs[man] = inner
                elif helped is not None:
                    self._take(man, len(self.tasks[man].rules), helped)
                break

    def _spare_backers(self) -> list[Defender]:
        taken = {*self.owners, *self._reserved, *self.climbs.values()}
        return [d for d in self.front.second_level if d.label not in taken]

    def _fill_idle(self) -> None:
        for man in sorted((m for m in self.line if m in self.tasks), key=self.from_ball):
            self._find_work(man)

    def _find_work(self, man: str) -> None:
        """A man of the line with nobody takes the linebacker of the man outside him, who has a
        free man of the front on himself: inside first. Else he takes that of a double team who is
        nearer to him, helps inside, or on the playside goes on to the near safety."""
        n, rules = self.choice[man][0], self.tasks[man].rules
        busy = self._owned(man) or self.climbs.get(man)
        if busy or self.hold:
            return
        if n < len(rules) and rules[n].way in _OTHERS:
            self._stays_home(man)
            return
        x = self.at[man].x
        beside = self.front.neighbour(x, self.front.out(x))
        ahead = beside.label if beside is not None and beside.label in self.tasks else NOBODY
        if beside is not None and self.climbs.get(ahead) and not self._owned(ahead):
            free = self._free_on_line()
            on_him = [d for d in self.front.over(beside.snap.x) if d in free]
            if on_him:
                self.climbs[man] = self.climbs.pop(beside.label)
                self._take(beside.label, len(self.tasks[beside.label].rules), on_him[0].label)
                return
        near = [
            (round(abs(d.at.x - x), 3), m, d.label)
            for m in self._climbers()
            for d in self.front.second_level
            if self._owned(m) and self.climbs[m] == d.label
            and abs(d.at.x - x) < abs(d.at.x - self.at[m].x)
        ]  # fmt: skip
        if near:
            _, other, backer = min(near)
            self.climbs[man], self.climbs[other] = backer, NOBODY
            return
        if self._moves_over(man):
            return
        inside = None
        if man not in self.interior:
            inside = self.front.neighbour(x, self.front.out(x).other)
        for defender in self.front.over(inside.snap.x) if inside is not None else ():
            if inside is not None and self.owners.get(defender.label) == [inside.label]:
                self._take(man, len(rules), defender.label)
                return
        taken = {*self.owners, *self._reserved, *self.climbs.values()}
        side = self.front.out(x)
        deep = self.front.described(Described("near safety", side), x)
        last = next((d.label for d in deep[::-1] if d.label not in taken), NOBODY)
        if side is self.front.toward and last:
            self.climbs[man] = last
        else:
            self._relieves(man)

    def _relieves(self, man: str) -> None:
        """He takes the linebacker of a double team, which stays on its man: the uncovered tackle
        goes up. B. Turner, "Counter Trey: Down, Kickout and Wrap", coaching blog."""
        backers = {d.label: d.at.x for d in self.front.second_level}
        for other in self._climbers():
            near = abs(backers[self.climbs[other]] - self.at[man].x) <= CLIMB_REACH
            if self._owned(other) and near:
                self.climbs[man], self.climbs[other] = self.climbs[other], NOBODY
                return

    def _shorten(self) -> None:
        """Who would climb farther than anybody gets in time leaves the linebacker to a double team
        that has him in reach and nobody to go on to."""
        backers = {d.label: d.at.x for d in self.front.second_level}
        for man in self._climbers():
            x = backers[self.climbs[man]]
            if self._owned(man) or abs(x - self.at[man].x) <= CLIMB_REACH:
                continue
            near = [
                (round(abs(x - self.at[m].x), 3), m)
                for men in self.owners.values()
                if len(men) > 1 and not any(self.climbs.get(m) for m in men)
                and all(m in self.line for m in men) and not self._told_to_stay(men)
                for m in men
                if abs(x - self.at[m].x) <= CLIMB_REACH
            ]  # fmt: skip
            if near:
                _, nearer = min(near)
                self.climbs[nearer] = self.climbs.pop(man)

    def _helps(self, man: str) -> str | None:
        """The man of his inside neighbour, where he can reach him and is not the third."""
        x = self.at[man].x
        beside = self.front.neighbour(x, self.front.out(x).other)
        if beside is None:
            return None
        near = [d.label for d in self.front.between(x, beside.snap.x)]
        return next(
            (
                d
                for d in near
                if len(self.owners.get(d, ())) == 1 and self.owners[d] == [beside.label]
            ),
            None,
        )

    def _stays_home(self, man: str) -> None:
        """Who would pull for nobody has a free man of the front on him instead."""
        x, free = self.at[man].x, self._free_on_line()
        near = once(self.front.over(x), self.front.in_gap(x, self.front.out(x).other))
        there = [d for d in near if d in free]
        if man in self.interior and there:
            self._take(man, len(self.tasks[man].rules), there[0].label)

    def _moves_over(self, man: str) -> bool:
        """He takes the linebacker of a double team that has another one within reach."""
        for other in self._climbers():
            backers = {d.label: d.at.x for d in self.front.second_level}
            near = abs(backers[self.climbs[other]] - self.at[man].x) <= CLIMB_REACH
            for spare in self._spare_backers():
                reach = abs(spare.at.x - self.at[other].x) <= CLIMB_REACH
                if self._owned(other) and near and reach:
                    self.climbs[man], self.climbs[other] = self.climbs[other], spare.label
                    return True
        return False

    def _cut_off_first(self) -> None:
        """Who climbs past a free man on himself stays on him, where a double team inside of him
        has nobody to go on to: its second man goes."""
        for men in list(self.owners.values()):
            if len(men) < 2 or any(self.climbs.get(m) or m not in self.line for m in men):
                continue
            last = max(men, key=lambda m: abs(self.at[m].x))
            beside = self.front.neighbour(self.at[last].x, self.front.out(self.at[last].x))
            if beside is None or beside.label not in self.tasks or self._owned(beside.label):
                continue
            free = self._free_on_line()
            on_him = [d for d in self.front.over(beside.snap.x) if d in free]
            if on_him and self.climbs.get(beside.label):
                self.climbs.update(dict.fromkeys(men, NOBODY))
                self.climbs[last] = self.climbs.pop(beside.label)
                self._take(beside.label, len(self.tasks[beside.label].rules), on_him[0].label)

    def _send_up(self) -> None:
        """Of two men on one, where neither goes on, one does: there is a linebacker left. Where
        the ball may still be thrown and the text sends neither of them on, they stay."""
        for defender, men in list(self.owners.items()):
            if len(men) < 2 or any(self.climbs.get(m) for m in men):
                continue
            if any(m not in self.line for m in men) or self._told_to_stay(men):
                continue
            x = next(d.at.x for d in self.front.defenders if d.label == defender)
            near = [d for d in self._spare_backers() if abs(d.at.x - x) <= CLIMB_REACH]
            if near:
                hole = self.front.hole or 0.0
                best = min(near, key=lambda d: (round(abs(d.at.x - hole), 3), d.label))
                man = min(men, key=lambda m: (round(abs(self.at[m].x - best.at.x), 3), m))
                self.climbs.update(dict.fromkeys(men, NOBODY))
                self.climbs[man] = best.label

    def _told_to_stay(self, men: list[str]) -> bool:
        """Whether the ball may be thrown, and the text sends neither on."""
        return self.may_throw and not any(self.tasks[m].then for m in men)

    def _climbers(self) -> list[str]:
        """Men of the line on their way to a linebacker of the box, from left to right."""
        backers = {d.label for d in self.front.second_level}
        men = [
            m for m in self.line
            if m in self.tasks and self.climbs.get(m) in backers
            and (self._owned(m) or self._way(m) not in _OTHERS)
        ]  # fmt: skip
        return sorted(men, key=lambda m: (self.at[m].x, m))

    def _point_first(self) -> None:
        """Who is left over is the farthest from the hole: whoever climbs to a farther one takes
        the nearer instead."""
        hole = self.front.hole
        if hole is None:
            return
        for near in sorted(self._spare_backers(), key=lambda d: round(abs(d.at.x - hole), 3)):
            far = [
                (round(abs(d.at.x - hole), 3), m)
                for m in self._climbers()
                for d in self.front.second_level
                if d.label == self.climbs[m]
                and not self._sent_far(m)
                and not self.front.hangs(d)
                and abs(d.at.x - hole) > abs(near.at.x - hole) + _NEARER
                and abs(self.at[m].x - near.at.x) <= CLIMB_REACH
            ]
            if far:
                self.climbs[max(far)[1]] = near.label

    def _sent_far(self, man: str) -> bool:
        """Whether the text sends him, and who is with him, past the nearest linebacker: that one
        is somebody's already."""
        own = self.choice[man][1]
        if own:
            aims = [t for m in self.owners[own] for t in self.tasks[m].then]
        else:
            n, rules = self.choice[man][0], self.tasks[man].rules
            target = rules[n].target if n < len(rules) else None
            aims = [target] if target is not None else []
        return bool(aims) and all(t.what == "far linebacker" for t in aims)

    def _uncross(self) -> None:
        """Of two men who climb the inner takes the inner linebacker."""
        men = self._climbers()
        there = {self.climbs[m] for m in men}
        backers = [d.label for d in self.front.second_level if d.label in there]
        if len(backers) == len(men):
            self.climbs.update(zip(men, backers, strict=True))
        assert all(self.at[a].x <= self.at[b].x for a, b in pairwise(men))

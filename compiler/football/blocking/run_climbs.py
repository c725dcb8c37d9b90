"""The last look over a run's blocks: nobody idle, nobody spared for nothing, no two who cross.

`run_scheme` gives every man his rule's answer; here the line looks at all of it together, as it
does on the board (step 7).
"""

from __future__ import annotations

from itertools import pairwise

from stemline.football.blocking.run_answers import once
from stemline.football.blocking.run_board import NOBODY
from stemline.football.blocking.run_rules import BlockWay
from stemline.football.blocking.run_trades import CLIMB_REACH, OTHERS, WALL_REACH, Trades, off_line
from stemline.football.defence.fronts import HEAD_UP
from stemline.football.defenders import Defender, Level

_NEARER = 0.3
"""Yards by which one linebacker has to be nearer the hole than another to be blocked for him."""


class Climbers(Trades):
    """``climbs`` gets better in place, and with it who is doubled by whom."""

    def look_over(self) -> None:
        """Everything below, in order."""
        self._fill_idle()
        if not self.hold:
            self._cut_off_first()
            self.wing_lets_go()
            self._send_up()
            self._shorten()
            self._point_first()
            self.trade_places()
            self.not_past_ball()
            self.pulls_out()
            self.hinges_fill()
        self._uncross()
        self._fill_idle()
        self._uncross()
        self._outside_first()
        if not self.hold:
            self.leads_inside()
            self.leads_between()
            self.stalks_over()
            self.wings_first()
            self.nearer_leaves()

    def _outside_first(self) -> None:
        """A wing who climbs takes the linebacker who hangs over his end, and a man of the line who
        would come across to that one takes the wing's, or helps where he stands."""
        hanging = {d.label: d.at.x for d in self.front.second_level if self.front.hangs(d)}
        wings = [m for m in self.tasks if m not in self.line and self._way(m) is BlockWay.CLIMB]
        for wing in sorted((w for w in wings if not self._owned(w)), key=self.from_ball):
            for man in self.climbers():
                x = hanging.get(self.climbs[man])
                if x is None or abs(x - self.at[wing].x) >= abs(x - self.at[man].x):
                    continue
                inner = self.climbs.get(wing, NOBODY)
                if inner in hanging or self._owned(man):
                    continue
                self.climbs[wing] = self.climbs.pop(man)
                helped = None if inner else self.helps(man)
                if inner:
                    self.climbs[man] = inner
                elif helped is not None:
                    self._take(man, len(self.tasks[man].rules), helped)
                else:
                    self._goes_deep(man)
                break

    def _fill_idle(self) -> None:
        for man in sorted((m for m in self.line if m in self.tasks), key=self.from_ball):
            self._find_work(man)

    def _find_work(self, man: str) -> None:
        """What a man of the line with nobody does: the first of these that there is."""
        n, rules = self.choice[man][0], self.tasks[man].rules
        busy = self._owned(man) or self.climbs.get(man)
        if busy or self.hold:
            return
        if n < len(rules) and rules[n].way in OTHERS:
            self._stays_home(man)
            return
        found = (
            self._follows(man)
            or self._takes_filler(man)
            or self._takes_nearer(man)
            or self._moves_over(man)
            or self._helps_inside(man)
            or self.shift_out(man)
            or self.joins(man)
            or (man in self.interior and self._relieves(man, WALL_REACH))
        )
        if not found:
            self._goes_deep(man)

    def _follows(self, man: str) -> bool:
        """He takes the linebacker of the man outside him, who blocks the free man on himself."""
        x = self.at[man].x
        beside = self.front.neighbour(x, self.front.out(x))
        ahead = beside.label if beside is not None and beside.label in self.tasks else NOBODY
        if beside is None or not self.climbs.get(ahead) or self._owned(ahead):
            return False
        free = self._free_on_line()
        on_him = [d for d in self.front.over(beside.snap.x) if d in free]
        if on_him:
            self.climbs[man] = self.climbs.pop(beside.label)
            self._take(beside.label, len(self.tasks[beside.label].rules), on_him[0].label)
        return bool(on_him)

    def _takes_filler(self, man: str) -> bool:
        """Who climbs takes a linebacker who fills the gap inside of him from his neighbour, who
        helps inside."""
        x = self.at[man].x
        fills = {d.label for d in self.front.first_level if d.level is not Level.LINE}
        beside = self.front.neighbour(x, self.front.out(x).other)
        if beside is None or self._way(man) is not BlockWay.CLIMB or beside.label not in self.tasks:
            return False
        own, helped = self.choice[beside.label][1], self.helps(beside.label)
        if own not in fills or self.owners[own] != [beside.label] or helped is None:
            return False
        self._take(man, len(self.tasks[man].rules), own)
        self._take(beside.label, len(self.tasks[beside.label].rules), helped)
        return True

    def _takes_nearer(self, man: str) -> bool:
        """He takes the linebacker of a double team who is nearer to him than to its man."""
        x = self.at[man].x
        near = [
            (round(abs(d.at.x - x), 3), self.from_ball(m), d.label)
            for m in self.climbers()
            for d in self.front.second_level
            if self._owned(m) and self.climbs[m] == d.label
            and abs(d.at.x - x) < abs(d.at.x - self.at[m].x)
        ]  # fmt: skip
        if near:
            _, (_, _, other), backer = min(near)
            self.climbs[man], self.climbs[other] = backer, NOBODY
        return bool(near)

    def _helps_inside(self, man: str) -> bool:
        """A man outside the line doubles whom the man inside him has alone."""
        x = self.at[man].x
        inside = None if man in self.interior else self.front.neighbour(x, self.front.out(x).other)
        if inside is None:
            return False
        for defender in self.front.over(inside.snap.x):
            if self.owners.get(defender.label) == [inside.label]:
                self._take(man, len(self.tasks[man].rules), defender.label)
                return True
        return False

    def _goes_deep(self, man: str) -> None:
        """On the playside he goes on to the near safety; else he relieves a double team."""
        x = self.at[man].x
        taken = {*self.owners, *self._reserved, *self.climbs.values()}
        side = self.front.out(x)
        deep = self.front.deep_inside(side)
        last = next((d.label for d in deep[::-1] if d.label not in taken), NOBODY)
        if side is self.front.toward and last:
            self.climbs[man] = last
        else:
            self._relieves(man)

    def _relieves(self, man: str, reach: float = CLIMB_REACH) -> bool:
        """He takes the linebacker of a double team, which stays on its man: the uncovered tackle
        goes up. B. Turner, "Counter Trey: Down, Kickout and Wrap", coaching blog."""
        backers = {d.label: d.at.x for d in self.front.second_level}
        for other in self.climbers():
            near = abs(backers[self.climbs[other]] - self.at[man].x) <= reach
            if self._owned(other) and near and not self.past_ball(man, self.climbs[other]):
                self.climbs[man], self.climbs[other] = self.climbs[other], NOBODY
                return True
        return False

    def _shorten(self) -> None:
        """Who would climb farther than anybody gets in time leaves the linebacker to a double team
        that has him in reach and nobody to go on to."""
        backers = {d.label: d.at.x for d in self.front.second_level}
        for man in self.climbers():
            x = backers[self.climbs[man]]
            if self._owned(man) or abs(x - self.at[man].x) <= CLIMB_REACH:
                continue
            near = [
                (round(abs(x - self.at[m].x), 3), self.from_ball(m))
                for men in self.owners.values()
                if len(men) > 1 and not any(self.climbs.get(m) for m in men)
                and all(m in self.line for m in men) and not self.told_to_stay(men)
                for m in men
                if abs(x - self.at[m].x) <= CLIMB_REACH
            ]  # fmt: skip
            if near:
                _, (_, _, nearer) = min(near)
                self.climbs[nearer] = self.climbs.pop(man)

    def _stays_home(self, man: str) -> None:
        """Who would pull for nobody has a free man of the front on him instead."""
        x, free = self.at[man].x, self._free_on_line()
        near = once(self.front.over(x), self.front.in_gap(x, self.front.out(x).other))
        there = [d for d in near if d in free]
        if man in self.interior and there:
            self._take(man, len(self.tasks[man].rules), there[0].label)

    def _moves_over(self, man: str) -> bool:
        """He takes the linebacker of a double team that has another one within reach."""
        for other in self.climbers():
            backers = {d.label: d.at.x for d in self.front.second_level}
            near = abs(backers[self.climbs[other]] - self.at[man].x) <= CLIMB_REACH
            for spare in self.spare_backers():
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
        """Of two men on one, where neither goes on, one does: there is a linebacker left, nearest
        to the hole first, and he is the nearest double team's. Where the ball may still be thrown
        and the text sends neither of them on, they stay."""
        hole = self.front.hole or 0.0
        for backer in self._from_hole(hole):
            near = [
                (round(abs(self.at[m].x - backer.at.x), 3), self.from_ball(m))
                for defender, men in self._doubles()
                if not any(self.climbs.get(m) for m in men) and not self.told_to_stay(men)
                and abs(backer.at.x - self._x(defender)) <= CLIMB_REACH
                and not self._too_wide(backer, men)
                for m in men
            ]  # fmt: skip
            if near:
                _, (_, _, man) = min(near)
                men = self.owners[self.choice[man][1]]
                self.climbs.update(dict.fromkeys(men, NOBODY))
                self.climbs[man] = backer.label

    def _too_wide(self, defender: Defender, men: list[str]) -> bool:
        """Whether nobody of a double team gets to a man who hangs over an end: too far from both,
        and no climber between whose man they could have instead."""
        away = min(abs(self.at[m].x - defender.at.x) for m in men)
        wide = abs(self.front.hole or 0.0) > abs(self.front.end(self.front.toward))
        between = [
            m for m in self.climbers()
            if abs(self.at[m].x - defender.at.x) < away and not (self._owned(m) and wide)
        ]  # fmt: skip
        return self.front.hangs(defender) and away > WALL_REACH and not between

    def _point_first(self) -> None:
        """Who is left over is the farthest from the hole: whoever climbs to a farther one takes
        the nearer instead, and who wraps too."""
        hole = self.front.hole
        if hole is None:
            return
        for _ in self.front.second_level:  # each step takes one nearer; more are never needed
            if not any(self._taken_instead(d, hole) for d in self._from_hole(hole)):
                return

    def _from_hole(self, hole: float) -> list[Defender]:
        return sorted(self.spare_backers(), key=lambda d: round(abs(d.at.x - hole), 3))

    def _taken_instead(self, near: Defender, hole: float) -> bool:
        """Whether somebody left a farther linebacker for a nearer one; who hangs over the end is
        left only for one between him and the hole."""
        play = self.front.toward.value
        wraps = [m for m in self.interior if self._way(m) is BlockWay.WRAP and self.climbs.get(m)]
        climbers = [
            m for m in self.climbers()
            if (not self._sent_far(m) or (self._x(self.climbs[m]) - near.at.x) * play > HEAD_UP)
            and abs(self.at[m].x - near.at.x) <= CLIMB_REACH
            and not (self.past_ball(m, near.label) and self.front.hangs(near))
        ]  # fmt: skip
        far = [
            (round(abs(d.at.x - hole), 3), self.from_ball(m))
            for m in (*climbers, *wraps)
            for d in self.front.second_level
            if d.label == self.climbs[m]
            and (not self.front.hangs(d) or (near.at.x - hole) * play > HEAD_UP)
            and abs(d.at.x - hole) > abs(near.at.x - hole) + _NEARER
        ]
        if far:
            self.climbs[max(far)[1][-1]] = near.label
        return bool(far)

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
        """Of two men who climb the inner takes the inner man, deep ones too."""
        there = off_line(self.front.defenders)
        men = [m for m in self._climbing_to({d.label for d in there}) if not self._sent_deep(m)]
        goals = {self.climbs[m] for m in men}
        ordered = [d.label for d in there if d.label in goals]
        if len(ordered) == len(men):
            self.climbs.update(zip(men, ordered, strict=True))
        assert all(self.at[a].x <= self.at[b].x for a, b in pairwise(men))

"""Trades of the line after its rules are answered: whoever is nearer takes a man, and his neighbour
takes what is left. Rules of thumb of line coaches, common practice, no published source, where a
comment does not say otherwise (step 7 of `run_scheme`)."""

from __future__ import annotations

from stemline.football.blocking.run_board import NOBODY
from stemline.football.blocking.run_line import LineBlocks
from stemline.football.blocking.run_rules import PULLS, BlockWay
from stemline.football.defence.fronts import HEAD_UP, OVER
from stemline.football.defenders import Defender, Level

OTHERS = (*PULLS, BlockWay.LEAD, BlockWay.ARC, BlockWay.STALK, BlockWay.CRACK, BlockWay.HINGE)
"""Rules of men who do not climb from where they stand."""
_DEEP = ("corner", "safety", "near safety")
CLIMB_REACH = 5.5
"""Yards sideways that a man of the line gets to a linebacker in time. Common practice."""
WALL_REACH = 3.0
"""Yards sideways that a man of the line goes to a linebacker who is not his first. Common
practice."""
_CLEARLY = 1.0
"""Yards by which one man is clearly nearer to a linebacker than another."""
_PAST_HIM = 3.5
"""Yards sideways within which a receiver does not run by a free man who hangs over the end. Common
practice."""
_HINGES_TO = 2.5
"""Yards sideways within which a man who hinges with nobody in his gap has a linebacker."""


class Trades(LineBlocks):
    """Each method leaves ``climbs`` and ``owners`` as good or better."""

    def climbers(self) -> list[str]:
        """Men of the line on their way to a linebacker of the box, from the backside."""
        backers = {d.label for d in self.front.second_level}
        return self._climbing_to(backers)[:: self.front.toward.value]

    def _climbing_to(self, labels: set[str]) -> list[str]:
        men = [
            m for m in self.line
            if m in self.tasks and self.climbs.get(m) in labels
            and (self._owned(m) or self._way(m) not in OTHERS) and not self._has_middle(m)
        ]  # fmt: skip
        return sorted(men, key=lambda m: (self.at[m].x, m))

    def _has_middle(self, man: str) -> bool:
        """Whether he has the middle linebacker whom the text names: of three there is one, and no
        sharing gives him another."""
        n, rules = self.choice[man][0], self.tasks[man].rules
        target = rules[n].target if n < len(rules) and not self.choice[man][1] else None
        return (
            target is not None
            and target.what == "middle linebacker"
            and self.climbs[man] in [d.label for d in self._described(man, rules[n])[:1]]
        )

    def spare_backers(self) -> list[Defender]:
        taken = {*self.owners, *self._reserved, *self.climbs.values()}
        return [d for d in self.front.second_level if d.label not in taken]

    def told_to_stay(self, men: list[str]) -> bool:
        """Whether the ball may be thrown, and the text sends neither on."""
        return self.may_throw and not any(self.tasks[m].then for m in men)

    def _x(self, label: str) -> float:
        return next(d.at.x for d in self.front.defenders if d.label == label)

    def _doubles(self) -> list[tuple[str, list[str]]]:
        """Two men of the line on one, by defender."""
        return [
            (d, men) for d, men in self.owners.items()
            if len(men) == 2 and all(m in self.line for m in men)
        ]  # fmt: skip

    def nearer_leaves(self) -> None:
        """Of two on one the man whom the linebacker is nearer goes to him: over the top the
        outside man, inside the inside man. "Base and Combination Blocks", coaching site."""
        for _, men in self._doubles():
            for man, other in (men, men[::-1]):
                to = self.climbs.get(man)
                if not to or (self.tasks[man].then and not self.tasks[other].then):
                    continue  # the text sends him, and not the other
                x = self._x(to)
                if abs(x - self.at[other].x) + HEAD_UP < abs(x - self.at[man].x):
                    self.climbs[other], self.climbs[man] = to, NOBODY
                break

    def trade_places(self) -> None:
        """Who climbs across a double team beside him joins it, and its far man, who is nearer,
        goes instead."""
        for man in self.climbers():
            if not self._owned(man) and self._joins(man, self.climbs[man], busy=False):
                del self.climbs[man]

    def joins(self, man: str) -> bool:
        """Whether he has joined the double team beside him, whose far man goes on alone."""
        return self._joins(man, "", busy=True)

    def _joins(self, man: str, to: str, *, busy: bool) -> bool:
        for defender, men in self._doubles():
            on = next((self.climbs[m] for m in men if self.climbs.get(m)), "")
            if bool(on) is not busy or self.told_to_stay(men):
                continue
            near, far = sorted(men, key=lambda m: abs(self.at[m].x - self.at[man].x))
            beside = (self.front.neighbour(self.at[man].x, s) for s in (self.front.toward,
                      self.front.toward.other))  # fmt: skip
            between = self.front.between(self.at[man].x, self.at[near].x)
            goes = self._x(on or to)
            closer = abs(goes - self.at[far].x) + _CLEARLY < abs(goes - self.at[man].x)
            adjacent = near in {b.label for b in beside if b is not None}
            if adjacent and closer and defender in [d.label for d in between]:
                self.owners[defender].remove(far)
                self.choice[far] = len(self.tasks[far].rules), NOBODY
                self.climbs.update({near: NOBODY, far: on or to})
                self._take(man, len(self.tasks[man].rules), defender)
                return True
        return False

    def past_ball(self, man: str, to: str) -> bool:
        """Whether a man of the backside would chase a linebacker past the ball."""
        play = self.front.toward.value
        return self.at[man].x * play < -HEAD_UP and self._x(to) * play >= -HEAD_UP

    def leads_inside(self) -> None:
        """Nobody outside the hole climbs in across a lead blocker on his way out through it: he
        takes the outer linebacker and the lead the inner one, counted from inside out. "The Iso
        Study", X&O Labs."""
        hole, play = self.front.hole or 0.0, self.front.toward.value
        for lead in [m for m in self.tasks if self._leads_near(m) and self.climbs.get(m)]:
            out = (self._x(self.climbs[lead]) - hole) * play
            for man in self.climbers():
                inner = (self._x(self.climbs[man]) - hole) * play
                beyond = (self.at[man].x - hole) * play
                ahead = self._x(self.climbs[man]) * play >= -HEAD_UP
                if ahead and inner < -HEAD_UP and min(out, beyond) > HEAD_UP:
                    self.climbs[man], self.climbs[lead] = self.climbs[lead], self.climbs[man]
                    break

    def leads_between(self) -> None:
        """Around the end a receiver stalks the man over him, and who leads goes up inside of him:
        neither crosses to the other's man, but for one whom the text gives to the lead."""
        hole, play = self.front.hole or 0.0, self.front.toward.value
        leads = [
            m for m in self.tasks
            if self._way(m) is BlockWay.LEAD and self.climbs.get(m) and self._runs_wide()
            and m not in self.line and not self._sent_deep(m) and not self._has_named(m)
        ]  # fmt: skip
        for lead in leads:
            x = self._x(self.climbs[lead])
            for man in [m for m in self.tasks if self._way(m) is BlockWay.STALK]:
                to = self.climbs.get(man)
                wide = (self.at[man].x - hole) * play > HEAD_UP
                if to and wide and (x - self._x(to)) * play > HEAD_UP:
                    self.climbs[man], self.climbs[lead] = self.climbs[lead], to
                    break

    def _sent_deep(self, man: str) -> bool:
        """Whether the text sends him past the linebackers, to a man of the deep defence."""
        n, rules = self.choice[man][0], self.tasks[man].rules
        target = rules[n].target if n < len(rules) and not self.choice[man][1] else None
        return target is not None and target.what in _DEEP

    def _has_named(self, man: str) -> bool:
        """Whether he has the first man to whom the text sends him."""
        rule = self.tasks[man].rules[self.choice[man][0]]
        named = self._described(man, rule)[:1] if rule.target is not None else ()
        return self.climbs.get(man, NOBODY) in [d.label for d in named]

    def _leads_near(self, man: str) -> bool:
        """Whether he leads on the first linebacker from the hole, and on nobody by name."""
        n, rules = self.choice[man][0], self.tasks[man].rules
        if n >= len(rules) or rules[n].way is not BlockWay.LEAD:
            return False
        target = rules[n].target
        return target is None or target.what == "near linebacker"

    def not_past_ball(self) -> None:
        """A man of the backside does not chase a linebacker past the ball where two on one man
        are nearer, and neither goes on."""
        for man in self.climbers():
            x, to = self.at[man].x, self.climbs[man]
            goes = self._x(to)
            if self._owned(man) or not self.past_ball(man, to):
                continue
            for _, men in self._doubles():
                nearest = min(men, key=lambda m: abs(self.at[m].x - goes))
                closer = abs(self.at[nearest].x - goes) + _CLEARLY < abs(x - goes)
                if closer and not any(self.climbs.get(m) for m in men):
                    self.climbs.update(dict.fromkeys(men, NOBODY))
                    self.climbs[nearest] = self.climbs.pop(man)
                    break

    def shift_out(self, man: str) -> bool:
        """A man with nobody takes the linebacker of his inside neighbour, who helps inside."""
        x = self.at[man].x
        beside = self.front.neighbour(x, self.front.out(x).other)
        to = self.climbs.get(beside.label) if beside is not None else None
        if beside is None or not to or self._owned(beside.label):
            return False
        helped = self.helps(beside.label)
        if helped is None or beside.label not in self.climbers():
            return False
        if abs(self._x(to) - x) > _HINGES_TO:
            return False
        self.climbs[man] = self.climbs.pop(beside.label)
        self._take(beside.label, len(self.tasks[beside.label].rules), helped)
        return True

    def helps(self, man: str) -> str | None:
        """The man of his inside neighbour, where he can reach him and is not the third."""
        x = self.at[man].x
        beside = self.front.neighbour(x, self.front.out(x).other)
        if beside is None:
            return None
        near = [d.label for d in self.front.between(x, beside.snap.x)]
        return next((d for d in near if self.owners.get(d) == [beside.label]), None)

    def hinges_fill(self) -> None:
        """Who hinges with nobody in his gap has the linebacker over him; a back who shuts the door
        has whoever of the backside is left, the linebacker before the man on the edge. Where the
        ball may be thrown, a man of the line who is told to hinge stays home."""
        back = self.front.toward.other.value
        for man in sorted(self.tasks, key=lambda m: (m not in self.line, self.from_ball(m))):
            if self._way(man) is not BlockWay.HINGE or self._owned(man) or self.climbs.get(man):
                continue
            x, on_line = self.at[man].x, man in self.line
            if on_line and self.may_throw:
                continue
            there = [
                d for d in self.spare_backers()
                if (abs(d.at.x - x) <= _HINGES_TO if on_line else d.at.x * back > HEAD_UP)
            ]  # fmt: skip
            if there:
                best = min(there, key=lambda d: (round(abs(d.at.x - x), 3), d.label))
                self.climbs[man] = best.label
                continue
            edge = [d for d in self._free_on_line() if d.at.x * back > HEAD_UP and not on_line]
            if edge:
                best = min(edge, key=lambda d: (round(abs(d.at.x), 3), d.label))
                self._take(man, self.choice[man][0], best.label)

    def wings_first(self) -> None:
        """A wing with nobody takes whoever hangs over his end from a man who pulls to him, and
        that one goes on to the next."""
        for wing in [m for m in self.tasks if m not in self.line]:
            x, way = self.at[wing].x, self._way(wing)
            if way is not BlockWay.CLIMB or self._owned(wing) or self.climbs.get(wing):
                continue
            side = self.front.out(x)
            hanging = {d.label: d for d in self.front.overhangs(side)}
            for man in [m for m in self.tasks if self._way(m) is BlockWay.PULL]:
                to = hanging.get(self.climbs.get(man, NOBODY))
                if to is None or abs(to.at.x - x) >= abs(to.at.x - self.at[man].x):
                    continue
                taken = {*self.owners, *self._reserved, *self.climbs.values()}
                rest = [d.label for d in self.front.forces(side) if d.label not in taken]
                self.climbs[wing] = to.label
                self.climbs[man] = next(iter(rest), NOBODY)
                break

    def stalks_over(self) -> None:
        """Of two receivers on one man the one who has a man of the box over him, whom nobody
        blocks, takes that man; and so does one who would run by him to a farther man of the deep
        defence."""
        deep = {d.label for d in self.front.defenders if d.level is Level.DEEP}
        for man in [m for m in self.tasks if self._way(m) is BlockWay.STALK]:
            x, to = self.at[man].x, self.climbs.get(man, NOBODY)
            shared = list(self.climbs.values()).count(to) > 1
            reach = OVER if shared else _PAST_HIM if to in deep else 0.0
            there = [
                d for d in self.spare_backers()
                if abs(d.at.x - x) <= reach
                and (shared or (self.front.hangs(d) and abs(d.at.x - x) < abs(self._x(to) - x)))
            ]  # fmt: skip
            if to and there:
                self.climbs[man] = there[0].label

    def pulls_out(self) -> None:
        """On a run around the end the outer of two on one man pulls, as his rules say, where the
        edge is nobody's and there is no linebacker to go on to."""
        side = self.front.toward
        if abs(self.front.hole or 0.0) <= abs(self.front.end(side)) or self.hold:
            return
        for defender, men in self._doubles():
            outer = max(men, key=lambda m: self.at[m].x * side.value)
            rules = self.tasks[outer].rules
            pull = next((n for n, r in enumerate(rules) if r.way is BlockWay.PULL), None)
            taken = {*self.owners, *self._reserved, *self.climbs.values()}
            edge = [d for d in self.front.overhangs(side) if d.label not in taken]
            if pull is None or not edge or any(self.climbs.get(m) for m in men):
                continue
            self.owners[defender].remove(outer)
            self.choice[outer] = pull, NOBODY
            self.climbs[outer] = edge[0].label

    def wing_lets_go(self) -> None:
        """Of a wing and a man of the line on one defender the man of the line goes to a linebacker
        who hangs over his end and is nobody's."""
        for men in list(self.owners.values()):
            inner = [m for m in men if m in self.line and m not in self.interior]
            wing = [m for m in men if m not in self.line]
            if len(men) != 2 or not inner or not wing or self.climbs.get(inner[0]):
                continue
            x = self.at[inner[0]].x
            there = [d for d in self.spare_backers() if abs(d.at.x - x) <= _HINGES_TO]
            if there:
                best = min(there, key=lambda d: (round(abs(d.at.x - x), 3), d.label))
                self.climbs.update({wing[0]: NOBODY, inner[0]: best.label})


def off_line(defenders: tuple[Defender, ...]) -> list[Defender]:
    """Whoever can be climbed to, from left to right."""
    there = [d for d in defenders if d.level is not Level.LINE]
    return sorted(there, key=lambda d: (d.at.x, d.at.y, d.label))

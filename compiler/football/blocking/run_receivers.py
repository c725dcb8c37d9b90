"""Receivers on a run: who cracks, who stalks, and whom (step 5 of `run_scheme`)."""

from __future__ import annotations

from math import inf

from stemline.football.blocking.run_climbs import Climbers
from stemline.football.blocking.run_rules import BlockWay
from stemline.football.defence.fronts import OVER
from stemline.football.defenders import Defender, Level

_MIDDLE = 2.0
"""Yards past the ball within which a man of the secondary is in reach of the receivers of both
sides. Common practice."""
_MOST = 2
"""Men that one defender is blocked by at most."""


class Receivers(Climbers):
    """Gives each his man in ``climbs``."""

    def _is_free(self, defender: Defender) -> bool:
        return (
            defender.label not in self.owners
            and defender.label not in self._reserved
            and defender.label not in self.climbs.values()
        )

    def _receivers(self) -> None:
        """Cracks from the inside out, then the man over each of the others, and of who has nobody
        to crack, of all pairs the nearest first; who is left over runs off a deep man of his
        side."""
        for man in sorted(self._waiting(BlockWay.CRACK), key=self.from_ball):
            there = [d for d in self._inside(man) if self._is_free(d)]
            rule = self.tasks[man].rules[self.choice[man][0]]
            if rule.target is not None:  # that man, or nobody
                there = [d for d in self._described(man, rule) if d in there]
            if there:
                self.climbs[man] = there[0].label
        waiting = [*self._waiting(BlockWay.STALK), *self._waiting(BlockWay.CRACK)]
        while waiting:
            pairs = [
                (man, d)
                for man in waiting
                for d in self._stalked(man, [d for d in self._over(man) if self._is_free(d)])
            ]
            if not pairs:
                break
            man, defender = min(pairs, key=lambda pair: self._nearer(*pair))
            self.climbs[man] = defender.label
            waiting.remove(man)
        for man in sorted(self._waiting(BlockWay.STALK), key=self.from_ball):
            deep = [
                d for d in self._over(man)
                if d.level is Level.DEEP and self._can_help(d) and d.label not in self._reserved
            ]  # fmt: skip
            if deep:
                self.climbs[man] = min(deep, key=lambda d: self._nearer(man, d)).label

    def _aimed(self, man: str, there: list[Defender]) -> list[Defender]:
        """Of those whom a receiver can block the ones whom his text describes, else all of them."""
        rule = self.tasks[man].rules[self.choice[man][0]]
        if rule.target is None:
            return there
        wanted = self._described(man, rule)
        return [d for d in there if d in wanted] or there

    def _stalked(self, man: str, there: list[Defender]) -> list[Defender]:
        """Whom he stalks of those: the first whom his text describes, else anybody."""
        rule = self.tasks[man].rules[self.choice[man][0]]
        if rule.way is not BlockWay.STALK or rule.target is None:
            return self._aimed(man, there)
        return [d for d in self._described(man, rule) if d in there][:1] or there

    def _waiting(self, way: BlockWay) -> list[str]:
        """Receivers who block so and have nobody yet: the second level is asked more than once."""
        return [
            m
            for m in self.tasks
            if self._way(m) is way and not self._owned(m) and not self.climbs.get(m)
        ]

    def _inside(self, man: str) -> tuple[Defender, ...]:
        """Whom a receiver can crack on his side of the ball, the nearest first."""
        at = self.at[man]
        there = [
            d for d in self.front.defenders
            if d.level is not Level.LINE and self._can_crack(man, d)
        ]  # fmt: skip
        return tuple(sorted(there, key=lambda d: (round(d.at.distance(at), 3), d.label)))

    def _is_inside(self, man: str, defender: str) -> bool:
        return any(d.label == defender for d in self._inside(man))

    def _over(self, man: str) -> tuple[Defender, ...]:
        """Whom a receiver can stalk: nobody of the box, and nobody across the formation; who was
        sent to crack only the man over him."""
        x = self.at[man].x
        side = self.front.out(x).value
        reach = OVER if self._way(man) is BlockWay.CRACK else inf
        return tuple(
            d
            for d in self.front.defenders
            if d.level is not Level.LINE
            and d not in self.front.second_level
            and d.at.x * side >= (-_MIDDLE if d.level is Level.DEEP else 0.0)
            and abs(d.at.x - x) <= reach
        )

    def _nearer(self, man: str, to: Defender) -> tuple[float, tuple[float, float, str], str]:
        """How near a receiver is to a man he may stalk: sideways first, for he has to get by
        nobody on the way up the field; for a screen how far it is by him to the throw."""
        away = abs(to.at.x - self.at[man].x) + to.at.y / 4
        if self.throw is not None:
            away = self.at[man].distance(to.at) + to.at.distance(self.throw)
        return round(away, 3), self.from_ball(man), to.label

    def _can_help(self, defender: Defender) -> bool:
        """Whether only one has a man of the secondary so far."""
        return list(self.climbs.values()).count(defender.label) < _MOST

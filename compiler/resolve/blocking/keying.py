"""Who is read: a described man, or the one whom the blocking of the call leaves.

Count first: with one blocker short every man of the box but one is blocked, and that one is read;
what is left beside him is the end man on the backside, whom the fake holds. Common practice, no
published source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from stemline.football.blocking.block_names import UNBLOCKED
from stemline.football.blocking.run_scheme import Scheme
from stemline.football.defence.described import Described
from stemline.football.defence.fronts import HEAD_UP, Front
from stemline.football.defenders import Defender
from stemline.football.field import Side

Solve = Callable[[Iterable[str]], Scheme]
"""The blocks of the call where the men of these labels are left."""


def read(front: Front, target: Described, solve: Solve) -> tuple[Defender, ...]:
    """Who answers a key's description, best first.

    An unblocked man is the one of his side (the backside where none is said) whose being left
    gets all others of the box blocked: of two who do, the one whom the rules leave of themselves,
    then the inner one.
    """
    if target.what != UNBLOCKED:
        return front.read_as(target)
    side = target.side or front.toward.other
    without = solve(())
    blocked = {label for b in without.blocks for label in (b.defender, b.climb)}

    def cost(defender: Defender) -> tuple[int, bool, float, str]:
        left = _unheld(front, solve((defender.label,)))
        away = round(abs(defender.at.x), 3)
        return len(left), defender.label in blocked, away, defender.label

    return tuple(sorted(_there(front, side), key=cost))


def _there(front: Front, side: Side) -> tuple[Defender, ...]:
    """Who can be read on a side: the box behind the line, a man over the ball too, the end man on
    the line, and who hangs over the edge."""
    behind = [d for d in front.second_level if d.at.x * side.value >= -HEAD_UP]
    ends = [d for d in front.first_level if d.at.x * side.value > HEAD_UP]
    last = sorted(ends, key=lambda d: (-d.at.x * side.value, d.label))[:1]
    there = (*behind, *last, *front.overhangs(side))
    return tuple({d.label: d for d in there}.values())


def _unheld(front: Front, solved: Scheme) -> tuple[str, ...]:
    """The men left of the box without the end man on the backside."""
    held = [d.label for d in front.described(Described("end man on line", front.toward.other), 0.0)]
    return tuple(label for label in solved.free if label not in held[:1])


def left_instead(front: Front, target: Described, man: str, solve: Solve) -> tuple[str, ...]:
    """Who of the box is left though ``man`` is read, where another man of that side is the one to
    read: the blocking then does not leave the key, but them."""
    left = _unheld(front, solve((man,) if man else ()))
    best = next(iter(read(front, replace(target, what=UNBLOCKED), solve)), None)
    if best is None or len(_unheld(front, solve((best.label,)))) >= len(left):
        return ()
    return left

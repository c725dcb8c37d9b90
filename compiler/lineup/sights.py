"""What a quarterback sees at the line, asked of a look that is lined up against his men.

Distances in yards. Common practice throughout, no published source.
"""

from __future__ import annotations

from stemline.football.conditions import LookWord
from stemline.football.defence.fronts import HEAD_UP, line_of, overhangs, wings
from stemline.football.defenders import Defence, Defender
from stemline.football.field import Side
from stemline.football.play import Man
from stemline.lineup.lined_up import LinedUp
from stemline.lineup.shows import PRESS_DEPTH, widest
from stemline.playbook.kill_definitions import (
    BoxCount,
    HasTechnique,
    IsLook,
    Leverage,
    Plays,
    Shows,
    Sight,
    Sights,
)

BOX_DEEP, BOX_WIDE = 6.0, 2.0
"""How deep off the line and how far outside its end men a defender is counted in the box before the
snap. Common practice; a run is blocked against who can be at the hole, which is nearer in."""
_ROUNDING = 1e-6


def in_box(defence: Defence, picture: LinedUp) -> tuple[Defender, ...]:
    """The men of the box: off the line to six deep, to two outside the end men of the line."""
    line = [man.snap.x for man in line_of(picture.men)] or [0.0]
    left, right = min(line) - BOX_WIDE, max(line) + BOX_WIDE
    return tuple(
        d
        for d in defence.defenders
        if left - _ROUNDING <= d.at.x <= right + _ROUNDING and d.at.y <= BOX_DEEP + _ROUNDING
    )


def seen(when: Sights, defence: Defence, picture: LinedUp) -> bool:
    """Whether a look shows all that a kill waits for."""
    return all(any(_seen(sight, defence, picture) for sight in choice) for choice in when)


def _seen(sight: Sight, defence: Defence, picture: LinedUp) -> bool:
    match sight:
        case BoxCount(least, most):
            count = len(in_box(defence, picture))
            return least <= count and (most is None or count <= most)
        case Shows(look):
            return look in {LookWord(word) for word in defence.shows}
        case IsLook(key):
            return defence.name.casefold() == key
        case HasTechnique(technique, side):
            way = picture.side(side).value if side is not None else 0
            return any(d.technique == technique and d.at.x * way >= 0 for d in defence.defenders)
        case Plays(who, side, how):
            return _stands(who, picture.side(side), how, defence, picture)


def _stands(who: str, side: Side, how: Leverage, defence: Defence, picture: LinedUp) -> bool:
    """How the corner or the overhang of a side stands to the receiver he is nearest to."""
    man = widest(defence, side) if who == "corner" else _overhang(side, defence, picture)
    if man is None:
        return False
    if how in (Leverage.PRESS, Leverage.OFF):
        return (man.at.y <= PRESS_DEPTH) is (how is Leverage.PRESS)
    his = _receiver(man, side, picture, outmost=who == "corner")
    if his is None:
        return False
    outside = (man.at.x - his.snap.x) * side.value
    return outside > HEAD_UP if how is Leverage.OUTSIDE else outside < -HEAD_UP


def _overhang(side: Side, defence: Defence, picture: LinedUp) -> Defender | None:
    """The inmost man off the line who hangs over the edge on that side."""
    edge = max((man.snap.x * side.value for man in line_of(picture.men)), default=0.0)
    close = wings(picture.men)
    wide = tuple(m.snap.x for m in picture.men if m.rank is not None and m.label not in close)
    return next(iter(overhangs(defence.defenders, side, edge, wide)), None)


def _receiver(man: Defender, side: Side, picture: LinedUp, *, outmost: bool) -> Man | None:
    """A corner's is the first from outside; an overhang's the nearest."""
    there = [m for m in picture.men if m.rank is not None and m.rank.side is side]
    if outmost:
        return max(there, key=lambda m: (m.snap.x * side.value, m.label), default=None)
    return min(there, key=lambda m: (abs(m.snap.x - man.at.x), m.label), default=None)

"""Runs and protections are drawn close: the box, the second level, the first yards of the run.

What happens there is small, so a picture of it may not spend its width on empty field. Where the
men out wide would make it too wide, the largest stretches of field without a man are closed up
and the line of scrimmage shows a break at each. Paths end at the picture's edge: an arrow says
that the man runs on.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from itertools import pairwise

from stemline.football.play import Assignment, Kind, Man, Play
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.picture.paper.fold import ClosedUp, Fold
from stemline.theme import Size

_AHEAD = {
    (Kind.RUN, Size.FULL): 8.0,
    (Kind.RUN, Size.QUARTER): 6.5,
    (Kind.RUN, Size.THUMB): 5.5,
    (Kind.PASS, Size.FULL): 6.5,
    (Kind.PASS, Size.QUARTER): 6.0,
    (Kind.PASS, Size.THUMB): 5.5,
}
"""Yards past the line that a close picture shows: of a run, and of a protection."""
_AT_THE_LINE = 1.0
"""The same of a pass without a look: the ball changes hands behind the line."""
_BEYOND = 2.5
"""Yards past the break of a route that are still shown."""
_DEEPEST = 12.0
"""No route makes a close picture deeper than this."""
_WIDE = {
    (Kind.RUN, Size.FULL): 30.0,
    (Kind.RUN, Size.QUARTER): 22.0,
    (Kind.RUN, Size.THUMB): 19.0,
    (Kind.PASS, Size.FULL): 27.0,
    (Kind.PASS, Size.QUARTER): 21.0,
    (Kind.PASS, Size.THUMB): 18.0,
}
"""Yards across that a close picture shows before empty field is closed up."""
_INSIDE = 1.0
"""Yards in front of the end line at which a deep path is stopped."""
_BOX = 6.0
"""Yards to each side of the ball that are never closed up."""
_KEPT = {Size.FULL: 2.4, Size.QUARTER: 1.4, Size.THUMB: 1.0}
"""Yards that are left of a closed-up stretch, for the break and for words."""
_WORTH = 1.5
"""Yards that closing up must save, else it is not done."""
_ROOM = {Size.FULL: 1.5, Size.QUARTER: 1.1, Size.THUMB: 0.9}
"""Yards round a man that belong to him and are not closed up."""


def ahead(play: Play, size: Size) -> float:
    """Yards past the line that a close picture of ``play`` shows: more where a route that goes
    with a run breaks deeper."""
    if play.kind is Kind.PASS and play.defence is None:
        return _AT_THE_LINE
    taught = [
        mark.yards + _BEYOND
        for task in play.assignments
        if task.path is not None and not task.hits
        for mark in task.marks
    ]
    return max([_AHEAD[play.kind, size], *(min(y, _DEEPEST) for y in taught)])


def closed_up(play: Play, size: Size) -> tuple[Play, Fold]:
    """The play as a close picture of ``size`` shows it: paths cut, empty field taken out."""
    top = ahead(play, size)
    cut = replace(play, assignments=tuple(_cut(task, top) for task in play.assignments))
    fold = _fold(cut, size)
    return (_mapped(cut, fold.point) if fold.gaps else cut), fold


def inside_end_line(play: Play) -> Play:
    """The play with no path drawn past the end line, where the field says how far it is: a man
    who is told to go deep stays in the end zone."""
    if play.field.end is None:
        return play
    top = play.field.end - _INSIDE

    def kept(at: Point) -> Point:
        return at if at.y <= top else replace(at, y=top)

    tasks = tuple(
        replace(
            task,
            path=_below(task.path, top) if task.path else None,
            branches=tuple(replace(b, path=_below(b.path, top)) for b in task.branches),
        )
        for task in play.assignments
    )
    return replace(
        play,
        assignments=tasks,
        spots=tuple(replace(s, at=kept(s.at)) for s in play.spots),
        reads=tuple(replace(r, at=kept(r.at)) for r in play.reads),
        pressure=tuple(replace(r, at=kept(r.at)) for r in play.pressure),
        claims=tuple(replace(c, points=tuple(map(kept, c.points))) for c in play.claims),
    )


def _cut(task: Assignment, top: float) -> Assignment:
    branches = tuple(replace(b, path=_below(b.path, top)) for b in task.branches)
    path = task.path
    if path is not None and path.ending is Ending.RUN:
        path = _below(path, top)
    return replace(task, path=path, branches=branches)


def _below(path: Path, top: float) -> Path:
    """The path up to where it first passes ``top``."""
    for index, (a, b) in enumerate(pairwise(path.corners)):
        if b.y > top >= a.y:
            at = a + (b - a).scaled((top - a.y) / (b.y - a.y))
            return replace(path, legs=(*path.legs[:index], Leg(at)))
    return path


def _fold(play: Play, size: Size) -> Fold:
    """Closes up the emptiest stretches first, as many as it takes and no more."""
    places = sorted({x for man in play.men for x in (man.at.x, man.snap.x)} | set(_marked(play)))
    over = places[-1] - places[0] - _WIDE[play.kind, size]
    found = (gap for side in (-1, 1) for gap in _empty(places, side, size))
    taken: list[ClosedUp] = []
    for gap in sorted(found, key=lambda gap: (-round(gap.saved, 6), gap.start)):
        if over < _WORTH or gap.saved < _WORTH:
            break
        if gap.saved > over:
            gap = replace(gap, kept=gap.kept + gap.saved - over)
        taken.append(gap)
        over -= gap.saved
    return Fold(tuple(sorted(taken, key=lambda gap: (gap.side, -gap.start))))


def _marked(play: Play) -> Iterable[float]:
    """Where something is drawn besides men: defenders in reach, and the ends of paths."""
    if play.defence is not None:
        yield from (d.at.x for d in play.defence.defenders)
    for task in play.assignments:
        if task.path is not None:
            yield task.path.end.x


def _empty(places: Iterable[float], side: int, size: Size) -> Iterable[ClosedUp]:
    """The stretches without a man on one side, outside the box."""
    room, kept = _ROOM[size], _KEPT[size]
    outside = sorted(x * side for x in places if x * side > _BOX)
    for a, b in pairwise((_BOX - room, *outside)):
        if b - a - 2 * room > kept:
            yield ClosedUp(side, a + room, b - room, kept)


def _mapped(play: Play, to: Callable[[Point], Point]) -> Play:
    look = play.defence
    if look is not None:
        men = tuple(
            replace(
                d,
                at=to(d.at),
                duty=replace(d.duty, to=to(d.duty.to)) if d.duty and d.duty.to else d.duty,
            )
            for d in look.defenders
        )
        look = replace(look, defenders=men)
    return replace(
        play,
        men=tuple(_man(man, to) for man in play.men),
        assignments=tuple(_task(task, to) for task in play.assignments),
        spots=tuple(replace(s, at=to(s.at)) for s in play.spots),
        reads=tuple(replace(r, at=to(r.at)) for r in play.reads),
        pressure=tuple(replace(r, at=to(r.at)) for r in play.pressure),
        claims=tuple(replace(c, points=tuple(map(to, c.points))) for c in play.claims),
        defence=look,
    )


def _man(man: Man, to: Callable[[Point], Point]) -> Man:
    return replace(man, at=to(man.at), snap=to(man.snap))


def _task(task: Assignment, to: Callable[[Point], Point]) -> Assignment:
    motion = task.motion
    return replace(
        task,
        path=_path(task.path, to) if task.path else None,
        climb=_path(task.climb, to) if task.climb else None,
        branches=tuple(
            replace(b, path=_path(b.path, to), leaves=to(b.leaves)) for b in task.branches
        ),
        marks=tuple(replace(m, at=to(m.at)) for m in task.marks),
        motion=replace(motion, path=_path(motion.path, to)) if motion else None,
        hits=tuple(replace(h, at=to(h.at)) for h in task.hits),
    )


def _path(path: Path, to: Callable[[Point], Point]) -> Path:
    legs = tuple(replace(leg, to=to(leg.to)) for leg in path.legs)
    return replace(path, start=to(path.start), legs=legs)

"""The backfield of a pass close, where the ball changes hands there more than once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations

from stemline.book.content.page import Entry
from stemline.football.play import Assignment, Kind, Play
from stemline.football.timing.ball_clock import BallMoment, ball_moments
from stemline.football.timing.levels import LEVELS
from stemline.geometry.paths import Ending

_NEAR = 4.0
"""Yards between two exchanges that cannot be told apart in a picture of the whole pass."""
_WIDE = 8.0
"""Yards to each side of the ball that are shown."""
_DEEP = -9.0
"""Yards from the line of the deepest exchange that is shown."""
HEADED = "Ball behind the line"


def backfield(play: Play, id_: str, level: str) -> Iterator[Entry]:
    """A close picture of a pass whose ball changes hands at two places near each other, with the
    moments by the figures of ``level``; none for any other play."""
    if play.kind is not Kind.PASS or not play.ball_men:
        return
    moments = [m for m in ball_moments(play, LEVELS[level]) if _behind(m)]
    if any(a.taken.distance(b.taken) <= _NEAR for a, b in combinations(moments, 2)):
        close = _only_behind(play, moments)
        yield Entry(f"{id_}-hands", HEADED, close, listed=False, aside=_told(moments))


def _behind(moment: BallMoment) -> bool:
    return _DEEP <= moment.taken.y <= 0.0 and abs(moment.taken.x) <= _WIDE


def _told(moments: Sequence[BallMoment]) -> str:
    """When who has it: "R has it at 0.7 s, Q at 1.9 s"."""
    first, *later = (f"{m.exchange.taker} at {m.there:.1f} s" for m in moments)
    return ", ".join((first.replace(" at ", " has it at "), *later))


def _only_behind(play: Play, moments: Sequence[BallMoment]) -> Play:
    """The play with the line and those who handle the ball or block near it, and nothing else."""
    hands = {man for m in moments for man in (m.exchange.giver, m.exchange.taker)}
    kept = {a.man for a in play.assignments if a.man in hands or _blocks(a, play)}
    return replace(
        play,
        men=tuple(man for man in play.men if man.label in kept),
        assignments=tuple(a for a in play.assignments if a.man in kept),
        exchanges=tuple(m.exchange for m in moments),
        spots=(),
        reads=(),
        pressure=(),
        alerts=(),
        claims=(),
        hot=(),
        nobody=(),
        becomes=(),
    )


def _blocks(task: Assignment, play: Play) -> bool:
    man = play.man(task.man)
    if man.interior:
        return True
    near = abs(man.snap.x) <= _WIDE
    return near and task.path is not None and task.path.ending is Ending.BLOCK

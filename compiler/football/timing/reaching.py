"""Which defenders can be at the man with the ball on a run before it has gained what it is for.

A run is blocked in the box, and outside it whoever is near enough has to be somebody's too: he is
blocked, or he is the carrier's. Who that is hangs on where the ball goes and on how long it takes:
a reverse gives a safety time that a sneak does not give to a linebacker.
"""

from __future__ import annotations

from collections.abc import Collection
from functools import lru_cache
from itertools import pairwise

from stemline.football.defenders import Defence, Defender, Level
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.football.rulebook.rules import custom
from stemline.football.timing.levels import HIGH_SCHOOL, REMEMBERED
from stemline.football.timing.men import run_path
from stemline.football.timing.running import Timeline, runner
from stemline.geometry.paths import Point

GAINED = custom(3.0, "a run that has its three yards is ahead of the chains")
"""Yards past the line up to which a defender who comes to the ball is in reach of the run."""
NEAR = custom(4.0, "in traffic a carrier is slower than on the clock: who is near meets him")
"""Yards from the carrier's way, up to ``GAINED``, within which a man is in reach whatever the clock
says."""
ARMS = custom(1.0, "a step and both arms")
"""Yards from the carrier at which he is tackled."""
SEES = {
    Level.LINE: custom(0.25, "he goes with the snap"),
    Level.SECOND: custom(0.6, "he reads a lineman, then steps"),
    Level.DEEP: custom(1.1, "he is a pass defender until he sees the ball carried"),
}
"""Seconds from the snap until a defender runs to the ball, by where he stands."""
_STEP = 0.5
"""Yards along the carrier's way from one place where they may meet to the next."""


def reaching(play: Play, defence: Defence, taken: Collection[str]) -> tuple[str, ...]:
    """The labels of defenders who are not in ``taken`` and can be at the carrier in time, the
    first who can be there first; none where nobody is known to carry the ball.

    All men run as at one level: a faster carrier has faster men after him.
    """
    task = next((a for a in play.assignments if a.man == play.carrier), None)
    if task is None or task.path is None or not task.path.legs:
        return ()
    way = _places(run_path(play, task, task.path, HIGH_SCHOOL))
    there = [(_spare(d, way), d.label) for d in defence.defenders if d.label not in taken]
    return tuple(label for spare, label in sorted(there) if spare <= 0)


@lru_cache(maxsize=REMEMBERED)
def _places(line: Timeline) -> tuple[tuple[Point, float], ...]:
    """Where the carrier is and when, from the line on."""
    points = [Point(float(x), float(y)) for x, y in line.points]
    made: list[tuple[Point, float]] = []
    done = 0.0
    for a, b in pairwise(points):
        far = a.distance(b)
        steps = max(1, round(far / _STEP))
        for n in range(1, steps + 1):
            at = a + (b - a).scaled(n / steps)
            if 0.0 <= at.y <= GAINED.value:
                made.append((at, line.when(done + far * n / steps)))
        done += far
    return tuple(made)


def _spare(defender: Defender, way: tuple[tuple[Point, float], ...]) -> float:
    """Seconds that the carrier is ahead of a defender where he is least ahead; at most 0 for one
    who can be there."""
    position = Position.WIDEOUT if defender.level is Level.DEEP else Position.BACK
    speed, sees = runner(HIGH_SCHOOL, position), SEES[defender.level].value
    least = float("inf")
    for at, time in way:
        far = defender.at.distance(at)
        comes = sees + speed.time(max(0.0, far - ARMS.value)) - time
        least = min(least, comes, 0.0 if far <= NEAR.value else least)
    return round(least, 3)

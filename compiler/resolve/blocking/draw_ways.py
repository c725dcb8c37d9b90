"""The ways of a draw: the quarterback's drop, and the back who waits and takes the ball there."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.blocking.carrying import mesh, stands_wide
from stemline.football.field import Side
from stemline.football.offence.quarterback import DROPS
from stemline.football.play import Assignment, Man, Play
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.geometry.paths import Ending, Leg, Path, Point

# Yards; common practice, no published source.
_TOWARD = 1.0
"""To the back's side: where the drop ends, so that the back takes one step to it."""
_BESIDE = (0.35, 0.6)
"""From the quarterback to the ball that he reaches out: to the back's side, and in front."""
_BEHIND = 0.5
"""To each side: a back no farther out is behind him, and he drops to the side the run leaves."""


@dataclass(frozen=True)
class Draw:
    """The quarterback's ``drop``, where the ball ``meets`` the back, and his whole ``run``."""

    drop: Path
    meets: Point
    run: Path


def drawn(play: Play, passer: Man, toward: Side) -> Draw | None:
    """The ways of a draw: a quarterback who reads nobody, told a drop, who hands the ball to a back
    standing behind the line; None for any other run."""
    step = next((s for s in play.feet if s.name in DROPS), None)
    task = play.assignment(play.carrier)
    if step is None or task.path is None or not _plain(play, task) or stands_wide(passer):
        return None
    from stemline.football.timing.throwing import clock  # numbers, which no list of calls loads

    back = play.man(play.carrier)
    out = back.snap.x - passer.snap.x
    side = (1 if out > 0 else -1) if abs(out) > _BEHIND else -toward.value
    down = clock((step,), passer.snap, toward, HIGH_SCHOOL)[0].at
    down = Point(down.x + side * _TOWARD, down.y)
    if abs(out) <= _BEHIND:  # the back's way up is his own: the ball is reached to him
        meets = Point(down.x - side * _BESIDE[0], down.y + _BESIDE[1])
    else:
        meets = Point(down.x + side * _BESIDE[0], down.y + _BESIDE[1])
    old = mesh(back, passer)
    rest = tuple(leg for leg in task.path.legs if leg.to not in old and leg.to.y > meets.y)
    run = Path(task.path.start, (Leg(meets), *rest), task.path.ending)
    return Draw(Path(passer.snap, (Leg(down),), Ending.STAND), meets, run)


def _plain(play: Play, carrier: Assignment) -> bool:
    """Whether the ball goes from his hands to the carrier's, who stands still at the snap, and
    nothing else is said of it."""
    moving = carrier.motion is not None and carrier.motion.running
    read = any(key.choices for key in play.keys)
    once = len(play.exchanges) == 1 and not play.exchanges[0].said
    return once and not read and not moving and not play.handoffs

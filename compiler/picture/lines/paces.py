"""When each man is where on the lines that are drawn for him.

A drawn line is not quite the path that is run: it goes round symbols, keeps a lane beside another
and may be closed up. So a moment goes with a share of the length: who has run half his path is
half way along his line. The first moment of a line is when he starts, the last when he is there.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from stemline.football.offence.quarterback import MOVING
from stemline.football.play import Assignment, Branch, Kind, Motion, Play
from stemline.football.timing.levels import PACE, STILL, PlayingLevel
from stemline.football.timing.men import run_path
from stemline.football.timing.running import Timeline
from stemline.football.timing.throwing import clock
from stemline.geometry.curves import nearest
from stemline.geometry.paths import Path, Point, length, polyline
from stemline.picture.lines.route_lines import BLOCK, CARRY, CLIMB, FAKE, HELD, SET, LineRun

_WORDS = {CARRY: "carry", HELD: "held", BLOCK: "block", CLIMB: "climb", SET: "set", "": "route"}
"""What a line is called after its man's label, by its pen."""


@dataclass(frozen=True)
class Pace:
    """A man's moments on one line, in seconds after the snap.

    ``run`` is his timeline and ``first`` to ``last`` the yards of it that are drawn; without one
    he goes evenly. ``base`` tells his own path from one that a look would have him run.
    """

    man: str
    start: float
    end: float
    run: Timeline | None = None
    first: float = 0.0
    last: float = 0.0
    base: bool = True

    def at(self, share: float) -> float:
        """The moment at which so much of the line (0 to 1) is behind him."""
        if share <= 0.0:
            return self.start
        if share >= 1.0:
            return self.end
        if self.run is None:
            return self.start + share * (self.end - self.start)
        moment = self.run.when(self.first + share * (self.last - self.first))
        return min(max(moment, self.start), self.end)


def named(runs: Iterable[LineRun], play: Play) -> tuple[LineRun, ...]:
    """The runs, each called by its man's label and what it is: "H-route", "H-branch-1"."""
    return tuple(replace(run, name=f"{run.man}-{_word(run, play)}") for run in runs)


def _word(run: LineRun, play: Play) -> str:
    if run.branch is not None:
        branches = play.assignment(run.man).branches
        return f"branch-{next(i for i, b in enumerate(branches, 1) if b is run.branch)}"
    if run.pen == FAKE:
        passer = play.passer
        drops = play.kind is Kind.PASS and passer is not None and passer.label == run.man
        return "drop" if drops else "fake"
    return _WORDS[run.pen]


def motion_name(man: str) -> str:
    """What the line of a man's motion is called."""
    return f"{man}-motion"


def paces(play: Play, runs: Iterable[LineRun], level: PlayingLevel) -> dict[str, Pace]:
    """The pace of each named run, and of each motion, by its name.

    ``play`` is as it is played, not as a close picture shows it.
    """
    made = {run.name: _pace(run, play, level) for run in runs}
    for task in play.assignments:
        if task.motion is not None:
            made[motion_name(task.man)] = _moving(task.man, task.motion)
    return made


def _pace(run: LineRun, play: Play, level: PlayingLevel) -> Pace:
    task = next((t for t in play.assignments if t.man == run.man), None)
    if run.branch is not None and task is not None:
        return _branch(task, task.branches[_number(run) - 1], play, level)
    if task is None or task.path is None or not task.path.legs:
        return _launch(run.man, play, level)
    own = run_path(play, task, task.path, level)
    if run.pen == CLIMB and task.climb is not None:
        late = own.arrives - level.start.value
        on = run_path(play, replace(task, motion=None), task.climb, level)
        return _shifted(_of(run.man, on, task.climb), late)
    return _of(run.man, own, task.path)


def _number(run: LineRun) -> int:
    return int(run.name.rpartition("-")[2])


def _of(man: str, run: Timeline, path: Path) -> Pace:
    return Pace(man, run.start, run.arrives, run, 0.0, length(polyline(path)))


def _shifted(pace: Pace, by: float) -> Pace:
    """A second part of a way, evenly: it is short."""
    return Pace(pace.man, pace.start + by, pace.end + by)


def _branch(task: Assignment, branch: Branch, play: Play, level: PlayingLevel) -> Pace:
    """A branch is drawn from where it leaves the man's own path."""
    run = run_path(play, task, branch.path, level)
    first = far_along(polyline(branch.path), branch.leaves)
    whole = length(polyline(branch.path))
    return Pace(task.man, run.when(first), run.arrives, run, first, whole, base=False)


def far_along(points: Sequence[Point], at: Point) -> float:
    """How far along a polyline its place nearest to ``at`` is, in yards."""
    best, found, far = math.inf, 0.0, 0.0
    for a, b in pairwise(points):
        near, share = nearest(a, b, at)
        if near.distance(at) < best:
            best, found = near.distance(at), far + share * a.distance(b)
        far += a.distance(b)
    return found


def _launch(man: str, play: Play, level: PlayingLevel) -> Pace:
    """A passer on his way to where he throws; who is told nothing stays where he is."""
    stands = next((m.snap for m in play.men if m.label == man), None)
    if stands is None:
        return Pace(man, 0.0, 0.0)
    feet = [f for f in clock(play.feet, stands, play.strong, level) if f.name in MOVING]
    return Pace(man, level.start.value, feet[-1].time if feet else level.start.value)


def _moving(man: str, motion: Motion) -> Pace:
    """A motion, evenly: until the snap, or until he has been still long enough."""
    takes = length(motion.path.corners) / (motion.speed or PACE)
    end = 0.0
    if not motion.running:
        end = -(STILL if motion.set_for is None else motion.set_for)
    start = end - takes if motion.starts is None else -motion.starts
    return Pace(man, min(start, end), end)

"""A quarterback who throws on the run: the way he takes from where he stands to his launch."""

from __future__ import annotations

from stemline.football.offence.quarterback import MOVING
from stemline.football.play import Kind, Play
from stemline.football.timing.levels import LEVELS
from stemline.football.timing.throwing import clock
from stemline.geometry.paths import Leg, Path, Point

_DEEPEST = 0.45
"""Part of his way across at which he is deepest; from there he comes downhill to the line."""
_DIP = 0.6
"""Yards deeper than his launch that he gets on the way. Common practice, no published source."""
_TURN = 2.0


def launch_path(play: Play, start: Point, low: float) -> tuple[str, Path] | None:
    """The passer's label and his way to the last place he runs to, nowhere deeper than ``low``;
    None where he drops back, and where the playbook gives him a path of his own."""
    if play.kind is not Kind.PASS or not any(step.name in MOVING for step in play.feet):
        return None
    passer = play.passer
    if passer is None:
        return None
    task = next((t for t in play.assignments if t.man == passer.label), None)
    if task is not None and task.path is not None and task.path.legs:
        return None
    # a level changes when he is there, not where
    level = next(iter(LEVELS.values()))
    feet = clock(play.feet, start, play.strong, level)
    at = next(foot.at for foot in reversed(feet) if foot.name in MOVING)
    dip = Point(start.x + _DEEPEST * (at.x - start.x), max(min(start.y, at.y) - _DIP, low))
    return passer.label, Path(start, (Leg(dip, _TURN), Leg(Point(at.x, max(at.y, low)))))

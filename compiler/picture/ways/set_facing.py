"""Where a pass blocker looks when he is set."""

from __future__ import annotations

import math

from stemline.football.play import Assignment, Play
from stemline.geometry.paths import Ending, Point


def set_facing(task: Assignment, play: Play) -> Point | None:
    """Which way a man faces who has set for a pass: to the rusher he takes. None for others."""
    path = task.path
    if path is None or path.ending is not Ending.BLOCK or not task.hits or play.defence is None:
        return None
    way = task.hits[0].at - path.end
    far = math.hypot(way.x, way.y)
    return way.scaled(1 / far) if far > 1e-6 else None

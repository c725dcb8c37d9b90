"""Do two men pass close to each other near the line? Then the concept's page carries a caution."""

from __future__ import annotations

from stemline.football.play import Play
from stemline.football.timing.levels import PlayingLevel
from stemline.football.timing.men import timelines
from stemline.football.timing.space import Meeting, crossings

CLOSE = 8.0
"""Yards past the line within which men who cross are in the way of linebackers and each other.
Common practice, no published source: shallow crossers and the settle above them lie inside it."""


def paths_cross(play: Play, level: PlayingLevel) -> bool:
    """Whether two men run into each other or brush from the line to `CLOSE` yards past it."""
    return any(
        met.meeting is not Meeting.LOOSE and 0 <= met.at.y <= CLOSE
        for met in crossings(timelines(play, level))
    )

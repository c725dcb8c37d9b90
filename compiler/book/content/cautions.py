"""Which of the code's words on contact belong on a page: those for what is drawn there."""

from __future__ import annotations

from stemline.football.play import Assignment, Kind, Play, Season
from stemline.football.timing.levels import LEVELS, PlayingLevel
from stemline.football.timing.men import timelines
from stemline.football.timing.release import past_line
from stemline.football.timing.space import Meeting, crossings
from stemline.geometry.paths import Ending, polyline

CLOSE = 8.0
"""Yards past the line within which men who cross are in the way of linebackers and each other.
Common practice, no published source: shallow crossers and the settle above them lie inside it."""
RUNS_IN = 2.5
"""Yards toward the ball after which a wide man's block is one from the blind side.
Common practice, no published source: a crack covers three yards and more."""
RUNS_ACROSS = 3.0
"""Yards sideways after which a blocker meets his man on the run: a pull, a kick, a sift.
Common practice, no published source: more than the next lineman but one is away."""


def cautions(plays: tuple[Play, ...], season: Season) -> tuple[str, ...]:
    """The code's rules, in its words, on crossing routes, cracks, blocks made on the run, two men
    who block one, and blocks past the line on a pass."""
    jobs = tuple((a, play) for play in plays for a in play.assignments)
    level = LEVELS[season.level]
    found = (
        season.crossing_contact
        if any(paths_cross(p, level) for p in plays if p.kind is Kind.PASS)
        else "",
        season.past_line if any(_past_line(a, play) for a, play in jobs) else "",
        season.blindside_block if any(_cracks(a, play) for a, play in jobs) else "",
        season.low_block
        if any(_pulls(a, play) for a, play in jobs if play.kind is Kind.RUN)
        else "",
        season.chop_block if any(_two_on_one(play) for play in plays) else "",
    )
    return tuple(words for words in found if words)


def paths_cross(play: Play, level: PlayingLevel) -> bool:
    """Whether two men run into each other or brush from the line to `CLOSE` yards past it."""
    return any(
        met.meeting is not Meeting.LOOSE and 0 <= met.at.y <= CLOSE
        for met in crossings(timelines(play, level))
    )


def _cracks(a: Assignment, play: Play) -> bool:
    """A wide man's block toward the ball, or back toward his own goal line.

    Where his man is known the block's own word says it: a stalk may end inside too.
    """
    if a.path is None or a.path.ending is not Ending.BLOCK or play.man(a.man).rank is None:
        return False
    if a.hits:
        return any(hit.how.startswith("crack") for hit in a.hits)
    back = max(p.y for p in polyline(a.path)) - a.path.end.y
    return abs(a.path.start.x) - abs(a.path.end.x) >= RUNS_IN or back >= RUNS_IN


def _pulls(a: Assignment, play: Play) -> bool:
    """A block by a man of the line or a back with a named man at its end, made on the run."""
    if not a.hits or a.path is None or play.man(a.man).rank is not None:
        return False
    return abs(a.path.end.x - a.path.start.x) >= RUNS_ACROSS


def _past_line(a: Assignment, play: Play) -> bool:
    """A block past the line, by the code's own figure, while a pass may be thrown."""
    return play.kind is Kind.PASS and past_line(play, a) > 0


def _two_on_one(play: Play) -> bool:
    """Whether two assigned blocks meet on one defender: high and low they make a chop block."""
    taken = [d for a in play.assignments for d in {hit.defender for hit in a.hits}]
    return len(taken) > len(set(taken))

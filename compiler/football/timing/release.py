"""When the ball leaves the hand on each throw of a play, and where a blocker is at that moment.

What an official judges is not where a path ends but where a man is when the ball is thrown, or
touched. The moments are the clock's: planning estimates, like all of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from stemline.football.defence.fronts import PRESSED
from stemline.football.defenders import Level as Front
from stemline.football.exchanges import BallMoves, Exchange
from stemline.football.offence.quarterback import FEET
from stemline.football.play import Assignment, Kind, Play, Read, Step
from stemline.football.timing.ball_clock import ball_moments
from stemline.football.timing.clock import TimedRead, Verdict, read_clock
from stemline.football.timing.levels import PlayingLevel
from stemline.football.timing.men import run_path
from stemline.football.timing.running import timeline
from stemline.geometry.paths import Ending, Point
from stemline.source import Span

DOUBLE = 0.8
"""Seconds for which two men stay on a double team before one of them climbs. Common practice, no
published source: until the linebacker comes to it, two or three steps."""


AT_LINE = 1.5
"""Yards past the line within which the man who is met plays on it. Common practice."""

LEVEL = 0.05
"""Yards up the field that are no way forward: less than anybody sees."""
UNSAID = "quick"
"""The foot that throws where the text names none."""


@dataclass(frozen=True)
class Release:
    """One throw: to whom (a spot's, a role's or a man's name) and by which ``men`` it is caught,
    when it leaves and when it is there, in seconds after the snap, and where it is to be caught."""

    target: str
    men: tuple[str, ...]
    thrown: float
    arrives: float
    at: Point
    span: Span

    @property
    def crosses(self) -> bool:
        """Whether it is to be caught past the line."""
        return self.at.y > 0


def releases(play: Play, level: PlayingLevel) -> tuple[Release, ...]:
    """Every throw that a play may make: the shovels on the ball's way, its reads, those under
    pressure, and what a run may throw off its key. Where no order says who is thrown to, there is
    none."""
    given = tuple(_on_its_way(play, level))
    if play.kind is Kind.RUN:
        play = replace(play, reads=tuple(_off_keys(play)), pressure=())
    if not play.reads and not play.pressure:
        return given
    if not play.feet:
        play = replace(play, feet=(Step(UNSAID, FEET[UNSAID]),))
    clock = read_clock(play, level)
    thrown = (_release(look) for look in (*clock.reads, *clock.pressure))
    # One look in both orders is one throw.
    first: dict[tuple[str, float], Release] = {}
    for one in thrown:
        if one is not None:
            first.setdefault((one.target, one.thrown), one)
    return (*given, *first.values())


def _on_its_way(play: Play, level: PlayingLevel) -> Iterator[Release]:
    """Of the exchanges that the coach says those that are passes though nobody throws overhand: a
    shovel to a man in front."""
    if not any(_underhand(x) for x in play.exchanges):
        return
    for moment in ball_moments(play, level):
        x = moment.exchange
        # Who is past the line by then has run on: the clock does not know when he turned for it.
        behind = moment.taken.y <= 0.0
        if _underhand(x) and behind and moment.taken.y - moment.given.y > LEVEL:
            yield Release(x.taker, (x.taker,), moment.leaves, moment.there, moment.taken, x.span)


def _underhand(x: Exchange) -> bool:
    return x.said and x.kind.flies and x.kind is not BallMoves.THROW


def _release(look: TimedRead) -> Release | None:
    if not look.thrown_to:
        return None
    # A ball that would be there before its man is open is held for so long.
    held = max(0.0, -look.off) if look.verdict is Verdict.EARLY else 0.0
    return Release(
        look.read.target, look.read.men, look.thrown + held, look.arrives + held, look.read.at,
        look.read.span,
    )  # fmt: skip


def _off_keys(play: Play) -> Iterator[Read]:
    foot = play.feet[-1].name if play.feet else ""
    for key in play.keys:
        for what, whom, _ in key.choices:
            task = next((a for a in play.assignments if whom in (a.man, a.role)), None)
            if what == "throw" and task is not None and task.path is not None:
                yield Read(
                    1, task.role or task.man, task.path.end, (task.man,), foot, "", "", key.span
                )


def place_at(play: Play, task: Assignment, time: float, level: PlayingLevel) -> Point:
    """Where a man is ``time`` seconds after the snap: on his way, at his block, or on from a double
    team to the next man. One without a path is where he stood at the snap."""
    if task.path is None or not task.path.legs:
        return play.man(task.man).snap
    way = run_path(play, task, task.path, level)
    if task.climb is None or time <= way.arrives + DOUBLE:
        return way.at(time)
    climbs = timeline(task.climb, way.speed, start=way.arrives + DOUBLE)
    return climbs.at(time)


def on_the_line(play: Play, task: Assignment, time: float, level: PlayingLevel) -> bool:
    """Whether he goes to a man of the front, or is on him: the block that every code lets a lineman
    make at once, wherever the code has that man stand. A backer who fills a gap from close behind
    the line is one too: the two meet at the line."""
    if not task.hits or task.path is None or play.defence is None:
        return False
    met = play.defence.defender(task.hits[0].defender)
    front = met.level is Front.LINE or (met.at.y <= PRESSED and _between_tackles(play, met.at.x))
    return front and (task.climb is None or time <= meets_at(play, task, level) + DOUBLE)


def _between_tackles(play: Play, x: float) -> bool:
    return abs(x) <= max((abs(m.snap.x) for m in play.men if m.interior), default=0.0)


def past_line(play: Play, task: Assignment) -> float:
    """Yards past the line at which a man who is no lineman meets whom he blocks; 0 for no block,
    and for one that the play's code takes for one at the line."""
    path = task.path
    if path is None or path.ending is not Ending.BLOCK or not path.legs:
        return 0.0
    allowed = max(play.field.code.block_past.value, AT_LINE)
    return path.end.y if path.end.y > allowed and not play.man(task.man).interior else 0.0


def meets_at(play: Play, task: Assignment, level: PlayingLevel) -> float:
    """When a blocker has come to his first man, in seconds after the snap."""
    assert task.path is not None
    return run_path(play, task, task.path, level).arrives

"""Plays put on the clock, for the tests of time and space: of short texts and of the Herons'."""

from __future__ import annotations

import re
from functools import cache

from resolve.texts import PLAYBOOKS

from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.football.timing.clock import ReadClock, read_clock
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.levels import PlayingLevel as Speeds
from stemline.football.timing.running import Timeline, runner, timeline
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.resolve.expand import expand
from stemline.session import Session
from stemline.source import Source

FAMILY = ("book", "formations", "formations-tight", "motions", "looks", "crossing",
          "dress-crossing")  # fmt: skip
"""The files that the Herons' crossing family needs."""
SKILL = runner(HIGH_SCHOOL, Position.WIDEOUT)


def texts(*texts: str) -> Session:
    """Texts compiled together; what the clock says of them is kept."""
    return Session([Source(f"{n}.play", f"{t}\n") for n, t in enumerate(texts)], "playbook")


@cache
def family(*changes: tuple[str, str]) -> Session:
    """The Herons' crossing family with its looks, some of its lines changed: old and new text."""
    made = []
    for name in FAMILY:
        text = (PLAYBOOKS / "saltmarsh-herons" / f"{name}.play").read_text("utf-8")
        if name == "book":  # families of the files that are left out
            text = re.sub(r"^    sections .*$", "", text, flags=re.MULTILINE)
        made.append(text)
    for old, new in changes:
        assert any(old in text for text in made), old
        made = [text.replace(old, new) for text in made]
    result = texts(*made)
    assert not {d.code for d in result.diagnostics if d.is_error} - {"E666"}, result.diagnostics
    return result


def against(call: str, look: str) -> Play:
    """A call of the family against one of its looks, by name."""
    result = family()
    assert result.book is not None
    made, found = expand(
        result.book, result.calls.by_name[call], BallSpot.MIDDLE, (), look.casefold()
    )
    assert made is not None and made.defence is not None, found
    return made


def plays(result: Session) -> tuple[Play, ...]:
    assert result.season is not None
    return result.season.plays


def clocked(play: Play, level: Speeds = HIGH_SCHOOL) -> ReadClock:
    return read_clock(play, level)


def line(*corners: tuple[float, float], start: float = 0.1, settle: bool = False) -> Timeline:
    """A man of the high-school level who runs a polyline of sharp corners."""
    first, *rest = (Point(x, y) for x, y in corners)
    path = Path(first, tuple(Leg(p) for p in rest), Ending.SETTLE if settle else Ending.RUN)
    return timeline(path, SKILL, start=start, settle=0.3)

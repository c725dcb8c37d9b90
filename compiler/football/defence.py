"""The defence as the offence draws it: a look lined up to one formation.

Distances in yards: x right of the ball as the offence faces, y past the line of scrimmage. A
technique is where a lineman stands on the offence's line, by number (Bryant, "Building a
Championship Football Team", 1960: even is head-up, odd a shoulder).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from stemline.football.field import Side
from stemline.paths import Path, Point
from stemline.source import Span


class Level(Enum):
    """How far back a defender stands: what a blocker meets first, second and never."""

    LINE = "line"
    BOX = "box"
    DEEP = "deep"


class Task(Enum):
    """What a defender is responsible for."""

    RUSH = "rush"
    MAN = "man"
    FLAT = "flat"
    CURL = "curl"
    HOOK = "hook"
    HOLE = "hole"
    ROBBER = "robber"
    QUARTER = "quarter"
    THIRD = "third"
    HALF = "half"


@dataclass(frozen=True)
class Duty:
    """``target`` is the man covered (his letter) or the gap rushed; ``side`` None is the middle."""

    task: Task
    side: Side | None
    target: str


@dataclass(frozen=True)
class Defender:
    """One man of the look. ``technique`` is "" where he is not placed by one.

    ``path`` is where his duty takes him, for the picture; None for a man who covers by eye.
    """

    label: str
    at: Point
    level: Level
    technique: str
    duty: Duty | None
    path: Path | None
    span: Span


@dataclass(frozen=True)
class Look:
    """A named look, lined up. ``strong`` is the side its strength was set to."""

    name: str
    shell: str
    strong: Side
    defenders: tuple[Defender, ...]
    span: Span

    def at_level(self, level: Level) -> tuple[Defender, ...]:
        """Defenders of one level from left to right."""
        chosen = [d for d in self.defenders if d.level is level]
        return tuple(sorted(chosen, key=lambda d: (d.at.x, d.label)))

    @property
    def rushers(self) -> tuple[Defender, ...]:
        return tuple(d for d in self.defenders if d.duty and d.duty.task is Task.RUSH)

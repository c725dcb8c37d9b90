"""What the rule code says of a formation, of a motion and of a call: one rule a file.

A rule whose figure is published, or is the league's own, gives an error when it is broken; one that
rests on a report or on memory gives a warning with the same words and the doubt behind them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from stemline.checks.legality.before_motion import before_motion
from stemline.checks.legality.snap import Snap, When
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Play
from stemline.football.timing.levels import LEVELS, PlayingLevel, level_for

__all__ = [
    "Snap",
    "before_motion",
    "check_call",
    "check_formation",
    "check_snap",
    "check_throws",
]


@cache
def _rules(when: When) -> tuple[Callable[..., Iterator[Diagnostic]], ...]:
    """The rules of this folder that are asked then: ``check_NAME`` of each file that says so."""
    modules: list[Any] = [
        import_module(f"{__name__}.{file.name}") for file in iter_modules(__path__)
    ]
    found = [m for m in modules if getattr(m, "WHEN", None) is when]
    return tuple(getattr(m, f"check_{m.__name__.rpartition('.')[2]}") for m in found)


def check_formation(snap: Snap) -> Iterator[Diagnostic]:
    """Where the men stand when the ball is snapped."""
    for rule in _rules(When.STANDING):
        yield from rule(snap)


def check_snap(snap: Snap) -> Iterator[Diagnostic]:
    """Who moves when the ball is snapped, and how; nothing where nobody has a motion."""
    for rule in _rules(When.MOVING):
        yield from rule(snap)


def check_call(play: Play) -> Iterator[Diagnostic]:
    """What the men do after it."""
    for rule in _rules(When.CALLED):
        yield from rule(play)


def check_throws(play: Play, level: PlayingLevel | None = None) -> Iterator[Diagnostic]:
    """Where they are when the ball is thrown or touched, by the clock of ``level``, the code's
    usual one where none is given."""
    for rule in _rules(When.THROWN):
        yield from rule(play, level or LEVELS[level_for(play.field.code.key)])

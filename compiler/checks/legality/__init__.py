"""What the rule code says of a formation, of a motion and of a call: one rule a file.

A rule whose figure is published, or is the league's own, gives an error when it is broken; one that
rests on a report or on memory gives a warning with the same words and the doubt behind them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from stemline.checks.legality.between import check_between
from stemline.checks.legality.block_past import check_block_past
from stemline.checks.legality.covered import check_covered
from stemline.checks.legality.downfield import check_downfield
from stemline.checks.legality.ends import check_ends
from stemline.checks.legality.exchanged import check_exchanged
from stemline.checks.legality.from_line import check_from_line
from stemline.checks.legality.in_backfield import check_in_backfield
from stemline.checks.legality.in_motion import check_in_motion
from stemline.checks.legality.interior import check_interior
from stemline.checks.legality.line_moves import check_line_moves
from stemline.checks.legality.numbers import check_numbers
from stemline.checks.legality.offside import check_offside
from stemline.checks.legality.on_line import check_on_line
from stemline.checks.legality.passer import check_passer
from stemline.checks.legality.sent_out import check_sent_out
from stemline.checks.legality.set_time import check_set_time
from stemline.checks.legality.snap import COVERED, FOULS, Snap, before_motion
from stemline.checks.legality.toward_line import check_toward_line
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Play
from stemline.football.timing.levels import LEVELS, PlayingLevel, level_for

__all__ = [
    "COVERED",
    "FOULS",
    "Snap",
    "before_motion",
    "check_call",
    "check_formation",
    "check_snap",
    "check_throws",
]

_FORMATION: tuple[Callable[[Snap], Iterator[Diagnostic]], ...] = (
    check_on_line,
    check_in_backfield,
    check_interior,
    check_ends,
    check_covered,
    check_between,
    check_numbers,
)
_MOTION: tuple[Callable[[Snap], Iterator[Diagnostic]], ...] = (
    check_in_motion,
    check_toward_line,
    check_set_time,
    check_line_moves,
    check_from_line,
    check_offside,
)
_CALL: tuple[Callable[[Play], Iterator[Diagnostic]], ...] = (
    check_passer,
    check_sent_out,
    check_exchanged,
)
_CLOCK: tuple[Callable[[Play, PlayingLevel], Iterator[Diagnostic]], ...] = (
    check_downfield,
    check_block_past,
)


def check_formation(snap: Snap) -> Iterator[Diagnostic]:
    """Where the men stand when the ball is snapped."""
    for rule in _FORMATION:
        yield from rule(snap)


def check_snap(snap: Snap) -> Iterator[Diagnostic]:
    """Who moves when the ball is snapped, and how; nothing where nobody has a motion."""
    for rule in _MOTION:
        yield from rule(snap)


def check_call(play: Play) -> Iterator[Diagnostic]:
    """What the men do after it."""
    for rule in _CALL:
        yield from rule(play)


def check_throws(play: Play, level: PlayingLevel | None = None) -> Iterator[Diagnostic]:
    """Where they are when the ball is thrown or touched, by the clock of ``level``, the code's
    usual one where none is given."""
    for rule in _CLOCK:
        yield from rule(play, level or LEVELS[level_for(play.field.code.key)])

"""Does a man who may not catch a pass go too far past the line on one?

Linemen of a screen get out in front of the ball, and the flag depends on where the ball is
thrown: behind the line they may be anywhere in most codes, past it they have a yard or three. A
play that may throw either way is held to the stricter case. A run with a throw added to it is not
looked at: there the ball is gone before the linemen are, which is a matter of time and not of
paths.

Example: a slow screen whose guard climbs to six yards, with a dig as its second look. Keep the
guard at the line until the catch, or take the dig out of the order.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.model import broken
from stemline.diagnostics.model import Diagnostic
from stemline.football.play import Assignment, Kind, Play
from stemline.paths import polyline


def check_downfield(play: Play) -> Iterator[Diagnostic]:
    code = play.field.code
    known = code.downfield
    if play.kind is not Kind.PASS or known.value is None or code.all_eligible:
        return
    if code.downfield_crossing.value and not _crosses(play):
        return
    for task in play.assignments:
        if not play.man(task.man).interior:
            continue
        yards = _deepest(task)
        if yards > known.value:
            yield broken(
                546, known, code, task.span if task.span.line else play.span, man=task.man,
                call=play.call.spoken, yards=f"{yards:.1f}", wanted=f"{known.value:g}",
            )  # fmt: skip


def _crosses(play: Play) -> bool:
    """Whether any look of the quarterback is past the line; without looks, whether a route is."""
    looks = [read.at.y for read in (*play.reads, *play.pressure)]
    if not looks:
        looks = [
            task.path.end.y
            for task in play.assignments
            if task.path is not None and not play.man(task.man).interior
        ]
    return any(y > 0 for y in looks)


def _deepest(task: Assignment) -> float:
    paths = [p for p in (task.path, task.climb) if p is not None]
    return max((at.y for path in paths for at in polyline(path)), default=0.0)

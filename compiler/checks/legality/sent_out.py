"""Does a covered man go out for a pass in this call?

A man on the line inside another one may block like any lineman, on a run and on a pass. What he may
not do is run a route: he may catch nothing, and on a pass that crosses the line he is downfield
like a tackle. So a formation that covers a man is right for the calls that keep him in.

Example: ``Y at call, end, on line`` inside ``Z at call, numbers, on line``, and ``tight end runs
seam``. Write instead ``Z at call, numbers, off line`` where Y is sent out, or let him block.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.covered import E524, covered
from stemline.checks.legality.snap import on
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Kind, Man, Play
from stemline.geometry.paths import Ending

WHEN = When.CALLED


def check_sent_out(play: Play) -> Iterator[Diagnostic]:
    code = play.field.code
    if code.all_eligible or (play.kind is Kind.RUN and not any(key.throws for key in play.keys)):
        return
    for man, other in covered(play.men):
        if goes_out(play, man):
            task = play.assignment(man.label)
            at = task.motion.span if task.motion is not None else man.span
            yield E524(
                resting=on(code.eligible, code), formation=play.call.formation, man=man.label,
                other=other.label,
            ).at(at if at.line else play.span)  # fmt: skip


def goes_out(play: Play, man: Man) -> bool:
    """Whether he runs a route; a man with the ball, or who shows it, does not."""
    path = play.assignment(man.label).path
    return (
        path is not None
        and bool(path.legs)
        and path.ending is not Ending.BLOCK
        and man.label != play.carrier
    )

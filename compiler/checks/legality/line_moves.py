"""Is a line player moving when the ball is snapped?

Line players are still. A man who comes up to the line and is still running when he gets there is
no line player yet and no back any more: the line is a man short at the moment that counts. Where
a code sets a limit on men in motion, that limit speaks of backs.

Example: ``X moves to away, 6 outside tackle, on line`` with ``snap running``. Write instead
``snap set``, or end his way ``off line``, where another man closes the line.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.snap import Snap, When, broken
from stemline.diagnostics.diagnostic import Diagnostic

WHEN = When.MOVING


def check_line_moves(snap: Snap) -> Iterator[Diagnostic]:
    for man, _ in snap.running:
        if man.on_line:
            yield broken(
                543, snap.code.motion_most, snap.code, snap.at(man), man=man.label, call=snap.call
            )

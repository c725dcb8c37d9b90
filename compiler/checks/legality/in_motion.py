"""Are too many men moving when the ball is snapped?

The eleven-man codes let one man be in motion; a second one is a foul, and so is a shift that has
not ended. The twelve-man game lets every back move as he likes, the waggle, and only the
quarterback must wait for the ball.

Example: ``H, S moves from 6 deep`` with ``snap running`` under a high-school code. Write instead
``snap set``, or a motion of one man.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.snap import Snap, When, broken
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.players import Position

WHEN = When.MOVING


def check_in_motion(snap: Snap) -> Iterator[Diagnostic]:
    code, known = snap.code, snap.code.motion_most
    if known.value is None:
        for man, _ in snap.running:
            if man.position is Position.QUARTERBACK:
                yield broken(553, known, code, snap.at(man), man=man.label, call=snap.call)
        return
    if len(snap.running) > known.value:
        (first, _), *others = reversed(snap.running)
        yield broken(
            540, known, code, snap.at(first), call=snap.call, got=len(snap.running),
            wanted=f"{known.value:g}",
            others=", ".join(m.label for m, _ in reversed(others)) or "nobody else",
        )  # fmt: skip

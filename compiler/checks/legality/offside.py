"""Is a running man past the line when the ball is snapped?

A waggle is a matter of tenths: at seven yards a second a man who starts half a second early is
three yards offside. He is checked where his start and his speed put him at the snap.

Example: ``H moves from 6 deep``, ``H starts 1.5``, ``snap running 7``: ten yards. Write instead
``H starts 0.7``, or no start at all: then he is where the formation has him when the ball moves.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.snap import Snap, When, broken
from stemline.diagnostics.diagnostic import Diagnostic

WHEN = When.MOVING


def check_offside(snap: Snap) -> Iterator[Diagnostic]:
    for man, _ in snap.running:
        if man.snap.y > 0:
            yield broken(
                545, snap.code.restraining, snap.code, snap.at(man), man=man.label, call=snap.call,
                yards=f"{man.snap.y:.1f}",
            )  # fmt: skip

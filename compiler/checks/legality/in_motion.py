"""Are too many men moving when the ball is snapped?

The eleven-man codes let one man be in motion; a second one is a foul, and so is a shift that has
not ended. The twelve-man game lets every back move as he likes, the waggle, and only the
quarterback must wait for the ball.

Example: ``H, S moves from 6 deep`` with ``snap running`` under a high-school code. Write instead
``snap set``, or a motion of one man.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.snap import Snap, When, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.players import Position


class E540(BrokenRule):
    title = "too many in motion"
    message = "{got} men are in motion at the snap in {call}, and {wanted} may be"
    label = "in motion with {others}"
    help = "let the others be set: `snap set`, or a motion of one man"

    call: str
    got: int
    others: str
    wanted: str


class E553(BrokenRule):
    title = "the quarterback in motion"
    message = "{man} is in motion at the snap in {call}: every back may be but the quarterback"
    label = "in motion"
    help = "let him be set"

    call: str
    man: str


WHEN = When.MOVING


def check_in_motion(snap: Snap) -> Iterator[Diagnostic]:
    code, known = snap.code, snap.code.motion_most
    if known.value is None:
        for man, _ in snap.running:
            if man.position is Position.QUARTERBACK:
                yield E553(resting=on(known, code), man=man.label, call=snap.call).at(snap.at(man))
        return
    if len(snap.running) > known.value:
        (first, _), *others = reversed(snap.running)
        yield E540(
            resting=on(known, code), call=snap.call, got=len(snap.running),
            wanted=f"{known.value:g}",
            others=", ".join(m.label for m, _ in reversed(others)) or "nobody else",
        ).at(snap.at(first))  # fmt: skip

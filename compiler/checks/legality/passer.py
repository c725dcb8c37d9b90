"""Does a quarterback go out for a pass that he may not catch?

The US professional code makes the man who takes the snap from under centre ineligible; from the
gun he is a back like any other. The other codes let him catch it from either place.

Example: a throwback to a quarterback who lined up ``under centre``. Put him in the gun, ``Q at
ball, 5 deep``, or throw to another man.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.snap import When, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.offence.landmarks import UNDER_CENTRE_DEPTH
from stemline.football.play import Kind, Play
from stemline.football.players import Position


class E526(BrokenRule):
    title = "the quarterback goes out"
    message = (
        "{man} takes the snap under centre and goes out for a pass in {call}: he may not catch it"
    )
    label = "not eligible"
    help = "put him in the gun, or give the catch to another man"
    only_binding = True

    call: str
    man: str


WHEN = When.CALLED

_UNDER_CENTRE_IS_OUT = frozenset({"professional"})
"""Codes, by key, in which he may not catch it."""


def check_passer(play: Play) -> Iterator[Diagnostic]:
    code = play.field.code
    if code.key not in _UNDER_CENTRE_IS_OUT or not code.eligible.binding:
        return
    if play.kind is not Kind.PASS:
        return
    looked_at = {m for read in (*play.reads, *play.pressure) for m in read.men}
    for man in play.men:
        under = abs(man.snap.x) < 1 and -man.snap.y <= UNDER_CENTRE_DEPTH
        if man.position is Position.QUARTERBACK and under and man.label in looked_at:
            yield E526(resting=on(code.eligible, code), man=man.label, call=play.call.spoken).at(
                play.span
            )

"""Does a receiver stand on the line inside another one?

Only the last man of each side of the line may catch a pass. A tight end whose wideout is on the
line too is a lineman for that play, whatever he wears: he is still counted as a receiver, the
concept sends him out, and the flag comes when he is downfield. Of a formation it is asked where no
call stands in it; of one that is called, each call asks whether he goes out at all (`sent_out`).

Example: ``Y at call, end, on line`` and ``Z at call, numbers, on line``. Write instead ``Z at
call, numbers, off line``. If Y shall only block, put him into the line: ``line LT, LG, C, RG, RT,
Y``; then he is no receiver, and no concept looks for him.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stemline.checks.legality.snap import Snap, When, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Man


class E524(BrokenRule):
    title = "covered on the line"
    message = "{man} stands on the line inside {other} in {formation}, so he may not catch a pass"
    label = "covered"
    help = "put {man} or {other} off the line; a man who shall only block belongs into the `line`"

    formation: str
    man: str
    other: str


WHEN = When.STANDING


def check_covered(snap: Snap) -> Iterator[Diagnostic]:
    if snap.code.all_eligible:
        return
    for man, other in covered(snap.men):
        yield E524(
            resting=on(snap.code.eligible, snap.code), formation=snap.name, man=man.label,
            other=other.label,
        ).at(snap.at(man))  # fmt: skip


def covered(men: Sequence[Man]) -> Iterator[tuple[Man, Man]]:
    """Each man on the line whom another one covers, with that man; linemen are not among them."""
    line = sorted((m for m in men if m.on_line), key=lambda m: m.snap.x)
    for i, man in enumerate(line[1:-1], 1):
        if not man.interior:
            yield man, line[i + 1] if man.snap.x > 0 else line[i - 1]

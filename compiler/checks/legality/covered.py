"""Does a receiver stand on the line inside another one?

Only the last man of each side of the line may catch a pass. A tight end whose wideout is on the
line too is a lineman for that play, whatever he wears: he is still counted as a receiver, the
concept sends him out, and the flag comes when he is downfield.

Example: ``Y at call, end, on line`` and ``Z at call, numbers, on line``. Write instead ``Z at
call, numbers, off line``. If Y shall only block, put him into the line: ``line LT, LG, C, RG, RT,
Y``; then he is no receiver, and no concept looks for him.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.model import Snap, broken
from stemline.diagnostics.model import Diagnostic


def check_covered(snap: Snap) -> Iterator[Diagnostic]:
    if snap.code.all_eligible:
        return
    line = snap.on_line
    for i, man in enumerate(line[1:-1], 1):
        if man.interior:
            continue
        other = line[i + 1] if man.snap.x > 0 else line[i - 1]
        yield broken(
            524, snap.code.eligible, snap.code, snap.at(man), formation=snap.name, man=man.label,
            other=other.label,
        )  # fmt: skip

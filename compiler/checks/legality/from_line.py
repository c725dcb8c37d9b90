"""Does a man who lined up on the line go in motion without becoming a back first?

A wideout who leaves the line must stop as a back, or, in high school, be five yards deep when the
ball is snapped. The twelve-man game asks only that the line is whole and still at the snap.

Example: ``X at away, numbers, on line`` and ``X moves to ball, 2 deep`` with ``snap running``. Line
him up ``off line`` instead and put the slot of his side on the line.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.rulebook.rules import MotionWay


class E544(BrokenRule):
    title = "in motion from the line"
    message = (
        "{man} lines up on the line and is still in motion at the snap in {call}, {yards} yards "
        "deep: he must first stop as a back{wanted}"
    )
    label = "from the line"
    help = "line him up off the line, or let him be set"
    varies = ("yards",)

    call: str
    man: str
    wanted: str
    yards: str


WHEN = When.MOVING


def check_from_line(snap: Snap) -> Iterator[Diagnostic]:
    code, known = snap.code, snap.code.motion_from_line
    if code.motion_way.value is MotionWay.ANY:
        return
    for man, _ in snap.running:
        if man.interior and snap.missing:
            continue  # the line is not whole without him
        if not man.on_line and man.at.y == 0 and not _deep(-man.snap.y, known.value):
            wanted = "" if known.value is None else f", or be {known.value:g} yards deep"
            yield E544(
                resting=on(known, code), man=man.label, call=snap.call, wanted=wanted,
                yards=f"{-man.snap.y:.1f}",
            ).at(snap.at(man))  # fmt: skip


def _deep(depth: float, wanted: float | None) -> bool:
    return wanted is not None and depth >= wanted - 1e-6


SAMPLES = """
### E544

A man who leaves the line is a back only when he has stopped as one.

```play fail E544
like E541
-    H at away, 5 outside tackle, off line
+    H at away, 5 outside tackle, on line
-motion Run Up
-    H moves from 6 deep
+motion Jet
+    X moves to away, 2 outside tackle, 2 deep
-    in Doubles motion Run Up
+    in Doubles motion Jet
```

```play
like E544
-    snap running
+    snap set
```

### W544

As the error, in a code for which no text was seen.

```play fail W544
like E544
-    code college
+    code high school
```

```play
like E544 mended
-    code college
+    code high school
```
"""

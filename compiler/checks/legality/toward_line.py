"""Does a man run at the line when the ball is snapped, where he may only run along it or away?

In the eleven-man codes a man in motion gains nothing toward the other goal line before the ball
moves. A running start at the line is the waggle of the twelve-man game.

Example: ``H moves from 6 deep`` with ``snap running`` under a high-school code. Write instead
``snap set``, or a way that ends along the line: ``H moves to call, 2 outside tackle, off line``.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.rulebook.rules import MotionWay
from stemline.geometry.paths import Path, polyline
from stemline.source import Span


class E541(BrokenRule):
    title = "toward the line"
    message = "toward the line at the snap in {call}: {men}; a man may move only sideways or back"
    label = "toward the line"
    help = "let him be set with `snap set`, or end his way along the line"

    call: str
    men: str


WHEN = When.MOVING

_LEVEL = 0.05
"""Yards forward for each yard run: less is how straight a man runs along a line."""


def check_toward_line(snap: Snap) -> Iterator[Diagnostic]:
    known = snap.code.motion_way
    if known.value is MotionWay.ANY:
        return
    lines: dict[Span, list[str]] = {}
    for man, motion in snap.running:
        if forward(motion.path) > _LEVEL:
            lines.setdefault(snap.at(man), []).append(man.label)
    for span, men in lines.items():
        yield E541(resting=on(known, snap.code), men=" and ".join(men), call=snap.call).at(span)


def forward(path: Path) -> float:
    """Yards toward the line for each yard that he runs at the very end of his way."""
    *_, before, end = (path.start, *polyline(path))
    step = before.distance(end)
    return (end.y - before.y) / step if step else 0.0


SAMPLES = """
### E541

Nobody gains a step toward the other goal line before the ball moves, the waggle of twelve men
apart.

```play fail E541
like E540
-    code high school
-    league motion at snap is 1
+    code college
-motion Both
-    H moves to away, 3 outside tackle, off line
-    S moves to call, 3 outside tackle, off line
+motion Run Up
+    H moves from 6 deep
-    in Doubles motion Both
+    in Doubles motion Run Up
```

```play
like E541
-    snap running
+    snap set
```

### W541

As the error, in a code for which no text was seen.

```play fail W541
like E541
-    code college
+    code high school
```

```play
like E541 mended
-    code college
+    code high school
```
"""

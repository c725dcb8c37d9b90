"""Is a line player moving when the ball is snapped?

Line players are still. A man who comes up to the line and is still running when he gets there is
no line player yet and no back any more: the line is a man short at the moment that counts. Where
a code sets a limit on men in motion, that limit speaks of backs.

Example: ``X moves to away, 6 outside tackle, on line`` with ``snap running``. Write instead
``snap set``, or end his way ``off line``, where another man closes the line.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic


class E543(BrokenRule):
    title = "a line player moves"
    message = (
        "{man} is on the line and moves when the ball is snapped in {call}: line players are still"
    )
    label = "on the line and moving"
    help = "let him be set with `snap set`, or end his way `off line`"

    call: str
    man: str


WHEN = When.MOVING


def check_line_moves(snap: Snap) -> Iterator[Diagnostic]:
    for man, _ in snap.running:
        if man.on_line:
            yield E543(
                resting=on(snap.code.motion_most, snap.code), man=man.label, call=snap.call
            ).at(snap.at(man))


SAMPLES = """
### E543

A man who still runs is no line player, so the line is a man short. Here the league's own word makes
it an error.

```play fail E543
like E540
-motion Both
-    H moves to away, 3 outside tackle, off line
-    S moves to call, 3 outside tackle, off line
+motion In
+    X moves to away, 8 outside tackle, on line
-    in Doubles motion Both
+    in Doubles motion In
```

```play
like E543
-    snap running
+    snap set
```

### W543

As the error, in a code for which no text was seen.

```play fail W543
motion Tuck
    away #1 moves to away, 6 outside tackle, on line
    snap running
```

```play
motion Tuck
    away #1 moves to away, 6 outside tackle, on line
    snap set
```
"""

"""Is a running man past the line when the ball is snapped?

A waggle is a matter of tenths: at seven yards a second a man who starts half a second early is
three yards offside. He is checked where his start and his speed put him at the snap.

Example: ``H moves from 6 deep``, ``H starts 1.5``, ``snap running 7``: ten yards. Write instead
``H starts 0.7``, or no start at all: then he is where the formation has him when the ball moves.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic


class E545(BrokenRule):
    title = "past the line at the snap"
    message = "{man} is {yards} yards past the line when the ball is snapped in {call}"
    label = "offside"
    help = "let him start later or deeper"
    varies = ("yards",)

    call: str
    man: str
    yards: str


WHEN = When.MOVING


def check_offside(snap: Snap) -> Iterator[Diagnostic]:
    for man, _ in snap.running:
        if man.snap.y > 0:
            yield E545(
                resting=on(snap.code.restraining, snap.code), man=man.label, call=snap.call,
                yards=f"{man.snap.y:.1f}",
            ).at(snap.at(man))  # fmt: skip


SAMPLES = """
### E545

At seven yards a second a start that is half a second early is three yards.

```play fail E545
playbook Lanterns
    code canadian professional

formation Three Two
    X at away, numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, 10 outside tackle, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

motion Waggle
    H moves from 6 deep
    H starts 1.5 seconds
    snap running

concept Hitches
    a is strong #1
    b is strong #2
    c is strong #3
    d is weak #1
    e is weak #2
    f is back
    a, b, c, d, e, f runs hitch

dress Hitches
    in Three Two motion Waggle
```

```play
like E545
-    H starts 1.5 seconds
+    H starts 0.8 seconds
```

### W545

As the error, in a code whose text was not seen.

```play fail W545
motion Waggle
    H moves from 6 deep
    H starts 1.5 seconds
    snap running

dress Crossers
    in Three Two motion Waggle
```

```play
like W545
-    H starts 1.5 seconds
+    H starts 0.8 seconds
```
"""

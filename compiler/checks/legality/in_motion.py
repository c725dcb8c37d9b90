"""Are too many men moving when the ball is snapped?

The eleven-man codes let one man be in motion; a second one is a foul, and so is a shift that has
not ended. The twelve-man game lets every back move as he likes, the waggle, and only the
quarterback must wait for the ball.

Example: ``H, S moves from 6 deep`` with ``snap running`` under a high-school code. Write instead
``snap set``, or a motion of one man.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
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


SAMPLES = """
### E540

A second man who moves is a foul; here the league's own word makes it one.

```play fail E540
playbook Lanterns
    code high school
    league motion at snap is 1

formation Doubles
    X at away, numbers, on line
    H at away, 5 outside tackle, off line
    S at call, 5 outside tackle, off line
    Z at call, numbers, on line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

motion Both
    H moves to away, 3 outside tackle, off line
    S moves to call, 3 outside tackle, off line
    snap running

concept Hitches
    a is strong #1
    b is strong #2
    c is weak #1
    d is weak #2
    e is back
    a, b, c, d, e runs hitch

dress Hitches
    in Doubles motion Both
```

```play
like E540
-    snap running
+    snap set
```

### W540

As the error, in a code for which no text was seen.

```play fail W540
like E540
-    league motion at snap is 1
```

```play
like E540 mended
-    league motion at snap is 1
```

### E553

Every back may waggle but the one who takes the snap. Here the league's own word makes it an error.

```play fail E553
like E545
-    code canadian professional
+    code canadian amateur
+    league motion at snap is no limit
-motion Waggle
-    H moves from 6 deep
-    H starts 1.5 seconds
+motion Late
+    Q moves to ball, 7 deep
-    in Three Two motion Waggle
+    in Three Two motion Late
```

```play
like E553
-    snap running
+    snap set
```

### W553

As the error, in a code whose text was not seen.

```play fail W553
motion Late
    Q moves to ball, 7 deep
    snap running

dress Crossers
    in Three Two motion Late
```

```play
like W553
-    snap running
+    snap set
```
"""

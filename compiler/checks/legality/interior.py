"""Are the linemen there who may not catch a pass, and, in twelve men, in one run?

Every code but six-man wants so many ineligible men on the line. The twelve-man game wants them
beside each other with the centre among them; the US codes let them stand where they like, which
is what a swinging gate is made of.

Example: ``line LG, C, RG, RT`` in a code of five. Write instead all five. In twelve men ``LT at
away, numbers, on line`` splits the run: leave him in the ``line``.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.offence.counting import RUN_GAP, tackles


class E522(BrokenRule):
    title = "the interior line"
    message = "{formation} has {got} linemen {how}, and {wanted} must be there"
    label = "the interior line"
    help = "line up {wanted} linemen beside each other, the centre among them"
    foul = "the interior line is not whole"

    formation: str
    got: int
    how: str
    wanted: int


WHEN = When.STANDING


def check_interior(snap: Snap) -> Iterator[Diagnostic]:
    code = snap.code
    wanted = int(code.ineligible.value)
    linemen = [m for m in snap.on_line if m.interior]
    got, how = len(linemen), "on the line"
    if code.canadian and got >= wanted:
        left, right = tackles(linemen)
        got = sum(left - RUN_GAP < m.snap.x < right + RUN_GAP for m in linemen)
        how = "in one run with the centre"
    if got < wanted:
        yield E522(
            resting=on(code.ineligible, code), formation=snap.name, got=got, how=how,
            wanted=wanted,
        ).at(snap.span)  # fmt: skip


SAMPLES = """
### E522

Twelve men play with five linemen in one run. A split-off lineman breaks it.

```play fail E522
playbook Lanterns
    code canadian amateur

formation Gate
    X at away, numbers, on line
    LT at away, 10 outside ball, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, 10 outside tackle, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
```

```play
like E522
-    LT at away, 10 outside ball, on line
```

### W522

As the error, in a code for which no text was seen yet.

```play fail W522
like E522
-    code canadian amateur
+    code canadian professional 2027
```

```play
like W522
-    LT at away, 10 outside ball, on line
```
"""

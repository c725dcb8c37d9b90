"""Is an eligible man at each end of the line, where the code asks for one?

In twelve men the line is five ineligible men and an eligible one at each end of it. A tackle who is
the last man on his side is no end: the formation is a foul, not only a man short. The US codes let
him stand there; what he may not do is catch a pass, by his number.

Example: an unbalanced line with the away wideout ``off line``. Write instead ``on line``: nobody
else closes that side.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic


class E523(BrokenRule):
    title = "nobody at the end of the line"
    message = (
        "the last man on the line is a lineman on {sides} of {formation}: an eligible man must be "
        "outside him"
    )
    label = "no end of the line"
    help = "put the widest man of that side on the line with `on line`"
    foul = "no eligible man ends the line"

    formation: str
    sides: str


WHEN = When.STANDING


def check_ends(snap: Snap) -> Iterator[Diagnostic]:
    code, line = snap.code, snap.on_line
    if not code.canadian or len(line) < code.on_line.value:
        return
    open_sides = sum(man.interior for man in (line[0], line[-1]))
    if open_sides:
        sides = "one side" if open_sides == 1 else "both sides"
        yield E523(resting=on(code.on_line, code), formation=snap.name, sides=sides).at(snap.span)


SAMPLES = """
### E523

In twelve men an eligible man closes each side. A tackle does not.

```play fail E523
playbook Lanterns
    code canadian amateur

formation Over
    line LT, LG, C, RG, RT, ET
    X at away, numbers, off line
    W at away, 5 outside tackle, off line
    H at call, 5 outside tackle, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
```

```play
like E523
-    X at away, numbers, off line
+    X at away, numbers, on line
```

### W523

As the error, in a code for which no text was seen yet.

```play fail W523
like E523
-    code canadian amateur
+    code canadian professional 2027
```

```play
like E523 mended
-    code canadian amateur
+    code canadian professional 2027
```
"""

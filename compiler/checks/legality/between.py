"""Is every man either on the line or clearly behind it?

An official must be able to say of each man what he is. A man half a yard off is neither lineman nor
back: he may not catch a pass as the one, nor be in motion as the other, and where he stands is a
foul by itself. The quarterback under centre is a back by his place.

Example: ``H at call, 2 outside tackle, 0.5 deep``. Write instead ``off line``, which is a yard.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic


class E525(BrokenRule):
    title = "in neither place"
    message = (
        "{man} is {yards} yards off the line in {formation}: neither on it nor a back, who is "
        "{wanted} yards behind it"
    )
    label = "neither"
    help = "write `on line`, `off line`, or a greater depth"
    foul = "a man is neither on the line nor a back"

    formation: str
    man: str
    wanted: str
    yards: str


WHEN = When.STANDING

_CLOSE = 1e-6


def check_between(snap: Snap) -> Iterator[Diagnostic]:
    code = snap.code
    least = code.back_depth.value or code.line_reach.value
    if not code.between_foul.value:
        return
    for man in snap.men:
        if not man.on_line and -man.snap.y < least - _CLOSE and not man.under_centre:
            if man.snap.y > 0:
                continue  # past the line: said as offside
            yield E525(
                resting=on(code.between_foul, code), formation=snap.name, man=man.label,
                yards=f"{-man.snap.y:.1f}", wanted=f"{least:g}",
            ).at(snap.at(man))  # fmt: skip


SAMPLES = """
### E525

An official must be able to say of each man whether he is on the line or behind it.

```play fail E525
like E522
-    code canadian amateur
+    code canadian professional
-formation Gate
+formation Three Two
-    LT at away, 10 outside ball, on line
-    H at call, 4 outside tackle, off line
+    H at call, 4 outside tackle, 0.5 deep
```

```play
like E525
-    H at call, 4 outside tackle, 0.5 deep
+    H at call, 4 outside tackle, off line
```

### W525

As the error, in a code whose text was not seen.

```play fail W525
formation Close extends Three Two
    H at call, 4 outside tackle, 0.5 deep
```

```play
formation Close extends Three Two
    H at call, 4 outside tackle, off line
```
"""

"""Are too many men behind the line?

In the codes that do not count the line they count the backfield, so that a team of ten is no foul.
The quarterback is one of them, wherever he stands. Where the line is short as well, both rules say
one thing, and it is said of the line.

Example: in eleven men, two ends on the line, five behind it with the quarterback, and ``H at call,
4 outside tackle, off line``: five. Write instead ``on line`` for the widest man of his side.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic


class E521(BrokenRule):
    title = "too many behind the line"
    message = (
        "{formation} has {got} men behind the line, the quarterback among them; {wanted} may be"
    )
    label = "{got} behind it"
    help = "put one of them on the line with `on line`"
    foul = "too many men are behind the line"

    formation: str
    got: int
    wanted: str


WHEN = When.STANDING


def check_in_backfield(snap: Snap) -> Iterator[Diagnostic]:
    known = snap.code.in_backfield
    on_line = len(snap.on_line)
    got = len(snap.men) - on_line
    many = known.value is not None and got - snap.missing > known.value
    if many and on_line >= snap.code.on_line.value:
        yield E521(
            resting=on(known, snap.code), formation=snap.name, got=got, wanted=f"{known.value:g}",
        ).at(snap.span)  # fmt: skip


SAMPLES = """
### E521

Codes that do not count the line count the men behind it, the quarterback with them.

```play fail E521
playbook Lanterns
    code college

formation Doubles
    X at away, numbers, off line
    H at away, 5 outside tackle, off line
    S at call, 5 outside tackle, off line
    Z at call, numbers, on line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
```

```play
like E521
-    X at away, numbers, off line
+    X at away, numbers, on line
```

### W521

As the error, in a code for which only a report gives the figure.

```play fail W521
like E521
-    code college
+    code high school
```

```play
like E521 mended
-    code college
+    code high school
```
"""

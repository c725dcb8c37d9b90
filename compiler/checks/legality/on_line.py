"""Are enough men on the line of scrimmage?

The line is what makes it a scrimmage: with too few on it the formation is a foul before anything
else happens, and the play comes back. It is the commonest foul of a new formation, because one man
too many was told to stand off.

Example: in twelve men, ``X at away, numbers, off line`` beside five linemen and one end: six on the
line. Write instead ``X at away, numbers, on line``: the widest man of each side is on the line.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic


class E520(BrokenRule):
    title = "too few on the line"
    message = "{formation} has {got} men on the line, and {wanted} must be there"
    label = "{got} on the line"
    help = "put men on the line with `on line`, the widest man of each side first"
    foul = "too few men are on the line"

    formation: str
    got: int
    wanted: int


WHEN = When.STANDING


def check_on_line(snap: Snap) -> Iterator[Diagnostic]:
    wanted, got = int(snap.code.on_line.value), len(snap.on_line)
    if got < wanted:
        yield E520(
            resting=on(snap.code.on_line, snap.code), formation=snap.name, got=got, wanted=wanted,
        ).at(snap.span)  # fmt: skip


SAMPLES = """
### E520

The line makes it a scrimmage: a man short there is a foul before anything has happened.

```play fail E520
formation Off extends Three Two
    X at away, 2 inside numbers, off line
```

```play
formation Off extends Three Two
    X at away, 2 inside numbers, on line
```

### W520

As the error, in a code for which only a report gives the figure.

```play fail W520
like E521
-    code college
+    code professional
```

```play
like W520
-    X at away, numbers, off line
+    X at away, numbers, on line
```
"""

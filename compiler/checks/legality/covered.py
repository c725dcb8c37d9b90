"""Does a receiver stand on the line inside another one?

Only the last man of each side of the line may catch a pass. A tight end whose wideout is on the
line too is a lineman for that play, whatever he wears: he is still counted as a receiver, the
concept sends him out, and the flag comes when he is downfield. Of a formation it is asked where no
call stands in it; of one that is called, each call asks whether he goes out at all (`sent_out`).

Example: ``Y at call, end, on line`` and ``Z at call, numbers, on line``. Write instead ``Z at
call, numbers, off line``. If Y shall only block, put him into the line: ``line LT, LG, C, RG, RT,
Y``; then he is no receiver, and no concept looks for him.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Man


class E524(BrokenRule):
    title = "covered on the line"
    message = "{man} stands on the line inside {other} in {formation}, so he may not catch a pass"
    label = "covered"
    help = "put {man} or {other} off the line; a man who shall only block belongs into the `line`"

    formation: str
    man: str
    other: str


WHEN = When.STANDING


def check_covered(snap: Snap) -> Iterator[Diagnostic]:
    if snap.code.all_eligible:
        return
    for man, other in covered(snap.men):
        yield E524(
            resting=on(snap.code.eligible, snap.code), formation=snap.name, man=man.label,
            other=other.label,
        ).at(snap.at(man))  # fmt: skip


def covered(men: Sequence[Man]) -> Iterator[tuple[Man, Man]]:
    """Each man on the line whom another one covers, with that man; linemen are not among them."""
    line = sorted((m for m in men if m.on_line), key=lambda m: m.snap.x)
    for i, man in enumerate(line[1:-1], 1):
        if not man.interior:
            yield man, line[i + 1] if man.snap.x > 0 else line[i - 1]


SAMPLES = """
### E524

The last man of a side may catch a pass, the one inside him may not: he is flagged downfield. It is
said of the calls that send him out; he may block in all of them. Of a formation without a call it
is always said.

```play fail E524
playbook Lanterns
    code college

formation Trey
    X at away, numbers, on line
    Y at call, end, on line
    H at call, 5 outside tackle, off line
    Z at call, numbers, on line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
```

```play
like E524
-    Z at call, numbers, on line
+    Z at call, numbers, off line
```

### W524

As the error, in a code whose text on who is eligible was not seen.

```play fail W524
formation Close extends Three Two
    H at call, 4 outside tackle, on line
```

```play
formation Close extends Three Two
    H at call, 4 outside tackle, off line
```
"""

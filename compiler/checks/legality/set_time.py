"""Have the men been still long enough after a shift?

In the eleven-man codes everybody is still for a second after the last man has shifted, before the
snap and before one man goes in motion. Where a motion does not say when a man starts, he starts in
time.

Example: ``X starts 1.5`` and a way of six yards, ``snap set``: he is still for half a second. Write
instead ``X starts 2.5``.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic


class E542(BrokenRule):
    title = "not still long enough"
    message = "{man} has {still} at the snap in {call}: all must be set for {wanted} s"
    label = "{still}"
    help = "let him start earlier"
    varies = ("still",)

    call: str
    man: str
    still: str
    wanted: str


WHEN = When.MOVING

_CLOSE = 1e-6


def _how_long(still: float) -> str:
    return f"been still for {still:.1f} seconds" if still >= 0.05 else "only just stopped"


def check_set_time(snap: Snap) -> Iterator[Diagnostic]:
    code, known = snap.code, snap.code.motion_set
    # A man in motion starts after everybody has been still: the second ends when he does.
    begins = max((m.starts or 0.0 for _, m in snap.running), default=0.0)
    for man in snap.men:
        motion = snap.motions.get(man.label)
        if motion is None or motion.set_for is None:
            continue
        still = motion.set_for - begins
        if still < known.value - _CLOSE:
            yield E542(
                resting=on(known, code), man=man.label, call=snap.call, still=_how_long(still),
                wanted=f"{known.value:g}",
            ).at(snap.at(man))  # fmt: skip


SAMPLES = """
### E542

After a shift everybody is still, so that the defence can see what it has.

```play fail E542
like E543
-    code high school
-    league motion at snap is 1
+    code college
-    X at away, numbers, on line
+    X at away, 12 outside tackle, on line
-    snap running
+    X starts 1.5 seconds
```

```play
like E542
-    X starts 1.5 seconds
+    X starts 2 seconds
```

### W542

As the error, in a code for which no text was seen.

```play fail W542
like E542
-    code college
+    code high school
```

```play
like E542 mended
-    code college
+    code high school
```
"""

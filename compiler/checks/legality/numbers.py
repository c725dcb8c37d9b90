"""Does everybody wear a number that fits his place, where the personnel says it?

Officials tell who may catch a pass by the number. A lineman's number at a wide place is a foul or
makes him ineligible; too few of those numbers inside is a foul of the formation. A code without
numbers, eight-man or six-man, asks for nothing.

Example: ``X is wideout, 72``. Write instead a number that may catch a pass, or let him report.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.snap import Snap, on, ranges, within
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.players import Position


class E527(BrokenRule):
    title = "an ineligible number outside"
    message = (
        "{man} wears {jersey} and stands where a receiver stands: numbers {ranges} may not catch a "
        "pass"
    )
    label = "number {jersey}"
    help = "give him another number, or report him to the officials before every play"

    jersey: int
    man: str
    ranges: str


class E528(BrokenRule):
    title = "an eligible number inside"
    message = "{man} wears {jersey} in the interior line: {wanted} men there wear numbers {ranges}"
    label = "number {jersey}"
    help = "give him another number, or add a lineman beside him"

    jersey: int
    man: str
    ranges: str
    wanted: int


WHEN = When.STANDING


def check_numbers(snap: Snap) -> Iterator[Diagnostic]:
    code, known = snap.code, snap.code.ineligible_numbers
    for man in snap.men:
        if man.interior or man.position is Position.QUARTERBACK or man.number is None:
            continue
        for rule in (known, code.also_ineligible):
            if within(man.number, rule.value):
                yield E527(
                    resting=on(rule, code), man=man.label, jersey=man.number,
                    ranges=ranges(rule.value),
                ).at(snap.numbers.get(man.label) or snap.at(man))  # fmt: skip
    if not known.value:
        return
    inside = [m for m in snap.on_line if m.interior]
    may = (*known.value, *code.also_ineligible.value)
    worn = [(m, m.number) for m in inside if m.number is not None]
    wrong = [(m, number) for m, number in worn if not within(number, may)]
    if len(inside) - len(wrong) < code.ineligible.value <= len(inside):
        for man, number in wrong:
            yield E528(
                resting=on(known, code), man=man.label, jersey=number, ranges=ranges(may),
                wanted=int(code.ineligible.value),
            ).at(snap.numbers.get(man.label) or snap.at(man))  # fmt: skip


SAMPLES = """
### E527

Officials tell by the number who may catch a pass.

```play fail E527
like E521
 
+personnel Base
+    X is wideout, 72
+
-    X at away, numbers, off line
+    X at away, numbers, on line
```

```play
like E527
-    X is wideout, 72
+    X is wideout, 82
```

### W527

As the error, in a code whose numbers are not settled.

```play fail W527
personnel Base
    Q is quarterback, right hand
    R is back
    X is wideout, 55
    Z is wideout
    H, S, W is slotback
```

```play
like W527
-    X is wideout, 55
+    X is wideout, 85
```

### E528

The linemen who may not catch a pass must wear the numbers that say so.

```play fail E528
like E527
-    X is wideout, 72
+    LT is tackle, 88
```

```play
like E527
-    X is wideout, 72
+    LT is tackle, 78
```

### W528

As the error, in a code whose numbers are not settled.

```play fail W528
like W527
-    X is wideout, 55
+    LT is tackle, 81
+    X is wideout
```

```play
like W528
-    LT is tackle, 81
+    LT is tackle, 61
```
"""

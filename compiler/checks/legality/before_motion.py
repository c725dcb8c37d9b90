"""Is a formation right before the motion that makes it right?

The rule texts judge the snap, so what every call of a formation mends by its motion is no foul. It
is one all the same on the day the ball is snapped early, on a silent count or a bad signal.

Example: six men on the line until the wing has stepped onto it, and only calls with that motion.
Never snap it early, or line the men up so that it is right from the start.
"""

from __future__ import annotations

from collections.abc import Iterable

from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.source import Span


class W870(Mistake):
    title = "right only after the motion"
    message = "before {motion}, {formation} is a foul: {rules}; at the snap it is right"
    label = "not before the motion"
    help = "never snap it early, or line the men up so that it is right from the start"

    formation: str
    motion: str
    rules: str


def before_motion(
    formation: str, motions: tuple[str, ...], span: Span, found: Iterable[BrokenRule]
) -> Diagnostic:
    """The warning for fouls of a formation that every motion called from it mends."""
    rules = ", and ".join(dict.fromkeys(rule.foul for rule in found if rule.foul))
    return W870(formation=formation, motion=" or ".join(motions), rules=rules).at(span)


SAMPLES = """
### W870

Officials judge the men at the snap, and there the motion has made it right. Snapped early it is a
foul, and a motion that is called off leaves one on the field.

```play fail W870
motion Tuck
    away #1 moves to away, 6 outside tackle, on line
    snap set

formation Quads
    X at away, numbers, off line
    W at call, 3 outside tackle, off line
    H at call, 7 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
```

```play
formation Quads
    X at away, numbers, on line
    W at call, 3 outside tackle, off line
    H at call, 7 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
```
"""

"""Does what a concept claims hold on the field?

A coach draws a high-low or a triangle for the room that it makes: so many yards between the men,
and the defender cannot be near both. What a formation and its splits leave of that room is measured
when the ball gets there. The clock's figures are planning estimates: a warning.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.diagnostics.in_words import together
from stemline.football.timing.space import measured


class W805(Mistake):
    title = "a claim that does not hold"
    message = "{call}: the {kind} of {targets} is {measured}, and {wanted} are wanted"
    label = "{told}"
    help = "{instead}; or take the claim out"
    varies = ("measured",)

    call: str
    instead: str
    kind: str
    measured: str
    targets: str
    told: str
    wanted: str


_APART = {
    "triangle": "give one of the three another depth or place, off the line of the other two",
    "high-low": "run the high one deeper or the low one lower",
    "stretch": "put them farther apart across the field",
}
"""By kind of claim what makes room."""

WHEN = When.PROVED


def check_claims_hold(call: ProvedCall) -> Iterator[Diagnostic]:
    """Claims that measure less than they want."""
    if call.clock is None:
        return
    for shape in measured(call.play, call.clock):
        if not shape.holds:
            yield W805(
                kind=shape.claim.kind, measured=shape.words, wanted=shape.wish,
                targets=together(shape.claim.targets), call=call.play.call.spoken,
                told="more than one glance" if shape.most else "one defender has them",
                instead="bring the two who are farthest apart nearer" if shape.most
                else _APART.get(shape.claim.kind, _APART["stretch"]),
            ).at(shape.claim.span)  # fmt: skip


SAMPLES = """
### W805

The concept says that it makes a shape. Measured when the ball comes, one defender covers it.

```play fail W805 clock
tag Wheel for Crossers
    settle runs sit 7 over ball
    claims triangle near, top, far
```

```play clock
tag Wheel for Crossers
    settle runs sit 8 over ball
    claims triangle near, top, far
```
"""

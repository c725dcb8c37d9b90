"""Are the right number of men on the field, and one of them to take the snap?

A coach sees at once when a man is missing from a picture drawn by hand; in text he does not, and a
twelfth man is a penalty before the ball moves.

Example: eleven lines of a twelve-man set. Add the man, with a place: ``R at away, 2 outside ball``.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import PlacedMen, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.players import Position


class E510(Mistake):
    title = "the wrong number of men"
    message = "{formation} has {got} men, and {wanted} play ({rules}; {source})"
    label = "{got} with the line"
    help = (
        "the line is always there, the centre alone in six-man: line up the others, one line a man"
    )

    formation: str
    got: int
    rules: str
    source: str
    wanted: int


class E513(Mistake):
    title = "no quarterback"
    message = "{formation} has no quarterback"
    label = "nobody takes the snap"
    help = "give the man who takes it the letter Q, or say `is quarterback` in the personnel"

    formation: str


WHEN = When.PLACED


def check_men_on_the_field(placed: PlacedMen) -> Iterator[Diagnostic]:
    """Count and quarterback, at the formation's name."""
    code, formation = placed.field.code, placed.formation
    wanted = int(code.players.value)
    if len(placed.men) != wanted:
        yield E510(
            formation=formation, got=len(placed.men), wanted=wanted, rules=code.title,
            source=code.players.source,
        ).at(placed.span)  # fmt: skip
    if not any(m.position is Position.QUARTERBACK for m in placed.men):
        yield E513(formation=formation).at(placed.span)


SAMPLES = """
### E510

A man too many is a flag; a man too few is a hole in the picture that nobody sees in a text.

```play fail E510
formation Quads Heavy extends Quads
    T at call, 1 outside tackle, on line
```

```play
formation Quads Heavy extends Quads
    W at call, 1 outside tackle, off line
```

### E513

Somebody takes the snap. He wears Q, or the personnel says who he is.

```play fail E513
formation Wildcat
    X at away, 2 inside numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    B at ball, 5 deep
```

```play
like E513
+personnel Wild
+    B is quarterback
+
```
"""

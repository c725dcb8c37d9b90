"""Is every man inside the field, and in a place of his own?

A split that fits from the middle may put a man over the sideline from a hash, and two men on one
spot are one man on the picture.

Example: ``X at away, 20 outside tackle`` with the ball on the near hash. Write instead a split
that depends on the ball's spot: ``X at away, 2 outside numbers when into boundary``.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import replace
from itertools import combinations

from stemline.checks.asked import PlacedMen, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake, Related
from stemline.football.field import Field, Side
from stemline.football.play import Man, Motion


class E511(Mistake):
    title = "out of bounds"
    message = "{man} stands {yards} yards over the {side} sideline in {formation} from the {spot}"
    label = "out of bounds"
    help = "line him up by the numbers or the sideline, or add a line `when into boundary`"
    varies = ("spot", "yards", "side")

    formation: str
    man: str
    side: str
    spot: str
    yards: str


class E512(Mistake):
    title = "two men on one spot"
    message = "{man} and {other} stand on one spot in {formation} from the {spot}"
    label = "no room"
    help = "move one of them, or add a line `when into boundary`"
    varies = ("spot",)

    formation: str
    man: str
    other: str
    spot: str


ROOM = 0.8
"""Two men nearer than this stand on one spot. Common practice: shoulders are about half a yard."""
LINE_ROOM = 0.45
"""The same for two line players side by side: on the goal line they stand foot to foot."""


WHEN = When.PLACED


def check_places_of_their_own(placed: PlacedMen) -> Iterator[Diagnostic]:
    """Where they line up."""
    yield from in_place(placed.men, placed.field, placed.formation)


def in_place(
    men: tuple[Man, ...], field: Field, formation: str, movers: Collection[str] = ()
) -> Iterator[Diagnostic]:
    """Inside the field, and apart from each other, where they line up.

    Of two men on one spot it is said of the later in the text, of a mover before anybody else.
    """
    for man in men:
        side = Side.RIGHT if man.at.x > 0 else Side.LEFT
        over = (man.at.x - field.sideline(side)) * side.value
        if over > 0:
            yield E511(
                man=man.label, formation=formation, spot=field.spot.value, yards=f"{over:.1f}",
                side=side.word,
            ).at(man.span)  # fmt: skip
    for first, second in combinations(men, 2):
        room = LINE_ROOM if first.on_line and second.on_line else ROOM
        if first.at.distance(second.at) < room:
            other, later = sorted((first, second), key=lambda m: (m.label in movers, m.span))
            related = (Related(other.span, f"{other.label} is here"),) if other.span.line else ()
            yield E512(
                man=later.label, other=other.label, formation=formation, spot=field.spot.value,
            ).at(later.span, related=related)  # fmt: skip


def check_moved(
    men: tuple[Man, ...], motions: Mapping[str, Motion], field: Field, name: str
) -> Iterator[Diagnostic]:
    """The same for those who move, where they start and where they are at the snap.

    ``name`` is what stands there, "Quads with Tuck"; what the others break is said of the
    formation.
    """
    for places in ([m.at for m in men], [m.snap for m in men]):
        placed = tuple(
            replace(m, at=at, span=motions[m.label].span if m.label in motions else m.span)
            if m.label in motions or at != m.at
            else m
            for m, at in zip(men, places, strict=True)
        )
        for found in in_place(placed, field, name, motions):
            match found.said:
                case E511(man=man) if man in motions:
                    yield found
                case E512(man=man, other=other) if motions.keys() & {man, other}:
                    yield found


SAMPLES = """
### E511

Every formation is tried from both hashes. A split that fits from the middle may put the man over
the sideline on the short side.

```play fail E511
formation Three Two Wide extends Three Two
    X at away, 25 outside tackle, on line
```

```play
formation Three Two Wide extends Three Two
    X at away, 25 outside tackle, on line
    X at away, 4 inside sideline, on line when into boundary
```

### E512

Two men stand nearer than a yard, perhaps only from one hash. On the field one of them moves, and
the picture is wrong.

```play fail E512
formation Three Two Tight extends Three Two
    S at call, 4 outside tackle, off line
```

```play
formation Three Two Tight extends Three Two
    S at call, 6 outside tackle, off line
```
"""

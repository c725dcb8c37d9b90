"""Is a formation right before the motion that makes it right?

The rule texts judge the snap, so what every call of a formation mends by its motion is no foul. It
is one all the same on the day the ball is snapped early, on a silent count or a bad signal.

Example: six men on the line until the wing has stepped onto it, and only calls with that motion.
Never snap it early, or line the men up so that it is right from the start.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import product

from stemline.checks.asked import When
from stemline.checks.discovered import ask
from stemline.checks.legality.covered import E524
from stemline.checks.legality.snap import Snap, numbers_of
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.field import BallSpot, Side
from stemline.lineup.alignment import line_up
from stemline.lineup.moving import move
from stemline.playbook.formations import Formation
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.expand import Expander, field_of


class W870(Mistake):
    title = "right only after the motion"
    message = "before {motion}, {formation} is a foul: {rules}; at the snap it is right"
    label = "not before the motion"
    help = "never snap it early, or line the men up so that it is right from the start"

    formation: str
    motion: str
    rules: str


WHEN = When.BOOK


def check_before_motion(book: Playbook, calls: Calls, _: Expander) -> Iterator[Diagnostic]:
    """What is wrong with each formation as it stands, but for what all of its calls mend."""
    for key, formation in book.formations.items():
        found = list(as_it_stands(book, key))
        if found:
            yield from _unmended(book, calls, key, formation, found)


def _unmended(
    book: Playbook, calls: Calls, key: str, formation: Formation, found: Sequence[Diagnostic]
) -> Iterator[Diagnostic]:
    orders = [order for _, order in calls.orders if order.formation == key]
    ways = {
        (side, order.motion)
        for order in orders
        for spot in BallSpot
        if (side := order.at(spot)) is not None
    }
    if orders:
        found = [d for d in found if not isinstance(d.said, E524)]
    if not ways or not all(motion for _, motion in ways):
        yield from found
        return
    still = {broken_by(d) for side, way in ways for d in as_it_stands(book, key, (side,), way)}
    mended = [d for d in found if broken_by(d) not in still]
    yield from (d for d in found if d not in mended)
    fouls = [d.said.foul for d in mended if isinstance(d.said, BrokenRule) and d.said.foul]
    if fouls:
        names = sorted({book.motions[way].name for _, way in ways})
        rules = ", and ".join(dict.fromkeys(fouls))
        told = W870(formation=formation.name, motion=" or ".join(names), rules=rules)
        yield told.at(formation.span)


def as_it_stands(
    book: Playbook, key: str, sides: Iterable[Side] = tuple(Side), motion: str = ""
) -> Iterator[Diagnostic]:
    """A formation judged from every spot as it stands, or where its men are after a motion."""
    formation = book.formations[key]
    if formation.broken:
        return
    for spot, side in product(BallSpot, sides):
        field = field_of(book, spot)
        alignment, men, _ = line_up(book, formation, side, field)
        if len(men) == field.code.players.value:
            if motion:
                men, _, _ = move(alignment, men, book.motions[motion])
            numbers = numbers_of(book)
            snap = Snap(field.code, men, formation.name, formation.span, numbers=numbers)
            yield from ask(When.STANDING, snap)


def broken_by(d: Diagnostic) -> tuple[str, str]:
    """The rule and the man: what a motion need not be blamed for where the formation is."""
    return d.code, getattr(d.said, "man", "")


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

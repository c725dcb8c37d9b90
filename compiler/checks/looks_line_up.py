"""Does every look line up against every formation of the book, with the right number of men?

An opponent's front is drawn once, on a board with one formation on it. In the book it is drawn
against all of them: the receiver that the nickel stands over is not there in the next one, and a
man defender whose man walked across the ball has nobody. So each look is lined up against each
formation, to both sides and from all three spots, and with the motions that calls use.

Example: ``M covers man, strong #3`` against two by two. Write what he does then:
``M covers man, strong #3 or hook, strong``.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import product

from stemline.checks.asked import When
from stemline.diagnostics.catalogue.looks import W425, W428, W499
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.diagnostics.in_words import together
from stemline.football.conditions import LookWord
from stemline.football.defenders import Defence
from stemline.football.field import BallSpot, Side
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.look_definitions import LookDef
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.expand import CalledAt, Expander, called_at
from stemline.resolve.order import Order
from stemline.source import Span


class W104(Mistake):
    title = "looks not tried against every formation"
    message = (
        "the looks and formations of this playbook make {pairs} pairs, of which {most} were tried"
    )
    help = (
        "leave out looks and formations that are not this season's; those of the last blocks were "
        "not tried"
    )

    most: str
    pairs: str


class E480(Mistake):
    title = "the wrong number of defenders"
    message = "{look} has {got} defenders, and {wanted} play ({rules}; {source})"
    label = "{got} defenders"
    help = "one line with `at` for each man, and none twice"

    got: int
    look: str
    rules: str
    source: str
    wanted: str


class TooNear(Mistake):
    """A defender inside the restraining distance of his code."""

    look: str
    man: str
    depth: str
    wanted: str
    rules: str
    source: str


class E491(TooNear):
    title = "a defender too near the ball"
    message = (
        "in {look}, [{man}] stands {depth} yards off the ball, and the defence must be {wanted} "
        "({rules}; {source})"
    )
    label = "too near"
    help = "at least `{wanted} deep`; a technique without a depth keeps the distance by itself"


class W491(TooNear):
    title = "a defender who may be too near the ball"
    message = (
        "in {look}, [{man}] stands {depth} yards off the ball, and {wanted} may be asked for "
        "({rules}; {source})"
    )
    label = "near"
    help = "ask your league; a technique without a depth keeps the distance by itself"


class W493(Mistake):
    title = "a man whom nobody covers"
    message = "in {look}, everybody is covered man to man, and nobody has {said} of {formations}"
    label = "{said} is free"
    help = "give him to somebody: `M covers man, {who}`"

    formations: str
    look: str
    said: str
    who: str


MOST_PAIRS = 600
"""Looks by formations, those that move counted again, that are tried: each is lined up six times.
The bundled playbooks have less than half as many."""
_NAMED = 3
"""Formations that a message names before it counts the others."""
_ORDINALS = ("back", "second back", "third back", "fourth back")


WHEN = When.BOOK


def check_looks_line_up(book: Playbook, calls: Calls, maker: Expander) -> Iterator[Diagnostic]:
    """Every look of the book; one cause is said once, with the formations it shows against."""
    keys = [key for key, look in book.looks.items() if not look.broken]
    looks = [book.looks[key] for key in keys]
    if not looks:
        return
    yield from _numbers(looks, book)
    yield from _unmet(keys, book, maker)
    yield from _too_near(looks, book)
    found = _LooksByCause()
    sets = list(_sets(book, calls))
    tried = max(1, MOST_PAIRS // len(keys))
    if tried < len(sets):
        pairs, most = f"{len(sets) * len(keys):,}", f"{tried * len(keys):,}"
        yield W104(pairs=pairs, most=most).at(looks[0].span)
    for formation, motion in sets[:tried]:
        name = _name(book, formation, motion)
        for spot, side in product(BallSpot, Side):
            at = CalledAt(formation, side, motion, spot)
            picture = maker.lined(at).picture
            for key in keys if picture is not None else ():
                defence, problems = maker.defence(key, at)
                found.add(name, problems)
                if picture is not None and defence is not None:
                    found.add(name, _uncovered(defence, picture))
                    found.add(name, _not_hidden(book.looks[key], defence))
    yield from found.gathered()
    yield from _never_met(book, calls, maker)


def _unmet(keys: Sequence[str], book: Playbook, maker: Expander) -> Iterator[Diagnostic]:
    """Looks that are for no set of the book."""
    for key in keys:
        pictures = (
            (formation, picture)
            for formation in (book.formations if book.looks[key].limited else ())
            if (
                picture := maker.lined(CalledAt(formation, Side.RIGHT, "", BallSpot.MIDDLE)).picture
            )
        )
        met = [maker.meets(key, *each) for each in pictures]
        if met and not any(met):
            yield W499(look=book.looks[key].name).at(book.looks[key].span)


def _never_met(book: Playbook, calls: Calls, maker: Expander) -> Iterator[Diagnostic]:
    """Looks that a dress-up names for its picture and that none of its calls ever meets."""
    for dress in book.dresses:
        orders = [order for each, order in calls.orders if each is dress]
        for key in dress.looks if orders else ():
            look = book.looks[key]
            if look.limited and not any(_meets(key, order, book, maker) for order in orders):
                yield W428(call=orders[0].spoken, look=look.name, sets=look.sets).at(dress.span)


def _meets(key: str, order: Order, book: Playbook, maker: Expander) -> bool:
    at = called_at(book, order, order.timed_from)
    picture = maker.lined(at).picture if at is not None else None
    return picture is not None and maker.meets(key, order.formation, picture)


def _numbers(looks: Sequence[LookDef], book: Playbook) -> Iterator[Diagnostic]:
    """The code's number of men; a look that takes over another's men says it once with it."""
    players = book.settings.code.players
    told: set[frozenset[Span]] = set()
    for look in looks:
        men = frozenset(said[0].span for said in look.stands.values())
        if len(look.stands) != int(players.value) and men not in told:
            told.add(men)
            yield E480(
                look=look.name, got=len(look.stands), wanted=f"{players.value:g}",
                rules=book.settings.code.title, source=players.cited,
            ).at(look.span)  # fmt: skip


def _sets(book: Playbook, calls: Calls) -> Iterator[tuple[str, str]]:
    """Every formation, still and with the motions that calls use."""
    motions: dict[str, dict[str, None]] = {
        key: {"": None} for key, formation in book.formations.items() if not formation.broken
    }
    for _, order in calls.orders:
        if order.formation in motions and (
            not order.motion or not book.motions[order.motion].broken
        ):
            motions[order.formation].setdefault(order.motion)
    for key, used in motions.items():
        for motion in used:
            yield key, motion


def _name(book: Playbook, formation: str, motion: str) -> str:
    name = book.formations[formation].name
    return f"{name} with {book.motions[motion].name}" if motion else name


def _too_near(looks: Sequence[LookDef], book: Playbook) -> Iterator[Diagnostic]:
    """Nobody of the defence nearer to the line than its restraining distance.

    A line that a look takes over is said once, where it stands.
    """
    code = book.settings.code
    told: set[Span] = set()
    for look in looks:
        for man, lines in look.stands.items():
            for line in lines:
                depths = [s.depth for s in line.value if s.depth is not None]
                depth = min(depths, default=code.restraining.value)
                if depth < code.restraining.value and line.span not in told:
                    told.add(line.span)
                    near = (E491 if code.restraining.binding else W491)(
                        look=look.name, man=man, depth=f"{depth:g}", rules=code.title,
                        wanted=f"{code.restraining.value:g}", source=code.restraining.cited,
                    )  # fmt: skip
                    yield near.at(line.span)


def _not_hidden(look: LookDef, defence: Defence) -> Iterator[Diagnostic]:
    """Words that a look is said to show before the snap, and plays."""
    for word in look.shown:
        if word.value not in defence.disguise:
            yield W425(look=look.name, word=word.value).at(look.span)


def _uncovered(defence: Defence, picture: LinedUp) -> Iterator[Diagnostic]:
    """In man coverage every man who may catch a pass is somebody's."""
    if LookWord.MAN.value not in defence.shows:
        return
    covered = {d.duty.man for d in defence.defenders if d.duty is not None}
    counted = picture.count
    names = {
        label: f"{'strong' if side is defence.strong else 'weak'} #{number}"
        for side in Side
        for number, label in enumerate(counted.on(side), 1)
    }
    names |= dict(zip(counted.backs, _ORDINALS, strict=False))
    for label, who in names.items():
        if label not in covered:
            said = who if "#" in who else f"the {who}"
            yield W493(
                look=defence.name, who=who, said=said, formations=counted.shape_word,
            ).at(defence.span)  # fmt: skip


class _LooksByCause:
    """Diagnostics by cause, each with the formations that show it."""

    def __init__(self) -> None:
        self._causes: dict[tuple[object, ...], tuple[Diagnostic, dict[str, None]]] = {}

    def add(self, formation: str, found: Iterable[Diagnostic]) -> None:
        for d in found:
            who = (getattr(d.said, name, "") for name in ("man", "other", "who"))
            cause = (d.code, d.span, *who)
            _, formations = self._causes.setdefault(cause, (d, {}))
            formations.setdefault(formation)

    def gathered(self) -> Iterator[Diagnostic]:
        for d, formations in self._causes.values():
            if "formations" in d.said.fields:
                said = d.said.having(formations=_listed(list(formations)))
                d = replace(d, said=said)
            yield d


def _listed(names: Sequence[str]) -> str:
    more = len(names) - _NAMED
    if more <= 0:
        return together(names)
    return f"{', '.join(names[:_NAMED])} and {more} more"


SAMPLES = """
### W104

Each look is lined up against each formation to both sides from three places of the ball. With very
many of both only the first are, and the others may hold mistakes that nobody is told.

No sample: it would not fit here.

### E480

The look is drawn a man short, or with one too many, and every block and every free man would be
counted wrong.

```play fail E480
look Base
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    S at strong #3 or apex or outside end, strong, 5 deep
    M in 10, strong
    W in 30, weak
    C at strong #1 or outside end, strong, 8 deep
    H at strong #2 or tackle, strong, 8 deep
    B at weak #1 or outside end, weak, 8 deep
    F at middle, 13 deep
    C covers third, strong
    F covers third, middle
    B covers third, weak
    H covers flat, strong
    S covers hook, strong
    M covers hole
    W covers hook, weak
```

```play
like E480
     H at strong #2 or tackle, strong, 8 deep
+    D at weak #2 or apex or tackle, weak, 8 deep
     W covers hook, weak
+    D covers flat, weak
```

### E491

The code keeps the defence off the ball until it is snapped, and a look that stands nearer is
offside on every play.

```play fail E491
like E480 mended
+playbook Saltmarsh Herons
+    code canadian professional
+
-    T in 3, strong
+    T in 3, strong, 0.5 deep
```

```play
like E491
-    T in 3, strong, 0.5 deep
+    T in 3, strong
```

### W491

The distance that this code keeps the defence off the ball is known from memory only. Your league
knows.

```play fail W491
look Storm extends Base
    T in 3, strong, 0.5 deep
```

```play
look Storm extends Base
    T in 3, strong, 1 deep
```

### W493

In man coverage somebody must have every man who may catch a pass. The one who is left over is the
opponent's touchdown, or a line that was forgotten.

```play fail W493
look Storm extends Base
    C covers man, strong #1
    H covers man, strong #2
    S covers man, strong #3
    D covers man, weak #2 or strong #4
    B covers man, weak #1
```

```play
like W493
     B covers man, weak #1
+    M covers man, back
```
"""

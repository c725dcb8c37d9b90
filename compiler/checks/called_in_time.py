"""Has somebody taught what a week calls?

A game plan is made by coaches who know the whole book, and played by men who know what was put in.
What no day of the install has put in before a game is called there by a staff alone.

Asked by the planner of weeks, where a playbook says its install.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.diagnostics.in_words import together
from stemline.playbook.playbook import Playbook
from stemline.resolve.installing import Schedule, TaughtPart, parts_of
from stemline.resolve.order import Order
from stemline.source import Span


class W731(Mistake):
    title = "called before it is put in"
    message = "{call} is called in week {week}, and {parts} not put in by then"
    label = "who has taught it?"
    help = "put it in on a day of the camp, or in a week up to this one"

    call: str
    week: int
    parts: str


def check_called(
    book: Playbook, schedule: Schedule, week: int, called: Mapping[str, tuple[Order, Span]]
) -> Iterator[Diagnostic]:
    """The calls of a week, each at its row, that stand on something no day has put in before."""
    last = schedule.before_game(week)
    for call, (order, span) in called.items():
        lacking = schedule.lacking(parts_of(book, order), last)
        if lacking:
            yield W731(call=call, week=week, parts=_are(lacking)).at(span)


def _are(parts: Iterable[TaughtPart]) -> str:
    named = [f"{part.kind} {part.name}" for part in parts]
    return f"{together(named)} {'is' if len(named) == 1 else 'are'}"


SAMPLES = """
### W731

The opponent is not the first who should make a man run it. A week's own practices count: `week 3`
of the install is over before the game of week 3.

```play fail W731
install Camp
    day 1
        Three Two

week 3 Larch Bay
    openers
        Three Two Right Crossers
```

```play
like W731
         Three Two
+    week 3
+        Crossers
```
"""

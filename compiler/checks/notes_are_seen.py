"""Is there a look for a note that waits for one?

A word for press is taught for nothing where nobody in the book is ever pressed: either the look is
missing, or the condition is a slip. Asked only where the playbook has looks at all.

Example: `quarterback says "Back shoulder." when press` in a book whose corners all stand off.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.field import BallSpot, Side
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.expand import CalledAt, Expander
from stemline.resolve.noting import notes_on_looks

WHEN = When.BOOK


class W771(Mistake):
    title = "a word for a look that nobody shows"
    message = "no look of this playbook shows {look}, so the note is told of nothing here"
    label = "never holds"
    help = "take the condition off, or write the look that shows it"

    look: str


def check_notes_are_seen(book: Playbook, calls: Calls, maker: Expander) -> Iterator[Diagnostic]:
    notes = notes_on_looks(book) if book.looks else ()
    if not notes:
        return
    shown = {word.value for word in notes[0][1]}
    for formation in dict.fromkeys(o.formation for _, o in calls.orders):
        for key in book.looks:
            at = CalledAt(formation, Side.RIGHT, "", BallSpot.MIDDLE)
            defence, _ = maker.defence(key, at)
            shown |= set(defence.shows) if defence is not None else set()
    for note, _ in notes:
        for word in note.guard.looks:
            if word.value not in shown:
                yield W771(look=word.value).at(note.span)


SAMPLES = """
### W771

A word for a look is told for nothing where no look of the book shows it. Here every corner stands
eight yards off.

```play fail W771
tag Quick for Crossers
    quarterback says "Now." when press
    keeps feet

dress Crossers
    in Three Two with Quick
```

```play
like W771
-    quarterback says "Now." when press
+    quarterback says "Now." when off
```
"""

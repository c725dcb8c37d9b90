"""Does a call that is killed at the line become one other play, and that one no third?

The quarterback says one word, and ten men must know what it means. A look that shows what two kills
wait for leaves them with two plays, and a play that is killed in its turn with a second word when
the ball is already due.

Example: a power killed to a quick pass against eight in the box, and to a bubble when the corner is
off, against a look that has both.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake, Related
from stemline.playbook.kill_definitions import BoxCount, KillDef
from stemline.resolve.kills import is_itself, kills_of, readings, second_call, second_words
from stemline.resolve.sight_of import looks_seen

WHEN = When.PROVED


class E765(Mistake):
    title = "a kill of a kill"
    message = "{call} is killed to {to}, which is killed to {then} itself"
    label = "one word at the line, one other play"
    help = "take `kill to {then}` out of {to}, or put it into a tag that this call does not have"

    call: str
    to: str
    then: str


class E766(Mistake):
    title = "two kills at once"
    message = "{look} would kill {call} to {first} and to {second}"
    label = "so does this"
    help = "let one ask for more, such as `kill to {second} when {when}, {more}`"

    call: str
    first: str
    second: str
    look: str
    when: str
    more: str


class E767(Mistake):
    title = "killed to itself"
    message = "{call} is killed to the play that it is"
    label = "the same play"
    help = (
        "name another concept, a tag of this one, or the other side: `kill to {to} away when "
        "{when}`"
    )

    call: str
    to: str
    when: str


def check_line_calls_agree(call: ProvedCall) -> Iterator[Diagnostic]:
    if call.order.second or call.play.against or call.play.defence is not None:
        return
    kills = kills_of(call.book, call.order)
    spoken = call.play.call.spoken
    for kill in kills:
        for to in readings(call.book, kill):
            if is_itself(call.book, call.order, to):
                yield E767(call=spoken, to=second_words(call.book, to), when=kill.text).at(
                    kill.span
                )
                continue
            second = second_call(call.book, call.order, kill, to)
            # The same run to the other side has no kills but those that were read.
            for then in (k for k in kills_of(call.book, second) if k not in kills):
                yield E765(call=spoken, to=kill.said, then=then.said).at(
                    kill.span, related=(Related(then.span, "it is killed here"),)
                )
    yield from _together(call, kills)


_MORE = ("middle open", "press", "off", "weak corner off", "8 or more in box")
"""What a second sight may ask besides, where it does not yet."""


def _together(call: ProvedCall, kills: tuple[KillDef, ...]) -> Iterator[Diagnostic]:
    """Pairs of kills of one look, each told by the first look that has both."""
    for first, second in combinations(kills, 2):
        shown = [
            looks_seen(call.book, call.maker, call.order, kill, call.play.ball)
            for kill in (first, second)
        ]
        both = next((key for key in shown[0] if key in shown[1]), "")
        look = call.book.looks[both].name if both else _counted(first, second)
        if look:
            yield E766(
                call=call.play.call.spoken, first=first.said, second=second.said, look=look,
                when=second.text,
                more=next(word for word in _MORE if word not in f"{first.text} {second.text}"),
            ).at(second.span, related=(Related(first.span, "it is killed here too"),))  # fmt: skip


def _counted(first: KillDef, second: KillDef) -> str:
    """A count of the box that both ask for and nothing else, in words; "" where there is none."""
    counts = [
        kill.when[0][0]
        for kill in (first, second)
        if len(kill.when) == 1 and len(kill.when[0]) == 1
    ]
    match counts:
        case [BoxCount(a, b), BoxCount(c, d)]:
            least, most = max(a, c), min(x for x in (b, d, 99) if x is not None)
            return f"{least} men in the box" if least <= most else ""
    return ""


SAMPLES = """
### E765

A word at the line means one other play, and then the ball is snapped. Here the pass that the run
becomes is killed itself.

```play fail E765
run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk
    kill to Slants when 9 or more in box

concept Slants
    slant is strong #1
    slant runs slant
    hitch is weak #1
    hitch runs hitch
    everyone else runs go
    flat is back
    flat blocks inside out
    feet quick
    read slant on quick > hitch on quick
    kill to Crossers when press

dress Dive
    in Three Two
```

```play
like E765
-    kill to Crossers when press
```

### E766

Ten men hear one word. Here one look, whose corners are off and who has six men in the box, would
mean two plays.

```play fail E766
like E765 mended
-    kill to Slants when 9 or more in box
+    kill to Slants when 6 or more in box
+    kill to Crossers when off
```

```play
like E766
-    kill to Slants when 6 or more in box
+    kill to Slants when 6 or more in box, press
```

### E767

A kill to the play that is called changes nothing.

```play fail E767
run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk
    kill to Dive when 3 technique playside

dress Dive
    in Three Two
```

```play
like E767
-    kill to Dive when 3 technique playside
+    kill to Dive away when 3 technique playside
```
"""

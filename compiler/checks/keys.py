"""Does a run-pass option read the man whom its blocking leaves?

The pass makes up for a blocker who is missing: the one man who is not blocked is read, so that he
is wrong whatever he does. Where another is read, the free man makes the tackle while the
quarterback looks at one who was no danger to the run. The end man on the backside is held by the
fake and is not counted, and a look with more men than can be blocked and read is a matter of the
count: what is said here is only that another man of the same side would be the one to read.

Example: a bubble with inside zone that reads the halfback over the slot, eight deep, while the
weak linebacker is left in the box.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.diagnostics.in_words import theirs
from stemline.football.defence.described import Described
from stemline.football.defence.fronts import front_of
from stemline.football.field import Side
from stemline.football.play import Play


class W671(Mistake):
    title = "a key whom the blocking does not leave"
    message = "{call} reads the {key}, and the blocking leaves {free} of {look}"
    help = (
        "write `key unblocked man` with his side, or change a block so that {key_man} is the only "
        "one left"
    )

    call: str
    free: tuple[str, ...]
    key: str
    key_man: str
    look: str


class W688(Mistake):
    title = "a key who is nobody"
    message = "{call}: against {look} nobody is the {key}, and the quarterback reads nobody"
    label = "nobody there"
    help = "{instead}"
    varies = ("instead", "look")

    call: str
    instead: str
    key: str
    look: str


WHEN = When.PROVED
_COMMON = ("near safety", "near linebacker")
"""Who is read on a pass as a rule."""


def check_keys(call: ProvedCall) -> Iterator[Diagnostic]:
    """One a key, for one call against one look after another: the first look that shows it."""
    told, empty = set(), set()
    for play in call.when_thrown:
        for key in play.keys:
            if not key.man and play.defence is not None and key.choices and key.span not in empty:
                empty.add(key.span)
                yield W688(
                    call=play.call.spoken, key=key.described, look=play.defence.name,
                    instead=_instead(call, key.described),
                ).at(key.span)  # fmt: skip
            if key.instead and play.defence is not None and key.span not in told:
                told.add(key.span)
                yield W671(
                    call=play.call.spoken, key=key.described, key_man=theirs(key.man) or "he",
                    free=tuple(map(theirs, key.instead)), look=play.defence.name,
                ).at(key.span)  # fmt: skip


def _instead(call: ProvedCall, said: str) -> str:
    """Whom to read instead of the man who is ``said``: of a pass one whom every look has."""
    if call.play.carrier:
        return "read whom the blocking leaves: `key unblocked man`"
    shown = [play for play in call.when_thrown if play.defence is not None]
    there = [n for n in _COMMON if n not in said and all(_has(play, n) for play in shown)]
    if not there:
        return "the looks have no such man in common: say an order with `read` in its place"
    return "read a man whom every look has, as " + " or ".join(f"`key {name}`" for name in there)


def _has(play: Play, name: str) -> bool:
    """Whether a look has such a man on either side of this call."""
    assert play.defence is not None
    fronts = (front_of(play.men, play.defence, side) for side in Side)
    return all(front.described(Described(name, None), 0.0) for front in fronts)


SAMPLES = """
### W671

A run-pass option makes up for the blocker who is missing: the man who is left is read. Here the
halfback over the slot is read, and the weak linebacker is free in the hole. The end man on the
backside is not counted, since the fake holds him.

```play fail W671
run Dive
    carrier is back
    carrier aims playside A
    line blocks on or double with centre then far linebacker
    centre blocks on or double with playside guard or double with backside guard then linebacker
    outside, second, third is strong outside
    outside, second, third blocks stalk
    slot is weak #2
    slot runs bubble
    lone is weak #1
    lone runs slant
    key backside overhang
    give if he runs out to the bubble
    throw slot if he fits the run
    feet catch

dress Dive
    in Three Two
```

```play
like W671
-    key backside overhang
+    key backside unblocked man
```

### W688

A look may have no such man: here nobody stands head-up on the centre. Who reads him looks at
nobody, and guesses.

```play fail W688
concept Pick One
    slant is weak #1
    slant runs slant
    hitch is strong #1
    hitch runs hitch
    key nose
    throw slant if he drops
    throw hitch if he comes
    feet quick
    everyone else runs go
    back runs swing

look Double Threes extends Base
    N in 3, weak

dress Pick One
    in Three Two
```

```play
like W688
-    key nose
+    key near linebacker, weak
```
"""

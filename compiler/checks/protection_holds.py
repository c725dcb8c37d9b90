"""Is there an answer for everybody who comes?

A pressure that brings one more than the protection blocks is normal football: the quarterback
throws before the free man is there. But then somebody must be the throw: the concept says it by its
`pressure` order or the protection by a `hot` line. Two free rushers no throw beats.

Silent without a look: a dress-up's `against` names those that a call is proved against.

Example: ``protect five`` against a look in which six rush, and no `pressure` line. Write
``pressure flat on quick``, or ``hot slant`` in the protection, or keep the back in.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.diagnostics.in_words import theirs
from stemline.football.play import Kind, Play


class W691(Mistake):
    title = "a free rusher and no answer"
    message = (
        "against {look} one more comes than {protection} blocks: {man} is free {where}, and "
        "nothing is thrown for him ({call})"
    )
    label = "no answer"
    help = "give the concept a `pressure` order, or the protection a `hot`"

    call: str
    look: str
    man: str
    protection: str
    where: str


class W692(Mistake):
    title = "two free rushers"
    message = "against {look} two more come than {protection} blocks: {men} are free ({call})"
    label = "too few stay in"
    help = "keep another man in, slide to them, or leave this look out of the dress-up"

    call: str
    look: str
    men: str
    protection: str


MIDDLE = 1.5
"""A man who comes free within this of the ball comes up the middle. Common practice."""


WHEN = When.CALLED


def check_protection_holds(play: Play) -> Iterator[Diagnostic]:
    """Free rushers of a pass against the look it is drawn against, at the call."""
    if play.kind is not Kind.PASS or play.defence is None or not play.protection:
        return
    look, protection, call = play.defence.name, play.protection, play.call.spoken
    free = play.unblocked
    if len(free) > 1:
        men = " and ".join(f"{theirs(label)} {_where(play, label)}" for label in free)
        yield W692(look=look, protection=protection, men=men, call=call).at(play.span)
    elif free and not play.pressure and not play.hot:
        man, where = theirs(free[0]), _where(play, free[0])
        yield W691(
            look=look, protection=protection, man=man, where=where, call=call,
        ).at(play.span)  # fmt: skip


def _where(play: Play, label: str) -> str:
    """Where he comes from, by the side of the offence's strength."""
    assert play.defence is not None
    man = play.defence.defender(label)
    x = (man.duty.to if man.duty is not None and man.duty.to is not None else man.at).x
    if abs(x) < MIDDLE:
        return "up the middle"
    return "from the strong side" if x * play.strong.value > 0 else "from the weak side"


SAMPLES = """
### W691

One more than is blocked is normal football, if the quarterback knows whom to throw to at once.

```play fail W691
tag Wheel for Crossers
    protect five

dress Crossers
    in Three Two
    with Wheel
    against Storm

look Storm
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    M in 10, strong
    W in 30, weak
    C at strong #1, 8 deep
    H at strong #2, 8 deep
    S at apex, strong, 6 deep
    D at weak #2 or tackle, weak, 8 deep
    B at weak #1, 8 deep
    F at middle, 13 deep
    M rushes A, strong
    W rushes B, weak
    C covers third, strong
    F covers third, middle
    B covers third, weak
    H covers flat, strong
    S covers hook, strong
    D covers flat, weak
```

```play
like W691
     protect five
+    pressure flat on quick
```

### W692

The throw that beats one free man is late for the second.

```play fail W692
like W691 mended
-    against Storm
+    against Flood
-look Storm
+look Flood
-    D at weak #2 or tackle, weak, 8 deep
+    D at outside tackle, weak, 5 deep
     W rushes B, weak
+    D rushes contain, weak
-    D covers flat, weak
```

```play
like W692
-    against Flood
```
"""

"""Is the ball thrown forward once only, and thrown and handed forward behind the line only?

A ball that is thrown, tossed, pitched or shovelled forward is a forward pass, whoever throws it,
and every code known allows one in a down. So the first throw of a double pass goes back or
straight across: the man who catches it is no farther up the field than the one who threw it. A
hand-off may go forward, but not past the line; nor may the ball be thrown forward from there.

Example: ``quarterback throws to out`` where `out` stands on the line. Write instead ``quarterback
throws to out at 2 behind``.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.checks.legality.snap import on
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.exchanges import BallMoves, holders, said_any
from stemline.football.play import Play
from stemline.football.timing.ball_clock import BallMoment, ball_moments
from stemline.football.timing.release import LEVEL


class E797(BrokenRule):
    title = "two forward passes"
    message = (
        "{call}: {man} catches it {yards} yards in front of {giver}, a pass forward already, so "
        "{thrower} may not throw it"
    )
    label = "thrown forward already"
    help = "let the first throw go back: `at 2 behind`, as in `{line} at 2 behind`"
    varies = ("yards",)

    call: str
    giver: str
    line: str
    man: str
    thrower: str
    yards: str


_BEHIND = "at 3 deep, playside guard"
"""Where a hand-off that came past the line can be made: behind it, near to most holes."""


class E798(BrokenRule):
    title = "a hand-off forward past the line"
    message = "{call}: {giver} hands the ball forward to {man} {yards} yards past the line"
    label = "past the line"
    help = "let them meet behind it: `{line}` and `{aims}`, and no other line that says his way"
    varies = ("yards",)

    aims: str
    call: str
    giver: str
    line: str
    man: str
    yards: str


class E795(BrokenRule):
    title = "a pass from past the line"
    message = "{call}: {giver} is {yards} yards past the line when he throws the ball forward"
    label = "past the line"
    help = "let him throw it sooner, from behind the line: `after 1.5 seconds`"
    varies = ("yards",)

    call: str
    giver: str
    yards: str


class W796(Mistake):
    title = "a pass from about the line"
    message = (
        "{call}: by the clock {giver} is {yards} yards past the line when he throws the ball "
        "forward, and it is a foul if he is"
    )
    label = "where is he"
    help = "let him throw it sooner, from behind the line: `after 1.5 seconds`"
    varies = ("yards",)

    call: str
    giver: str
    yards: str


SURELY = 2.0
"""Yards past the line from which no doubt of the clock's brings a thrower back behind it."""

WHEN = When.PROVED


def check_forward_passes(call: ProvedCall) -> Iterator[Diagnostic]:
    play = call.play
    if not said_any(play.exchanges):
        return
    moments = ball_moments(play, call.book.settings.level)
    yield from _twice(play, moments)
    code = play.field.code
    for moment in moments:
        yield from _from_past(play, moment)
        x, past = moment.exchange, moment.taken.y
        handed = x.kind is BallMoves.HAND and past > LEVEL and _forward(moment)
        if handed and not code.hand_past.value:
            yield E798(
                resting=on(code.hand_past, code), call=play.call.spoken, giver=x.giver,
                man=x.taker, yards=f"{past:.1f}",
                aims=f"{play.as_said(x.taker)} aims outside the end",
                line=f"{play.as_said(x.giver)} hands to {play.as_said(x.taker)} {_BEHIND}",
            ).at(x.span)  # fmt: skip


def _from_past(play: Play, moment: BallMoment) -> Iterator[Diagnostic]:
    """A pass forward whose thrower has crossed the line: the clock says where he is, so that a yard
    or two are a warning."""
    x, code, past = moment.exchange, play.field.code, moment.given.y
    if not x.kind.flies or past <= LEVEL or not _forward(moment) or code.pass_past.value:
        return
    told = {"call": play.call.spoken, "giver": x.giver, "yards": f"{past:.1f}"}
    sure = past >= SURELY
    made = E795(resting=on(code.pass_past, code), **told) if sure else W796(**told)
    yield made.at(x.span)


def _twice(play: Play, moments: tuple[BallMoment, ...]) -> Iterator[Diagnostic]:
    """One more pass forward than the code allows: told at the first, which can go back."""
    code = play.field.code
    thrown = [m for m in moments if m.exchange.kind.flies and _forward(m)]
    throwers = [m.exchange.giver for m in thrown]
    passer = play.passer
    if (
        play.reads
        and passer is not None
        and holders(play.exchanges, passer.label)[-1] == passer.label
    ):
        throwers.append(passer.label)
    if len(throwers) <= code.forward_passes.value or not thrown:
        return
    first = thrown[0]
    x = first.exchange
    yield E797(
        resting=on(code.forward_passes, code), call=play.call.spoken, giver=x.giver, man=x.taker,
        thrower=throwers[-1], yards=f"{first.taken.y - first.given.y:.1f}",
        line=f"{play.as_said(x.giver)} {x.kind.value} to {play.as_said(x.taker)}",
    ).at(x.span)  # fmt: skip


def _forward(moment: BallMoment) -> bool:
    return moment.taken.y > moment.given.y + LEVEL


SAMPLES = """
### E797

The first throw of a double pass has to go back: a pass forward may be thrown once in a down,
whoever throws it. Here the outside man catches it on the line, five yards in front of the
quarterback.

```play fail E797
playbook Lanterns
    code canadian professional

personnel Base
    Q is quarterback
    R is back
    X, Z is wideout
    H, S, W is slotback

formation Three Two
    X at away, 2 inside numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, 5 outside H, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

concept Twice
    out is strong #2
    quarterback throws to out
    out throws to strong #1
    strong #1 runs go
    everyone else runs seam
    back blocks inside out
    feet catch

dress Twice
    in Three Two
```

```play
like E797
-    quarterback throws to out
+    quarterback throws to out at 2 behind
```

### W797

As the error, in a code whose rule is known from memory.

```play fail W797
like E797
-    code canadian professional
+    code canadian amateur
```

```play
like W797
-    quarterback throws to out
+    quarterback throws to out at 2 behind
```

### E798

The ball may be handed forward behind the line. Past it a hand-off goes back or straight across.

```play fail E798
playbook Lanterns
    code canadian professional

personnel Base
    Q is quarterback
    R is back
    X, Z is wideout
    H, S, W is slotback

formation Three Two
    X at away, 2 inside numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, 5 outside H, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

run Too Far
    carrier is back
    taker is strong inside
    quarterback hands to carrier
    carrier aims playside C
    carrier hands to taker
    taker runs slant 2
    line blocks on or climb
    everyone else blocks stalk

dress Too Far
    in Three Two
```

```play
like E798
-    carrier hands to taker
-    taker runs slant 2
+    taker blocks stalk
```

### W798

As the error, in a code whose rule is known from memory.

```play fail W798
like E798
-    code canadian professional
+    code canadian amateur
```

```play
like W798
-    carrier hands to taker
-    taker runs slant 2
+    taker blocks stalk
```

### E795

The ball is thrown forward from behind the line only, whoever throws it. Here the back has run over
the line with it when he throws.

```play fail E795
like E798
-run Too Far
+run Too Late
-    carrier hands to taker
-    taker runs slant 2
+    carrier throws to taker after 3 seconds
+    taker runs go
-dress Too Far
+dress Too Late
```

```play
like E795
-    carrier throws to taker after 3 seconds
+    carrier throws to taker after 1.2 seconds
```

### W795

As the error, in a code whose rule is known from memory.

```play fail W795
like E795
-    code canadian professional
+    code canadian amateur
```

```play
like W795
-    carrier throws to taker after 3 seconds
+    carrier throws to taker after 1.2 seconds
```

### W796

He runs to the line and throws at about the moment at which he crosses it: by the clock he is past
it already.

```play fail W796
like E795
-    carrier throws to taker after 3 seconds
+    carrier throws to taker after 1.6 seconds
```

```play
like E795
-    carrier throws to taker after 3 seconds
+    carrier throws to taker after 1.2 seconds
```
"""

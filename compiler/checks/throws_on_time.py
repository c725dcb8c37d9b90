"""Is every read open when the quarterback gets to it?

A drawing can lie: the man who is drawn open at twelve yards gets there when the ball should be
gone. The clock says when the feet are
ready, when the ball is there and when its man is open; what does not fit is a warning, since every
figure behind it is a planning estimate.

Example: the far out of the wide side, thrown across 65 yards off a three-step drop. Give the man a
shorter split, throw it earlier, or call it into the boundary.
"""

from __future__ import annotations

import math
from collections.abc import Container, Iterable, Iterator, Sequence
from dataclasses import replace
from typing import ClassVar

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Play
from stemline.football.timing.clock import ReadClock, TimedRead, Verdict
from stemline.playbook.concepts import Keep
from stemline.source import Span


class E666(Mistake):
    title = "a promise broken on the clock"
    message = (
        "{tag} keeps the {what}, but in {call} its look {number}, {target}, {how} off the {foot}"
    )
    label = "does not keep it"
    help = (
        "{concept} without the tag has it on time: give the man a shorter way, or leave {what} out "
        "of `keeps`"
    )
    varies = ("how",)

    call: str
    concept: str
    foot: str
    how: str
    number: int
    tag: str
    target: str
    what: str


class OffTheClock(Mistake):
    """A read and the clock: times in seconds, the length of the throw in yards."""

    varies: ClassVar[tuple[str, ...]] = ("arrives", "closes", "man", "off", "opens", "yards")

    target: str
    man: str
    foot: str
    arrives: str
    opens: str
    closes: str
    off: str
    yards: str
    call: str


class W800(OffTheClock):
    title = "a read comes late"
    message = (
        "{call}: {man} was open for {target} until {closes} s, and the ball thrown off the {foot} "
        "is there at {arrives} s, {off} s late"
    )
    label = "late by {off} s, a throw of {yards} yards"
    help = (
        "throw it off an earlier foot, look at him `with` an earlier read, shorten the throw, or "
        "let the man sit"
    )


class W801(OffTheClock):
    title = "a read comes early"
    message = (
        "{call}: {man} is open for {target} from {opens} s, and the ball thrown off the {foot} is "
        "there at {arrives} s, {off} s early"
    )
    label = "early by {off} s"
    help = (
        "throw it {off} s later{later}, or make his way about {shorter} shorter: a nearer split, "
        "an earlier break; or give him a running start"
    )
    varies = (*OffTheClock.varies, "later", "shorter")

    later: str = ""
    shorter: str = ""


class W802(OffTheClock):
    title = "a throw out of reach"
    message = (
        "{call}: {target} is {yards} yards from the passer when {man} is open, farther than this "
        "level throws"
    )
    label = "out of reach"
    help = "shorten the route, bring the man closer, or set `level` to that of your passer"


SEEN_BESIDE = 0.5
"""Seconds by which a man may be off who is seen beside another, or chosen by a key: no foot is said
for him. Common practice, no published source."""
_VERDICTS = {Verdict.LATE: W800, Verdict.EARLY: W801, Verdict.TOO_FAR: W802}


WHEN = When.PROVED


def check_throws_on_time(call: ProvedCall) -> Iterator[Diagnostic]:
    """Reads off the clock, and tags that promise a read and put it off the clock.

    Of a read of which a promise is broken no more is said: one cause, one diagnostic.
    """
    if call.clock is None:
        return
    broken = list(_promises(call, call.clock))
    yield from _off_the_clock(call.play, call.clock, _targets(broken))
    yield from broken


def _promises(call: ProvedCall, clock: ReadClock) -> Iterator[Diagnostic]:
    if call.plain is None:
        return
    before = call.clock_of(call.plain)
    for key, tag in zip(call.order.tags, call.tags, strict=True):
        found = list(_rhythm(tag.name, tag.keeps, before, clock, call.play))
        if found and len(call.tags) > 1:
            # Another tag of the call may be the cause: it is this one's fault only by itself.
            order = replace(call.order, tags=(key,))
            alone, _ = call.maker.expand(order, call.play.ball)
            after = call.clock_of(alone) if alone is not None else clock
            at_fault = _targets(_rhythm(tag.name, tag.keeps, before, after, call.play))
            found = [d for d in found if _targets([d]) <= at_fault]
        yield from found


def _off_the_clock(play: Play, clock: ReadClock, told: Container[str]) -> Iterator[Diagnostic]:
    """Reads that come too early, too late or out of reach, at the read's place in the text."""
    beside = (x for x in clock.beside if x.verdict is Verdict.TOO_FAR or x.misses > SEEN_BESIDE)
    for look in (*clock.reads, *beside):
        if look.read.target in told:
            continue
        code = _VERDICTS.get(look.verdict)
        if code is not None and look.window is not None:
            more = _earlier(look, clock) if code is W801 else {}
            told_of = code(
                target=look.read.target, man=look.window.man, foot=look.foot,
                arrives=f"{look.arrives:.1f}", opens=f"{look.window.opens:.1f}",
                closes=f"{look.window.closes:.1f}", off=f"{look.misses:.1f}",
                yards=f"{look.distance:.0f}", call=play.call.spoken, **more,
            )  # fmt: skip
            yield told_of.at(look.read.span)


def _earlier(look: TimedRead, clock: ReadClock) -> dict[str, str]:
    """What mends a read that comes early: the foot that is late enough, and the yards that its man
    runs in that time."""
    assert look.window is not None
    by = look.ready + look.misses
    last = look.ready + look.window.closes - look.arrives
    feet = (f.name for f in clock.feet if by <= f.time <= last and " " not in f.name)
    foot = next(feet, "")
    pace = clock.men[look.window.man].pace(look.window.opens)
    yards = max(1, math.ceil(pace * look.misses))
    return {
        "later": f", as in `{look.read.target} on {foot}`" if foot else "",
        "shorter": f"{yards} yard{'s' * (yards > 1)}",
    }


def _targets(found: Iterable[Diagnostic]) -> set[str]:
    """The reads that broken promises tell of."""
    return {d.said.target for d in found if isinstance(d.said, E666)}


def _rhythm(
    tag: str,
    keeps: Sequence[tuple[Keep, Span]],
    plain: ReadClock,
    tagged: ReadClock,
    play: Play,
) -> Iterator[Diagnostic]:
    """``keeps read`` by the clock: a read that is on time in the plain call is on time with the
    tag, off the same foot."""
    for keep, span in keeps:
        pairs = {
            Keep.READ: _pairs(plain.reads, tagged.reads),
            Keep.PRESSURE: _pairs(plain.pressure, tagged.pressure),
        }.get(keep, ())
        for before, after in pairs:
            if before.verdict is Verdict.ON_TIME and _broken(after):
                yield E666(
                    tag=tag, target=after.read.target, foot=after.foot, what=keep.value,
                    number=after.read.number, how=_how(after), call=play.call.spoken,
                    concept=play.call.concept,
                ).at(span)  # fmt: skip


def _pairs(
    before: Sequence[TimedRead], after: Sequence[TimedRead]
) -> list[tuple[TimedRead, TimedRead]]:
    """The reads that both orders have, each with itself: of a man called away there is none."""
    now = {look.read.target: look for look in after}
    return [(look, now[look.read.target]) for look in before if look.read.target in now]


def _broken(look: TimedRead) -> bool:
    return look.verdict in (Verdict.EARLY, Verdict.LATE, Verdict.TOO_FAR)


def _how(look: TimedRead) -> str:
    if look.verdict is Verdict.EARLY:
        opens = look.window.opens if look.window else 0.0
        return f"opens at {opens:.1f} s, {look.misses:.1f} s after the ball is there"
    if look.verdict is Verdict.LATE:
        return f"was open until {look.misses:.1f} s before the ball is there"
    return f"is {look.distance:.0f} yards away, out of reach"


SAMPLES = """
### E666

The tag promises the quarterback the same read. The read keeps its place in his order, but its man
is not there any more when the ball is.

```play fail E666 clock
route Slow Wheel
    stroke out 2 then in 5 then out 10 then up 18

tag Wheel for Crossers
    flat runs slow wheel away from settle
    keeps read, feet
```

```play clock
tag Wheel for Crossers
    flat runs wheel away from settle
    keeps read, feet
```

### W800

The man has run past the end of his route while the feet are still going. One who sits stays there
to be thrown to: he is never late by the clock alone.

```play fail W800 clock
tag Wheel for Crossers
    dig runs slant
    feet 7, reset
    read dig on 7 > top on reset
```

```play clock
tag Wheel for Crossers
    dig runs slant
    feet 3, reset
    read dig on 3 > top on reset
```

### W801

The feet are done and the man has not turned yet: the quarterback waits, or throws at a back.

```play fail W801 clock
tag Wheel for Crossers
    dig runs comeback 12
    read dig on quick > near on 3 > top on reset
```

```play clock
tag Wheel for Crossers
    dig runs comeback 12
    read near on 3 > dig on reset > top on reset
```

### W802

No arm of the playbook's level throws that far. A stronger arm is another level.

```play fail W802 clock
playbook Gulls
    version 1
    code six-man
    level youth

personnel Six
    Q is quarterback
    R, H is back
    X, Z is wideout

formation Spread
    X at away, 2 outside numbers, on line
    H at call, 5 outside ball, off line
    Z at call, 2 outside numbers, on line
    R at call, 2 outside ball, 5 deep
    Q at ball, 5 deep

concept Outs
    out is strong #1
    out runs out 14
    post is weak #1
    post runs post
    inside is strong #2
    inside runs hook
    check is back or nobody
    check runs check
    feet 3, hitch
    read out on 3 > inside on hitch

dress Outs
    in Spread
```

```play clock
like W802
-    level youth
+    level high school
```

"""

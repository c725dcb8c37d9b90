"""Does the ball go where its words say?

A printed name is believed: with the fullback deeper than the back it is easy to give the wrong man
the ball; a boot "away from the fake" that follows the fake meets the whole pursuit; a quarterback
who runs away from his first read throws back across his body; a man whose path never comes near the
quarterback's takes no ball from him. Common practice, no published source: warnings all.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.blocking.carrying import stands_wide
from stemline.football.defence.fronts import line_of
from stemline.football.exchanges import said_any
from stemline.football.field import Side
from stemline.football.play import Kind, Man, Play, Read, Step
from stemline.football.players import Position
from stemline.geometry.paths import Point, along, length, polyline
from stemline.playbook.run_definitions import CARRIER


class W860(Mistake):
    title = "a fullback behind the back"
    message = "{call}: {man} has the ball as the back by position, and {other} stands deeper"
    help = (
        "a stated position decides before depth: if {other} is to run, say so in the personnel, or "
        "move them"
    )

    call: str
    man: str
    other: str


class W861(Mistake):
    title = "a boot the way of the fake"
    message = "{call}: the quarterback boots to the {side}, and the run is shown to the {side} too"
    help = (
        "the boot goes to the first read where no side is named: fake the other way, or put the "
        "first read on the other side"
    )

    call: str
    side: str


class W862(Mistake):
    title = "a launch away from the first read"
    message = "{call}: the quarterback goes to the {side}, and looks first for {man} on the other"
    help = "put the first read on the side he runs to, or turn the launch"

    call: str
    man: str
    side: str


class W864(Mistake):
    title = "a hand-off to a man who does not come by"
    message = (
        "{call}: {man} is to take the ball from {giver}, and comes no nearer to him than {yards} "
        "yards"
    )
    help = (
        "lead his path past {giver}: fewer aims, a motion that brings him there, or another man's "
        "hands in between"
    )
    varies = ("yards",)

    call: str
    giver: str
    man: str
    yards: str


BACKFIELD = 2.0
"""Yards from the ball, to each side, and behind the line, of a man who is a back by place."""
DEEPER = 0.5
"""Yards by which one has to be deeper than another for it to be seen."""
FAKES = "Fake the run"
"""How the job of a man who only shows a run begins."""
SHOWN = 0.3
"""Yards from the ball past which a fake goes to a side."""
ASIDE = 3.0
"""Yards from the ball past which a read is on a side."""
HANDED = 2.6
"""Yards between two men up to which one hands the other the ball: a step to him and both arms."""
OPENS = 3.0
"""Yards more that a quarterback from under centre steps back to the man behind him: he opens and
brings it to the mesh."""
PITCHED = 5.0
"""Yards up to which it is tossed to a man who runs around the end."""
_STEP = 0.25
"""Yards between two places of a path that are looked at."""


WHEN = When.CALLED


def check_ball_exchanged(play: Play) -> Iterator[Diagnostic]:
    """A fullback deeper than the back who carries; exchanges of men who do not meet; launches
    against the fake or the first read."""
    yield from _who_carries(play)
    yield from _exchanges(play)
    yield from _launches(play)


def _who_carries(play: Play) -> Iterator[Diagnostic]:
    if play.kind is not Kind.RUN or not play.carrier:
        return
    carrier = play.man(play.carrier)
    if carrier.position is not Position.BACK or not _behind(carrier):
        return
    for man in play.men:
        deeper = man.snap.y < carrier.snap.y - DEEPER
        if man.position is Position.FULLBACK and _behind(man) and deeper:
            yield W860(call=play.call.spoken, man=carrier.label, other=man.label).at(play.span)


def _behind(man: Man) -> bool:
    return man.snap.y <= -BACKFIELD and abs(man.snap.x) <= BACKFIELD + 1.0


def _exchanges(play: Play) -> Iterator[Diagnostic]:
    """Who takes the ball from a man whom his path does not come near."""
    passer = play.passer
    if play.kind is not Kind.RUN or not play.carrier or passer is None or stands_wide(passer):
        return
    if said_any(play.exchanges):
        return  # asked of each line that says it
    for giver, taker in pairwise((passer.label, *play.handoffs, play.carrier)):
        his, own = _behind_line(play, giver), _behind_line(play, taker)
        near = min((a.distance(b) for a in own for b in his), default=0.0)
        tossed = giver == passer.label and _wide(play, taker)
        opens = giver == passer.label and passer.under_centre and _behind(play.man(taker))
        reach = PITCHED if tossed else HANDED
        if giver != taker and near > max(reach, HANDED + OPENS if opens else 0.0):
            yield W864(
                call=play.call.spoken, man=taker, giver=giver, yards=f"{near:.0f}",
            ).at(play.assignment(taker).span)  # fmt: skip


def _behind_line(play: Play, label: str) -> tuple[Point, ...]:
    """A man's way behind the line in small steps, his own place first."""
    path = play.assignment(label).path
    way = polyline(path) if path is not None else (play.man(label).snap,)
    count = int(length(way) / _STEP)
    places = (*(along(way, n * _STEP) for n in range(count + 1)), way[-1])
    return tuple(p for p in places if p.y <= 0)


def _wide(play: Play, label: str) -> bool:
    """Whether he crosses the line outside everybody on it."""
    last = max((abs(m.snap.x) for m in line_of(play.men)), default=0.0)
    way = _behind_line(play, label)
    return bool(way) and abs(way[-1].x) > last


def _launches(play: Play) -> Iterator[Diagnostic]:
    call = play.call.spoken
    step = next((s for s in play.feet if s.side is not None), None)
    if step is None or step.side is None:
        return
    if step.name == "boot" and _shown(play) is step.side:
        yield W861(call=call, side=step.side.word).at(play.span)
    first = next(iter(_thrown_moving(play, step)), None)
    back = first is not None and first.at.y <= 0  # a throwback screen goes there on purpose
    if first is None or back or abs(first.at.x) <= ASIDE:
        return
    if _side(first.at.x) is not step.side:
        yield W862(call=call, side=step.side.word, man=first.target).at(first.span)


def _thrown_moving(play: Play, step: Step) -> list[Read]:
    """The reads that are thrown on the launch or after it; where they do not say their foot all,
    when nothing but a fake comes before it."""
    names = [s.name for s in play.feet]
    at = names.index(step.name)
    at_once = all(name == "fake" for name in names[:at])
    return [r for r in play.reads if (r.foot in names[at:] if r.foot else at_once)]


def _shown(play: Play) -> Side | None:
    """The side that a run goes to, or is only shown to."""
    if play.kind is Kind.RUN:
        return play.toward
    faking = [a for a in play.assignments if a.path and a.job.startswith(FAKES)]
    if any(a.role != CARRIER for a in faking):
        return play.toward  # his line goes on to a route
    ends = [a.path.end.x for a in faking if a.path]
    return _side(ends[0]) if ends and abs(ends[0]) > SHOWN else None


def _side(x: float) -> Side:
    return Side.RIGHT if x > 0 else Side.LEFT


SAMPLES = """
### W860

A man who is a back by position carries, and the fullback stands deeper. A stated position decides
before depth: `back` is the man whose position says so. The message asks whether you meant it.

```play fail W860
personnel Two
    B is back
    F is fullback

formation Wing Over
    X at away, numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 5 outside tackle, off line
    Z at call, numbers, on line
    B at ball, 3 deep
    F at ball, 5 deep
    Q at ball, under centre

run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    outside, second, third is strong outside or nobody
    outside, second, third blocks stalk
    far, other is weak outside or nobody
    far, other blocks stalk
    lead is fullback or nobody
    lead blocks lead

dress Dive
    in Wing Over
```

```play
like W860
-    B at ball, 3 deep
-    F at ball, 5 deep
+    F at ball, 3 deep
+    B at ball, 5 deep
```

### W861

A boot lives on everybody running the other way. Where no side is named it goes to the first read,
so the run has to be shown away from him.

```play fail W861
run Dive
    toward call
    carrier is back
    carrier aims playside B
    line blocks on or climb
    outside, second, third is strong outside or nobody
    outside, second, third blocks stalk
    wide, inner is weak outside or nobody
    wide, inner blocks stalk

dress Dive
    in Three Two

concept Naked
    join run Dive
    flat is strong #1
    over, under is strong outside
    far, other is weak outside
    flat, over, under, far, other runs out 8
    feet fake, boot call
    read flat on boot

dress Naked
    in Three Two
```

```play
like W861
-    feet fake, boot call
-    read flat on boot
+    feet fake, boot away
+    read far on boot
```

### W862

He runs to one side and looks to the other: the throw goes back across his body, late and over the
middle.

```play fail W862
concept Rollers
    flat is strong #1
    over, under is strong outside
    far, other is weak outside
    flat, over, under, far, other runs out 8
    back is back
    back blocks inside out
    feet sprint weak, set
    read flat on set

dress Rollers
    in Three Two
```

```play
like W862
-    feet sprint weak, set
+    feet sprint strong, set
```

### W864

The ball is handed over where two men meet: a step and both arms reach some two and a half yards,
and a toss to a man who runs around the end goes five. A path through two aims may pass nowhere near
the quarterback.

```play fail W864
run Inside Hand
    toward call
    carrier is weak #2
    carrier aims backside D then playside A
    line blocks on or climb
    outside, second, third is strong outside or nobody
    outside, second, third blocks stalk
    far is weak #1 or nobody
    far blocks stalk
    fake is back
    fake blocks lead on near linebacker

dress Inside Hand
    in Three Two
```

```play
like W864
-    carrier aims backside D then playside A
+    carrier aims playside A
```
"""

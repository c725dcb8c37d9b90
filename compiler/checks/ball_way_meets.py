"""Are the two men there when the ball goes from one to the other?

A hand-off that is drawn where two lines cross is none when one of them is there a second before
the other. Where the men never come together is an error in the text; when they come is the clock's,
whose figures are planning estimates, and so a warning.

Example: ``carrier hands to taker at 3 deep, playside tackle`` where the taker comes from the other
sideline. Let them meet farther over, or send him in motion.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from stemline.checks.asked import ProvedCall, When
from stemline.checks.legality.forward_passes import E798
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.blocking.carrying import hole
from stemline.football.exchanges import (
    MOST_FLOWN,
    REACH,
    STEP_OF_GIVER,
    BallMoves,
    Exchange,
    said_any,
)
from stemline.football.field import BallSpot
from stemline.football.play import FOR_MANY, Play
from stemline.football.timing.ball_clock import BallMoment, ball_moments
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Point, polyline
from stemline.playbook.concepts import RouteJob
from stemline.playbook.run_definitions import Aim


class E790(Mistake):
    title = "an exchange of men who do not meet"
    message = "{call}: {man} comes no nearer than {yards} yards to {place}"
    label = "they do not meet"
    help = "{instead}"
    varies = ("man", "yards")

    call: str
    instead: str
    man: str
    place: str
    yards: str

    def silences(self, other: Mistake) -> bool:
        """Where they do not meet, where the ball would be handed on is nowhere, by whomever."""
        return isinstance(other, E798) and other.call == self.call


class E791(Mistake):
    title = "a ball given farther than it flies"
    message = "{call}: {giver} is {yards} yards from {man}, and {most} are as far as it is {given}"
    label = "too far"
    help = "bring him nearer: a place with `at`, or a motion"
    varies = ("yards",)

    call: str
    given: str
    giver: str
    man: str
    most: str
    yards: str


class W790(Mistake):
    title = "an exchange for which one is late"
    message = "{call}: {man} is {away} away when {giver} {does}"
    label = "not there yet"
    help = "{instead}"
    varies = ("away",)

    away: str
    call: str
    does: str
    giver: str
    instead: str
    man: str


class W791(Mistake):
    title = "a place and a moment that disagree"
    message = (
        "{call}: the ball is at {place} at {seconds} s by the clock, and `after {after}` says "
        "otherwise"
    )
    label = "one of the two"
    help = "say the place or the moment, and let the clock say the other"
    varies = ("seconds",)

    after: str
    call: str
    place: str
    seconds: str


AGREES = 0.4
"""Seconds by which a said moment and the clock may differ. Common practice, no published source."""
_SHOWN = 2.0
"""How often the reach of a hand-off is near enough for one that is only shown. Common practice."""
_TURNS = 3.0
"""Yards that a quarterback turns and goes to the man to whom he hands it, where no line says his
way. Common practice, no published source."""
TOSSED_MOST = 14.0
"""Yards that a ball is tossed, pitched or shovelled underhand. Common practice."""

WHEN = When.PROVED


def check_ball_way_meets(call: ProvedCall) -> Iterator[Diagnostic]:
    play = call.play
    if not said_any(play.exchanges):
        return
    elsewhere: set[str] = set()  # a man whose way is wrong is told once
    for moment in ball_moments(play, call.book.settings.level):
        if not moment.exchange.said:
            continue
        if moment.exchange.kind.flies:
            yield from _flight(play, moment)
            continue
        for told in _meeting(call, moment):
            if not isinstance(told.said, E790):
                yield told
            elif told.said.man not in elsewhere:
                elsewhere.add(told.said.man)
                yield told


def _flight(play: Play, moment: BallMoment) -> Iterator[Diagnostic]:
    x = moment.exchange
    thrown = x.kind is BallMoves.THROW
    most = MOST_FLOWN.value if thrown else TOSSED_MOST
    far = moment.given.distance(moment.taken)
    if thrown and moment.taken.y > 0:
        return  # a pass downfield: how far it is thrown is told with the reads
    if far > most:
        given = {"throws": "thrown", "tosses": "tossed", "pitches": "pitched"}
        yield E791(
            call=play.call.spoken, giver=x.giver, man=x.taker, yards=f"{far:.0f}",
            most=f"{most:.0f}", given=given.get(x.kind.value, "shovelled"),
        ).at(x.span)  # fmt: skip


def _meeting(call: ProvedCall, moment: BallMoment) -> Iterator[Diagnostic]:
    play, x = call.play, moment.exchange
    if x.kind is BallMoves.SNAP:
        return
    place = x.words or "the hand-off"
    for man in (x.giver, x.taker):
        off = _off(play, man, moment)
        if off > REACH.value:
            yield E790(
                call=play.call.spoken, man=man, yards=f"{off:.1f}",
                place=place if x.at is not None else theirs(man, moment),
                instead=_instead(call, moment),
            ).at(x.span)  # fmt: skip
            return
    if play.ball is not BallSpot.MIDDLE:
        return  # who comes from where is another matter from each hash
    reach = REACH.value * (_SHOWN if x.kind is BallMoves.FAKE else 1.0)
    if moment.apart > reach and x.after is None and moment.taken.y <= 0:
        late = f" and {moment.late:.1f} s" if moment.late else ""
        fakes = x.kind is BallMoves.FAKE
        does = (
            f"fakes to him{f' at {place}' if x.words else ''}"
            if fakes
            else (f"gives the ball at {place}")
        )
        yield W790(
            call=play.call.spoken, giver=x.giver, man=x.taker, does=does,
            away=f"{moment.apart:.1f} yards{late}", instead=_sooner(call, moment),
        ).at(x.span)  # fmt: skip
    elif x.after is not None and (
        moment.apart > REACH.value or (x.at is not None and moment.there > x.after + AGREES)
    ):
        yield W791(
            call=play.call.spoken, place=place, seconds=f"{moment.there:.1f}", after=f"{x.after:g}",
        ).at(x.span)  # fmt: skip


def theirs(man: str, moment: BallMoment) -> str:
    """The other man, as the place where the ball is."""
    x = moment.exchange
    return x.taker if man == x.giver else x.giver


def _off(play: Play, man: str, moment: BallMoment) -> float:
    """Yards between a man's way and where the ball is given: a step is allowed to one who is told
    no way, and to both where he hands it."""
    x = moment.exchange
    way = _way(play, man)
    if x.at is not None:
        return _far(way, x.at) - _step(way)
    other = _way(play, theirs(man, moment))
    near = min(_far(way, p) for p in _small(other))
    turns = x.giver == _passer(play) and len(_way(play, x.giver)) == 1
    return near - max(_step(way), _step(other), _TURNS if turns else 0.0)


def _way(play: Play, man: str) -> tuple[Point, ...]:
    path = play.assignment(man).path
    return polyline(path) if path is not None and path.legs else (play.man(man).snap,)


def _step(way: tuple[Point, ...]) -> float:
    return 0.0 if len(way) > 1 else STEP_OF_GIVER.value


def _small(points: tuple[Point, ...]) -> Iterator[Point]:
    """A way in small steps."""
    yield points[0]
    for a, b in pairwise(points):
        steps = max(1, int(a.distance(b) / 0.25))
        yield from (a + (b - a).scaled(n / steps) for n in range(1, steps + 1))


def _far(way: tuple[Point, ...], place: Point) -> float:
    return far_from(way, place) if len(way) > 1 else way[0].distance(place)


def _instead(call: ProvedCall, moment: BallMoment) -> str:
    """What brings the two together: a place that is on the way of each whose way is set, or the
    line that sets it taken out."""
    play, x = call.play, moment.exchange
    giver, taker = map(play.as_said, (x.giver, x.taker))
    told = f"{giver} {x.kind.value} to {taker}"
    fixed = [man for man in (x.giver, x.taker) if _is_set(call, man)]
    for words, place in _places(play):
        if all(
            _far(_way(play, man), place) - _step(_way(play, man)) <= REACH.value for man in fixed
        ):
            return f"let both go there: `{told} at {words}`"
    first = next((man for man in fixed if man != _passer(play)), x.taker)
    does = "blocks" if play.assignment(first).role in _blockers(call) else "runs"
    if play.assignment(first).role_said in FOR_MANY:
        return (
            f"`{play.assignment(first).role_said}` has a job for {first} that takes him elsewhere: "
            f"say where he goes with the ball, `{play.as_said(first)} aims outside the end`"
        )
    return (
        f"the `{does}` line of {play.as_said(first)} takes {first} elsewhere: take it out, and "
        f"{first} goes where the ball is: `{told} at {_NEAR_QUARTERBACK}`"
    )


def _sooner(call: ProvedCall, moment: BallMoment) -> str:
    """How the one who is late is there in time: who is in motion has run by already."""
    x = moment.exchange
    if moment.waits == x.taker and moment.late and x.giver != _passer(call.play):
        return (
            f"{x.taker} has run by: let them meet nearer to {x.giver}, send {x.giver} in motion, "
            f"or let {x.taker} take a longer way there"
        )
    waits = _waits(call, x)
    if waits:
        return waits
    nearer = f"let them meet nearer to {x.taker}, give {x.giver} a longer way"
    motion = call.motions.get(x.taker)
    if motion is None or not motion.running:
        return f"{_onward(call, x)}{nearer}, or send {x.taker} in motion"
    return (
        f"end the motion {motion.name} sooner, so that {x.taker} comes by {x.giver} as the ball is "
        f"given, or let them meet nearer to {x.taker}"
    )


def _waits(call: ProvedCall, x: Exchange) -> str:
    """What has the giver wait for the taker: no aim of his own, which he runs on to."""
    task = call.play.assignment(x.giver)
    aims = any(isinstance(s.value, Aim) for s in call.body.jobs.get(task.role, ()))
    if not aims or x.at is None or x.kind is BallMoves.FAKE:
        return ""
    who = call.play.as_said(x.giver)
    return f"take the `aims` line of {who} out: he waits there with the ball for {x.taker}"


def _onward(call: ProvedCall, x: Exchange) -> str:
    """What a man of a pass needs who gives the ball on and has no line that says where he runs:
    without one he stops where he gets it, and comes there too late."""
    play = call.play
    task, on = play.assignment(x.taker), next(
        (y for y in play.exchanges if y.giver == x.taker and y.kind is not BallMoves.FAKE), None
    )  # fmt: skip
    led = task.role_said in FOR_MANY or call.body.jobs.get(task.role)
    if on is None or led or play.toward is not None:
        return ""
    there = on.at.x if on.at is not None else play.man(on.taker).snap.x
    word = "call" if there * play.call.side.value > 0 else "away"
    return (
        f"say where {x.taker} runs on to, and he takes the ball on his way: "
        f"`{play.as_said(x.taker)} aims {word} end`; or "
    )


_NEAR_QUARTERBACK = "5 deep, backside guard"
_DEPTHS = (5, 3, 4, 2, 6, 7)
_POINTS = ("guard", "tackle", "end")


def _places(play: Play) -> Iterator[tuple[str, Point]]:
    """Where men may meet behind the line, as it is written, the most usual first."""
    toward = play.toward or play.call.side
    for deep in _DEPTHS:
        for point in _POINTS:
            for word, side in (("backside", toward.other), ("playside", toward)):
                yield f"{deep} deep, {word} {point}", Point(hole(point, side, play.men).x, -deep)


def _passer(play: Play) -> str:
    return play.passer.label if play.passer is not None else ""


def _is_set(call: ProvedCall, man: str) -> bool:
    """Whether a man's way is one that the place of an exchange does not change: who aims, and who
    has no line of his own, goes by it."""
    task = call.play.assignment(man)
    said = call.body.jobs.get(task.role, ())
    if task.role_said in FOR_MANY or any(not isinstance(s.value, Aim) for s in said):
        return True
    return man == _passer(call.play) and not said


def _blockers(call: ProvedCall) -> set[str]:
    """Roles that block."""
    jobs = call.body.jobs.items()
    return {r for r, said in jobs if any(not isinstance(s.value, RouteJob | Aim) for s in said)}


SAMPLES = """
### E790

The carrier has an aim of his own on the other side, so he never comes to where the ball is to be
given.

```play fail E790
run Crossed Wires
    carrier is back
    taker is weak #1
    quarterback hands to carrier
    carrier hands to taker
    carrier aims playside A
    taker aims backside D
    line blocks on or climb
    everyone else blocks stalk

dress Crossed Wires
    in Three Two
```

```play
like E790
-    carrier hands to taker
-    carrier aims playside A
+    carrier hands to taker at 5 deep, backside end
```

### E791

A toss is underhand: it does not reach a man out wide.

```play fail E791
run Long Toss
    carrier is weak #1
    quarterback tosses to carrier
    carrier aims backside D
    line blocks on or climb
    everyone else blocks stalk
    other is back
    other blocks lead

dress Long Toss
    in Three Two
```

```play
like E791
-    quarterback tosses to carrier
+    quarterback tosses to carrier at 4 deep, backside tackle
```

### W790

The outside man has the whole width of the formation to run, and the back with the ball does not
wait for him: he has an aim of his own.

```play fail W790
run Too Soon
    carrier is back
    taker is weak #1
    quarterback hands to carrier
    carrier hands to taker at 3 deep, playside tackle
    carrier aims playside D
    taker aims playside D
    line blocks on or climb
    everyone else blocks stalk

dress Too Soon
    in Three Two
```

```play
like W790
-    carrier aims playside D
```

### W791

Both a place and a moment are said, and the clock has the man there much later.

```play fail W791
run Both Said
    carrier is back
    taker is weak #1
    quarterback hands to carrier
    carrier hands to taker at 5 deep, backside end after 0.8 seconds
    taker aims playside D
    line blocks on or climb
    everyone else blocks stalk

dress Both Said
    in Three Two
```

```play
like W791
-    carrier hands to taker at 5 deep, backside end after 0.8 seconds
+    carrier hands to taker at 5 deep, backside end
```
"""

"""Is a man who may not catch a pass too far past the line when the ball is thrown?

The flag depends on where he is at that moment and on where the ball goes. The moment is the
clock's: when the foot that throws the read is down and the arm has come round, or later, where the
ball would otherwise be there before its man is open. He is where his way has brought him by then: a
lineman on a man of the front, or on a double team, is still at the line though his path climbs to
six yards, and one who climbs at once may be past it though the ball is out early. In most codes
only passes that cross the line are asked about; each throw of a play is judged by itself, a
run-pass option like any pass and against every look, since the front decides who climbs. A covered
man counts as a lineman.

The times are planning figures, so what is found is always a warning, and he is judged so much
earlier as a plan on paper cannot tell apart.

Example: a run-pass option whose glance is thrown off ``hitch`` while the guard climbs. Throw it off
``catch`` or ``quick``, keep the guard on his double team, or throw to a man behind the line.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import When
from stemline.checks.legality.covered import covered
from stemline.checks.legality.snap import against
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Play
from stemline.football.timing.levels import GAP, PlayingLevel
from stemline.football.timing.release import on_the_line, place_at, releases


class W546(Mistake):
    title = "downfield on a pass"
    message = (
        "{man} may not catch a pass and is {yards} yards past the line in {call}{look} when the "
        "ball leaves for {target} at {seconds} seconds: the limit is {wanted} ({rules}; {source}; "
        "the moment is the clock's, a planning figure)"
    )
    label = "a lineman is downfield"
    help = "throw it sooner, keep him on a double team, or throw to a man behind the line"
    varies = ("look", "man", "seconds", "yards")

    call: str
    look: str
    man: str
    rules: str
    seconds: str
    source: str
    target: str
    wanted: str
    yards: str


WHEN = When.THROWN


def check_downfield(play: Play, level: PlayingLevel) -> Iterator[Diagnostic]:
    """The man who is farthest past the line, for each throw."""
    code = play.field.code
    known = code.downfield
    if known.value is None or code.all_eligible:
        return
    barred = {m.label for m, _ in covered(play.men)} | {m.label for m in play.men if m.interior}
    tasks = [task for task in play.assignments if task.man in barred and task.path is not None]
    if not tasks:
        return
    for throw in releases(play, level):
        if code.downfield_crossing.value and not throw.crosses:
            continue
        time = throw.thrown - GAP
        free = [t for t in tasks if not on_the_line(play, t, time, level)]
        places = ((place_at(play, t, time, level).y, t.man) for t in free)
        yards, man = max(places, default=(0.0, ""))
        if yards > known.value + 1e-6:
            yield W546(
                rules=code.title, source=known.cited, man=man, call=play.call.spoken,
                look=against(play), yards=f"{yards:.1f}", wanted=f"{known.value:g}",
                target=throw.target, seconds=f"{throw.thrown:.1f}",
            ).at(throw.span)  # fmt: skip


SAMPLES = """
### W546

Past the line a lineman has a yard or three until the ball is thrown. He is judged where the clock
has him at that moment, and not where his path ends: on a double team he is at the line. Of a
run-pass option it is asked against every look. The times are planning figures, so it is never an
error.

```play fail W546
run Glance
    carrier is back
    carrier aims playside A
    line blocks climb
    far is backside outside
    far runs slant
    low is backside inside
    low runs flat
    wide, slot, last is playside outside
    wide, slot, last runs go
    key unblocked man, backside
    give if he drops
    throw far if he fits the run
    feet quick

dress Glance
    in Three Two
```

```play
like W546
-    low runs flat
+    low runs bubble
-    throw far if he fits the run
+    throw low if he fits the run
```
"""

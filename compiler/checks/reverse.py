"""Does a reverse turn the ball round?

A reverse fools nobody by its name. The defence runs after the first man who has the ball, and it is
the second exchange that sends the ball back behind it: a carrier who takes it from the quarterback
himself runs into all of them. Common practice, no published source: a warning.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Kind
from stemline.playbook.run_definitions import Aim


class W863(Mistake):
    title = "a reverse without a man in between"
    message = "{call}: {man} takes the ball from the quarterback himself"
    help = (
        "a reverse turns the ball round: give the first runner a role with `aims`, or call it "
        "something else"
    )

    call: str
    man: str


WHEN = When.PROVED


def check_reverse(call: ProvedCall) -> Iterator[Diagnostic]:
    """A call named a reverse whose carrier is the first to have the ball."""
    play = call.play
    named = "reverse" in play.call.concept.casefold().split()
    if named and play.kind is Kind.RUN and play.carrier and not _others_carry(call):
        yield W863(call=play.call.spoken, man=play.carrier).at(play.span)


def _others_carry(call: ProvedCall) -> bool:
    """Whether anybody but the carrier runs by an aim of his own."""
    jobs, play = call.body.jobs, call.play
    if play.handoffs:
        return True
    aims = {r for r, said in jobs.items() if any(isinstance(s.value, Aim) for s in said)}
    return any(a.role in aims and a.man != play.carrier for a in play.assignments)


SAMPLES = """
### W863

A reverse changes the side of the play by a second exchange. Here the first man to get the ball is
its carrier.

```play fail W863
run Reverse
    toward call
    carrier is back
    carrier aims outside the end
    line blocks on or climb
    outside, second, third is strong outside or nobody
    outside, second, third blocks stalk
    far, other is weak outside or nobody
    far, other blocks stalk

dress Reverse
    in Three Two
```

```play
like W863
-run Reverse
+run Sweep
-dress Reverse
+dress Sweep
```
"""

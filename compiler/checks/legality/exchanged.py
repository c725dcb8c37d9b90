"""Is the ball handed on before anybody runs it over the line, where the code asks for that?

In six-man the man who takes the snap may throw the ball, but he may not run with it: it must first
be handed, tossed or passed to another man. So a keeper, a sneak or a read on which the quarterback
pulls the ball is no play there, while the same text is one in every other code.

Example: ``carrier is quarterback`` under ``code six-man``. Write instead ``carrier is back``, or in
a read ``throw`` in the place of ``pull``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stemline.checks.asked import When
from stemline.checks.legality.snap import on
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.exchanges import BallMoves
from stemline.football.play import Key, Kind, Play
from stemline.resolve.blocking.handing_off import KEEPS
from stemline.source import Span


class W872(Mistake):
    title = "the snap is not handed on"
    message = (
        "{man} takes the snap and runs with it in {call}: another man must get the ball before it "
        "crosses the line ({rules}; rests on: {source})"
    )
    label = "not handed on"
    help = "give the ball to a back, or throw it"

    call: str
    man: str
    rules: str
    source: str


WHEN = When.CALLED


def check_exchanged(play: Play) -> Iterator[Diagnostic]:
    code, passer = play.field.code, play.passer
    if not code.exchange.value or passer is None:
        return
    moves = [x for x in play.exchanges if x.kind is not BallMoves.FAKE]
    snapped = next((x.taker for x in moves if x.kind is BallMoves.SNAP), passer.label)
    if any(x.taker == snapped and x.kind is not BallMoves.SNAP for x in moves):
        return  # it came back to him: another man has had it
    carries = play.kind is Kind.RUN and play.carrier == snapped
    keeps = [key for key in play.keys if any(what in KEEPS for what, _, _ in key.choices)]
    runs = "run" in play.last
    if carries or keeps or runs:
        span = _made(play, keeps, snapped if carries else "")
        rests = on(code.exchange, code)
        told = W872(
            man=snapped if carries else passer.label,
            call=play.call.spoken,
            rules=rests.rules,
            source=rests.source,
        )
        yield told.at(span)


def _made(play: Play, keeps: Sequence[Key], carrier: str) -> Span:
    """The line that lets him run: a key's, his own, or the order of reads that ends in a run."""
    if keeps:
        return keeps[0].span
    if carrier:
        return play.assignment(carrier).span
    return play.reads[-1].span if play.reads else play.span


SAMPLES = """
### W872

In six-man whoever takes the snap may throw the ball, and may not run it over the line: first it is
handed, tossed or passed to another man. So the code has no keeper, no sneak and no pull.

```play fail W872
playbook Lanterns
    code six-man

personnel All
    Q is quarterback
    R is back
    X, Z is wideout
    Y is tight end

formation Spread
    X at away, 6 outside tackle, on line
    Y at call, end, on line
    Z at call, 6 outside tackle, off line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

run Plunge
    carrier is quarterback
    carrier aims playside A
    centre blocks on or climb
    others, wide, far is playside outside or backside outside
    others, wide, far blocks stalk
    helper is back or nobody
    helper blocks lead

dress Plunge
    in Spread
```

```play
like W872
-    carrier is quarterback
+    carrier is back
```
"""

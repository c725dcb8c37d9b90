"""Does the call supply what the concept needs?

``needs under within 6 of tackle at snap``: a shallow crosser who starts from the numbers never
gets to the far tackle while the quarterback still looks at him. The formation or a motion must
bring him in; the compiler invents no motion.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.field import Side
from stemline.football.offence.landmarks import x_of


class E651(Mistake):
    title = "the call does not supply a need"
    message = (
        "in {call} {role} ({man}) stands {away} yards from the {landmark} at the snap (from the "
        "{spot}), and the concept needs {yards} or fewer"
    )
    label = "not met"
    help = "tighten his split, or bring him in by a motion: `in FORMATION motion NAME`"
    varies = ("spot", "away")

    away: str
    call: str
    landmark: str
    man: str
    role: str
    spot: str
    yards: str


WHEN = When.PROVED


def check_needs(call: ProvedCall) -> Iterator[Diagnostic]:
    play = call.play
    for need in call.body.needs:
        assignment = play.runs(need.role)
        if assignment is None:
            continue
        man = play.man(assignment.man)
        side = Side.RIGHT if man.snap.x > 0 else Side.LEFT
        away = abs(man.snap.x - x_of(need.landmark, side, play.field))
        if away > need.yards + 1e-9:
            yield E651(
                role=need.role, man=man.label, yards=f"{need.yards:g}", away=f"{away:.1f}",
                landmark=need.landmark.value, spot=play.ball.value, call=play.call.spoken,
            ).at(need.span)  # fmt: skip


SAMPLES = """
### E651

The concept says what it needs, such as a crosser who starts near the tackle. The formation, or a
motion, has to bring him there; stemline invents no motion.

```play fail E651
dress Crossers
    in Quads
```

```play
dress Crossers
    in Quads motion Tuck
```
"""

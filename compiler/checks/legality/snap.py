"""What an official sees when the ball is snapped, and how a broken rule is told."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import Any

from stemline.diagnostics.diagnostic import Diagnostic, diagnose
from stemline.football.play import Man, Motion, Play
from stemline.football.rulebook.rules import Code, Known
from stemline.source import Span


class When(Enum):
    """When a rule is asked: of a formation as it stands, of its motion, of a call, by its clock."""

    STANDING = "standing"
    MOVING = "moving"
    CALLED = "called"
    THROWN = "thrown"


@dataclass(frozen=True)
class Snap:
    """Men and motions at the snap.

    ``name`` is what stands there, "Quads" or "Quads with Tuck"; ``span`` where that is said. With
    a motion ``call`` is the call that is made, "" for a formation alone. ``numbers`` are where the
    personnel says who a man is, by letter.
    """

    code: Code
    men: tuple[Man, ...]
    name: str
    span: Span
    call: str = ""
    motions: Mapping[str, Motion] = field(default_factory=dict)
    numbers: Mapping[str, Span] = field(default_factory=dict)

    @property
    def on_line(self) -> tuple[Man, ...]:
        """The line players from left to right."""
        return tuple(sorted((m for m in self.men if m.on_line), key=lambda m: m.snap.x))

    @property
    def running(self) -> tuple[tuple[Man, Motion], ...]:
        """Who is still moving when the ball is snapped."""
        return tuple((m, at) for m in self.men if (at := self.motions.get(m.label)) and at.running)

    def at(self, man: Man) -> Span:
        """Where the text puts a man: his motion's line, else his own, else the formation's name."""
        motion = self.motions.get(man.label)
        span = motion.span if motion is not None and motion.span.line else man.span
        return span if span.line else self.span


def by_clock(
    number: int, known: Known[Any], code: Code, span: Span, **values: object
) -> Diagnostic:
    """The warning of a rule that is judged at a moment of the clock: never an error, whatever the
    rule rests on, for the moment is a planning figure."""
    return _told(f"W{number}", span, {**values, "rules": code.title, "source": known.cited})


def against(play: Play) -> str:
    """The look that a play stands against, for a message: " against Base"; "" without one."""
    return f" against {play.defence.name}" if play.defence is not None else ""


def broken(
    number: int, known: Known[object], code: Code, span: Span, **values: object
) -> Diagnostic:
    """The diagnostic of a rule: an error where its figure binds, else its warning twin."""
    letter = "E" if known.binding else "W"
    doubt = known.certainty.value
    plain = known.binding or doubt in known.source
    source = known.source if plain else f"{known.source} ({doubt})"
    return _told(f"{letter}{number}", span, {**values, "rules": code.title, "source": source})


def _told(code: str, span: Span, values: Mapping[str, object]) -> Diagnostic:
    return Diagnostic(code, span, tuple(sorted((name, str(v)) for name, v in values.items())))


COVERED = "524"
"""The rule on a covered man, which is asked of the calls where there are some."""
FOULS: Mapping[str, str] = {
    "520": "too few men are on the line",
    "521": "too many men are behind the line",
    "522": "the interior line is not whole",
    "523": "no eligible man ends the line",
    "525": "a man is neither on the line nor a back",
}
"""The rules that make a formation a foul by itself, by number, as a clause. Who may catch a pass is
asked at the snap only: a man whom a motion uncovers was never a foul."""


def before_motion(
    formation: str, motions: tuple[str, ...], span: Span, found: Iterable[Diagnostic]
) -> Diagnostic:
    """The warning for fouls of a formation that every motion called from it mends."""
    rules = dict.fromkeys(FOULS[d.code[1:]] for d in found if d.code[1:] in FOULS)
    return diagnose(
        "W870", span, formation=formation, motion=" or ".join(motions), rules=", and ".join(rules)
    )


def ranges(numbers: tuple[tuple[int, int], ...]) -> str:
    """Jersey numbers in words: "50 to 79 and 90 to 99"."""
    return " and ".join(f"{low} to {high}" for low, high in numbers)


def within(number: int, numbers: tuple[tuple[int, int], ...]) -> bool:
    return any(low <= number <= high for low, high in numbers)

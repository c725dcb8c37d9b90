"""What an official sees when the ball is snapped, and how a broken rule is told."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from stemline.diagnostics.broken_rule import Resting
from stemline.football.play import Man, Motion, Play
from stemline.football.rulebook.rules import Code, Known
from stemline.playbook.playbook import Playbook
from stemline.source import Span


@dataclass(frozen=True)
class Snap:
    """Men and motions at the snap, asked from each spot of the ball; places are from the ball, so
    what hangs on the sidelines asks `PlacedMen` with their field.

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
    def missing(self) -> int:
        """How many of the linemen who must be on the line are not: told by a rule of its own."""
        linemen = sum(man.interior for man in self.on_line)
        return max(0, int(self.code.ineligible.value) - linemen)

    @property
    def running(self) -> tuple[tuple[Man, Motion], ...]:
        """Who is still moving when the ball is snapped."""
        return tuple((m, at) for m in self.men if (at := self.motions.get(m.label)) and at.running)

    def at(self, man: Man) -> Span:
        """Where the text puts a man: his motion's line, else his own, else the formation's name."""
        motion = self.motions.get(man.label)
        span = motion.span if motion is not None and motion.span.line else man.span
        return span if span.line else self.span


def against(play: Play) -> str:
    """The look that a play stands against, for a message: " against Base"; "" without one."""
    return f" against {play.defence.name}" if play.defence is not None else ""


def on(known: Known[Any], code: Code) -> Resting:
    """What a rule rests on: its figure, and the code it is of."""
    doubt = known.certainty.value
    plain = known.binding or doubt in known.source
    source = known.source if plain else f"{known.source} ({doubt})"
    return Resting(code.title, source, known.binding)


def ranges(numbers: tuple[tuple[int, int], ...]) -> str:
    """Jersey numbers in words: "50 to 79 and 90 to 99"."""
    return " and ".join(f"{low} to {high}" for low, high in numbers)


def within(number: int, numbers: tuple[tuple[int, int], ...]) -> bool:
    return any(low <= number <= high for low, high in numbers)


def numbers_of(book: Playbook) -> dict[str, Span]:
    """Where the personnel says who a man is, by letter."""
    return {letter: person.span for letter, person in book.people.items()}

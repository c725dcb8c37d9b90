"""Are the right number of men on the field, inside it, and each in a place of his own?

A coach sees at once when a man is missing from a picture drawn by hand; in text he does not. A
split that fits from the middle may put a man over the sideline from a hash.

Example: ``X at away, 20 outside tackle`` with the ball on the near hash. Write instead a split
that depends on the ball's spot: ``X at away, 2 outside numbers when into boundary``.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from stemline.diagnostics.model import Diagnostic, Related, diagnose
from stemline.football.field import Field, Side
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.source import Span

ROOM = 0.8
"""Two men nearer than this stand on one spot. Common practice: shoulders are about half a yard."""


def check_men(
    men: tuple[Man, ...], field: Field, formation: str, span: Span
) -> Iterator[Diagnostic]:
    """Count and quarterback, at the formation's name."""
    wanted = int(field.code.players.value)
    if len(men) != wanted:
        yield diagnose(
            "E510",
            span,
            formation=formation,
            got=len(men),
            wanted=wanted,
            rules=field.code.title,
            source=field.code.players.source,
        )
    if not any(m.position is Position.QUARTERBACK for m in men):
        yield diagnose("E513", span, formation=formation)


def check_places(men: tuple[Man, ...], field: Field, formation: str) -> Iterator[Diagnostic]:
    """Inside the field, and apart from each other, where they line up."""
    for man in men:
        side = Side.RIGHT if man.at.x > 0 else Side.LEFT
        over = (man.at.x - field.sideline(side)) * side.value
        if over > 0:
            yield diagnose(
                "E511", man.span, man=man.label, formation=formation, spot=field.spot.value,
                yards=f"{over:.1f}", side=side.word,
            )  # fmt: skip
    for first, second in combinations(men, 2):
        if first.at.distance(second.at) < ROOM:
            later, other = sorted((first, second), key=lambda m: m.span, reverse=True)
            related = (Related(other.span, f"{other.label} is here"),) if other.span.line else ()
            yield diagnose(
                "E512", later.span, related=related, man=later.label, other=other.label,
                formation=formation, spot=field.spot.value,
            )  # fmt: skip

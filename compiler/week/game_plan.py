"""What a week's own book is made from: its calls as a season of their own, and what each look of
the opponent leaves them."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.play import Season


@dataclass(frozen=True)
class LookAnswer:
    """A call against a look, in words: who gets the ball and how free he is, or why nobody."""

    call: str
    words: str


@dataclass(frozen=True)
class FacedLook:
    """A look of the opponent against the plan. ``shows`` are the words that it makes true,
    ``rushers`` how many come. ``leaves`` are the parts of the field where passes find a man, with
    how many do, most first; ``answers`` the calls that answer it and ``without`` those that do not,
    in the plan's order."""

    name: str
    shows: tuple[str, ...]
    rushers: int
    leaves: tuple[tuple[str, int], ...]
    answers: tuple[LookAnswer, ...]
    without: tuple[LookAnswer, ...]


@dataclass(frozen=True)
class GamePlan:
    """``season`` holds the plan's numbered calls, those of a concept together, in the order in
    which the plan first calls each; its looks are the opponent's."""

    season: Season
    looks: tuple[FacedLook, ...]

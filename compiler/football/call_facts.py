"""What is asked of a call before anybody wants its play: a value to be kept, with no play in it."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.field import BallSpot


@dataclass(frozen=True)
class CallFacts:
    """A call as the book draws it: ``right`` where that has no error, and the rest says nothing
    where it has. ``ball`` is where it is drawn from, ``reads`` whether its quarterback looks at
    anybody, ``run`` whether it is a run."""

    right: bool
    reads: bool
    run: bool
    ball: BallSpot

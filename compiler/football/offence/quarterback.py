"""The quarterback's feet: a closed list, with what each means."""

from __future__ import annotations

from stemline.football.field import Side
from stemline.football.play import Step

# Words are ours; the terms are common practice, no published source.
FEET: dict[str, str] = {
    "catch": "catch and throw",
    "quick": "one quick vertical step, ready to throw on the plant",
    "1": "one step",
    "3": "three-step drop",
    "5": "five-step drop",
    "7": "seven-step drop",
    "hitch": "hitch up once",
    "reset": "reset the feet to the next look",
    "fake": "carry out the run fake",
    "sprint": "sprint out",
    "boot": "boot out",
    "roll": "roll out",
    "set": "set up and stand still",
}

DROPS = ("3", "5", "7")
"""Drops: on a run he shows a pass with them before he hands the ball off, as of a draw."""
MOVING = ("sprint", "boot", "roll")
"""Launches on the run: the thrower's hand and the side decide the footwork."""

_HAND_SIDE = "turn the hips upfield, throw on the run"
_OFF_SIDE = "get depth first, turn the front shoulder to the target, then throw"


def step(name: str, toward: Side, right_handed: bool, faked: Side | None = None) -> Step:
    """One piece of feet; a moving launch is set by the side it goes to and the throwing hand.

    ``faked`` is the side to which a run was shown: a boot that leaves it says so.
    """
    words = FEET[name]
    if name not in MOVING:
        return Step(name, words)
    hand = Side.RIGHT if right_handed else Side.LEFT
    manner = _HAND_SIDE if toward is hand else _OFF_SIDE
    leaves = ", away from the fake" if name == "boot" and faked is toward.other else ""
    return Step(name, f"{words} to the {toward.word}{leaves}: {manner}", toward)

"""How the ball goes from man to man behind the line.

Every figure is one of coaching custom and shown as such: a coach who says `at` or `after` has his
own.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

from stemline.football.rulebook.rules import custom
from stemline.geometry.paths import Point
from stemline.source import NOWHERE, Span


class BallMoves(Enum):
    """A way in which one man gives the ball to another, as a coach says it."""

    SNAP = "snaps"
    HAND = "hands"
    TOSS = "tosses"
    PITCH = "pitches"
    THROW = "throws"
    SHOVEL = "shovels"
    FAKE = "fakes"

    @property
    def flies(self) -> bool:
        """Whether the ball is in the air between two men who need not meet: a pass, if forward."""
        return self in (BallMoves.TOSS, BallMoves.PITCH, BallMoves.THROW, BallMoves.SHOVEL)


@dataclass(frozen=True)
class Exchange:
    """One way of the ball from ``giver`` to ``taker``, both by label.

    ``at`` is where it is taken, None where their paths decide; ``after`` the seconds from the snap
    at which it leaves the giver, None where the clock decides. ``said`` tells an exchange that the
    coach wrote; ``words`` are his for the place ("5 deep, backside guard"). ``others`` are the men
    whom a thrower may throw to instead, and ``runs`` tells that he may keep it.
    """

    kind: BallMoves
    giver: str
    taker: str
    at: Point | None = None
    after: float | None = None
    words: str = ""
    said: bool = True
    others: tuple[str, ...] = ()
    runs: bool = False
    span: Span = NOWHERE

    @property
    def in_short(self) -> str:
        """In two or three words, from the giver's side: "hand to R"."""
        return f"{_DOES[self.kind]} to {self.taker}"


_DOES = {
    BallMoves.SNAP: "snap", BallMoves.HAND: "hand", BallMoves.TOSS: "toss",
    BallMoves.PITCH: "pitch", BallMoves.THROW: "throw", BallMoves.SHOVEL: "shovel",
    BallMoves.FAKE: "fake",
}  # fmt: skip

TRAILS = ("pitch", "trail", "pitch man", "trail man")
"""Roles of the man who comes along for a pitch, where the line of it names nobody."""


HANDED_IN_GUN = custom(0.6)
"""Seconds from the snap until a quarterback in the gun can hand the ball on."""
HANDED_UNDER = custom(0.8)
"""The same under centre."""
RUNS_BY = custom(0.3)
"""The same to a man who comes by in motion: the snap is timed for him."""
TOSSED = custom(0.4)
"""Seconds from the snap until his toss leaves him."""
SHOVELLED = custom(0.9)
"""The same of a shovel: he has looked deep first, and the runner has come across to him."""
QUICK_THROW = custom(0.8)
"""Seconds from the snap until a pass thrown at once leaves him, back or to the side."""
SNAP_FLIES = custom(0.4)
"""Seconds of a direct snap to a man deep behind the ball."""
TOSS_SPEED = custom(12.0)
"""Yards a second of a ball tossed, pitched or shovelled underhand."""
PASS_SPEED = custom(18.0)
"""Yards a second of a ball thrown overhand behind the line."""
LEAST_AIR = custom(0.15)
"""Seconds that a pitch or shovel takes however near its man is."""
HANDLES = custom(0.15)
"""Seconds from having the ball until it can be handed or tossed on."""
ANOTHER_THROWS = custom(0.8)
"""Seconds that a thrower who is no quarterback needs from the catch until the ball leaves him."""
BACK_IN_HAND = custom(0.4)
"""Seconds that a quarterback needs who gets the ball back, to find its laces and his man."""
REACH = custom(1.0)
"""Yards between two men up to which one hands the other the ball, with both arms."""
STEP_OF_GIVER = custom(1.6)
"""Yards that a man who has no path of his own steps to the taker."""
MOST_FLOWN = custom(30.0)
"""Yards up to which it is thrown across or back behind the line."""


def holders(exchanges: Sequence[Exchange], first: str) -> tuple[str, ...]:
    """Who has the ball, one after another, from ``first`` on; fakes give nothing."""
    return (first, *(x.taker for x in exchanges if x.kind is not BallMoves.FAKE))


def said_any(exchanges: Sequence[Exchange]) -> bool:
    """Whether the coach says how the ball goes: else it goes as it always does."""
    return any(x.said for x in exchanges)

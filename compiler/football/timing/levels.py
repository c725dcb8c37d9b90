"""The figures of the timing model, a table a level, each with its source.

These are planning estimates: they say whether a concept can be on time, not how fast anyone is.
A coach's own stopwatch beats every row. Seconds, yards, yards a second; ball speed in miles an
hour, as radar guns give it.

The sources of the published rows: means of official pro combine results, 2006 to 2026, computed
from a public data set; 40 yard dashes of 2,560 web-listed high-school recruits (Ghigiarelli,
Journal of Strength and Conditioning Research 25:1193, 2011); ball speeds of pro prospects by
radar, 2008 to 2016.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import Enum

from stemline.football.players import Position
from stemline.football.rulebook.rules import Certainty, Known, custom


class Group(Enum):
    """Men who run alike."""

    SKILL = "receivers and defensive backs"
    BACK = "backs and linebackers"
    END = "tight ends"
    PASSER = "quarterbacks"
    LINE = "linemen"


@dataclass(frozen=True)
class Splits:
    """Seconds for 10 and 40 yards from first movement, electronically timed."""

    ten: float
    forty: float


@dataclass(frozen=True, eq=False)
class PlayingLevel:
    """How fast a level plays.

    ``start`` is from the snap to an offensive man's first movement (he knows the count), ``react``
    a defender's; ``choose`` is what a defender needs who must see where a man or a ball goes
    before he goes too. ``turns`` scale nothing: what a turn leaves of a man's speed is one table
    for all. ``foot`` are seconds from the snap until a piece of footwork is down and the ball can
    be thrown, in the gun, and ``under`` the same under centre; ``again`` what every further step
    costs. ``motion`` is from that foot until the ball leaves the hand; ``ball`` is how fast a
    usual throw leaves it and ``deep`` how fast one that is lobbed downfield.
    """

    name: str
    splits: Mapping[Group, Known[Splits]]
    start: Known[float]
    press: Known[float]
    settle: Known[float]
    react: Known[float]
    choose: Known[float]
    ball: Known[float]
    deep: Known[float]
    motion: Known[float]
    foot: Mapping[str, Known[float]]
    under: Mapping[str, Known[float]]
    again: Mapping[str, Known[float]]


def _memory(value: float, source: str = "from memory") -> Known[float]:
    return Known(value, Certainty.MEMORY, source)


def _runs(ten: float, forty: float, certainty: Certainty, source: str) -> Known[Splits]:
    return Known(Splits(ten, forty), certainty, source)


_COMBINE = "means of official pro combine results, 2006 to 2026"
_CHOICE = (
    "a choice step reaction of 0.35 to 0.40 s in players of ball sports (multi-sport study of "
    "agility time, Comenius University, n = 282)"
)
_GUESS = "a planning figure from memory; see the recruits' 40s in the module's sources"

# Seconds from the snap until the foot is down, in the gun. Common practice: the last foot of a
# one-step drop at 0.9 to 1.1, of three steps at 1.5 to 1.7, of five at 2.0 to 2.3.
_FOOT = {
    "catch": 0.55,
    "quick": 1.0,
    "1": 1.0,
    "3": 1.6,
    "5": 2.15,
    "7": 2.7,
    "set": 1.6,
    "fake": 1.3,
    "sprint": 1.7,
    "roll": 1.9,
    "boot": 2.3,
}

# Under centre. A public coaching page on drops by concept gives the moment at which the ball is
# out: 1.6 s off three steps, 2.4 to 2.6 off five, 3.0 and more off seven. Less the throwing
# motion of a varsity passer, 0.45 s, these are the feet; at no level is a ball out sooner than the
# page says by more than the 0.05 s of a quicker arm off three steps. The page counts three steps in
# the gun for five under centre, with the hitch: 1.6 + 0.4 + 0.45. The others are the gun's less
# 0.45 s, the snap's flight and the first step that is already taken, as common practice.
_OUT = {"3": 1.6, "5": 2.45, "7": 3.05}
_MOTION = 0.45
_SOONER = 0.45
_UNDER = {name: _OUT[name] - _MOTION if name in _OUT else time - _SOONER
          for name, time in _FOOT.items()}  # fmt: skip
_DROPS = "a public coaching page on drops by concept, less the throwing motion"
_AGAIN = {"hitch": 0.4, "reset": 0.4}

HIGH_SCHOOL = PlayingLevel(
    name="high school",
    splits={
        Group.SKILL: _runs(1.80, 5.05, Certainty.MEMORY, _GUESS),
        Group.BACK: _runs(1.85, 5.15, Certainty.MEMORY, _GUESS),
        Group.PASSER: _runs(1.88, 5.25, Certainty.MEMORY, _GUESS),
        Group.END: _runs(1.90, 5.30, Certainty.MEMORY, _GUESS),
        Group.LINE: _runs(2.05, 5.85, Certainty.MEMORY, _GUESS),
    },
    start=_memory(0.10),
    press=custom(0.35),
    settle=custom(0.30),
    react=_memory(0.22),
    choose=Known(0.38, Certainty.PUBLISHED, _CHOICE),
    ball=_memory(
        45.0, "from memory: varsity passers throw 40 to 47 miles an hour; 45 is 20 metres a second"
    ),
    deep=_memory(48.0),
    motion=custom(_MOTION),
    foot={name: custom(value) for name, value in _FOOT.items()},
    under={
        name: Known(round(value, 2), Certainty.PUBLISHED, _DROPS)
        if name in _OUT
        else custom(round(value, 2))
        for name, value in _UNDER.items()
    },
    again={name: custom(value) for name, value in _AGAIN.items()},
)

YOUTH = replace(
    HIGH_SCHOOL,
    name="youth",
    splits={
        Group.SKILL: _runs(2.00, 5.75, Certainty.MEMORY, "from memory"),
        Group.BACK: _runs(2.05, 5.90, Certainty.MEMORY, "from memory"),
        Group.PASSER: _runs(2.05, 5.90, Certainty.MEMORY, "from memory"),
        Group.END: _runs(2.10, 6.05, Certainty.MEMORY, "from memory"),
        Group.LINE: _runs(2.30, 6.70, Certainty.MEMORY, "from memory"),
    },
    react=_memory(0.28),
    choose=_memory(0.45),
    ball=_memory(33.0),
    deep=_memory(36.0),
    motion=_memory(0.50),
)

COLLEGE = replace(
    HIGH_SCHOOL,
    name="college",
    splits={
        Group.SKILL: _runs(1.66, 4.75, Certainty.MEMORY, "from memory"),
        Group.BACK: _runs(1.70, 4.85, Certainty.MEMORY, "from memory"),
        Group.PASSER: _runs(1.75, 4.98, Certainty.MEMORY, "from memory"),
        Group.END: _runs(1.74, 4.95, Certainty.MEMORY, "from memory"),
        Group.LINE: _runs(1.90, 5.45, Certainty.MEMORY, "from memory"),
    },
    press=custom(0.30),
    settle=custom(0.26),
    react=_memory(0.20),
    choose=Known(0.35, Certainty.PUBLISHED, _CHOICE),
    ball=_memory(51.0, "from memory: college passers throw 48 to 55 miles an hour"),
    deep=_memory(55.0),
    motion=custom(0.40),
)

PROFESSIONAL = replace(
    COLLEGE,
    name="professional",
    splits={
        Group.SKILL: _runs(1.56, 4.50, Certainty.PUBLISHED, _COMBINE),
        Group.BACK: _runs(1.58, 4.57, Certainty.PUBLISHED, _COMBINE),
        Group.PASSER: _runs(1.61, 4.82, Certainty.PUBLISHED, _COMBINE),
        Group.END: _runs(1.63, 4.74, Certainty.PUBLISHED, _COMBINE),
        Group.LINE: _runs(1.78, 5.21, Certainty.PUBLISHED, _COMBINE),
    },
    press=custom(0.25),
    react=_memory(0.20),
    choose=_memory(0.32, "from memory: professionals see it sooner than other players"),
    ball=Known(53.7, Certainty.PUBLISHED, "radar speeds of 111 pro prospects, 2008 to 2016"),
    deep=_memory(58.0),
)

LEVELS: dict[str, PlayingLevel] = {
    level.name: level for level in (YOUTH, HIGH_SCHOOL, COLLEGE, PROFESSIONAL)
}


def level_for(code: str) -> str:
    """The level that a rule code is played at where the playbook does not say."""
    return {
        "canadian professional": PROFESSIONAL.name,
        "canadian professional 2027": PROFESSIONAL.name,
        "professional": PROFESSIONAL.name,
        "college": COLLEGE.name,
    }.get(code, HIGH_SCHOOL.name)


GROUPS: Mapping[Position, Group] = {
    Position.QUARTERBACK: Group.PASSER,
    Position.BACK: Group.BACK,
    Position.FULLBACK: Group.BACK,
    Position.WIDEOUT: Group.SKILL,
    Position.SLOT: Group.SKILL,
    Position.SLOTBACK: Group.SKILL,
    Position.TIGHT_END: Group.END,
    Position.WING: Group.END,
    Position.TACKLE: Group.LINE,
    Position.GUARD: Group.LINE,
    Position.CENTRE: Group.LINE,
}

# What a turn leaves of a man's speed, by degrees. The anchors: a cut of 45 degrees is all but free
# when it is spread over three steps (Yamashita and others, Frontiers in Sports and Active Living,
# 2025); 180 degrees cost about 0.84 s (the 5-10-5 shuttle less a straight 20 yards, means of pro
# combine results). Between them common practice: the cost grows with the angle and the speed.
PLANTED_TURN = ((0, 1.0), (30, 0.96), (45, 0.86), (90, 0.46), (135, 0.24), (180, 0.0))
ROUNDED_TURN = ((0, 1.0), (30, 0.98), (45, 0.92), (90, 0.74), (135, 0.45), (180, 0.15))

GRASS = 1.08
"""Pads, grass and the discipline of a route: a man runs at so much less than his track time.
Common practice."""

PACE = 6.0
"""Yards a second of a man on his way before the snap, where nothing is said. Common practice."""
STILL = 1.0
"""Seconds for which a man who has moved is still before the ball is, where nothing is said: what
the eleven-man codes ask after a shift."""
WAIT = 1.8
"""Seconds for which a man who settled in a window is open, or longer where the ball comes later: he
stays. Common practice, no published source."""
RUN_ON = 1.0
"""Seconds past the end of what is drawn for which a man on the run is open. Common practice."""
DRIFT = 0.5
"""Part of his speed at which a man goes on across the field once his route is run: he throttles
down and waits for the ball. Common practice."""
TOUCH = 1.25
"""How much longer than a driven ball one thrown with touch is in the air. Common practice: 1.15
to 1.25."""
UNDERNEATH = 7.0
"""Yards: a man who runs across the field no deeper than this keeps open by drifting."""
DRIFTS = 2.5
"""Seconds past the end of what is drawn for which such a man is open. Common practice: a flat or
a check-down waits for the ball."""
THROTTLE = 0.5
"""Seconds that a man far downfield may slow down by to catch a ball. Common practice."""
SLOW = 1.0
"""Seconds that a man may have to wait under a ball that falls short of him."""
LOB = 2.4
"""Seconds that a ball lobbed downfield may hang. Common practice: 2.3 to 3.0 for the longest."""
DOWNFIELD = 12.0
"""Yards past the line from which a ball is lobbed rather than thrown with touch."""
READS = 0.3
"""Seconds in which a zone defender reads pass before he drops. Common practice: 0.3 to 0.6."""
MINDS = 14.0
"""Yards around his landmark in which an underneath defender looks for a threat."""
FAKED = 2.1
"""Seconds from the snap before which no drop and no set behind a run fake is down, in the gun or
under centre: he carries the fake out before he looks up. Common practice, no published source: a
fake adds 0.4 to 0.8 s to a drop, the ball is out at 2.5 to 3.2."""
GAP = 0.15
"""Seconds that a plan on paper cannot tell apart."""
REMEMBERED = 4096
"""Values of a kind that the clock keeps: some five times what a season of 600 calls asks for."""

"""Strokes: the pieces a route is made of, said from the runner's own side.

"In" is toward the ball, "out" away from it, so one route serves both sides. Degrees are measured
from straight upfield: 90 is flat along the line, 135 comes back to it.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from itertools import pairwise

from stemline.football.offence.landmarks import Landmark

FLAT = 90.0
"""Degrees off straight upfield of a break along the line."""


class Lateral(Enum):
    IN = "in"
    OUT = "out"


@dataclass(frozen=True)
class Depth:
    """Yards past the line; ``called`` adds them to the depth the coach calls for the route."""

    yards: float
    called: bool = False

    def at(self, called: float) -> float:
        return self.yards + (called if self.called else 0.0)


@dataclass(frozen=True)
class Up:
    """Straight upfield to a depth (or straight back to it, from beyond)."""

    to: Depth


@dataclass(frozen=True)
class Break:
    """Turn ``degrees`` off straight upfield and run ``yards``; ``speed`` rounds the turn."""

    lateral: Lateral
    yards: float
    degrees: float = FLAT
    speed: bool = False


@dataclass(frozen=True)
class Target:
    """A place on the field seen from the runner: ``far`` means the other side of the ball.

    ``outside`` yards are added away from the ball, negative toward it; a landmark of None is
    the place where he started.
    """

    landmark: Landmark | None
    outside: float = 0.0
    far: bool = False


@dataclass(frozen=True)
class RunTo:
    """Run to a place, at a depth (None: the depth he has); ``speed`` rounds the turn into it."""

    target: Target
    depth: Depth | None = None
    speed: bool = True


@dataclass(frozen=True)
class Settle:
    """Stop there and face the ball."""


Stroke = Up | Break | RunTo | Settle


@dataclass(frozen=True)
class Decide:
    """Yards past the line at which a receiver chooses, and the defender whom he looks at."""

    depth: float
    on: str


@dataclass(frozen=True)
class Route:
    """A named route. ``depth`` is the default for strokes that follow the called depth.

    ``taught`` tells where the depth is taught and so printed: at the first turn, or nowhere.
    ``decides`` is where its runner chooses, unless a concept says so of his role; ``says`` are the
    coach's words for whoever runs it. ``source`` says where the depth comes from.
    """

    name: str
    depth: float
    strokes: tuple[Stroke, ...]
    taught: bool = True
    decides: Decide | None = None
    source: str = "common practice, no published source"
    says: tuple[str, ...] = ()


PASS_SET = RunTo(Target(None, -0.3), Depth(-1))
"""A man at the line who blocks before he goes: a yard back and a little inside. Custom."""
STEM_OUT = RunTo(Target(None, 1.5), Depth(4))
"""How a man at the line goes out who breaks in from there. Custom."""
DOWN_SET = RunTo(Target(None, -0.9), Depth(0.8))
"""One who blocks down before he goes: a flat step to the man inside him. Custom."""
BLOCKS_FOR = 1.0
"""Seconds for which he blocks there: one count. Common practice, no published source."""
_LOOKED_FOR = -2.0
"""How deep, at most, a rusher is looked for."""


AROUND_THE_END = Target(Landmark.TACKLE, 2)
INTO_THE_FLAT = Target(Landmark.TACKLE, 6)
"""Where a man goes who runs from behind the ball into the flat. Common practice."""


def to_the_flat(strokes: tuple[Stroke, ...], *, looked: bool = False) -> tuple[Stroke, ...]:
    """The strokes for a man behind the ball: the step past the line with which who stands on it
    gets to the flat would take him through the guards, so he goes around the end; who has
    ``looked`` for a rusher first comes out from behind the line."""
    if len(strokes) < 2 or not isinstance(strokes[0], Up) or not isinstance(strokes[1], RunTo):
        return strokes
    up, out = strokes[0].to, strokes[1]
    if out.target.landmark is not None or out.target.outside <= 0 or up.called or up.yards > 1:
        return strokes
    around = (RunTo(AROUND_THE_END, Depth(-1)),) if looked else ()
    return (*around, RunTo(INTO_THE_FLAT, out.depth, out.speed), *strokes[2:])


def set_at_the_line(strokes: tuple[Stroke, ...]) -> tuple[Stroke, ...]:
    """The strokes for a man at the line: where a back would first come to the inside of the line,
    as to look for a rusher, he sets where he stands; out and back in he has a stem, where a back
    comes around the line."""
    for n, (out, back) in enumerate(pairwise(strokes)):
        wide = isinstance(out, RunTo) and out.target.landmark is None and out.target.outside > 0
        breaks_in = isinstance(back, Break) and back.lateral is Lateral.IN
        if wide and breaks_in and isinstance(out, RunTo) and out.depth == Depth(1):
            strokes = (*strokes[:n], STEM_OUT, *strokes[n + 1 :])
    first = strokes[0] if strokes else None
    if not isinstance(first, RunTo) or first.depth is None:
        return strokes
    inside = first.target.landmark in (Landmark.GUARD, Landmark.TACKLE)
    behind = _LOOKED_FOR <= first.depth.at(0) < 0
    return (PASS_SET, *strokes[1:]) if inside and behind else strokes

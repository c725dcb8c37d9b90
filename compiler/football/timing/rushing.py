"""When a free rusher is at the passer: by where he stands, the gap he comes through, and the drop.

He reacts to the snap, runs to his gap and from there to the passer, whom he has at arm's length.
Who comes from farther off, wider or through a wider gap is later, and so is everybody where the
passer is deeper. The distances are those of the picture; the sprint is the level's, in pads.
Computed so, a varsity man on the line inside is there at about 1.5 seconds with the passer 5.5
yards deep and at 1.8 with him 7.5 deep, one off the edge at 1.85 and 2.05, one from four yards
inside at 2.0 and 2.25: planning figures. A published count agrees at the far end: the shortest
sacks of two pro seasons came as a rule at 1.5 to 2.0 seconds (Cooper, "Under pressure", 2011).
"""

from __future__ import annotations

from collections.abc import Sequence

from stemline.football.defenders import Defender
from stemline.football.defenders import Level as Depth
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.football.timing.levels import PlayingLevel
from stemline.football.timing.running import Speed, runner
from stemline.football.timing.screens import led
from stemline.geometry.paths import Point

ARM = 1.0
"""Yards from the passer at which a rusher has him. Common practice, no published source."""
GIVES = 5.0
"""Yards that a passer gives ground who throws a screen and lets the rush come. Common practice."""

HELD = 0.6
"""Seconds for which a run fake holds a man whom nobody blocks: he sees the back come at him.
Common practice: 0.3 to 0.6."""


def free_rusher(play: Play, passer: Point, level: PlayingLevel) -> float | None:
    """Seconds after the snap at which the first free man is at a passer who throws from
    ``passer``; None where everybody is blocked, or no look is lined up."""
    return min((arrives(man, passer, play, level) for man in free(play)), default=None)


def free(play: Play) -> Sequence[Defender]:
    """The rushers whom nobody blocks."""
    rush = play.defence.rushers if play.defence is not None else ()
    return [man for man in rush if man.label in play.unblocked]


def arrives(man: Defender, passer: Point, play: Play, level: PlayingLevel) -> float:
    """When one free man is there."""
    if led(play):
        passer = Point(passer.x, passer.y - GIVES)
    gate = _gate(man)
    yards = man.at.distance(gate) + gate.distance(passer) - ARM
    if man.duty is not None and man.duty.via is not None:
        yards += man.at.distance(man.duty.via) + man.duty.via.distance(gate) - man.at.distance(gate)
    # A free man runs as a linebacker does, one of the secondary as a defensive back: what a
    # lineman is slower over so few yards is no more than a plan on paper can tell.
    who = Position.WIDEOUT if man.level is Depth.DEEP else Position.BACK
    held = HELD if any(step.name == "fake" for step in play.feet) else 0.0
    return held + starts(man, play, level) + runner(level, who).time(max(0.0, yards))


def starts(man: Defender, play: Play, level: PlayingLevel) -> float:
    """When he begins to run: at once, in a stunt after the seconds he is told, or so late that he
    comes round behind the man before him no sooner than that one is in his own gap."""
    duty, react = man.duty, level.react.value
    if duty is None or duty.via is None or play.defence is None:
        return max(react, duty.after if duty is not None else 0.0)
    first = next((d for d in play.defence.defenders if d.label == duty.behind), None)
    if first is None:
        return max(react, duty.after)
    passed = starts(first, play, level) + _run(level).time(first.at.distance(_gate(first)))
    return max(react, duty.after, passed - _run(level).time(man.at.distance(duty.via)))


def _run(level: PlayingLevel) -> Speed:
    return runner(level, Position.BACK)


def _gate(man: Defender) -> Point:
    """The gap through which he comes."""
    return man.duty.to if man.duty is not None and man.duty.to is not None else man.at

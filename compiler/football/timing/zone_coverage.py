"""Zone defenders before the throw: they drop, lean to the nearest threat, flow with the passer.

An underneath defender drops to his landmark, slower once the passer has set, and shades to whoever
is nearest, a few yards and no more: two men he cannot take, and between two defenders there is
room. A deep one stays deeper than whoever comes into his part. Who plays the run first is late
into his drop, and a passer who leaves the pocket takes the underneath zones along.
These are planning figures, common practice, with no published source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from stemline.football.defence.zones import DEEP, middle_of
from stemline.football.defenders import Defender, DutyKind
from stemline.football.defenders import Level as Depth
from stemline.football.field import Side
from stemline.football.offence.landmarks import END_SPLIT
from stemline.football.offence.quarterback import MOVING
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.football.timing.levels import MINDS, READS, UNDERNEATH, PlayingLevel
from stemline.football.timing.men import INBOUNDS
from stemline.football.timing.running import Array, runner
from stemline.football.timing.squatting import in_the_flat, squatting

DROP = 5.5
"""Yards a second of a zone drop."""
DEEP_DROP = 8.0
"""Yards a second of a deep defender on his way, at the least: no slower than he runs."""
SIDEWAYS = 0.75
"""Part of the pace of a drop with which an underneath defender gains width: he looks at the passer
and at the men whom he passes. Common practice: a shuffle of 3.5 to 4.5 yards a second. After a
passer who leaves the pocket he runs."""
SETTLED = 0.4
"""Part of his pace with which he goes on once the passer has set to throw: under control, ready to
break. Common practice: drop until the passer sets, then sit."""
DEEPER = 3.0
"""Yards that a deep defender stays deeper than the deepest man in his part of the field."""
EARLY = 0.3
"""Seconds ahead of a man's way at which a deep defender turns and runs to stay deeper. Common
practice: he goes before his cushion is gone."""
TURNS = 0.2
"""Seconds that a deep defender loses out of his pedal when his man breaks, on top of seeing it:
0.21 s by a study of college backs (Domenic, McCabe and Earp, n = 13)."""
PART = 12.0
"""Yards to each side of his landmark that a deep defender minds."""
ABREAST = 6.0
"""Yards behind the deepest man of his part in which another counts beside him."""
INSIDE = 4.0
"""Yards that a deep defender goes toward the middle with the deepest men of his part."""
PAST = 4.0
"""Yards deeper than his landmark at which a man is past him."""
SHARED = 2.0
"""Yards by which a neighbour may be nearer to a man who is a threat to both."""
LEAN = 3.0
"""Yards off his landmark that he lets a threat draw him. Common practice: two steps."""
FLOW = 5.0
"""Yards that the underneath zones move to the side to which the passer leaves the pocket."""
BITE = 0.45
"""Seconds that a run fake holds a linebacker in the box. Common practice: 0.3 to 0.6."""
STEPS_UP = 1.0
"""Yards that he comes up meanwhile."""
BOX = END_SPLIT + 2.0
"""Yards from the ball within which a linebacker plays the run first: the box reaches two yards
outside a tight end. Common practice."""


def dropped(
    men: Sequence[Defender],
    play: Play,
    places: Mapping[str, Array],
    times: Array,
    level: PlayingLevel,
    sets: float,
) -> Array:
    """Where defenders in zone are; who rushes or has nobody stands still. (men, times, 2).

    ``places`` are the receivers, each (times, 2); ``times`` seconds after the snap, evenly apart;
    ``sets`` is when the passer is ready to throw.
    """
    made = np.empty((len(men), len(times), 2))
    if not men:
        return made
    receivers = np.stack(list(places.values())) if places else np.empty((0, len(times), 2))
    under = [i for i, d in enumerate(men) if _zone(d) not in (None, *DEEP)]
    if under:
        made[under] = _under([men[i] for i in under], play, receivers, times, level, sets)
    deep = [i for i, d in enumerate(men) if _zone(d) in DEEP]
    if deep:
        pace = np.full(len(times), deep_pace(level))
        step = float(times[1] - times[0]) if len(times) > 1 else 1.0
        goals = _deep_goals([men[i] for i in deep], play, *expected(receivers, step, level))
        made[deep] = [
            on_his_way(men[i], goal, times, pace) for i, goal in zip(deep, goals, strict=True)
        ]
    for i, defender in enumerate(men):
        if _zone(defender) is None:
            made[i] = defender.at.x, defender.at.y
    return made


def _zone(defender: Defender) -> DutyKind | None:
    """The zone that he drops to; None without one."""
    duty = defender.duty
    if duty is None or duty.to is None or duty.kind is DutyKind.RUSH:
        return None
    return duty.kind


def landmark(defender: Defender) -> Array:
    assert defender.duty is not None and defender.duty.to is not None, "a man in zone"
    return np.array([defender.duty.to.x, defender.duty.to.y])


def _deep_goals(men: Sequence[Defender], play: Play, where: Array, high: Array) -> Array:
    """Where deep defenders mean to be, at each time: (men, times, 2).

    Deeper than whoever is in his part, and a few yards with the deepest of them toward the middle;
    for a third the sideline helps outside. The outside man of three stays with the widest of them,
    and the seam inside him is somebody else's; a half goes with his man either way. ``where`` and
    ``high`` are `expected`.
    """
    marks = np.stack([landmark(d) for d in men])[:, None]
    across = where[..., 0] - marks[..., :1]  # men, receivers, times
    depth = np.where(np.abs(across) <= PART, high, 0.0)
    deepest = depth.max(axis=1, initial=0.0)
    weight = np.maximum(0.0, depth - np.maximum(UNDERNEATH, deepest - ABREAST)[:, None])
    inside = middle_of(play.field) - marks[..., 0]
    alone = np.abs(inside) <= 1  # in the middle himself
    half = np.array([[_zone(d) is DutyKind.HALF] for d in men])
    wide = ~half & ~alone
    wide &= np.abs(inside) > _half_way(play)
    weight = np.where(wide[:, None], _widest(weight, across, inside), weight)
    threat = (weight * across).sum(axis=1) / np.maximum(weight.sum(axis=1), 1e-9)
    least = np.where(alone | half, -INSIDE, np.clip(inside, -INSIDE, 0.0))
    most = np.where(alone | half, INSIDE, np.clip(inside, 0.0, INSIDE))
    goal_x = marks[..., 0] + np.minimum(np.maximum(threat, least), most)
    return np.stack((goal_x, np.maximum(marks[..., 1], deepest + DEEPER)), axis=-1)


def expected(receivers: Array, step: float, level: PlayingLevel) -> tuple[Array, Array]:
    """Where a deep defender takes the receivers to be, (receivers, times, 2), and how deep they
    are about to be, (receivers, times): they go on as they went when he last saw which way, and
    a break is news to him. ``step`` is seconds between the times."""
    late = round((level.choose.value + TURNS) / step)
    first = receivers[:, 1:2] - receivers[:, :1]
    before = receivers[:, :1] - first * np.arange(late, 0, -1)[:, None]
    seen = np.concatenate((before, receivers), axis=1)[:, : receivers.shape[1]]
    runs = np.diff(seen, axis=1, prepend=seen[:, :1] - first) / step
    where = seen + runs * (late * step)
    return where, where[..., 1] + runs[..., 1] * EARLY


def deep_pace(level: PlayingLevel) -> float:
    """Yards a second of a deep defender on his way."""
    return max(DEEP_DROP, runner(level, Position.WIDEOUT).top)


def _widest(weight: Array, across: Array, inside: Array) -> Array:
    """``weight`` of each man in each part, all of it on the widest who has any."""
    if not weight.shape[1]:
        return weight
    out = np.where(weight > 0, across * -np.sign(inside)[:, None], -np.inf)
    his = np.zeros_like(weight)
    np.put_along_axis(his, out.argmax(axis=1)[:, None], 1.0, axis=1)
    return his * weight


def _half_way(play: Play) -> float:
    """Yards from the middle of the field beyond which a deep part is an outside one."""
    return (play.field.sideline(Side.RIGHT) - play.field.sideline(Side.LEFT)) / 5


def _under(
    men: Sequence[Defender],
    play: Play,
    receivers: Array,
    times: Array,
    level: PlayingLevel,
    sets: float,
) -> Array:
    """Underneath defenders: landmark, flow and lean; slower once the passer has set.

    After a passer on the run they run on. (men, times, 2).
    """
    faked = any(step.name == "fake" for step in play.feet)
    runs = any(step.name in MOVING for step in play.feet)
    flow = np.stack((_flow(play, times, level), np.zeros(len(times))), axis=-1)
    squats = np.array([squatting(d, play) for d in men])
    marks = np.stack([landmark(d) for d in men])[:, None] + flow * ~squats[:, None, None]
    seen = _seen(receivers, times, level)
    goals = marks + _lean(marks, seen)
    short = np.zeros(goals.shape[:2], dtype=bool)
    if squats.any() and len(receivers):
        stands = np.array([[d.at.x] for d in men])
        goals[squats], short[squats] = in_the_flat(
            marks[squats], stands[squats], goals[squats], seen, times, level
        )
    left, right = play.field.sideline(Side.LEFT), play.field.sideline(Side.RIGHT)
    goals[..., 0] = np.clip(goals[..., 0], left + INBOUNDS, right - INBOUNDS)
    pace = np.full(len(times), DROP)
    if not runs:
        pace[times >= sets + level.react.value] *= SETTLED
    wide = 1.0 if runs else SIDEWAYS
    paces = np.where(short, DROP, pace)
    wides = np.where(short.any(axis=1), 1.0, wide).tolist()
    made = [
        on_his_way(d, goals[i], times, paces[i], wides[i], _held(d, faked))
        for i, d in enumerate(men)
    ]
    return np.stack(made)


def _seen(receivers: Array, times: Array, level: PlayingLevel) -> Array:
    """Where a defender takes the receivers to be: where they were when he last reacted."""
    late = round(level.choose.value / float(times[1] - times[0])) if len(times) > 1 else 0
    first = np.repeat(receivers[:, :1], late, axis=1)
    return np.concatenate((first, receivers[:, : len(times) - late]), axis=1)


def _lean(marks: Array, receivers: Array) -> Array:
    """How far the nearest threat draws underneath defenders off their marks. (men, times, 2).

    A threat is a man of whom no other defender is much nearer; without one he looks to his
    neighbour's, half as far. Who is past him and deep is the deep men's.
    """
    if not len(receivers):
        return np.zeros_like(marks)
    gaps = receivers[None] - marks[:, None]  # men, receivers, times
    far = np.hypot(gaps[..., 0], gaps[..., 1]).round(6)
    far = np.where((gaps[..., 1] <= PAST) & (far <= MINDS), far, np.inf)
    own = np.where(far <= far.min(axis=0) + SHARED, far, np.inf)
    alone: NDArray[np.bool_] = np.all(np.isinf(own), axis=1)
    chosen = np.where(alone[:, None], far, own)
    who = np.argmin(chosen, axis=1)[:, None]
    away = np.take_along_axis(chosen, who, axis=1)[:, 0]
    gap = np.take_along_axis(gaps, who[..., None], axis=1)[:, 0]
    most = np.where(alone, LEAN / 2, LEAN)
    part = np.where(np.isfinite(away), np.minimum(1.0, most / np.maximum(away, 1e-9)), 0.0)
    drawn: Array = gap * part[..., None]
    return drawn


def _flow(play: Play, times: Array, level: PlayingLevel) -> Array:
    """Yards to the side that the underneath zones move, at each time."""
    shows = READS
    for step in play.feet:
        if step.name in MOVING and step.side is not None:
            return np.where(times >= shows, FLOW * step.side.value, 0.0)
        shows = max(shows, level.foot[step.name].value if step.name in level.foot else 0.0)
    return np.zeros(len(times))


def _held(defender: Defender, faked: bool) -> float:
    """How long a run fake holds him."""
    box = defender.level is Depth.SECOND and abs(defender.at.x) <= BOX
    return BITE if faked and box else 0.0


def on_his_way(
    defender: Defender, goal: Array, times: Array, pace: Array, wide: float = 1.0, held: float = 0.0
) -> Array:
    """A defender on his way to a goal that moves: (times, 2).

    ``pace`` yards a second up the field, ``wide`` the part of it across; ``held`` by a run fake.
    """
    # On a field so much wider, as complex numbers, he is as fast across it as up it.
    here = complex(defender.at.x / wide, defender.at.y)
    step = float(times[1] - times[0]) if len(times) > 1 else 0.0
    stands, drops = np.searchsorted(times, (READS - 1e-9, READS + held - 1e-9)).tolist()
    made = [here] * stands
    for _ in range(drops - stands):
        made.append(here)
        here -= 1j * STEPS_UP * step / held
    goals = (goal[drops:, 0] / wide + 1j * goal[drops:, 1]).tolist()
    for to, reach in zip(goals, (pace[drops:] * step).tolist(), strict=True):
        made.append(here)
        gap = to - here
        yards = abs(gap)
        here = here + gap * (reach / yards) if yards > reach else to
    plane = np.array(made)
    return np.stack((plane.real * wide, plane.imag), axis=-1)

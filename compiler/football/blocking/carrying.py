"""The ball carrier's path: from where he stands, past the quarterback, to his aim and upfield."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stemline.football.defence.techniques import Gap, On, gap_x, surface
from stemline.football.field import Side
from stemline.football.offence.counting import edge_of
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Leg, Path, Point, crossing

# Yards; common practice, no published source, chosen for the drawing where nothing else is said.
EDGE_AIM = 1.5
"""Outside the last man of the line: where a sweep aims."""
MESH_FRONT = 0.8
"""In front of a quarterback in the gun: where the ball is handed to a man who crosses."""
MESH_NEAR = 0.5
"""To the side the carrier comes from."""
FASTEST_MESH = 1.6
"""From the quarterback to a man who runs behind him as the ball is snapped: no further."""
SNAPS = 2.6
"""To the side of the ball: a quarterback farther out than the tackle is not the one it is snapped
to, and hands nothing to anybody."""
UPFIELD = 5.0
"""How far past the line his path is drawn inside, and outside."""
UPFIELD_WIDE = 7.0
ROUND = 1.5
"""Behind a quarterback whom a man with the ball passes on his way to the other side."""
TURN = 1.2
"""The reach of his turns."""
FLAT_BEHIND = 2.4
"""Behind the line: where a man runs across who gets the ball shovelled."""
PRESSED = 1.5
"""Behind the line: how far up a man runs to his first aim before he cuts back from it."""
SAME_HOLE = 1.0
"""Between two men's ways at the line: no farther apart they go through one gap."""


@dataclass(frozen=True)
class Hole:
    """An aim on the field: x right of the ball, and whether it lies outside the line."""

    x: float
    wide: bool


def hole(point: str, side: Side, men: Sequence[Man]) -> Hole:
    """Where an aiming point lies: a gap A to D, a lineman's place, or "edge"."""
    line, last = surface(men, side), edge_of(men, side)
    if point == "edge":
        return Hole(side.value * (last + EDGE_AIM), True)
    if point in Gap.__members__:
        x = gap_x(Gap[point], line)
        return Hole(x, abs(x) > last)
    at = {"centre": 0.0, "guard": line.guard, "tackle": line.tackle, "end": line.of(On.END)}[point]
    return Hole(side.value * at, at > last)


def carry(
    holes: Sequence[Hole],
    carrier: Man,
    men: Sequence[Man],
    through: Sequence[Point] = (),
    meets: bool = True,
    *,
    leads: bool = False,
    across: bool = False,
    cuts_back: bool = False,
) -> Path:
    """His path through the aims in order; the last one is the hole that he runs through.

    ``through`` are places where he meets others for the ball, ``meets`` whether he goes by the
    quarterback for it; who ``leads`` goes ahead of the man who has it. Who comes ``across`` to a
    shovel goes flat in front of the quarterback, then up. Who ``cuts_back`` presses his first
    aim to the heels of the line.
    """
    meets = meets and not leads
    passer = next((m for m in men if m.position is Position.QUARTERBACK), carrier)
    start, last = carrier.snap, holes[-1]
    deep = -PRESSED if cuts_back else min(start.y * 0.75, -2.0)
    firsts = [Point(h.x, deep) for h in holes[:-1]]
    points = [] if cuts_back else firsts
    if passer is not carrier and not points and meets:
        points += mesh(carrier, passer)
    points += through
    points += firsts if cuts_back else []
    out = 1 if last.x > 0 else -1 if last.x < 0 else 0
    if points and last.wide and passer is not carrier:
        back = _behind(points[-1], Point(last.x, 0.0), passer)
        # Flat until he is past the far tackle: whoever turns up sooner runs into their chase.
        flat = through and back and last.x * start.x < 0
        points += [*back, Point(last.x - out, back[-1].y)] if flat else back
    if last.wide:
        belly = Point(last.x - out * 1.0, -1.8)
        # Who leads from the line, or from outside, has no way round to go.
        around = not leads or start.y <= belly.y or start.x * out < belly.x * out
        points += [belly] if around else []
        points.append(Point(last.x + out * 0.6, 0.8))
        points.append(Point(last.x + out * 1.0, UPFIELD_WIDE))
    else:
        points += _flat(start, last.x, passer) if across and not points else []
        points += [Point(last.x, -0.6), Point(last.x + out * 0.4, UPFIELD)]
    legs = [Leg(p, TURN) for p in points[:-1]] + [Leg(points[-1])]
    return Path(start, tuple(legs))


def _behind(at: Point, toward: Point, passer: Man) -> list[Point]:
    """Where a man goes who has the ball on one side of the quarterback and runs to the other: round
    behind him, and behind the way of the man who gave it to him."""
    x = passer.snap.x
    if abs(at.x - x) < ROUND or (at.x - x) * (toward.x - x) > 0:
        return []
    return [Point(x, min(at.y, passer.snap.y) - ROUND)]


def _flat(start: Point, x: float, passer: Man) -> list[Point]:
    """Corners of the way across in front of a quarterback in the gun to a hole at ``x``; none for a
    man who is there already, or has no room between the line and him."""
    far = x - start.x
    if passer.under_centre or abs(far) < 2 * TURN:
        return []
    side = 1.0 if far > 0 else -1.0
    return [Point(start.x + side * TURN, -FLAT_BEHIND), Point(x, -FLAT_BEHIND)]


def same_hole(path: Path, other: Path) -> bool:
    """Whether two men run through one gap of the line."""
    here, there = crossing(path, 0.0), crossing(other, 0.0)
    return here is not None and there is not None and abs(here - there) <= SAME_HOLE


def stands_wide(passer: Man) -> bool:
    """Whether the quarterback is too far from the ball to take the snap."""
    return abs(passer.snap.x) > SNAPS


def mesh(carrier: Man, passer: Man) -> list[Point]:
    """Where he takes the ball: none for a man behind a quarterback who turns and comes to him, as
    one under centre does wherever the man stands behind, or for one who gets the snap himself while
    the quarterback stands wide."""
    start, at = carrier.snap, passer.snap
    if stands_wide(passer):
        return []
    from_side = 1 if start.x > at.x else -1 if start.x < at.x else 0
    if (passer.under_centre or abs(start.x - at.x) <= 0.5) and start.y < at.y - 1:
        return []
    if start.y >= at.y + 1.5:  # a man in motion, in front of the quarterback or right behind him
        return [Point(at.x, max(at.y + MESH_FRONT, min(start.y, at.y + FASTEST_MESH)))]
    return [Point(at.x + from_side * MESH_NEAR, at.y + MESH_FRONT)]

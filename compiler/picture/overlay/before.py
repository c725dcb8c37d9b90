"""The play before it was changed, pale and dashed under the new one.

The old play is laid out on the new one's board by the same makers, so that a line that did not
change would fall on itself; what did not change is then left out. Of a changed path only what
lies off the new one is drawn. The new play's own picture is not moved by it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from stemline.describe.changes import TOLERANCE
from stemline.geometry.box import square
from stemline.geometry.curves import points_of
from stemline.geometry.paths import Point
from stemline.picture.lines.laid import LaidLines
from stemline.picture.lines.motions import Moved
from stemline.picture.lines.old_lines import OldLines
from stemline.picture.overlay.left_over import (
    SHORTEST,
    clear_of,
    left_over,
    near_lines,
    room_of,
)
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, centred, ring_of
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Disc, Item, Stroke


@dataclass(frozen=True)
class Before:
    """What is drawn of the old play: its lines, and the men who stood elsewhere.

    ``lines`` says whose line runs where; ``stood`` are old symbols, as small as their ring.
    """

    items: tuple[Item, ...]
    lines: tuple[tuple[str, tuple[Point, ...]], ...]
    stood: tuple[Symbol, ...]


def lines_left(now: LaidLines, old: OldLines) -> Before:
    """What is left of the old lines beside the new ones, and the men who stood elsewhere."""
    lines: list[tuple[str, tuple[Point, ...]]] = []
    items: list[Item] = []
    for drawn in old.drawn:
        man = drawn.run.man
        others = [points for other, points in lines if other != man]
        kept = left_over(drawn.items, man, now, others)
        items += kept
        lines += [(man, points_of(i.segments)) for i in kept if isinstance(i, Stroke)]
    stood = tuple(
        s for name, s in old.symbols.items() if name in old.found and s is not now.symbols.get(name)
    )
    return Before(tuple(items), tuple(lines), stood)


def motions_left(now: LaidLines, old: OldLines, moved: Sequence[Moved]) -> Before:
    """What is left of the old motions, and where they began."""
    items: list[Item] = []
    lines: list[tuple[str, tuple[Point, ...]]] = []
    rooms = [room_of(symbol, now.on) for symbol in now.symbols.values()]
    for move in moved:
        for item in move.items:
            if isinstance(item, Stroke):
                pieces = clear_of(item.segments, rooms, now.on.yards(SHORTEST))
                if pieces:
                    items.append(replace(item, segments=pieces, style="before-motion", name=""))
                    lines.append((move.man, points_of(pieces)))
    stood: list[Symbol] = []
    for task in old.motions:
        man = old.play.man(task.man)
        if not any(m.label == task.man and m.at.distance(man.at) <= TOLERANCE
                   for m in now.play.men):  # fmt: skip
            stood.append(ring_of(replace(old.symbols[task.man], man=man, at=man.at), now.on))
    return Before(tuple(items), tuple(lines), tuple(stood))


@dataclass(frozen=True)
class Rings:
    """Where men stood who stand there no more: a ring with his letter where there is room for one,
    and those who have none. ``ink`` has the rings."""

    items: tuple[Item, ...]
    lost: tuple[Symbol, ...]
    ink: Ink


def rings(olds: Sequence[Before], moved: Sequence[Moved], now: LaidLines, ink: Ink) -> Rings:
    """The rings of all ``olds``; ``moved`` are the new picture's motions."""
    if not now.on.shows(Detail.GHOSTS):
        return Rings((), (), ink)
    ink = ink.copy()
    items: list[Item] = []
    lost: list[Symbol] = []
    there = [("", line.points) for line in now.drawn] + [("", move.points) for move in moved]
    there += [line for old in olds for line in old.lines]
    for ghost in (ghost for old in olds for ghost in old.stood):
        name, span = ghost.man.label, ghost.man.span
        others = [points for man, points in there if man != name and len(points) > 1]
        if not _free(ghost, others, ink, now.on):
            lost.append(ghost)
            continue
        items.append(Disc(ghost.at, ghost.radius, "before-man", span))
        if not ghost.man.interior:
            items.append(centred(name, ghost.at, "before-letter", now.on, span))
        ink.solid(square(ghost.at, ghost.edge))
    return Rings(tuple(items), tuple(lost), ink)


def _free(ghost: Symbol, lines: Iterable[Sequence[Point]], ink: Ink, on: Board) -> bool:
    white = on.mark("gap")
    clear = ghost.edge + white + on.weight("carry") / 2
    if ink.covers(square(ghost.at, ghost.edge + white)):
        return False
    return not near_lines(ghost.at, lines, clear)

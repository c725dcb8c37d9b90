"""Notes in the places found for them, and how hard that was.

A picture is crowded where a label lies on something, or stands where it could be taken for another
one's: then no rule for labels helps, and the coach takes something out. `Crowding` tells it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from stemline.geometry.box import Box, square
from stemline.geometry.paths import Line, Point
from stemline.picture.labels.labels import Placed, Trouble, place
from stemline.picture.labels.notes import WantedNote
from stemline.picture.lines.motions import Moved
from stemline.picture.lines.route_lines import Drawn
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item, Plate, Stroke

WORST, ALL = 7.0, 20.0
"""A picture is crowded where one label's place costs more than the first, or all its labels'
places more than the second. Seven is a word with four dots of a line under it, or a place so far
off that only a leader ties it. Chosen by looking at the pictures of two playbooks in the order of
what they cost; no published source."""
_NAMED = 3.0
"""A label must cost this much before what it lies on is looked for."""
_STRIDE = {True: 4.0, False: 2.6}
"""Points from one ring of places to the next, on the full picture and on the smaller ones."""
_PAD = 1.3
"""Points of white round a label."""
_HALO = 0.6
"""Points that a halo is larger than its words."""
_EDGE = 1.0
"""Points of white at the picture's edge."""


@dataclass(frozen=True)
class Tight:
    """A label whose place costs something: ``role`` and ``text`` as in `WantedNote`, and why.

    ``on`` is what it lies on where that has a name: another label's text, or a man's.
    """

    role: str
    text: str
    cost: float
    trouble: Trouble
    on: str


@dataclass(frozen=True)
class Crowding:
    """What all labels of a picture cost, how many have a leader, and each label, dearest first."""

    cost: float
    leaders: int
    labels: tuple[Tight, ...]

    @property
    def worst(self) -> float:
        """What the dearest label costs; 0 where a picture has none."""
        return self.labels[0].cost if self.labels else 0.0

    @property
    def crowded(self) -> bool:
        return self.worst > WORST or self.cost > ALL


@dataclass(frozen=True)
class Written:
    """The leaders, the notes, and where each note went."""

    leaders: tuple[Item, ...]
    items: tuple[Item, ...]
    notes: tuple[WantedNote, ...]
    places: tuple[Placed, ...]


def write_notes(notes: Sequence[WantedNote], ink: Ink, field: Sequence[Item], on: Board) -> Written:
    """The notes, each in its place; words on a line of the field are given a halo."""
    frame = on.frame.grown(-on.yards(_EDGE))
    wanted = [note.want for note in notes]
    places = place(wanted, ink, frame, on.yards(_STRIDE[on.full]), on.yards(_PAD))
    leaders: list[Item] = []
    items: list[Item] = []
    for note, placed in zip(notes, places, strict=True):
        leaders += _leader(note, placed)
        room = placed.box.grown(on.yards(_HALO))
        if note.halo and (ink.under(placed.box)[1] > 0 or _on_field(room, field)):
            items.append(Plate(room, 0.0, "halo", note.span))
        items += note.draw(placed.box)
    return Written(tuple(leaders), tuple(items), tuple(notes), places)


def _on_field(box: Box, field: Sequence[Item]) -> bool:
    """Whether a line of the field runs under a box; a hash is too short for the ink's dots."""
    return any(
        isinstance(item, Stroke)
        and min(p.start.x for p in item.segments) <= box.right
        and max(p.end.x for p in item.segments) >= box.left
        and min(p.start.y for p in item.segments) <= box.top
        and max(p.end.y for p in item.segments) >= box.bottom
        for item in field
    )


def _leader(note: WantedNote, placed: Placed) -> tuple[Item, ...]:
    if placed.leader is None:
        return ()
    return (Stroke((Line(*placed.leader),), "leader", (), note.span),)


def crowding(
    written: Written,
    drawn: Sequence[Drawn],
    moved: Sequence[Moved],
    symbols: Mapping[str, Symbol],
    on: Board,
) -> Crowding:
    """How hard it was to find a place for each note, and what it lies on."""
    lines = [(line.run.man, line.points) for line in drawn]
    lines += [(move.man, move.points) for move in moved]
    men = {name: square(symbol.at, symbol.edge) for name, symbol in symbols.items()}
    rows: list[Tight] = []
    for note, placed in zip(written.notes, written.places, strict=True):
        room = placed.box.grown(on.yards(_PAD))
        name = ""
        if placed.cost < _NAMED:
            pass
        elif placed.trouble is Trouble.LINE:
            name = _whose(room, lines, on)
        elif placed.trouble is Trouble.SYMBOL:
            name = next((man for man, box in men.items() if box.overlap(room) > 0), "")
        elif placed.other is not None:
            name = written.notes[placed.other].text
        rows.append(Tight(note.role, note.text, placed.cost, placed.trouble, name))
    rows.sort(key=lambda row: -row.cost)
    leaders = sum(placed.leader is not None for placed in written.places)
    return Crowding(sum(row.cost for row in rows), leaders, tuple(rows))


def _whose(room: Box, lines: Iterable[tuple[str, Sequence[Point]]], on: Board) -> str:
    """The man whose line lies longest under a box."""
    best, most = "", 0.0
    for man, points in lines:
        own = Ink(on.yards(_PAD))
        own.line(points)
        under = own.under(room)[0]
        if under > most:
            best, most = man, under
    return best

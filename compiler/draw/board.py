"""The board a picture is drawn on: its frame, its scale, and points on paper turned into yards."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from stemline.draw.metrics import Extent, extent
from stemline.draw.scene import Box
from stemline.football.field import Field, Side
from stemline.football.play import Play
from stemline.paths import Path, polyline
from stemline.theme import Look, Size, Theme

_MAN = 0.8
"""Yards: room kept round a man; a symbol of the large picture is this large."""
_LABEL = 1.0
"""Yards: room kept round the end of a path for its arrow and its number."""
_SIDELINE = 5.0
"""Yards: a sideline this near to the play is shown; it is a landmark."""
_BEHIND = -6.5
"""Yards: pictures reach at least this deep, so that sections with and without a back agree."""
_AHEAD = 10.0
"""Yards: pictures show at least the field to this depth."""


@dataclass(frozen=True)
class Board:
    """Where things are drawn. ``scale`` is points to the yard."""

    frame: Box
    scale: float
    size: Size
    theme: Theme

    @property
    def look(self) -> Look:
        return self.theme.look(self.size)

    @property
    def full(self) -> bool:
        return self.size is Size.FULL

    def yards(self, points: float) -> float:
        return points / self.scale

    def mark(self, name: str) -> float:
        """A length of the theme's symbol table, in yards on this board."""
        return self.look.symbol[name] / self.scale

    def weight(self, stroke: str) -> float:
        """A stroke's weight in yards on this board."""
        return self.look.pens[stroke].weight / self.scale

    def extent(self, text: str, style: str) -> Extent:
        """Room that words take, in yards."""
        room = extent(text, self.look.types[style], self.theme)
        return Extent(room.width / self.scale, room.rise / self.scale, room.fall / self.scale)


def frame_of(plays: Iterable[Play]) -> Box:
    """The box in yards that holds all that these plays draw: one frame for a section.

    Pass it to `picture` for every play of the section and they all stand at one scale.
    """
    boxes = [_content(play) for play in plays]
    frame = Box(-8.0, _BEHIND, 8.0, _AHEAD)
    for box in boxes:
        frame = frame.union(box)
    return frame


def board(frame: Box, field: Field, size: Size, theme: Theme) -> Board:
    """The board for a content box: a margin added, then widened to the picture's full width.

    The width left over goes to the side where there is still field to show.
    """
    look = theme.look(size)
    room = 2 * look.margin
    scale = min((look.width - room) / frame.width, (look.height - room) / frame.height, look.yard)
    grown = frame.grown(look.margin / scale)
    spare = max(0.0, look.width / scale - grown.width)
    left = grown.left - field.sideline(Side.LEFT) + look.margin / scale
    right = field.sideline(Side.RIGHT) - grown.right + look.margin / scale
    to_left = min(max(spare / 2, spare - max(right, 0.0)), max(left, 0.0))
    if left + right < spare:
        to_left = left + (spare - left - right) / 2
    wide = Box(grown.left - to_left, grown.bottom, grown.right + spare - to_left, grown.top)
    return Board(wide, scale, size, theme)


def _content(play: Play) -> Box:
    box: Box | None = None
    for man in play.men:
        for at in (man.at, man.snap):
            around = Box(at.x, at.y, at.x, at.y).grown(_MAN)
            box = around if box is None else box.union(around)
    assert box is not None, "a play has men"
    for path in _paths(play):
        for point in polyline(path):
            box = box.union(Box(point.x, point.y, point.x, point.y).grown(_LABEL))
    for side in Side:
        x = play.field.sideline(side)
        if min(abs(box.left - x), abs(box.right - x)) < _SIDELINE:
            box = box.union(Box(x, box.bottom, x, box.top))
    return box


def _paths(play: Play) -> Iterable[Path]:
    for task in play.assignments:
        if task.path is not None:
            yield task.path
        if task.motion is not None:
            yield task.motion.path
        for branch in task.branches:
            yield branch.path

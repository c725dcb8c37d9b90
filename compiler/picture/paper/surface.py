"""The board a picture is drawn on: its frame, its scale, and points on paper turned into yards."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from stemline.geometry.box import Box
from stemline.picture.paper.detail import OF_A_LOOK, Detail, shows
from stemline.picture.paper.fold import NO_FOLD, Fold
from stemline.picture.scene.metrics import Extent, extent
from stemline.theme import Appearance, Size, Theme


@dataclass(frozen=True)
class Board:
    """Where things are drawn. ``scale`` is points to the yard.

    ``close`` is True for a picture of blocks; ``fold`` says which field it closes up. ``duties``
    tells that the picture shows what each defender is there for, ``whole`` that it leaves out
    none of them, and says how deep one stands who is drawn at its edge.
    """

    frame: Box
    scale: float
    size: Size
    theme: Theme
    close: bool = False
    fold: Fold = NO_FOLD
    duties: bool = False
    whole: bool = False

    @cached_property
    def look(self) -> Appearance:
        return self.theme.look(self.size)

    @property
    def full(self) -> bool:
        return self.size is Size.FULL

    def shows(self, detail: Detail) -> bool:
        """Whether the picture shows it: by its size, or as a part of a whole look."""
        return (self.whole and detail in OF_A_LOOK) or shows(self.size, detail)

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

"""A man on paper, and the middle of words."""

from __future__ import annotations

from dataclasses import dataclass, replace

from stemline.football.play import Man
from stemline.geometry.paths import Point
from stemline.picture.paper.surface import Board
from stemline.picture.scene.scene import TextRun
from stemline.source import Span


@dataclass(frozen=True)
class Symbol:
    """A man on paper: ``at`` and ``radius`` in yards; ``edge`` is where his path may start."""

    man: Man
    at: Point
    radius: float
    edge: float


def centred(text: str, at: Point, style: str, board: Board, span: Span) -> TextRun:
    """Words with their middle at ``at``, by the height of capitals."""
    room = board.extent(text, style)
    return TextRun(text, Point(at.x - room.width / 2, at.y - room.rise / 2), style, span)


def ring_of(symbol: Symbol, on: Board) -> Symbol:
    """A symbol no larger than the ring of a man who stood there."""
    radius = min(symbol.radius, on.mark("ghost"))
    return replace(symbol, radius=radius, edge=radius + on.yards(0.6))

"""Words that give way to all lines: those of the field, and of the defenders' grounds."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.geometry.box import Box
from stemline.picture.paper.surface import Board
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item, Plate, TextRun
from stemline.source import NOWHERE

TRACE = 3.0
"""Ink that a field line or two may leave under them."""
QUIET = 4.0
"""Points of white that the field's own words want around them."""
BESIDE = 1.0
"""Points of white round the word of a drop."""


def free_words(
    runs: Sequence[TextRun], ink: Ink, on: Board, quiet: float = QUIET
) -> tuple[TextRun, ...]:
    """The field's words that stand on no path, no man and no earlier word; each is laid on ink."""
    kept: list[TextRun] = []
    for run in runs:
        white = _room(run, on).grown(on.yards(quiet))
        if ink.under(white)[0] < TRACE and not ink.covers(white):
            kept.append(run)
            ink.solid(_room(run, on))
    return tuple(kept)


def _room(run: TextRun, on: Board) -> Box:
    room = on.extent(run.text, run.style)
    at = run.at
    return Box(at.x, at.y - room.fall, at.x + room.width, at.y + room.rise)


def with_halos(runs: Sequence[TextRun], on: Board) -> tuple[Item, ...]:
    items: list[Item] = []
    for run in runs:
        items += (Plate(_room(run, on), 0.0, "halo", NOWHERE), run)
    return tuple(items)

"""Words that give way to all lines: those of the field, and of the defenders' grounds."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.football.field import Field, Side
from stemline.geometry.box import Box
from stemline.geometry.paths import Point
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item, Plate, TextRun
from stemline.source import NOWHERE

TRACE = 3.0
"""Ink that a field line or two may leave under them."""
QUIET = 4.0
"""Points of white that the field's own words want around them."""
_DASHED = "dashed, pale: before"
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


def before_words(field: Field, on: Board) -> tuple[TextRun, ...]:
    """What the dashes of the play as it was mean, in each corner that may have room: the best
    first."""
    if not on.shows(Detail.FIELD_WORDS):
        return ()
    room, pad, frame = on.extent(_DASHED, "corner"), on.yards(4.0), on.frame
    sides = [on.fold.x(field.sideline(side)) for side in (Side.LEFT, Side.RIGHT)]
    left, right = max(frame.left, sides[0]) + pad, min(frame.right, sides[1]) - pad - room.width
    top, low = frame.top - pad - room.rise, frame.bottom + pad
    places = (Point(right, top), Point(left, top), Point(left, low))
    return tuple(TextRun(_DASHED, at, "corner", NOWHERE) for at in (*places, Point(right, low)))

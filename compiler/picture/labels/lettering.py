"""All words of a picture, each where it lies on no line: first the notes' places are kept free of
what the field and the defenders' grounds have to say, which gives way."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stemline.geometry.curves import points_of
from stemline.picture.labels.notes import (
    WantedNote,
    alert_notes,
    depth_notes,
    lost_notes,
    read_notes,
    word_notes,
)
from stemline.picture.labels.placing import Written, write_notes
from stemline.picture.labels.yielding import BESIDE, before_words, free_words, with_halos
from stemline.picture.lines.field_lines import GOAL_LINE
from stemline.picture.lines.laid import LaidLines
from stemline.picture.lines.motions import Moved
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item, Stroke


@dataclass(frozen=True)
class Lettered:
    """Words in their places: those of the ``field`` with their halos, those of the defenders'
    ``duties``, and the notes."""

    field: tuple[Item, ...]
    duties: tuple[Item, ...]
    written: Written


def letter(
    laid: LaidLines,
    moved: Sequence[Moved],
    ink: Ink,
    dashed: bool = False,
    lost: Sequence[Symbol] = (),
) -> Lettered:
    """The words of a picture; ``dashed`` where the play as it was lies under it, and ``lost`` are
    its men for whose ring there is no room."""
    ink, on = ink.copy(), laid.on
    key = before_words(laid.play.field, on) if dashed else ()
    field = (*free_words(laid.words, ink, on), *free_words(key, ink, on)[:1])
    duties = free_words(laid.tasks.words, ink, on, quiet=BESIDE)
    for item in laid.field:  # the field's own words may stand at the sidelines, no other may
        if isinstance(item, Stroke) and item.style in ("sideline", GOAL_LINE):
            ink.line(points_of(item.segments))
    notes = (*_wanted(laid, moved), *lost_notes(lost, on))
    return Lettered(with_halos(field, on), duties, write_notes(notes, ink, laid.field, on))


def _wanted(laid: LaidLines, moved: Sequence[Moved]) -> tuple[WantedNote, ...]:
    play, drawn, on, only = laid.play, laid.drawn, laid.on, laid.only
    return (
        *read_notes(play, drawn, on, only),
        *alert_notes(play, drawn, laid.symbols, on, only),
        *depth_notes(play, on, only),
        *word_notes(play, drawn, moved, on, only),
    )

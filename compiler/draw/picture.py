"""A play as a picture: the one way from a `Play` to a `Scene`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from stemline.draw.board import Board, board, frame_of
from stemline.draw.curves import points_of
from stemline.draw.describe import describe
from stemline.draw.field_lines import field_items, field_words
from stemline.draw.grounds import claim_items
from stemline.draw.ink import Ink
from stemline.draw.labels import Placed, place
from stemline.draw.motions import draw_motions
from stemline.draw.notes import Note, alert_notes, depth_notes, read_notes, word_notes
from stemline.draw.routes import Drawn, draw_run, plan_runs
from stemline.draw.scene import Box, Disc, Item, Layer, Plate, Scene, Stroke, TextRun
from stemline.draw.symbols import Symbol, men_items, place_men, square
from stemline.football.play import Play
from stemline.paths import Line
from stemline.source import NOWHERE
from stemline.theme import Size, Theme

__all__ = ["frame_of", "picture"]

_FIELD_WEIGHT = 0.05
"""Ink of a field line against that of a path: words may lie on it when nothing better is free."""
_TRACE = 3.0
"""Ink that a field line or two may leave under them."""
_QUIET = 4.0
"""Points of white that the field's own words want around them."""


def picture(
    play: Play, size: Size, theme: Theme, frame: Box | None = None, only: str | None = None
) -> Scene:
    """``play`` drawn at ``size``.

    ``frame`` is a content box from `frame_of`, to give several plays one scale; by default the
    play's own. ``only`` is the label of one man: the others and their paths are drawn pale.
    """
    on = board(frame or frame_of((play,)), play.field, size, theme)
    symbols = place_men(play, on)
    drawn = tuple(
        draw_run(run, symbols, on, only not in (None, run.man))
        for run in sorted(plan_runs(play, symbols, on), key=lambda run: run.man == only)
    )
    field = field_items(play.field, on)
    men = men_items(symbols, on, only)
    ink = _ink(on, field, drawn, symbols)
    moved = draw_motions(play, symbols, ink, on, only)
    for item in (item for m in moved for item in m.items):
        if isinstance(item, Disc):
            ink.solid(square(item.centre, item.radius))
    words = _free(field_words(play, on), ink, on)
    for item in field:
        if isinstance(item, Stroke) and item.style == "sideline":
            ink.line(points_of(item.segments))
    notes = (
        *read_notes(play, drawn, on),
        *alert_notes(play, drawn, symbols, on),
        *depth_notes(play, drawn, on),
        *word_notes(drawn, moved, on),
    )
    leaders, placed = _notes(notes, ink, on)
    layers = (
        Layer("field", (*field, *_with_halos(words, on))),
        Layer("claims", claim_items(play)),
        Layer("routes", tuple(item for d in drawn for item in d.items)),
        Layer("motions", tuple(item for m in moved for item in m.items)),
        Layer("leaders", leaders),
        Layer("men", men),
        Layer("notes", placed),
    )
    return Scene(play.call.spoken, describe(play), on.frame, on.scale, size, layers)


def _ink(
    on: Board,
    field: Sequence[Item],
    drawn: Sequence[Drawn],
    symbols: Mapping[str, Symbol],
) -> Ink:
    ink = Ink(on.yards(1.5))
    for item in field:
        if isinstance(item, Stroke):
            ink.line(points_of(item.segments), _FIELD_WEIGHT, apart=3.0)
    for line in drawn:
        for item in line.items:
            if isinstance(item, Stroke) and item.style != "casing":
                ink.line(points_of(item.segments))
                if item.head:
                    ink.line((*item.head, item.head[0]))
            elif isinstance(item, Disc):
                ink.solid(square(item.centre, item.radius))
    for symbol in symbols.values():
        ink.solid(square(symbol.at, symbol.edge))
    return ink


def _notes(notes: Sequence[Note], ink: Ink, on: Board) -> tuple[tuple[Item, ...], tuple[Item, ...]]:
    """The leaders and the notes themselves, each in the place found for it."""
    stride = on.yards(4.0 if on.full else 2.6)
    pad = on.yards(1.3)
    frame = on.frame.grown(-on.yards(1.0))
    places = place([note.want for note in notes], ink, frame, stride, pad)
    leaders: list[Item] = []
    items: list[Item] = []
    for note, placed in zip(notes, places, strict=True):
        leaders += _leader(note, placed)
        if note.halo and ink.under(placed.box)[1] > 0:
            items.append(Plate(placed.box.grown(on.yards(0.6)), 0.0, "halo", note.span))
        items += note.draw(placed.box)
    return tuple(leaders), tuple(items)


def _leader(note: Note, placed: Placed) -> tuple[Item, ...]:
    if placed.leader is None:
        return ()
    return (Stroke((Line(*placed.leader),), "leader", (), note.span),)


def _free(runs: Sequence[TextRun], ink: Ink, on: Board) -> tuple[TextRun, ...]:
    """The field's words that stand on no path, no man and no earlier word; each is laid on ink."""
    kept: list[TextRun] = []
    for run in runs:
        white = _room(run, on).grown(on.yards(_QUIET))
        if ink.under(white)[0] < _TRACE and not ink.covers(white):
            kept.append(run)
            ink.solid(_room(run, on))
    return tuple(kept)


def _room(run: TextRun, on: Board) -> Box:
    room = on.extent(run.text, run.style)
    at = run.at
    return Box(at.x, at.y - room.fall, at.x + room.width, at.y + room.rise)


def _with_halos(runs: Sequence[TextRun], on: Board) -> tuple[Item, ...]:
    items: list[Item] = []
    for run in runs:
        items += (Plate(_room(run, on), 0.0, "halo", NOWHERE), run)
    return tuple(items)

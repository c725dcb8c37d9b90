"""A play as a picture: the one way from a `Play` to a `Scene`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.describe.changes import told
from stemline.football.play import Kind, Play
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.geometry.box import Box, square
from stemline.geometry.curves import points_of
from stemline.picture.frame.board import board, frame_of
from stemline.picture.labels.notes import (
    WantedNote,
    alert_notes,
    depth_notes,
    read_notes,
    word_notes,
)
from stemline.picture.labels.placing import Crowding, Written, crowding, write_notes
from stemline.picture.labels.yielding import BESIDE, free_words, with_halos
from stemline.picture.lines.blocks import eyes_items
from stemline.picture.lines.close_runs import plan_close
from stemline.picture.lines.crossings import break_lines
from stemline.picture.lines.defender_lines import DefenderLines, draw_duties
from stemline.picture.lines.field_lines import field_items, field_words
from stemline.picture.lines.handoff import ball_items
from stemline.picture.lines.letters_aside import beside_lines, letter_items
from stemline.picture.lines.motions import Moved, draw_motions
from stemline.picture.lines.paces import named, paces
from stemline.picture.lines.route_lines import Drawn, draw_run, plan_runs
from stemline.picture.men.standing import Standing, all_standing
from stemline.picture.men.symbols import men_items
from stemline.picture.overlay.before import (
    NOTHING,
    both_of,
    legend,
    lines_before,
    motions_before,
    rings,
)
from stemline.picture.overlay.claims import claim_items
from stemline.picture.overlay.left_over import Now
from stemline.picture.paper.letter import Letter, solids
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Disc, Item, Layer, Scene, Stroke, TextRun
from stemline.theme import Size, Theme

__all__ = ["frame_of", "how_crowded", "picture"]

_FIELD_WEIGHT = 0.05
"""Ink of a field line against that of a path: words may lie on it when nothing better is free."""
_ALWAYS = frozenset({"field", "claims", "routes", "motions", "leaders", "men", "notes"})
"""Layers that every picture has, empty or not."""


def picture(
    play: Play,
    size: Size,
    theme: Theme,
    frame: Box | None = None,
    only: str | None = None,
    duties: bool = False,
    before: Play | None = None,
    level: PlayingLevel = HIGH_SCHOOL,
) -> Scene:
    """``play`` drawn at ``size``.

    ``frame`` is a content box from `frame_of`, to give several plays one scale; by default the
    play's own. ``only`` is the label of one man: the others and their paths are drawn pale.
    ``duties`` adds what each defender is there for: for a look's own page and for a look team.
    ``before`` is the play as it was: what is true of it no more lies dashed and pale under it.
    ``level`` says how fast the men are, and so who is first where two paths cross.
    """
    return _drawing(play, size, theme, frame, only, duties, before, level).scene


def how_crowded(play: Play, size: Size, theme: Theme, frame: Box | None = None) -> Crowding:
    """How hard it was to find a place for each label of the `picture` of ``play``."""
    made = _drawing(play, size, theme, frame, None, False, None, HIGH_SCHOOL)
    return crowding(made.written, made.drawn, made.moved, made.symbols, made.board)


@dataclass(frozen=True)
class _Drawing:
    """A scene, and what it was made of."""

    scene: Scene
    written: Written
    drawn: tuple[Drawn, ...]
    moved: tuple[Moved, ...]
    symbols: Mapping[str, Symbol]
    board: Board


def _drawing(
    play: Play,
    size: Size,
    theme: Theme,
    frame: Box | None,
    only: str | None,
    duties: bool,
    before: Play | None,
    level: PlayingLevel,
) -> _Drawing:
    both = both_of(play, before, size)
    claims, seen = claim_items(both.now), both.now
    on = board(frame or frame_of((both.play,), size, duties), both.shot, size, theme, duties)
    men = all_standing(seen, on)
    on, symbols = men.on, men.symbols
    field, of_field = field_items(play.field, on), field_words(play, on, _against(play, duties))
    signs = men_items(symbols, on, only)
    drawn = _lines(seen, men, only)
    moments = paces(play, [line.run for line in drawn], level)
    ball = ball_items(seen, drawn, symbols, on, moments)
    ink = _ink(on, field, drawn, symbols)
    letters, defence, tasks = _defence(seen, men, ink, duties)
    now = Now(seen, symbols, letters, drawn, on, only)
    moved, old = _moved(now, both.was, ink)
    key = legend(now) if both.was is not None else ()
    words = _words(of_field, key, tasks, field, ink, on)
    wanted = _wanted(seen, drawn, moved, symbols, on, only)
    written = write_notes((*wanted, *old.lost), ink, field, on)
    layers = (
        Layer("drops", tasks.ground),
        Layer("field", (*field, *with_halos(words.field, on))),
        Layer("claims", claims),
        Layer("duties", (*tasks.lines, *words.duties)),
        Layer("behind", () if on.close else defence),
        Layer("before", old.items),
        Layer("routes", _stacked(drawn)),
        Layer("ball", ball),
        Layer("motions", tuple(item for m in moved for item in m.items)),
        Layer("leaders", written.leaders),
        Layer("men", signs),
        Layer("defence", defence if on.close else ()),
        Layer("notes", written.items),
    )
    kept = (layer for layer in layers if layer.items or layer.name in _ALWAYS)
    title, description = told(play, before, duties)
    scene = Scene(title, description, on.frame, on.scale, size, break_lines(kept, moments, on))
    return _Drawing(scene, written, drawn, moved, symbols, on)


@dataclass(frozen=True)
class _Old:
    """What is left of the play as it was: its lines and rings, and notes of the men it lost."""

    items: tuple[Item, ...] = ()
    lost: tuple[WantedNote, ...] = ()


def _moved(now: Now, was: Play | None, ink: Ink) -> tuple[tuple[Moved, ...], _Old]:
    """The motions, between the lines of the play as it was and what is left of its motions."""
    old = lines_before(now, was) if was is not None else NOTHING
    ink.lay(old.items)
    moved = draw_motions(now.play, now.symbols, ink, now.on, now.only)
    for item in (item for m in moved for item in m.items):
        if isinstance(item, Disc):
            ink.solid(square(item.centre, item.radius))
    if was is None:
        return moved, _Old()
    old_moved = motions_before(now, was, ink)
    stood, lost = rings((old, old_moved), [m.points for m in moved], now, ink)
    return moved, _Old((*stood, *old_moved.items, *old.items), lost)


@dataclass(frozen=True)
class _Words:
    """Words that give way to all lines: those of the field, and of the defenders' grounds."""

    field: tuple[TextRun, ...]
    duties: tuple[TextRun, ...]


def _words(
    of_field: Sequence[TextRun],
    key: Sequence[TextRun],
    tasks: DefenderLines,
    field: Sequence[Item],
    ink: Ink,
    on: Board,
) -> _Words:
    """What of these words finds room; ``key`` are places for one line, the first free one counts.

    Then the sidelines are laid on ``ink``: the field's own words may stand at them, no other may.
    """
    kept = (*free_words(of_field, ink, on), *free_words(key, ink, on)[:1])
    duties = free_words(tasks.words, ink, on, quiet=BESIDE)
    for item in field:
        if isinstance(item, Stroke) and item.style == "sideline":
            ink.line(points_of(item.segments))
    return _Words(kept, duties)


def _defence(
    play: Play, men: Standing, ink: Ink, duties: bool
) -> tuple[Mapping[str, Letter], tuple[Item, ...], DefenderLines]:
    """The letters off the lines, their items, and their duties; both are laid on ``ink``."""
    on, symbols = men.on, men.symbols
    letters: Mapping[str, Letter] = beside_lines(men.letters, play, symbols, ink, on)
    if duties:
        letters = _beside_duties(play, letters, symbols, on)
    for box in solids(letters, play, on):
        ink.solid(box)
    items = letter_items(letters, play, on)
    tasks = _duties(play, letters, symbols, on, duties)
    for line in tasks.lines:
        if isinstance(line, Stroke):
            ink.line(points_of(line.segments))
    return letters, items, tasks


def _wanted(
    play: Play,
    drawn: Sequence[Drawn],
    moved: Sequence[Moved],
    symbols: Mapping[str, Symbol],
    on: Board,
    only: str | None,
) -> tuple[WantedNote, ...]:
    return (
        *read_notes(play, drawn, on, only),
        *alert_notes(play, drawn, symbols, on, only),
        *depth_notes(play, drawn, on, only),
        *word_notes(play, drawn, moved, on, only),
    )


def _lines(play: Play, men: Standing, only: str | None) -> tuple[Drawn, ...]:
    on, symbols = men.on, men.symbols
    if on.close:
        plan = plan_close(play, symbols, men.letters, men.hole, on)
    else:
        plan = plan_runs(play, symbols, on)
    runs = sorted(named(plan, play), key=lambda run: run.man == only)
    return tuple(draw_run(run, symbols, on, only not in (None, run.man)) for run in runs)


def _duties(
    play: Play,
    letters: Mapping[str, Letter],
    symbols: Mapping[str, Symbol],
    on: Board,
    asked: bool,
) -> DefenderLines:
    """All duties when asked for; on a protection's picture always the rush, and who has whom."""
    protection = on.close and play.kind is Kind.PASS
    eyes = eyes_items(play, letters, on) if on.close else ()
    if not asked and not protection:
        return DefenderLines(eyes, (), ())
    made = draw_duties(play, letters, symbols, on, rush_only=not asked)
    return replace(made, lines=(*made.lines, *eyes))


def _beside_duties(
    play: Play, letters: Mapping[str, Letter], symbols: Mapping[str, Symbol], on: Board
) -> dict[str, Letter]:
    """The letters moved off one another's drops."""
    ink = Ink(on.yards(1.5))
    for item in draw_duties(play, letters, symbols, on, rush_only=False).lines:
        if isinstance(item, Stroke):
            ink.line(points_of(item.segments))
    return beside_lines(letters, play, symbols, ink, on)


def _against(play: Play, duties: bool) -> str:
    if play.defence is not None:
        alone = duties and not any(task.path for task in play.assignments)
        return "" if alone else play.defence.name  # a look's own page has its name on top
    return ", ".join(play.against)


def _stacked(drawn: Sequence[Drawn]) -> tuple[Item, ...]:
    """The lines in order; the bars at defenders above all of them, so that none is broken."""
    items = [item for d in drawn for item in d.items]
    bars = [item for d in drawn if d.run.facing for item in d.items[1:]]
    return (*(item for item in items if item not in bars), *bars)


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
        ink.lay(line.items)
    for symbol in symbols.values():
        ink.solid(square(symbol.at, symbol.edge))
    return ink

"""All lines of a play but its motions, and the letters of the defence moved off them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from stemline.football.play import Kind, Play
from stemline.football.timing.ball_held import BallHeld, ball_held
from stemline.football.timing.levels import PlayingLevel
from stemline.geometry.box import square
from stemline.geometry.curves import points_of
from stemline.picture.lines.ball_line import BallPlaces, ball_marks
from stemline.picture.lines.blocks import eyes_items
from stemline.picture.lines.close_runs import plan_close
from stemline.picture.lines.defender_lines import DefenderLines, draw_duties
from stemline.picture.lines.field_lines import broken_at, field_items, field_words
from stemline.picture.lines.handoff import pitch_items
from stemline.picture.lines.letters_aside import beside_lines, letter_items
from stemline.picture.lines.paces import Pace, named, paces
from stemline.picture.lines.route_lines import CLIMB, Drawn, LineRun, draw_run, plan_runs
from stemline.picture.men.standing import Standing
from stemline.picture.paper.letter import Letter, solids
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Item, Stroke, TextRun

_FIELD_WEIGHT = 0.05
"""Ink of a field line against that of a path: words may lie on it when nothing better is free."""


@dataclass(frozen=True)
class LinePlan:
    """What is known of a play's lines before it is asked for whom they are drawn; ``played`` is the
    play before the picture cut its paths."""

    men: Standing
    level: PlayingLevel
    played: Play

    @cached_property
    def runs(self) -> tuple[LineRun, ...]:
        """Our men's, by their names, in drawing order."""
        men, play = self.men, self.men.play
        close = men.on.close
        plan = plan_close(men, men.letters) if close else plan_runs(play, men.symbols, men.on)
        return named(plan, play)

    @cached_property
    def moments(self) -> Mapping[str, Pace]:
        return paces(self.played, self.runs, self.level)

    @cached_property
    def held(self) -> tuple[BallHeld, ...]:
        return ball_held(self.played, self.level)


@dataclass(frozen=True)
class LaidLines:
    """The lines on paper: those of the ``field`` and its ``words``, our men's as ``drawn``, the
    ``ball``'s, and the ``tasks`` of the defenders, whose ``letters`` stand beside the lines and are
    drawn as ``defence``. ``moments`` says who is where when, ``ink`` where no word should stand,
    and ``only`` is the one man who is drawn strong. ``held`` is who has the ball, and ``places``
    where on the lines he gets and gives it."""

    play: Play
    on: Board
    symbols: Mapping[str, Symbol]
    field: tuple[Item, ...]
    words: tuple[TextRun, ...]
    drawn: tuple[Drawn, ...]
    ball: tuple[Item, ...]
    letters: Mapping[str, Letter]
    defence: tuple[Item, ...]
    tasks: DefenderLines
    moments: Mapping[str, Pace]
    ink: Ink
    only: str | None
    held: tuple[BallHeld, ...]
    places: BallPlaces

    def shows(self, label: str) -> bool:
        return self.only in (None, label)

    @property
    def routes(self) -> tuple[Item, ...]:
        """Our men's lines in order; the bars at defenders above all, so that none is broken."""
        items = [item for d in self.drawn for item in d.items]
        bars = [item for d in self.drawn if d.run.facing for item in d.items[1:]]
        return (*(item for item in items if item not in bars), *bars)


def lay_lines(plan: LinePlan, only: str | None) -> LaidLines:
    """The lines of a play, those of everybody but ``only`` pale."""
    men, played, level = plan.men, plan.played, plan.level
    play, on, symbols = men.play, men.on, men.symbols
    field = field_items(play.field, on)
    drawn = _drawn(plan, only)
    moments = plan.moments
    ways = {d.run.man: d.points for d in drawn if d.run.branch is None and d.run.pen != CLIMB}
    places = BallPlaces(ways, symbols, on)
    ball = ball_marks(play, played, places, level)
    ball += pitch_items(play, drawn, moments)
    ink = _ink(on, field, drawn, symbols)
    letters = _letters(men, ink)
    boxes = tuple(solids(letters, play, on))
    for box in boxes:
        ink.solid(box)
    field = broken_at(field, [box.grown(on.mark("letter_room") / 2) for box in boxes])
    tasks = _tasks(play, letters, symbols, on, drawn)
    _lay(tasks.lines, ink)
    defence = letter_items(letters, play, on)
    words = field_words(play, on)
    return LaidLines(
        play, on, symbols, field, words, drawn, ball, letters, defence, tasks, moments, ink, only,
        plan.held, places,
    )  # fmt: skip


def _drawn(plan: LinePlan, only: str | None) -> tuple[Drawn, ...]:
    runs = sorted(plan.runs, key=lambda run: run.man == only)
    symbols, on = plan.men.symbols, plan.men.on
    return tuple(draw_run(run, symbols, on, only not in (None, run.man)) for run in runs)


def _letters(men: Standing, ink: Ink) -> Mapping[str, Letter]:
    """The letters off the lines; where duties are shown, off one another's drops too."""
    play, on, symbols = men.play, men.on, men.symbols
    letters = beside_lines(men.letters, play, symbols, ink, on)
    if not on.duties:
        return letters
    drops = Ink(on.yards(1.5))
    _lay(draw_duties(play, letters, symbols, on, rush_only=False).lines, drops)
    return beside_lines(letters, play, symbols, drops, on)


def _tasks(
    play: Play,
    letters: Mapping[str, Letter],
    symbols: Mapping[str, Symbol],
    on: Board,
    drawn: Sequence[Drawn],
) -> DefenderLines:
    """All duties when asked for; on a protection's picture always the rush, and who has whom."""
    protection = on.close and play.kind is Kind.PASS
    eyes = eyes_items(play, letters, on, [d.points for d in drawn]) if on.close else ()
    if not on.duties and not protection:
        return DefenderLines(eyes, (), ())
    made = draw_duties(play, letters, symbols, on, rush_only=not on.duties)
    return replace(made, lines=(*made.lines, *eyes))


def _ink(
    on: Board, field: Sequence[Item], drawn: Sequence[Drawn], symbols: Mapping[str, Symbol]
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


def _lay(lines: Sequence[Item], ink: Ink) -> None:
    """The lines without their arrowheads."""
    for line in lines:
        if isinstance(line, Stroke):
            ink.line(points_of(line.segments))

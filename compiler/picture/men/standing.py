"""Every man's symbol on a board: placed, and moved to let by whom the picture lets by."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from stemline.describe.changes import TOLERANCE
from stemline.football.play import Play
from stemline.picture.men.clearance import let_through
from stemline.picture.men.defender_letters import place_letters
from stemline.picture.men.hole import find_hole, open_hole
from stemline.picture.men.pulls import in_lanes, make_room
from stemline.picture.men.symbols import place_men, with_room
from stemline.picture.paper.letter import Letter
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, ring_of
from stemline.picture.ways.at_hole import DrawnHole


def stand(play: Play, on: Board) -> dict[str, Symbol]:
    """The symbols by label, on a close picture moved for pulls and the carrier's hole first."""
    symbols = place_men(play, on)
    if on.close:
        symbols = open_hole(play, make_room(play, symbols, on), on)
    return let_through(play, symbols, on)


@dataclass(frozen=True)
class Standing:
    """Who stands where: our men by label, the hole of a run, and the letters of the defence, on a
    board with room for them all. ``laned`` is the play with each pull of a close picture in a lane
    of its own."""

    play: Play
    laned: Play
    on: Board
    symbols: Mapping[str, Symbol]
    hole: DrawnHole | None
    letters: Mapping[str, Letter]


def all_standing(play: Play, on: Board) -> Standing:
    """Both sides of ``play`` on the board."""
    symbols = stand(play, on)
    on = with_room(on, symbols)
    bold = on.close or on.duties or not any(task.path for task in play.assignments)
    return _standing(play, symbols, on, bold)


def _standing(play: Play, symbols: Mapping[str, Symbol], on: Board, bold: bool) -> Standing:
    hole = find_hole(play, symbols, on)
    letters = place_letters(play, symbols, on, bold, hole)
    laned = in_lanes(play, symbols, on) if on.close else play
    return Standing(play, laned, on, symbols, hole, letters)


def stood_before(before: Play, men: Standing) -> Standing:
    """The men of the play as it was on the board of the new one: where they stand as they did they
    have the new symbols, else rings."""
    old, new = stand(before, men.on), men.symbols
    symbols = {name: new[name] if _stays(s, new.get(name)) else ring_of(s, men.on)
               for name, s in old.items()}  # fmt: skip
    return _standing(before, symbols, men.on, True)


def _stays(old: Symbol, new: Symbol | None) -> bool:
    return new is not None and new.man.snap.distance(old.man.snap) <= TOLERANCE

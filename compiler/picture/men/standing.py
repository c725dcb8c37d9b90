"""Every man's symbol on a board: placed, and moved to let by whom the picture lets by."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from stemline.football.play import Play
from stemline.picture.men.clearance import let_through
from stemline.picture.men.defender_letters import place_letters
from stemline.picture.men.hole import find_hole, open_hole
from stemline.picture.men.pulls import make_room
from stemline.picture.men.symbols import place_men, with_room
from stemline.picture.paper.letter import Letter
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
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
    board with room for them all."""

    on: Board
    symbols: Mapping[str, Symbol]
    hole: DrawnHole | None
    letters: Mapping[str, Letter]


def all_standing(play: Play, on: Board) -> Standing:
    """Both sides of ``play`` on the board."""
    symbols = stand(play, on)
    on = with_room(on, symbols)
    hole = find_hole(play, symbols, on)
    bold = on.close or on.duties or not any(task.path for task in play.assignments)
    return Standing(on, symbols, hole, place_letters(play, symbols, on, bold, hole))

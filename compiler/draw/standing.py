"""Every man's symbol on a board: placed, and moved to let by whom the picture lets by."""

from __future__ import annotations

from stemline.draw.between import let_through
from stemline.draw.board import Board
from stemline.draw.hole import open_hole
from stemline.draw.pulls import make_room
from stemline.draw.symbols import Symbol, place_men
from stemline.football.play import Play


def stand(play: Play, on: Board) -> dict[str, Symbol]:
    """The symbols by label, on a close picture moved for pulls and the carrier's hole first."""
    symbols = place_men(play, on)
    if on.close:
        symbols = open_hole(play, make_room(play, symbols, on), on)
    return let_through(play, symbols, on)

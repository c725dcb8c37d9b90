"""Every man's symbol on a board: placed, and moved to let by whom the picture lets by."""

from __future__ import annotations

from stemline.football.play import Play
from stemline.picture.frame.board import Board
from stemline.picture.men.pulls import make_room
from stemline.picture.men.symbols import Symbol, place_men
from stemline.picture.spacing.clearance import let_through
from stemline.picture.spacing.hole import open_hole


def stand(play: Play, on: Board) -> dict[str, Symbol]:
    """The symbols by label, on a close picture moved for pulls and the carrier's hole first."""
    symbols = place_men(play, on)
    if on.close:
        symbols = open_hole(play, make_room(play, symbols, on), on)
    return let_through(play, symbols, on)

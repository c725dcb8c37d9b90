"""A run on paper for the tests of close pictures: cut, its symbols and its board."""

from __future__ import annotations

from stemline.football.play import Play
from stemline.picture.frame.board import board, frame_of, shot
from stemline.picture.men.hole import open_hole
from stemline.picture.men.pulls import make_room
from stemline.picture.men.symbols import place_men
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.theme import Size, load_theme

THEME = load_theme()


def on_paper(play: Play, size: Size) -> tuple[Play, dict[str, Symbol], Board]:
    seen = shot(play, size)
    on = board(frame_of((play,), size), seen, size, THEME)
    return seen.play, make_room(seen.play, place_men(seen.play, on), on), on


def opened(play: Play, size: Size) -> tuple[Play, dict[str, Symbol], Board]:
    """As `on_paper`, the men beside the hole moved out where it is too narrow."""
    cut, symbols, on = on_paper(play, size)
    return cut, open_hole(cut, symbols, on), on

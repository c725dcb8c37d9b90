"""Men on paper: at their yards when there is room, pushed apart when there is not."""

from __future__ import annotations

import itertools
from dataclasses import replace

from draw.sample_plays import quads
from stemline.draw.board import board, frame_of, shot
from stemline.draw.symbols import place_men
from stemline.football.play import Play
from stemline.paths import Point
from stemline.theme import Size, load_theme

THEME = load_theme()


def with_back_at(x: float, y: float) -> Play:
    men = tuple(
        replace(m, at=Point(x, y), snap=Point(x, y)) if m.label == "R" else m for m in quads().men
    )
    return replace(quads(), men=men)


def on(play: Play, size: Size) -> dict[str, Point]:
    symbols = place_men(play, board(frame_of((play,)), shot(play, size), size, THEME))
    for a, b in itertools.combinations(symbols.values(), 2):
        assert a.at.distance(b.at) > a.edge + b.edge
    return {label: s.at for label, s in symbols.items()}


def test_at_full_size_men_two_yards_apart_stand_at_their_true_places() -> None:
    assert on(quads(), Size.FULL) == {m.label: m.snap for m in quads().men}


def test_a_back_beside_the_quarterback_is_pushed_off_him_along_their_line() -> None:
    at = on(with_back_at(-0.5, -5), Size.THUMB)
    assert at["Q"].y == at["R"].y == -5
    assert at["Q"].x + at["R"].x == -0.5


def test_a_man_pushed_off_a_lineman_moves_alone() -> None:
    at = on(with_back_at(3.2, -0.4), Size.THUMB)
    assert at["RT"] == Point(2.7, 0)
    assert at["R"].x > 3.2


def test_two_men_given_one_place_are_still_told_apart() -> None:
    at = on(with_back_at(0, -5), Size.FULL)
    assert at["R"] != at["Q"]

"""Men on paper: at their yards when there is room, pushed apart when there is not."""

from __future__ import annotations

import itertools
from dataclasses import replace

from picture.sample_plays import man, quads
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.picture.frame.board import board, frame_of, shot
from stemline.picture.men.symbols import place_men
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
    """To a twentieth of a yard, which is thinner there than the thinnest line."""
    shown = on(quads(), Size.FULL)
    assert all(shown[m.label].distance(m.snap) < 0.05 for m in quads().men)


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


def wing() -> Play:
    """A tight end on the line, and a wing off his outside hip."""
    men = (
        *(m for m in quads().men if m.label not in "YH"),
        man("Y", Position.TIGHT_END, 3.9, 0),
        man("H", Position.SLOT, 5.4, -1),
    )
    return replace(quads(), men=men)


def test_a_man_of_the_line_stays_on_it() -> None:
    at = on(wing(), Size.THUMB)
    assert at["Y"].y == 0 and at["Y"].x > 3.9
    assert at["H"].x > at["Y"].x and at["H"].y < -1


def test_a_quarterback_under_centre_stands_no_deeper_than_he_must() -> None:
    at = on(quads_under(), Size.THUMB)
    assert at["Q"].x == 0
    size = board(frame_of((quads_under(),)), shot(quads_under(), Size.THUMB), Size.THUMB, THEME)
    men = place_men(quads_under(), size)
    need = men["Q"].edge + men["C"].edge + size.mark("gap")
    assert abs(at["Q"].distance(at["C"]) - need) < 1e-3


def quads_under() -> Play:
    men = tuple(
        replace(m, at=Point(0, -1), snap=Point(0, -1)) if m.label == "Q" else m for m in quads().men
    )
    return replace(quads(), men=men)


def test_a_full_house_keeps_its_order() -> None:
    """The fullback stands in front of the two halfbacks, on paper too."""
    backs = (
        man("F", Position.FULLBACK, 0, -4),
        man("B", Position.BACK, -2, -6),
        man("H", Position.BACK, 2, -6),
    )
    men = (*(m for m in quads_under().men if m.label not in "HRB"), *backs)
    at = on(replace(quads(), men=men), Size.THUMB)
    assert at["Q"].y > at["F"].y > at["B"].y == at["H"].y

"""The looks of the bundled playbooks, and sets of the offence to line them up against."""

from __future__ import annotations

import pytest
from resolve.shipped_books import BOOKS, shipped
from resolve.texts import said
from together import together

from stemline.football.defenders import Defence
from stemline.football.field import BallSpot, Side
from stemline.football.offence.counting import count, ranked
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.lineup.lined_up import LinedUp
from stemline.lineup.look_placed import line_up_defence
from stemline.resolve.expand import field_of
from stemline.source import NOWHERE

every_book = pytest.mark.parametrize("book", BOOKS)


SHOWN = {
    "Over Three": {"zone", "off", "middle closed"},
    "Under Quarters": {"zone", "off", "middle open"},
    "Odd Two": {"zone", "off", "middle open"},
    "Tite Quarters": {"zone", "off", "middle open"},
    "Stack Three": {"zone", "off", "middle closed"},
    "Bear One": {"man", "press", "middle closed"},
    "Even Two Man": {"man", "press", "middle open"},
    "Fire Three": {"zone", "off", "middle closed"},
    "Zero": {"man", "middle open"},
    "Goal Line": {"man", "press", "middle open"},
}
"""The looks of either book with what their names say, so that no book is read to list tests."""
EVERY_LOOK = [(book, name.casefold()) for book in BOOKS for name in SHOWN]
every_look = together(("book", "key"), EVERY_LOOK)

# Sets of the offence, written as yards from the ball; a negative number is to the weak side.
SHAPES: dict[str, dict[str, tuple[float, ...]]] = {
    "saltmarsh-herons": {
        "2x2": (18, 8, -8, -18),
        "3x1": (18, 11, 6, -16),
        "3x2": (20, 13, 6, -8, -18),
        "4x1": (22, 16, 10, 5, -16),
        "3x3": (20, 13, 6, -6, -13, -20),
        "4x2": (22, 16, 10, 5, -8, -18),
        "tight": (3.9, -3.9),
    },
    "cedar-flats-lanterns": {
        "2x1": (16, 8, -16),
        "2x2": (16, 8, -8, -16),
        "3x1": (16, 10, 5, -16),
        "3x2": (16, 10, 5, -8, -16),
        "4x1": (16, 12, 8, 5, -16),
        "tight": (3.9, -3.9),
    },
}
EVERY_SHAPE = [(book, shape) for book in BOOKS for shape in SHAPES[book]]


def offence(
    book: str,
    xs: tuple[float, ...],
    spot: BallSpot = BallSpot.MIDDLE,
    called: Side = Side.RIGHT,
    ends: tuple[Side, ...] = (),
) -> LinedUp:
    """Receivers at xs (squeezed into the field), tight ends, and backs for whoever is left."""
    made = shipped(book).book
    assert made is not None
    field = field_of(made, spot)
    men = [
        Man(f"T{n}", Position.TACKLE, Point(n * 1.3, 0), Point(n * 1.3, 0), True, None, NOWHERE)
        for n in range(-2, 3)
    ]
    places = [x * called.value for x in xs]
    tight = [side.value * 3.9 for side in ends]
    for n, x in enumerate(places):
        x = max(field.sideline(Side.LEFT) + 2, min(field.sideline(Side.RIGHT) - 2, x))
        on_line = abs(x) < 4.5
        at = Point(x, 0 if on_line else -1)
        men.append(Man(f"R{n}", Position.SLOT, at, at, on_line, None, NOWHERE))
    for n, x in enumerate(tight):
        at = Point(x, 0)
        men.append(Man(f"Y{n}", Position.TIGHT_END, at, at, True, None, NOWHERE))
    backs = field.code.receivers - len(places) - len(tight)
    men += [
        Man(f"B{n}", Position.BACK, Point(x, -5), Point(x, -5), False, None, NOWHERE)
        for n, x in enumerate(x * called.value for x in (-2.0, 2.0, 0.0, -3.0)[:backs])
    ]
    at = Point(0, -4)
    men.append(Man("Q", Position.QUARTERBACK, at, at, False, None, NOWHERE))
    counted = count(men, called)
    return LinedUp(ranked(men, counted), counted, field, called, field.code.receivers)


def lined_up(book: str, key: str, picture: LinedUp) -> Defence:
    """A shipped look against a picture, without a word of complaint."""
    made = shipped(book).book
    assert made is not None
    defence, found = line_up_defence(made.looks[key], picture)
    assert defence is not None and not found, said(found)
    return defence

"""Cards for the look team: from its side, every man with his job, and read from three yards."""

from __future__ import annotations

from math import atan, degrees

import pytest

from stemline.picture.picture import picture
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import Disc, Point, TextRun
from stemline.picture.turned import turned
from stemline.printing.week_papers import Printing, scout_cards
from stemline.theme import Size, load_theme
from stemline.week.scripting import script_of

from .plans import HERONS, bundled_week, plan

YARDS = 3 * 36.0
"""Inches from the card to the man who reads it."""


def test_a_turned_picture_is_the_same_from_behind() -> None:
    theme = load_theme()
    play = next(iter(plan(HERONS, 5).shown.values()))
    scene = picture(play, Size.THUMB, theme, duties=True)
    once = turned(scene, theme)
    across = scene.frame.left + scene.frame.right
    down = scene.frame.top + scene.frame.bottom
    men, theirs = ({i.name: i.centre for i in s.items if isinstance(i, Disc) and i.name}
                   for s in (scene, once))  # fmt: skip
    assert men and men.keys() == theirs.keys()
    for name, at in men.items():
        assert (theirs[name].x, theirs[name].y) == pytest.approx((across - at.x, down - at.y))
    for run, other in zip(scene.items, once.items, strict=True):
        if isinstance(run, TextRun) and isinstance(other, TextRun):
            kind = theme.look(scene.size).types[run.style]
            room = extent(run.text, kind, theme)
            half = Point(room.width / scene.scale / 2, room.rise / scene.scale / 2)
            assert run.text == other.text
            assert other.at.x + half.x == pytest.approx(across - run.at.x - half.x)
            assert other.at.y + half.y == pytest.approx(down - run.at.y - half.y)
    again = turned(once, theme)
    for item in (i for i in again.items if isinstance(i, Disc) and i.name):
        back = men[item.name]
        assert (item.centre.x, item.centre.y) == pytest.approx((back.x, back.y))


def test_every_card_has_all_men_and_letters_that_are_read_from_three_yards() -> None:
    """A normal eye resolves a letter of 5 minutes of arc (ISO 8596); a card has more."""
    week, how = bundled_week(HERONS, 5), Printing(load_theme())
    cards = scout_cards(week, how)
    letters = how.theme.look(Size.THUMB).types["defender"].points
    assert [card.number for card in cards] == list(range(1, len(cards) + 1))
    for card in cards:
        assert len(card.duties) == plan(HERONS, 5).code.players.value
        assert all(job for _, job in card.duties)
        cap = 0.7 * letters * card.factor / 72
        assert degrees(atan(cap / YARDS)) * 60 > 5


def test_the_script_names_the_card_that_lies_there() -> None:
    week = bundled_week(HERONS, 5)
    by_number = {str(c.number): c for c in scout_cards(week, Printing(load_theme()))}
    lines = [
        line
        for day in script_of(week).days
        for period in day.periods
        for line in period.lines
        if line.card
    ]
    assert lines
    for line in lines:
        assert by_number[line.card].look == line.look

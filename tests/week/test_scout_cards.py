"""Cards for the look team: from its side, every man with his job, and read from three yards."""

from __future__ import annotations

from itertools import combinations
from math import atan, degrees

import pypdfium2 as pdfium
import pypdfium2.raw as pdfium_c
import pytest

from stemline.picture.picture import picture
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import Disc, Point, TextRun
from stemline.picture.turned import turned
from stemline.printing.week_papers import Printing, _Making, week_papers
from stemline.theme import Size, load_theme
from stemline.week.scripting import script_of

from .plans import HERONS, LANTERNS, bundled_week, plan

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


@pytest.mark.parametrize(("name", "number", "paper"), [
    (HERONS, 5, "letter"), (HERONS, 8, "a4"), (LANTERNS, 2, "letter"),
])  # fmt: skip
def test_every_card_has_all_men_and_letters_that_are_read_from_three_yards(
    name: str, number: int, paper: str
) -> None:
    """ISO 9241-3: a capital has at least 16 minutes of arc; those of the men are measured in the
    PDF, where a letter is drawn as its outline: an H is as tall as a capital is."""
    week, how = bundled_week(name, number), Printing(load_theme(), paper)
    cards = _Making(week, how).cards()
    assert [card.number for card in cards] == list(range(1, len(cards) + 1))
    for card in cards:
        assert len(card.duties) == week.plan.code.players.value
        assert all(job for _, job in card.duties)
    made = week_papers(week, how, ("scout",))
    document = pdfium.PdfDocument(made.files["scout-cards.pdf"])
    assert len(document) == len(cards)
    for page in document:
        tall = [top - bottom for _, bottom, _, top in _letters(page)]
        assert len(tall) >= 2 * week.plan.code.players.value - 5
        for rise in tall:
            assert degrees(atan(rise / 72 / YARDS)) * 60 > 16


def test_nobody_stands_on_another() -> None:
    """Letters this large push men aside; none may cover another."""
    for name, number in ((HERONS, 5), (HERONS, 8), (LANTERNS, 2)):
        made = week_papers(bundled_week(name, number), Printing(load_theme()), ("scout",))
        for page in pdfium.PdfDocument(made.files["scout-cards.pdf"]):
            for one, other in combinations(_letters(page), 2):
                wide = min(one[2], other[2]) - max(one[0], other[0])
                high = min(one[3], other[3]) - max(one[1], other[1])
                assert wide < 1 or high < 1, (name, one, other)


def _letters(page: pdfium.PdfPage) -> list[tuple[float, float, float, float]]:
    """The boxes of the letters in a card's picture: left, bottom, right, top in points. A letter
    is a form of its own in the form that is the picture."""
    found = []
    across = down = (1.0, 0.0)
    for each in page.get_objects(max_depth=3):
        if each.type != pdfium_c.FPDF_PAGEOBJ_FORM:
            continue
        if each.level == 0:
            a, _, _, d, e, f = each.get_matrix().get()
            across, down = (a, e), (d, f)
            continue
        left, low, right, high = each.get_bounds()
        xs = sorted(across[0] * x + across[1] for x in (left, right))
        ys = sorted(down[0] * y + down[1] for y in (low, high))
        found.append((xs[0], ys[0], xs[1], ys[1]))
    return found


def test_the_script_names_the_card_that_lies_there() -> None:
    week = bundled_week(HERONS, 5)
    by_number = {str(c.number): c for c in _Making(week, Printing(load_theme())).cards()}
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

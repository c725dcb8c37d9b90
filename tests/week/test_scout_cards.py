"""Cards for the look team: from its side, every man with his job, and read from three yards."""

from __future__ import annotations

from itertools import combinations, pairwise
from math import atan, cos, degrees, sin, tau

import pypdfium2 as pdfium
import pypdfium2.raw as pdfium_c
import pytest

from stemline.emit.week_pages import card_room
from stemline.football.field import BallSpot
from stemline.geometry.box import Box, square
from stemline.picture.cards.look_card import look_card
from stemline.picture.picture import picture
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import (
    Disc,
    Item,
    Plate,
    Point,
    Polygon,
    Scene,
    Stroke,
    TextRun,
)
from stemline.picture.turned import turned
from stemline.playbook.concepts import Body, Concept
from stemline.printing.look_team_cards import card_theme
from stemline.printing.week_papers import Printing, _Making, week_papers
from stemline.theme import Size, Theme, load_theme
from stemline.week.scripting import script_of

from .plans import HERONS, LANTERNS, bundled_week, plan, session

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


@pytest.mark.parametrize(("name", "numbers"), [(HERONS, (5, 6, 7, 8)), (LANTERNS, (1, 2, 3, 4))])
def test_a_letter_of_a_card_meets_no_other_and_no_line(name: str, numbers: tuple[int, ...]) -> None:
    """On every card of the bundled weeks: its box and that of another letter, a stroke, an
    arrowhead, the edge of a ground, another man's ring. Each rusher who is told has his arrow."""
    theme = card_theme(load_theme())
    wide, high = card_room("letter")
    for number in numbers:
        for key, play in plan(name, number).shown.items():
            scene = look_card(play, theme, wide, high)
            assert scene.width <= wide and scene.height <= high + 0.01, key
            assert faults(scene, theme) == [], key
            assert play.defence is not None
            arrows = [i for i in scene.items if isinstance(i, Stroke) and i.style == "rush"]
            assert len(arrows) == len(play.defence.rushers), key


@pytest.mark.parametrize(("formation", "numbered"), [
    ("doubles", True), ("quads", True), ("empty quads", True), ("pro", False),
])  # fmt: skip
def test_who_goes_first_in_a_stunt_has_a_one_at_his_arrow(formation: str, numbered: bool) -> None:
    """`M rushes B, strong behind T` of Fire Three: a number each, nearer his own arrow's tip than
    another's; none where the quarterback stands in his gap."""
    known, theme = session(HERONS), card_theme(load_theme())
    assert known.book is not None
    order = next(o for o in known.calls.by_name.values() if o.formation == formation)
    concept = known.book.concepts[order.concept]
    stands = Concept(concept.name, "", Body(), concept.span, False)
    spot = BallSpot.MIDDLE
    play, _ = known.expander.play_of(order, stands, spot, look_key="fire three")
    assert play is not None
    scene = look_card(play, theme, *card_room("letter"))
    assert faults(scene, theme) == []
    (numbers,) = (layer.items for layer in scene.layers if layer.name == "reads")
    runs = [i for i in numbers if isinstance(i, TextRun)]
    tiles = [i.box.centre for i in numbers if isinstance(i, Plate)]
    tips = {i.head[0]: i.span for i in scene.items if isinstance(i, Stroke) and i.style == "rush"}
    assert play.defence is not None
    labels = {d.span: d.label for d in play.defence.defenders}
    nearest = [labels[tips[min(tips, key=at.distance)]] for at in tiles]
    told = {label: run.text for label, run in zip(nearest, runs, strict=True)}
    assert told == ({"T": "1", "M": "2"} if numbered else {})


def faults(scene: Scene, theme: Theme) -> list[tuple[str, str]]:
    """Which letters of a picture meet what."""
    letters = [(i.text, _box(i, scene, theme)) for i in scene.items if isinstance(i, TextRun)]
    found = [(a, b) for (a, one), (b, two) in combinations(letters, 2) if one.overlap(two) > 0]
    for item in scene.items:
        for text, box in letters:
            own = isinstance(item, Disc) and item.name == text and square(
                item.centre, item.radius
            ).holds(box)  # fmt: skip
            if not own and any(_through(a, b, box) for a, b in _edges(item)):
                found.append((text, type(item).__name__))
    return found


def _box(run: TextRun, scene: Scene, theme: Theme) -> Box:
    room = extent(run.text, theme.look(scene.size).types[run.style], theme)
    wide, tall = room.width / scene.scale, room.rise / scene.scale
    return Box(run.at.x, run.at.y, run.at.x + wide, run.at.y + tall)


def _edges(item: Item) -> list[tuple[Point, Point]]:
    match item:
        case Stroke():
            around = (*item.head, *item.head[:1])
            return [*((s.start, s.end) for s in item.segments), *pairwise(around)]
        case Polygon():
            return list(pairwise((*item.points, item.points[0])))
        case Disc():
            turns = [tau * i / 24 for i in range(25)]
            c, r = item.centre, item.radius
            return list(pairwise(Point(c.x + r * cos(t), c.y + r * sin(t)) for t in turns))
        case _:
            return []


def _through(a: Point, b: Point, box: Box) -> bool:
    """Whether a straight piece has a part within the box (Liang and Barsky)."""
    first, last = 0.0, 1.0
    for at, by, low, high in ((a.x, b.x - a.x, box.left, box.right),
                              (a.y, b.y - a.y, box.bottom, box.top)):  # fmt: skip
        if abs(by) < 1e-9:
            if not low < at < high:
                return False
            continue
        ends = sorted(((low - at) / by, (high - at) / by))
        first, last = max(first, ends[0]), min(last, ends[1])
    return last - first > 1e-6


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
        # Whatever is run against a look of theirs, a call that a situation keeps for it too.
        if line.card or line.look in week.plan.faces
    ]
    assert any(line.situation and line.look for line in lines)
    for line in lines:
        assert by_number[line.card].look == line.look
    # The look team turns its cards as the script runs; what no period runs lies under them.
    firsts = [*dict.fromkeys(int(line.card) for line in lines)]
    assert firsts == list(range(1, len(firsts) + 1))

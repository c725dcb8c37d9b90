"""The ball on the pictures of both bundled books: heavy where a man has it, a bar at each exchange.

Who has it is asked of the exchanges and their moments, the picture by its strokes and their times.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from functools import cache
from itertools import groupby, pairwise

import pytest
from resolve.shipped_books import BOOKS, played, shipped

from stemline.describe.spoken_play import describe
from stemline.football.exchanges import BallMoves, said_any
from stemline.football.play import Play
from stemline.football.timing.ball_clock import ball_moments
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.men import run_path
from stemline.geometry.curves import far_from, nearest, points_of
from stemline.geometry.paths import Point, along, length, polyline
from stemline.picture.clock_strip import clock_scene
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Stroke, TextRun
from stemline.theme import Size, load_theme

THEME = load_theme()
NEAR = 0.25
"""Seconds: a drawn line is not quite the path that is run."""
HEAVY = ("carry", "held")
BARS = {BallMoves.HAND: 2}
"""Strokes across the line: two where it is handed, one of a fake or where it is caught."""


@cache
def plays(book: str) -> tuple[Play, ...]:
    """Each run, and each pass with a ball that is given on, as its dress-up has it first and
    last."""
    named = (played(book, order) for _, order in shipped(book).named(""))
    given = (play for play in named if play.carrier or said_any(play.exchanges))
    kinds = [list(same) for _, same in groupby(given, key=lambda play: play.call.concept)]
    assert len(kinds) >= 15
    return tuple(play for same in kinds for play in dict.fromkeys((same[0], same[-1])))


@cache
def strokes(play: Play, size: Size) -> tuple[Stroke, ...]:
    items = picture(play, size, THEME).items
    return tuple(i for i in items if isinstance(i, Stroke) and i.segments)


def small(stroke: Stroke) -> tuple[Point, ...]:
    """A line in steps of half a yard, its ends among them."""
    points = points_of(stroke.segments)
    steps = math.ceil(2 * length(points))
    return tuple(along(points, n * length(points) / steps) for n in range(steps + 1))


def has_it(play: Play, man: str, time: float) -> bool:
    """Whether a man has the ball, so many seconds after the snap."""
    passer = play.passer
    gives = [m for m in ball_moments(play, HIGH_SCHOOL) if m.exchange.kind is not BallMoves.FAKE]
    holder = (passer.label if passer else "") if gives else play.carrier
    sure = False
    for moment in gives:
        sure |= holder == man and time <= moment.leaves + NEAR
        if time < moment.there - NEAR:
            return sure
        holder = moment.exchange.taker
    return sure or holder == man


def moments_at(play: Play, man: str, at: Point) -> Iterator[float]:
    """When a man is within a yard of a place of the picture, on his way of the play."""
    task = play.assignment(man)
    assert task.path is not None
    points, line, far = polyline(task.path), run_path(play, task, task.path, HIGH_SCHOOL), 0.0
    for a, b in pairwise(points):
        near, share = nearest(a, b, at)
        if near.distance(at) < 1.0:
            yield line.when(far + share * a.distance(b))
        far += a.distance(b)


@pytest.mark.parametrize("size", [Size.FULL, Size.THUMB])
@pytest.mark.parametrize("book", BOOKS)
def test_a_heavy_line_is_of_the_man_who_has_the_ball(book: str, size: Size) -> None:
    """At each of its points; and where the ball ends on a run, the line is heavy to its arrow."""
    for play in plays(book):
        heavy = [s for s in strokes(play, size) if s.style in HEAVY]
        for stroke in heavy:
            man = stroke.name.partition("-")[0]
            for at in small(stroke):
                there = list(moments_at(play, man, at))
                assert not there or any(has_it(play, man, time) for time in there), (
                    play.call.spoken, stroke.name, at, there, ball_moments(play, HIGH_SCHOOL),
                )  # fmt: skip
        if play.carrier:
            assert any(s.head and s.name.startswith(f"{play.carrier}-") for s in heavy)


@pytest.mark.parametrize("book", BOOKS)
def test_each_exchange_has_its_bars_in_order(book: str) -> None:
    for play in plays(book):
        moments = ball_moments(play, HIGH_SCHOOL)
        bars = [s for s in strokes(play, Size.FULL) if s.style == "mesh"]
        assert len(bars) == sum(BARS.get(m.exchange.kind, 1) for m in moments), play.call.spoken
        named = [s.name for s in strokes(play, Size.FULL) if "-mesh-1" in s.name]
        handed = [m.exchange.taker for m in moments if m.exchange.kind is BallMoves.HAND]
        assert named == [f"{man}-mesh-1" for man in handed], play.call.spoken


def test_a_man_is_told_from_the_one_who_gave_him_the_ball() -> None:
    """Past the exchange of a reverse he runs on another line: nowhere on it but there, and where
    they cross, for as much as a yard."""
    play = next(p for p in plays(BOOKS[0]) if p.call.concept == "Reverse")
    first, last = (s for s in strokes(play, Size.FULL) if s.style in HEAVY)
    given = points_of(first.segments)
    beside = [p for p in small(last) if far_from(given, p) < 0.7]
    assert beside and max(p.distance(beside[0]) for p in beside) < 1.5


@pytest.mark.parametrize("book", BOOKS)
def test_words_and_clock_tell_the_exchanges_of_the_picture_in_its_order(book: str) -> None:
    """The picture's are held by the test of its bars."""
    said = [play for play in plays(book) if said_any(play.exchanges)]
    assert len(said) >= 5
    for play in said:
        (told,) = re.findall(r" The ball: (.*?)\. [A-Z]", describe(play))
        words = [re.match(r"(\w+) (\w+) (?:it )?to (\w+)", part) for part in told.split("; then ")]
        exchanges = [(x.giver, x.kind.value, x.taker) for x in play.exchanges]
        assert [match.groups() for match in words if match] == exchanges
        clock = read_clock(play, HIGH_SCHOOL)
        feet = [foot.name for foot in clock.feet]
        in_short = [x.in_short for x in play.exchanges if x.kind is not BallMoves.SNAP]
        assert [name for name in feet if name in in_short] == in_short, play.call.spoken
        handed = any(x.in_short.startswith("hand") and x.giver == "Q" for x in play.exchanges)
        assert "fake" not in feet or not handed
        if clock.reads:
            items = clock_scene(clock, THEME).items
            printed = [i for i in items if isinstance(i, TextRun) and i.text in in_short]
            assert [i.text for i in sorted(printed, key=lambda i: i.at.x)] == in_short
            assert all("fake" not in step.words for step in play.feet)

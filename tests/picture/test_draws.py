"""A draw is drawn as it is told: the quarterback drops, the back waits, and the ball is given where
both lines meet, when the last step of the drop is down.

How deep a drop is comes from the coach's words, not from the path: three steps of a man in the gun
end 7 to 8 yards deep, and no drop from under centre is shorter than five yards.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import pairwise

import pytest
from resolve.shipped_books import BOOKS, played, shipped

from stemline.diagnostics.render import render
from stemline.football.exchanges import REACH
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.football.timing.ball_clock import ball_moments
from stemline.football.timing.levels import LEVELS
from stemline.football.timing.men import run_path
from stemline.geometry.curves import nearest, points_of
from stemline.geometry.paths import Point
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Stroke
from stemline.session import Session
from stemline.source import Source
from stemline.theme import Size, load_theme

THEME = load_theme()
TEXT = """
playbook Draws
    version 1
    code high school

personnel All
    Q is quarterback
    B is back
    X, Z is wideout
    S, H is slot

formation Beside
    Z at call, numbers, on line
    X at away, numbers, on line
    S at call, 6 outside ball, off line
    H at away, 6 outside ball, off line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

formation Deeper extends Beside
    B at call, 2 outside ball, 7 deep

formation Behind extends Beside
    B at ball, 7 deep
    Q at ball, 4 deep

formation Under extends Beside
    B at ball, 7 deep
    Q at ball, under centre

formation Offset extends Under
    B at away, 2 outside ball, 6 deep

run Draw
    carrier is back
    carrier aims playside A
    line blocks on or climb
    each #1 runs go
    everyone else runs seam
    feet FEET

run Wide
    carrier is back
    carrier aims outside the end
    line blocks on or climb
    each #1 runs go
    everyone else runs seam
    feet FEET

dress Draw
    in Beside, Deeper, Behind, Under, Offset

dress Wide
    in Beside, Deeper, Behind, Under, Offset
"""


@cache
def draws() -> tuple[Play, ...]:
    """Every draw of both books, and those of a text whose back stands in every place."""
    return (*_bundled(), *(play for feet in ("3", "5") for play in _written(feet)))


def _bundled() -> Iterator[Play]:
    for book in BOOKS:
        for _, order in shipped(book).named("Draw"):
            play = played(book, order)
            if play.call.concept == "Draw" and "snap" not in str(play.exchanges[0].kind).lower():
                yield play


def _written(feet: str) -> Iterator[Play]:
    source = Source("draws.play", TEXT.replace("FEET", feet))
    result = Session([source], "draws")
    errors = [d for d in result.diagnostics if d.is_error]
    assert not errors, render(errors, {source.name: source})
    for order in result.calls.by_name.values():
        play, _ = result.play(order, BallSpot.MIDDLE)
        assert play is not None
        yield play


def test_there_are_draws_of_every_kind() -> None:
    assert len(draws()) >= 2 * 10 + 5
    assert {play.call.formation for play in draws()} >= {"Beside", "Under", "Behind", "Three Two"}


@pytest.mark.parametrize("level", sorted(LEVELS))
def test_the_ball_is_given_when_the_drop_is_down_behind_where_he_took_the_snap(level: str) -> None:
    for play in draws():
        (moment,) = ball_moments(play, LEVELS[level])
        passer, back = play.passer, play.man(play.carrier)
        assert passer is not None
        steps = LEVELS[level].under if passer.under_centre else LEVELS[level].foot
        down = steps[play.feet[0].name].value
        if passer.under_centre:  # he runs five yards for it, and is there a little later
            assert down - 0.01 <= moment.there <= down + 0.8, play.call.spoken
            down = moment.there
        assert moment.there == pytest.approx(down, abs=0.01), play.call.spoken
        drop = passer.snap.y - moment.given.y
        assert drop >= (5.0 if passer.under_centre else 2.0), (play.call.spoken, drop)
        assert moment.given.distance(moment.taken) <= REACH.value, play.call.spoken
        assert moment.apart <= REACH.value
        for man, at in ((passer.label, moment.given), (back.label, moment.taken)):
            task = play.assignment(man)
            assert task.path is not None
            way = run_path(play, task, task.path, LEVELS[level])
            assert way.at(down).distance(at) < 0.05, (play.call.spoken, man)
            if man == back.label:
                assert way.at(down / 4).distance(back.snap) < 0.05, "he waits before he goes"


@pytest.mark.parametrize("size", [Size.FULL, Size.QUARTER])
def test_the_bars_stand_where_both_lines_meet(size: Size) -> None:
    for play in draws():
        strokes = {i.name: i for i in picture(play, size, THEME).items if isinstance(i, Stroke)}
        assert play.passer is not None
        passer, back = play.passer.label, play.carrier
        bars = [strokes[f"{back}-mesh-{n}"] for n in (1, 2)]
        ends = [p for bar in bars for p in points_of(bar.segments)]
        met = Point(sum(p.x for p in ends) / len(ends), sum(p.y for p in ends) / len(ends))
        for name in (f"{passer}-held", f"{back}-ball"):
            assert _off(strokes[name], met) <= REACH.value, (play.call.spoken, name)
        drop = points_of(strokes[f"{passer}-held"].segments)
        assert drop[-1].y < play.passer.snap.y - 1.9, play.call.spoken


def _off(stroke: Stroke, at: Point) -> float:
    points = points_of(stroke.segments)
    return min(nearest(a, b, at)[0].distance(at) for a, b in pairwise(points))


def test_a_quarterback_whom_the_snap_passes_by_hands_nothing_on() -> None:
    told = [
        (play.exchanges[0].taker, play.assignment(play.passer.label).job)
        for _, order in shipped(BOOKS[1]).named("Draw")
        if "Direct" in (play := played(BOOKS[1], order)).call.spoken and play.passer
    ]
    assert told
    for taker, job in told:
        assert "hand" not in job.lower() and f"snapped to {taker}" in job

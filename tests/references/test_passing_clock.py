"""Drops, free rushers, reactions and leverage, against what is published or computed of them.

Out times by drop: a public coaching page on drops by concept (1.6 s off three steps under centre,
2.4 to 2.6 off five, 3.0 and more off seven; three steps in the gun stand for five under centre).
Free rushers: computed from a reaction of 0.22 s, a start curve through 10 and 40 yards, pads, and
an arm's reach of a yard; the shortest sacks of two pro seasons came as a rule at 1.5 to 2.0 s
(Cooper, "Under pressure", 2011). A choice step of ball players takes 0.35 to 0.40 s (multi-sport
study of agility time, Comenius University, n = 282).
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from football.test_coverage import CALLS, alone, one
from football.timed import against, clocked, family, line, plays
from together import together

from stemline.football.defenders import Defender, Duty, DutyKind, Level
from stemline.football.field import Side
from stemline.football.play import Play, Step
from stemline.football.timing.breaking import in_the_way
from stemline.football.timing.chances import Chances
from stemline.football.timing.coverage import Cover
from stemline.football.timing.coverage import against as covered
from stemline.football.timing.levels import COLLEGE, HIGH_SCHOOL, LEVELS, PROFESSIONAL, PlayingLevel
from stemline.football.timing.rushing import arrives
from stemline.football.timing.throwing import clock
from stemline.geometry.paths import Point
from stemline.source import NOWHERE

GUN, UNDER = Point(0.0, -5.0), Point(0.0, -1.0)


def out(*names: str, at: Point, level: PlayingLevel = HIGH_SCHOOL) -> float:
    """When the ball is out off the last of some steps."""
    steps = [Step(name, "") for name in names]
    foot = clock(steps, at, Side.RIGHT, level)[-1]
    return foot.time + level.motion.value


@pytest.mark.parametrize("level", LEVELS.values(), ids=LEVELS.keys())
def test_a_five_step_drop_under_centre_is_out_no_sooner_than_the_guides_say(
    level: PlayingLevel,
) -> None:
    assert 2.4 - 1e-9 <= out("5", at=UNDER, level=level) <= 2.6
    assert out("7", at=UNDER, level=level) >= 3.0 - 1e-9
    assert 1.4 <= out("3", at=UNDER, level=level) <= 1.8


def test_three_steps_in_the_gun_stand_for_five_under_centre() -> None:
    assert 2.4 <= out("3", "hitch", at=GUN) <= 2.6
    assert out("5", at=UNDER) == pytest.approx(out("3", "hitch", at=GUN), abs=0.1)
    assert 1.9 <= out("3", at=GUN) <= 2.1


@together("at", [GUN, UNDER], ids=["gun", "under"])
@together("drop", ["set", "3", "5", "7"])
@together("level", LEVELS.values(), ids=LEVELS.keys())
def test_a_throw_off_a_run_fake_is_out_at_two_and_a_half_to_three_seconds(
    level: PlayingLevel, drop: str, at: Point
) -> None:
    """Common practice, no published source: a fake adds 0.4 to 0.8 s, the ball is out at 2.5 to
    3.2, from the gun and from under centre."""
    assert 2.5 - 1e-9 <= out("fake", drop, at=at, level=level) <= 3.2
    assert out("fake", drop, at=at, level=level) >= out(drop, at=at, level=level)


def test_what_is_thrown_as_the_fake_ends_does_not_wait_for_a_drop() -> None:
    assert out("fake", at=UNDER) == pytest.approx(1.3)
    assert out("fake", "reset", at=UNDER) < out("fake", "set", at=UNDER)


# Free rushers.


def comes(at: Point, through: float, level: Level = Level.SECOND) -> Defender:
    duty = Duty(DutyKind.RUSH, "", "", Point(through, 0.0), "")
    return Defender("D", at, level, "", duty, NOWHERE)


def there(man: Defender, deep: float, level: PlayingLevel = HIGH_SCHOOL) -> float:
    made = against(CALLS[0], "Zero")
    return arrives(man, Point(0.0, -deep), made, level)


ON_THE_LINE, EDGE = comes(Point(0.65, 0.8), 0.65), comes(Point(4.5, 0.8), 4.5)
FROM_FOUR, FROM_FIVE = comes(Point(0.65, 4.0), 0.65), comes(Point(0.65, 5.5), 0.65)
EDGE_FROM_FOUR = comes(Point(4.5, 4.0), 4.5)
OVER_THE_SLOT = comes(Point(9.0, 4.0), 5.0)
CORNER = comes(Point(14.0, 7.0), 5.0, Level.DEEP)


@together(
    ("man", "deep", "school", "college", "pro"),
    [
        (ON_THE_LINE, 5.5, 1.5, 1.4, 1.3),
        (ON_THE_LINE, 7.5, 1.8, 1.65, 1.55),
        (FROM_FOUR, 5.5, 2.0, 1.85, 1.75),
        (FROM_FOUR, 7.5, 2.25, 2.1, 2.0),
        (FROM_FIVE, 5.5, 2.2, 2.0, 1.9),
        (FROM_FIVE, 7.5, 2.45, 2.25, 2.15),
        (EDGE, 5.5, 1.85, 1.7, 1.6),
        (EDGE, 7.5, 2.05, 1.9, 1.8),
        (EDGE_FROM_FOUR, 5.5, 2.3, 2.1, 2.0),
        (EDGE_FROM_FOUR, 7.5, 2.5, 2.35, 2.25),
        (OVER_THE_SLOT, 5.5, 2.5, None, None),
        (OVER_THE_SLOT, 7.5, 2.7, None, None),
    ],
)
def test_a_free_man_is_there_when_the_sum_of_his_way_says(
    man: Defender, deep: float, school: float, college: float | None, pro: float | None
) -> None:
    assert there(man, deep) == pytest.approx(school, abs=0.15)
    if college is not None and pro is not None:
        assert there(man, deep, COLLEGE) == pytest.approx(college, abs=0.15)
        assert there(man, deep, PROFESSIONAL) == pytest.approx(pro, abs=0.15)


def test_who_comes_from_farther_or_wider_is_later() -> None:
    order = [there(m, 7.0) for m in (ON_THE_LINE, EDGE, FROM_FOUR, OVER_THE_SLOT, CORNER)]
    assert order == sorted(order) and len({*order}) == 5


def test_a_yard_off_the_ball_costs_a_man_on_the_line_a_tenth_and_a_half() -> None:
    """What the Canadian yard gives the passer: 0.13 to 0.15 s, from a yard at 7 to 8 a second."""
    a_yard_more = comes(Point(0.65, 1.8), 0.65)
    assert there(a_yard_more, 7.0) - there(ON_THE_LINE, 7.0) == pytest.approx(0.14, abs=0.02)


def test_nobody_is_free_where_everybody_is_blocked_and_where_there_is_no_look() -> None:
    made = against(CALLS[0], "Zero")
    assert clocked(made).rusher is not None
    assert clocked(replace(made, unblocked=())).rusher is None
    assert all(clocked(p).rusher is None for p in plays(family()) if p.defence is None)


# The order of the reads.


@together("call", [p.call.spoken for p in plays(family())])
def test_no_two_reads_are_thrown_at_one_moment(call: str) -> None:
    made = next(p for p in plays(family()) if p.call.spoken == call)
    for feet in (
        ("quick", "quick", "hitch"),
        ("3", "hitch", "reset"),
        ("5", "3", "quick", "quick"),
    ):
        steps = tuple(Step(name, "") for name in feet)
        read = [replace(r, foot=f) for r, f in zip(made.reads, feet, strict=False)]
        times = [look.thrown for look in clocked(replace(made, feet=steps, reads=(*read,))).reads]
        assert all(b - a >= 0.4 - 1e-9 for a, b in pairwise(times)), times


# Reactions and leverage.


@pytest.mark.parametrize("level", LEVELS.values(), ids=LEVELS.keys())
def test_who_must_choose_is_slower_than_who_only_reacts(level: PlayingLevel) -> None:
    assert level.choose.value > level.react.value + 0.05


def test_a_choice_takes_what_is_published_of_it() -> None:
    for level in (HIGH_SCHOOL, COLLEGE):
        assert 0.35 <= level.choose.value <= 0.40


def read_against(corner: Defender, *corners: tuple[float, float]) -> tuple[float, Cover]:
    """A man who runs a polyline, thrown to on rhythm, against one man defender."""
    made: Play = alone(against(CALLS[0], "Even Two Man"), corner)
    runs = line(*corners)
    clock_ = clocked(made)
    look = clock_.reads[0]
    assert look.window is not None
    window = replace(look.window, man="X", opens=runs.left, closes=runs.left + 1.2)
    thrown = runs.left + 0.1
    at = runs.at(thrown + 0.7)
    first = replace(look, window=window, thrown=thrown, arrives=thrown + 0.7, at=at)
    (found,) = covered(made, replace(clock_, reads=(first,), men={"X": runs}), HIGH_SCHOOL).reads
    return found.yards, found.cover


def test_a_slant_opens_and_an_out_closes_as_a_man_defender_moves_outside() -> None:
    """One thing changes, his shade (Lamb, "Win the leverage, win the route", 2019)."""
    slant, square = ((12, 0), (12, 4), (2, 9)), ((12, 0), (12, 5), (24, 5))
    inside, outside = (one(DutyKind.MAN, Point(x, 4), man="X") for x in (11.0, 13.0))
    assert read_against(outside, *slant)[0] > read_against(inside, *slant)[0] + 0.5
    assert read_against(inside, *square)[0] > read_against(outside, *square)[0] + 0.5


def test_more_cushion_never_hurts_a_hitch() -> None:
    """The softest corner (Win with the Pass, "All hitch")."""
    hitch = ((12, 0), (12, 6), (11.5, 5))
    rooms = [
        read_against(one(DutyKind.MAN, Point(12.0, deep), man="X"), *hitch)[0]
        for deep in (2, 4, 6, 8, 10)
    ]
    assert rooms[-1] > rooms[0] and rooms[-1] >= rooms[1], rooms


def led(way: Point, beside: Point) -> bool:
    moment, at = np.array([2.0]), np.array([[10.0, 8.0]])
    passer, leads = np.array([[0.0, -7.0]]), np.array([[way.x, way.y]])
    throw = Chances(passer, moment, moment, moment, at, at, leads)
    place = np.repeat(np.array([[[10.0 + beside.x, 8.0 + beside.y]]]), 60, axis=1)
    return bool(in_the_way(throw, place, np.array([2.0]), 0.1)[0, 0])


def test_leverage_is_where_the_ball_is_led() -> None:
    """A defender at a man's back is thrown away from; ahead of him, or between, he has the ball."""
    out_route, stands = Point(1, 0), Point(-0.55, -0.83)
    assert led(out_route, Point(1.5, 0)) and not led(out_route, Point(-1.5, 0))
    assert not led(out_route, Point(0, 1.5))
    assert led(stands, Point(-0.8, -1.2)) and not led(stands, Point(0.8, 1.2))


def test_at_two_yards_with_leverage_a_good_throw_beats_a_man() -> None:
    made = against(CALLS[0], "Over Three")
    clock_ = clocked(made)
    look = clock_.reads[0]
    assert look.window is not None
    still = replace(look, window=replace(look.window, closes=0.0), at=Point(0, 9))
    thrown = replace(still, arrives=look.thrown)

    def cover(dx: float, dy: float) -> Cover:
        there = Defender("D", Point(dx, 9 + dy), Level.SECOND, "", None, NOWHERE)
        play = alone(made, there)
        (found,) = covered(play, replace(clock_, reads=(thrown,)), HIGH_SCHOOL).reads
        return found.cover

    runs = clock_.men["R"].where(np.array([look.thrown - 0.1, look.thrown]))
    way = (runs[1] - runs[0]) / np.hypot(*(runs[1] - runs[0]))
    assert cover(*(-2.0 * way)) is Cover.TIGHT
    assert cover(*(2.0 * way)) is Cover.COVERED
    assert cover(*(-0.6 * way)) is Cover.COVERED
    assert cover(*(2.6 * way)) is Cover.OPEN

"""The throws that a read offers, and what defenders do to a ball on its way."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from resolve.texts import THREE_TWO, TWELVE, compiled, dress, play

from football.timed import against, clocked, line
from stemline.football.defenders import Defender, Level
from stemline.football.play import Play
from stemline.football.timing.breaking import ARM, REACH, beside, broken
from stemline.football.timing.chances import SLIDES, Chances, chances
from stemline.football.timing.clock import TimedRead, Window
from stemline.football.timing.coverage import Against, Cover
from stemline.football.timing.coverage import against as covered
from stemline.football.timing.levels import HIGH_SCHOOL, TOUCH
from stemline.football.timing.running import Array
from stemline.football.timing.screens import blockers
from stemline.football.timing.throwing import CATCH, RELEASE, flight, height
from stemline.geometry.paths import Point
from stemline.source import NOWHERE

CALL = "Three Two Right Crossers"
PASSER = Point(0, -7)


def dig() -> tuple[TimedRead, Chances]:
    """A read of a man who crosses at 14, first caught right behind a hook defender, and what it
    offers."""
    clock = clocked(against(CALL, "Over Three"))
    man = line((14, 0), (14, 14), (-20, 14))
    look = clock.reads[1]
    found = Window("X", 2.7, 4.5)
    at = man.at(3.6)
    look = replace(look, window=found, thrown=2.5, arrives=3.6, at=at, passer=PASSER)
    return look, chances(look, man, HIGH_SCHOOL, None)


def test_the_first_throw_is_the_clocks_own() -> None:
    look, offered = dig()
    assert (offered.thrown[0], offered.arrives[0]) == (look.thrown, look.arrives)
    assert tuple(offered.at[0]) == (look.at.x, look.at.y)
    assert len(offered) > 20


def test_a_passer_waits_no_longer_than_a_hitch_takes_nor_for_a_free_rusher() -> None:
    look, offered = dig()
    hitch = HIGH_SCHOOL.again["hitch"].value
    assert offered.thrown.max() == pytest.approx(look.thrown + hitch)
    man = line((14, 0), (14, 14), (-20, 14))
    for rusher, latest in ((look.thrown + 0.2, look.thrown + 0.2), (1.6, look.thrown)):
        hurried = chances(look, man, HIGH_SCHOOL, rusher)
        assert hurried.thrown.max() == pytest.approx(latest)


def test_every_throw_is_in_the_window_and_within_the_arm() -> None:
    look, offered = dig()
    assert look.window is not None
    assert (offered.arrives <= look.window.closes + 1e-9).all()
    yards = np.hypot(*(offered.at - [PASSER.x, PASSER.y]).T)
    air = offered.arrives - offered.thrown
    for far, time in zip(yards[1:], air[1:], strict=True):
        least = flight(float(far), HIGH_SCHOOL.deep.value)
        assert least is not None and time >= least - 0.02
        assert time <= max(least * TOUCH * 1.2, 2.4)


@given(st.floats(0.3, 2.5), st.floats(0, 1))
def test_a_ball_flies_from_hand_to_hand(air: float, part: float) -> None:
    assert float(height(0.0, air)) == pytest.approx(RELEASE)
    assert float(height(1.0, air)) == pytest.approx(CATCH)
    straight = RELEASE + (CATCH - RELEASE) * part
    assert float(height(part, air)) >= straight - 1e-9


def one_throw(at: Point, air: float) -> Chances:
    return Chances(np.array([[PASSER.x, PASSER.y]]), np.array([2.0]), np.array([2.0 + air]),
                   np.array([2.0 + air]), *(np.array([[at.x, at.y]]),) * 2,
                   np.array([[0.0, -1.0]]))  # fmt: skip


def standing(*places: tuple[float, float]) -> Array:
    return np.repeat(np.array(places)[:, None], 60, axis=1)


def left(at: Point, air: float, *places: tuple[float, float]) -> Array:
    under = np.zeros(len(places), dtype=bool)
    return broken(one_throw(at, air), standing(*places), under, HIGH_SCHOOL, 0.1)[:, 0]


def test_a_drive_past_a_hook_defender_is_his_and_touch_goes_over_him() -> None:
    """He stands right on its way, ten yards in front of the man it is thrown to."""
    at, hook = Point(0, 20), (0.0, 8.0)
    drive = flight(27, HIGH_SCHOOL.deep.value)
    assert drive is not None
    part = (8 + 7) / 27
    assert float(height(part, 0.7)) < REACH < float(height(part, drive * TOUCH))
    assert left(at, 0.7, hook) == [0]
    assert left(at, drive * TOUCH, hook)[0] > 3


def test_who_stands_beside_its_way_does_not_bat_it() -> None:
    at = Point(0, 11)
    assert left(at, 0.6, (0.0, 3.0)) == [0]
    assert left(at, 0.6, (ARM + 2.5, 3.0))[0] > 4


@given(st.floats(4, 12), st.floats(0.4, 2.0), st.floats(0.01, 0.3))
def test_who_sees_it_later_is_never_nearer(far: float, air: float, slower: float) -> None:
    late = replace(HIGH_SCHOOL, react=replace(HIGH_SCHOOL.react, value=0.22 + slower))
    throw, where = one_throw(Point(0, 11), air), standing((far, 11.0))
    deep = np.array([False])
    quick = broken(throw, where, deep, HIGH_SCHOOL, 0.1)
    assert (broken(throw, where, deep, late, 0.1) >= quick - 1e-9).all()


def test_nobody_is_farther_away_for_having_seen_the_ball() -> None:
    """A deep man who runs with his man gets there though a break from a stand would not."""
    along = np.stack([(np.zeros(60), np.arange(60) * 0.85)], axis=0).transpose(0, 2, 1)
    throw = one_throw(Point(0, 36), 2.2)
    assert broken(throw, along, np.array([True]), HIGH_SCHOOL, 0.1)[0, 0] < 1


# A man who settles.


def sits() -> tuple[TimedRead, Chances]:
    """A read of a man who sits down at six over the ball."""
    look = clocked(against(CALL, "Over Three")).reads[1]
    man = line((6, 0), (6, 6), settle=True)
    look = replace(look, window=Window("X", man.ready, man.ready + 1.8), thrown=2.4, arrives=3.0,
                   at=man.at(3.0), passer=PASSER)  # fmt: skip
    return look, chances(look, man, HIGH_SCHOOL, None)


def test_a_man_who_settles_slides_into_the_hole_and_no_other_does() -> None:
    look, offered = sits()
    assert set((offered.at - offered.drawn)[:, 0].tolist()) == {0.0, *SLIDES.tolist()}
    assert (offered.at[:, 1] == look.at.y).all()
    _, running = dig()
    assert (running.at == running.drawn).all()


def test_who_has_him_man_to_man_slides_with_him() -> None:
    look, offered = sits()
    beside_him = standing((look.at.x + 0.5, look.at.y))
    assert (beside(offered, beside_him, 0.1) <= 0.5).all()
    zone = broken(offered, beside_him, np.array([False]), HIGH_SCHOOL, 0.1)
    assert zone.max() > zone[0, 0]


# The roomiest throw.


def stood(call: Play, *defenders: Defender) -> Against:
    assert call.defence is not None
    made = replace(call, defence=replace(call.defence, defenders=defenders))
    return covered(made, clocked(made), HIGH_SCHOOL)


def still(label: str, x: float, y: float) -> Defender:
    return Defender(label, Point(x, y), Level.SECOND, "", None, NOWHERE)


def test_of_all_throws_the_one_counts_that_comes_down_where_they_are_not() -> None:
    made = against(CALL, "Even Two Man")
    far = clocked(made).reads[3]  # a man on the run, first caught where a defender stands
    read = stood(made, still("D", far.at.x - 1.0, far.at.y)).reads[3]
    assert read.waits and read.arrives > far.arrives
    assert read.thrown <= far.thrown + HIGH_SCHOOL.again["hitch"].value + 1e-9
    man = clocked(made).men["W"].at(read.arrives)
    assert (read.at.x, read.at.y) == pytest.approx((man.x, man.y))
    assert read.read.arrives == far.arrives  # the clock's own verdict is the first catch
    alone = stood(made, still("D", far.at.x, 45)).reads[3]
    assert alone.yards > read.yards


@given(st.lists(st.tuples(st.floats(-15, 15), st.floats(2, 15)), min_size=1, max_size=4))
def test_one_defender_more_never_gives_more_room(places: list[tuple[float, float]]) -> None:
    made = against(CALL, "Over Three")
    men = [still(f"D{i}", x, y) for i, (x, y) in enumerate(places)]
    less, more = stood(made, *men[:-1], still("F", 0, 50)), stood(made, *men, still("F", 0, 50))
    for a, b in zip(less.reads, more.reads, strict=True):
        assert b.yards <= a.yards + 1e-9


# The hot throw.


def pressed(*defenders: Defender) -> Against:
    """The call with a free man inside."""
    call = against(CALL, "Zero")
    assert call.defence is not None
    rusher = next(d for d in call.defence.rushers if d.duty and d.duty.gap.startswith("A"))
    made = replace(call, defence=replace(call.defence, defenders=(rusher, *defenders)),
                   unblocked=(rusher.label,))  # fmt: skip
    return covered(made, clocked(made), HIGH_SCHOOL)


def test_the_hot_throw_is_the_first_of_the_pressure_order_in_time_and_not_covered() -> None:
    nobody = pressed(still("F", 0, 50))
    assert nobody.rusher is not None and nobody.hot is not None
    assert nobody.hot is nobody.pressure[0]
    assert nobody.hot.thrown <= nobody.rusher
    at = nobody.hot.read.at
    everywhere = [still(f"D{i}", at.x - i, at.y) for i in range(8)]
    smothered = pressed(*everywhere)
    assert smothered.pressure[0].cover is Cover.COVERED
    assert smothered.hot is None  # what else there is comes too late


def test_without_a_free_rusher_there_is_no_hot_throw() -> None:
    found = stood(against(CALL, "Over Three"), still("F", 0, 50))
    assert (found.rusher, found.hot, found.pressure) == (None, None, ())


# Screens.

SLOW = """
concept Slow
    screen is back
    screen runs slow screen weak
    clear is strong #1
    clear runs go
    point is weak #1
    point {point}
    feet 5
    read screen on 5
    protect {protect}
"""


def screened(point: str, protect: str) -> Play:
    """A slow screen that stands against nobody yet."""
    made = compiled(TWELVE, THREE_TWO, SLOW.format(point=point, protect=protect),
                    dress("Three Two", concept="Slow"))  # fmt: skip
    defence = against(CALL, "Over Three").defence
    return replace(play(made, "Three Two Right Slow"), defence=defence)


def test_men_in_front_of_a_screen_take_a_defender_each() -> None:
    bare, led = screened("runs go", "five"), screened("runs go", "screen")
    catch = clocked(led).reads[0].at
    assert catch.y < 0
    assert (blockers(bare, catch), blockers(led, catch)) == (0, 3)
    assert blockers(led, Point(catch.x + 40, catch.y)) == 0  # too far away to lead
    near = [still(f"D{i}", catch.x, catch.y + 2 + i) for i in range(5)]
    alone, with_them = stood(bare, *near).reads[0], stood(led, *near).reads[0]
    assert alone.behind and with_them.behind
    assert alone.blocked == () and with_them.blocked == ("D0", "D1", "D2")
    assert with_them.nearest == "D3"
    assert alone.yards < with_them.yards
    nobody = stood(led, still("F", 0, 50)).reads[0]
    assert nobody.cover is Cover.OPEN


def test_a_stalk_block_leads_a_screen_on_its_side() -> None:
    led = screened("blocks stalk", "five")
    point = led.assignment("X")
    assert point.path is not None
    assert blockers(led, point.path.end) == 1

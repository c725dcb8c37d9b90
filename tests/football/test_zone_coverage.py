"""Zones before the throw: what a defender in one does about threats, the fake and the launch.

What a defender can and cannot do is common practice, no published source.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from football.timed import against, line
from stemline.football.defenders import Defender, Duty, DutyKind, Level
from stemline.football.field import Side
from stemline.football.offence.quarterback import step
from stemline.football.play import Play
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.running import Array, Timeline
from stemline.football.timing.zone_coverage import (
    BITE,
    DEEPER,
    DROP,
    EARLY,
    FLOW,
    INSIDE,
    LEAN,
    PAST,
    READS,
    SETTLED,
    STEPS_UP,
    TURNS,
    dropped,
    expected,
)
from stemline.geometry.paths import Point
from stemline.source import NOWHERE

TIMES = np.arange(0.0, 6.0, 0.1)
CALL = against("Three Two Right Crossers", "Over Three")


def zone(kind: DutyKind, to: Point, at: Point | None = None) -> Defender:
    return Defender("D", at or to, Level.SECOND, "", Duty(kind, "", "", to), NOWHERE)


def stands(x: float, y: float) -> Timeline:
    """A man who is in a place from the start."""
    return line((x, y - 0.01), (x, y), settle=True, start=0.0)


def runs(
    *defenders: Defender, play: Play = CALL, sets: float = 9.0, **men: Timeline
) -> list[Array]:
    places = {label: man.where(TIMES) for label, man in men.items()}
    return list(dropped(defenders, play, places, TIMES, HIGH_SCHOOL, sets))


def walking(*feet: str, side: Side = Side.RIGHT) -> Play:
    return replace(CALL, feet=tuple(step(name, side, True) for name in feet))


@given(st.floats(-9, 9), st.floats(-9, 3))
def test_an_underneath_defender_shades_to_his_threat_and_no_farther(dx: float, dy: float) -> None:
    mark = Point(8, 11)
    (place,) = runs(zone(DutyKind.HOOK, mark), X=stands(8 + dx, 11 + dy))
    moved = place[-1] - [mark.x, mark.y]
    assert np.hypot(*moved) == pytest.approx(min(LEAN, np.hypot(dx, dy)), abs=0.1)
    if np.hypot(dx, dy) > 0.5:
        assert np.dot(moved, [dx, dy]) > 0


def test_a_man_who_is_past_him_is_the_deep_mens() -> None:
    mark = Point(8, 11)
    (place,) = runs(zone(DutyKind.HOOK, mark), X=stands(8, 11 + PAST + 1))
    assert tuple(place[-1]) == (8, 11)


def test_of_two_men_high_and_low_he_takes_one_and_leaves_the_other() -> None:
    mark = Point(8, 11)
    (place,) = runs(zone(DutyKind.HOOK, mark), low=stands(8, 5), high=stands(8, 14))
    x, y = place[-1]
    assert np.hypot(x - 8, y - 14) < 1
    assert np.hypot(x - 8, y - 5) > 7


def test_between_two_defenders_there_is_room_and_both_lean_to_it() -> None:
    left, right = zone(DutyKind.HOOK, Point(-8, 11)), zone(DutyKind.HOOK, Point(8, 11))
    one, two = runs(left, right, sit=stands(0, 8))
    assert np.hypot(*(one[-1] - [0, 8])) == pytest.approx(np.hypot(*(two[-1] - [0, 8])))
    assert LEAN < np.hypot(*(one[-1] - [0, 8])) < np.hypot(8, 3) - LEAN / 2


def test_who_has_nobody_looks_to_his_neighbours_man_half_as_far() -> None:
    mine, his = zone(DutyKind.HOOK, Point(-8, 11)), zone(DutyKind.HOOK, Point(3, 11))
    idle, busy = runs(mine, his, sit=stands(1, 9))
    assert np.hypot(*(busy[-1] - [3, 11])) == pytest.approx(np.hypot(2, 2), abs=0.05)
    assert np.hypot(*(idle[-1] - [-8, 11])) == pytest.approx(LEAN / 2)


def test_once_the_passer_sets_a_drop_goes_on_slowly() -> None:
    drop = zone(DutyKind.HOOK, Point(0, 15), Point(0, 4))
    (free,), (held,) = runs(drop), runs(drop, sets=1.0)
    pace = np.diff(free[:, 1]) / 0.1, np.diff(held[:, 1]) / 0.1
    late = (TIMES[:-1] > 1.0 + HIGH_SCHOOL.react.value) & (TIMES[:-1] < 2)
    assert pace[0][late] == pytest.approx(DROP)
    assert pace[1][late] == pytest.approx(DROP * SETTLED)
    assert (held[TIMES < 1.2] == free[TIMES < 1.2]).all()


@pytest.mark.parametrize("side", [Side.LEFT, Side.RIGHT])
def test_underneath_zones_flow_with_a_passer_on_the_run_and_deep_ones_do_not(side: Side) -> None:
    hook, third = zone(DutyKind.HOOK, Point(3, 11)), zone(DutyKind.THIRD, Point(3, 18))
    under, deep = runs(hook, third, play=walking("sprint", side=side))
    assert under[-1] == pytest.approx([3 + FLOW * side.value, 11])
    assert deep[-1] == pytest.approx([3, 18])
    (still,) = runs(hook, play=walking("3", "hitch"))
    assert still[-1] == pytest.approx([3, 11])


def test_a_boot_is_seen_when_its_fake_is_over() -> None:
    wide = zone(DutyKind.CURL, Point(12, 11))
    (sprint,) = runs(wide, play=walking("sprint"))
    (boot,) = runs(wide, play=walking("fake", "boot"))
    first = [TIMES[np.flatnonzero(np.diff(p[:, 0]) > 0)[0]] for p in (sprint, boot)]
    assert first[0] == pytest.approx(READS)
    assert first[1] == pytest.approx(HIGH_SCHOOL.foot["fake"].value, abs=0.11)


def test_a_run_fake_holds_the_linebackers_in_the_box_and_brings_them_up() -> None:
    box = zone(DutyKind.HOOK, Point(8, 11), Point(1, 4.5))
    wide = zone(DutyKind.CURL, Point(14, 11), Point(11, 5))
    (plain, out), (faked, same) = runs(box, wide), runs(box, wide, play=walking("fake", "set"))
    assert (out == same).all()
    lowest = faked[:, 1].min()
    assert lowest == pytest.approx(4.5 - STEPS_UP, abs=0.25)
    assert plain[:, 1].min() == 4.5
    back = TIMES[np.flatnonzero(np.diff(faked[:, 1]) > 0)[0]]
    assert back == pytest.approx(READS + BITE, abs=0.11)
    assert faked[-1] == pytest.approx(plain[-1])


@pytest.mark.parametrize("side", [-1, 1])
def test_the_post_man_goes_with_the_deepest_and_stays_deeper(side: int) -> None:
    middle = zone(DutyKind.THIRD, Point(0, 18))
    (place,) = runs(middle, post=stands(side * 9, 22), sit=stands(-side * 5, 10))
    assert place[-1] == pytest.approx([side * INSIDE, 22 + DEEPER])


def test_two_deep_men_abreast_split_him() -> None:
    (place,) = runs(zone(DutyKind.THIRD, Point(0, 18)), a=stands(-9, 22), b=stands(9, 22))
    assert place[-1] == pytest.approx([0, 22 + DEEPER])


@pytest.mark.parametrize("side", [-1, 1])
def test_outside_a_third_leans_in_and_never_out(side: int) -> None:
    third = zone(DutyKind.THIRD, Point(side * 16, 16.5))
    (post,), (flag,) = (runs(third, a=stands(side * x, 20)) for x in (8, 24))
    assert post[-1, 0] == pytest.approx(side * (16 - INSIDE))
    assert flag[-1, 0] == pytest.approx(side * 16)


@pytest.mark.parametrize("side", [-1, 1])
def test_a_half_goes_with_the_man_of_his_part_either_way(side: int) -> None:
    deep = zone(DutyKind.HALF, Point(side * 16, 16.5))
    (post,), (flag,) = (runs(deep, a=stands(side * x, 20)) for x in (9, 23))
    assert post[-1, 0] == pytest.approx(side * (16 - INSIDE))
    assert flag[-1, 0] == pytest.approx(side * (16 + INSIDE))


def test_an_outside_third_stays_with_the_widest_of_two_who_go_deep() -> None:
    """The seam inside him is the middle man's: two on one, as the texts have it of four verticals
    (Sharik in Brown, Wisdom on how to try to defend four verticals with cover 3)."""
    third = zone(DutyKind.THIRD, Point(20, 18))
    (both,) = runs(third, go=stands(22, 24), seam=stands(9, 26))
    (seam,) = runs(third, go=stands(22, 5), seam=stands(9, 26))
    assert both[-1, 0] == pytest.approx(20)
    assert seam[-1, 0] == pytest.approx(20 - INSIDE)


def test_a_man_who_runs_straight_on_is_taken_to_be_where_he_is() -> None:
    """From the first moment on: a deep man knows him by how he went off, and only a break is news.
    After a turn he is thought to go on as he went for as long as it takes to see it."""
    step = 0.1
    late = round((HIGH_SCHOOL.choose.value + TURNS) / step)
    times = np.arange(20) * step
    straight = np.stack((2 + 3 * times, 6 * times), axis=-1)
    turned = np.concatenate((straight[:10], straight[9] + np.arange(1, 11)[:, None] * (0.6, 0.0)))
    where, deep = expected(np.stack((straight, turned)), step, HIGH_SCHOOL)
    assert where[0] == pytest.approx(straight)
    assert deep[0] == pytest.approx(straight[:, 1] + 6 * EARLY)
    assert where[1][: 10 + late] == pytest.approx(straight[: 10 + late])
    assert where[1][-1] == pytest.approx(turned[-1])

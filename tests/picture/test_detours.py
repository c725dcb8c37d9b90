"""Paths go round men."""

from __future__ import annotations

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from picture.sample_plays import path
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Point, polyline
from stemline.picture.ways import detours
from stemline.picture.ways.detours import Round, detour

MAN = Round(Point(-8, 0), 1.2, 0.9)


def test_a_path_that_meets_nobody_is_the_same_path() -> None:
    flat = path((-2, -5), (-6, -4))
    assert detour(flat, (MAN,), 2.0) is flat


def test_a_path_straight_through_a_man_goes_round_him() -> None:
    bent = detour(path((0, 0), (-16, 0)), (MAN,), 2.0)
    assert bent.end == Point(-16, 0)
    assert far_from(polyline(bent), MAN.at) > MAN.hard
    assert min(p.y for p in polyline(bent)) < 0, "behind him, not into the defence"


def test_a_path_up_the_field_goes_round_his_outside() -> None:
    bent = detour(path((-8, -6), (-8, 12)), (MAN,), 2.0)
    assert min(p.x for p in polyline(bent)) < -8 - MAN.hard


def test_two_men_in_the_way_are_passed_on_the_tighter_line() -> None:
    men = (Round(Point(-6, -2), 1.2, 0.9), Round(Point(-12, 0), 1.2, 0.9))
    bent = detour(path((-2, -5), (-17, 2.3)), men, 2.0)
    for man in men:
        assert far_from(polyline(bent), man.at) > man.hard


def test_a_path_between_two_linemen_touches_neither() -> None:
    line = tuple(Round(Point(x, 0), 0.6, 0.5) for x in (-1.35, 0, 1.35))
    run = path((0.3, -5), (0.6, 4))
    bent = detour(run, line, 2.0)
    assert all(far_from(polyline(bent), man.at) > 0.5 for man in line)


def test_where_there_is_no_room_the_path_stays() -> None:
    wall = tuple(Round(Point(x, 0), 0.9, 0.8) for x in (-2, -1, 0, 1, 2))
    run = path((0, -5), (0, 4))
    assert detour(run, wall, 2.0) == run


def test_between_two_men_close_together_it_goes_through_the_middle() -> None:
    men = (Round(Point(-1.4, 0), 1.5, 1.1), Round(Point(1.4, 0), 1.5, 1.1))
    bent = detour(path((1.2, -4), (0.2, 3)), men, 2.0)
    at_them = min(polyline(bent), key=lambda p: abs(p.y))
    assert abs(at_them.x) < 0.25
    assert all(far_from(polyline(bent), man.at) > man.hard for man in men)


@given(st.floats(-12, -4), st.floats(-4, 4))
def test_a_bent_path_keeps_its_ends(x: float, y: float) -> None:
    run = path((-2, -5), (-17, 2.3))
    bent = detour(run, (Round(Point(x, y), 1.2, 0.9),), 2.0)
    assert (bent.start, bent.end) == (run.start, run.end)
    assert far_from(polyline(bent), Point(x, y)) > 0.9


def test_a_path_out_of_a_stack_goes_round_every_man_of_it() -> None:
    """No straight piece before a bend where the next man of the stack stands."""
    stack = (Round(Point(6.6, -2.83), 1.75, 1.316), Round(Point(6.6, 0), 1.75, 1.316))
    bent = detour(path((6.6, -5.67), (6.6, 1.0), (12.6, 2.0)), stack, 2.02)
    assert all(far_from(polyline(bent), man.at) > man.hard for man in stack)
    still = detour(path((6.6, -5.67), (6.6, 1.0), (12.6, 2.0)), stack, 2.02, slanting=False)
    assert any(far_from(polyline(still), man.at) < man.hard for man in stack)


def test_no_way_that_is_not_looked_at_would_have_been_better(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The search that leaves ways out finds what a search of all finds, in any crowd."""
    lots = random.Random(12)

    def place(wide: float, low: float, high: float) -> tuple[float, float]:
        return lots.uniform(-wide, wide), lots.uniform(low, high)

    for _ in range(150):
        men = tuple(Round(Point(*place(6, -5, 3)), 1.2, 0.9) for _ in range(lots.randint(3, 8)))
        run = path(place(6, -6, -2), place(6, -3, 2), place(8, 0, 5))
        slanting = lots.random() < 0.7
        found = detour(run, men, 1.5, slanting)
        with monkeypatch.context() as patch:
            patch.setattr(detours, "_ALIKE", math.inf)
            assert detour(run, men, 1.5, slanting) == found

"""Techniques on a line as it is drawn: splits, tight ends, ghosts and unbalanced lines."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemline.football.defence.techniques import (
    BOTH_SIDES,
    GAPS,
    LINEBACKERS,
    SHOULDER,
    TECHNIQUES,
    WORDS,
    Gap,
    gap_at,
    gap_x,
    surface,
    technique_x,
)
from stemline.football.field import Side
from stemline.football.line import SPLIT
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.source import NOWHERE

OUTWARD = ("0", "1", "2i", "2", "3", "4i", "4", "5", "6i", "6", "9", "8")
"""Every technique but 7, which is 6i by another name, from the ball outward."""


def lineman(x: float) -> Man:
    return Man(f"L{x}", Position.TACKLE, Point(x, 0), Point(x, 0), True, None, NOWHERE)


def end(x: float, *, on_line: bool = True) -> Man:
    at = Point(x, 0 if on_line else -1)
    return Man(f"Y{x}", Position.TIGHT_END, at, at, on_line, None, NOWHERE)


FIVE = tuple(lineman(n * SPLIT) for n in range(-2, 3))


def test_techniques_go_outward_in_the_order_of_the_table() -> None:
    line = surface(FIVE, Side.RIGHT)
    xs = [technique_x(name, line) for name in OUTWARD]
    assert xs == sorted(xs) and len(set(xs)) == len(xs)
    assert set(OUTWARD) | {"7"} == set(TECHNIQUES)
    assert technique_x("7", line) == technique_x("6i", line)


def test_even_is_head_up_and_odd_is_half_a_man_off() -> None:
    line = surface((*FIVE, end(3.9)), Side.RIGHT)
    assert [technique_x(n, line) for n in ("0", "2", "4", "6")] == [0, SPLIT, 2 * SPLIT, 3.9]
    assert technique_x("3", line) == SPLIT + SHOULDER
    assert technique_x("4i", line) == 2 * SPLIT - SHOULDER
    assert technique_x("9", line) == 3.9 + SHOULDER


def test_a_ghost_stands_where_a_tight_end_would() -> None:
    with_end, without = surface((*FIVE, end(3.9)), Side.RIGHT), surface(FIVE, Side.RIGHT)
    for name in ("6i", "6", "7", "8", "9"):
        assert technique_x(name, without) == pytest.approx(technique_x(name, with_end))
    assert (without.last, with_end.last) == (2 * SPLIT, 3.9)


def test_a_wide_tight_end_takes_his_techniques_with_him() -> None:
    near, far = surface((*FIVE, end(3.6)), Side.RIGHT), surface((*FIVE, end(4.4)), Side.RIGHT)
    assert technique_x("9", far) - technique_x("9", near) == pytest.approx(0.8)
    assert technique_x("5", far) == technique_x("5", near)


def test_a_man_off_the_line_is_no_end() -> None:
    assert surface((*FIVE, end(3.9, on_line=False)), Side.RIGHT) == surface(FIVE, Side.RIGHT)


def test_an_unbalanced_line_is_numbered_by_its_places() -> None:
    """Four to the right of the centre, one to the left: the outer tackle has the end's numbers."""
    men = tuple(lineman(n * SPLIT) for n in range(-1, 4))
    right, left = surface(men, Side.RIGHT), surface(men, Side.LEFT)
    assert technique_x("6", right) == pytest.approx(3 * SPLIT)
    assert technique_x("2", left) == -SPLIT
    assert technique_x("4", left) == pytest.approx(-2 * SPLIT)
    assert left.last == SPLIT


def test_a_centre_alone_has_ghosts_for_neighbours() -> None:
    line = surface((lineman(0.0),), Side.LEFT)
    assert technique_x("3", line) == -SPLIT - SHOULDER
    assert line.last == 0


def test_a_lineman_split_off_is_no_part_of_the_surface() -> None:
    assert surface((*FIVE, lineman(9.0)), Side.RIGHT) == surface(FIVE, Side.RIGHT)


def test_gaps_lie_between_the_men() -> None:
    line = surface((*FIVE, end(3.9)), Side.RIGHT)
    xs = [gap_x(gap, line) for gap in Gap]
    men = [0, SPLIT, 2 * SPLIT, 3.9, 99]
    assert all(a < x < b for a, x, b in zip(men, xs, men[1:], strict=False))
    assert gap_x(Gap.C, surface(FIVE, Side.RIGHT)) > 2 * SPLIT


@pytest.mark.parametrize("name", TECHNIQUES)
def test_a_shade_stands_in_or_beside_his_own_gap(name: str) -> None:
    """Nearer to his own gap than to any other; a head-up man is as near to two."""
    line = surface((*FIVE, end(3.9)), Side.RIGHT)
    x = technique_x(name, line)
    away = {gap: abs(gap_x(gap, line) - x) for gap in Gap}
    assert away[TECHNIQUES[name].gap] == pytest.approx(min(away.values()))


@pytest.mark.parametrize(("x", "gap"), [(0.5, "A"), (3.6, "C"), (4.9, "C"), (5.5, None)])
def test_a_place_on_the_line_has_its_gap(x: float, gap: str | None) -> None:
    found = gap_at(-x, surface(FIVE, Side.LEFT))
    assert (found.value if found else None) == gap
    assert gap_at(4.9, surface((*FIVE, end(3.9)), Side.RIGHT)) is Gap.D


@pytest.mark.parametrize("name", LINEBACKERS)
def test_a_linebacker_stands_over_the_lineman_of_his_number(name: str) -> None:
    line = surface(FIVE, Side.LEFT)
    assert technique_x(name, line) == technique_x(name.removesuffix("0"), line)


def test_the_words_name_techniques() -> None:
    assert set(WORDS.values()) <= set(TECHNIQUES)
    assert set(BOTH_SIDES) <= set(TECHNIQUES) | set(LINEBACKERS)
    assert GAPS["B gap"] is Gap.B


@given(st.sampled_from(sorted(TECHNIQUES)), st.floats(0.6, 1.9), st.booleans())
def test_left_is_right_in_a_mirror(name: str, split: float, tight: bool) -> None:
    men = tuple(lineman(n * split) for n in range(-2, 3))
    if tight:
        men += (end(2 * split + 1.3), end(-2 * split - 1.3))
    left, right = surface(men, Side.LEFT), surface(men, Side.RIGHT)
    assert technique_x(name, left) == pytest.approx(-technique_x(name, right))
    assert [gap_x(g, left) for g in Gap] == pytest.approx([-gap_x(g, right) for g in Gap])

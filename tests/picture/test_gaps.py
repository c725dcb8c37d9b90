"""Paths through the line of scrimmage keep to the gaps, and to their own side of a passer."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from picture.mirror import mirrored
from picture.sample_runs import RUNS, power
from stemline.football.play import Play
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Ending, Leg, Path, Point, polyline
from stemline.picture.frame.board import board, frame_of, shot
from stemline.picture.lines.leading import followed
from stemline.picture.men.hole import find_hole
from stemline.picture.men.symbols import place_men
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.ways.detours import Round
from stemline.picture.ways.gaps import clear, gap_at, through_gaps
from stemline.picture.ways.starts import behind_passer, ends_clear
from stemline.theme import Size, load_theme

THEME = load_theme()


def drawn(play: Play, size: Size = Size.FULL) -> tuple[Play, Board, dict[str, Symbol]]:
    seen = shot(play, size)
    on = board(frame_of((play,), size), seen, size, THEME)
    return seen.play, on, place_men(seen.play, on)


def line() -> list[Symbol]:
    _, _, symbols = drawn(power())
    return [s for s in symbols.values() if s.man.interior]


@given(st.floats(-2.5, 2.5), st.floats(-2.5, 2.5))
def test_a_path_comes_through_the_line_clear_of_every_lineman(start: float, end: float) -> None:
    men = line()
    path = through_gaps(Path(Point(start, -4.0), (Leg(Point(end, 4.0)),)), men, 0.1)
    assert clear(polyline(path), men, 0.08)
    assert (path.start, path.end) == (Point(start, -4.0), Point(end, 4.0))


def test_a_slanting_path_keeps_off_the_corners_of_the_centres_square() -> None:
    men = {s.man.label: s for s in line()}
    centre = men["C"]
    x = 1.7 * centre.edge
    path = Path(Point(x - 2.0, -2.0), (Leg(Point(x + 2.0, 2.0)),))
    made = polyline(through_gaps(path, men.values(), 0.02))
    corner = Point(0.9 * centre.edge, -0.9 * centre.edge)
    assert far_from(polyline(path), corner) < 0.1 * centre.edge
    assert far_from(made, corner) > 0.3 * centre.edge


def test_a_path_that_is_clear_stays_as_it_is() -> None:
    left, right = sorted(line(), key=lambda s: s.at.x)[:2]
    middle = (left.at.x + right.at.x) / 2
    for path in (
        Path(Point(middle, -4.0), (Leg(Point(middle, 4.0)),)),
        Path(Point(-9.0, -4.0), (Leg(Point(-9.0, 4.0)),)),
        Path(Point(-3.0, -1.0), (Leg(Point(3.0, -1.0)),)),
    ):
        assert through_gaps(path, line(), 0.1) == path


@given(st.floats(-8, 8))
def test_a_gap_is_beside_every_symbol(x: float) -> None:
    at = Point(gap_at(x, line(), 0.1), 0.0)
    assert clear((at, at), line(), 0.1 - 1e-6)


def test_leaders_run_in_lanes_of_their_own_beside_the_carrier() -> None:
    play, on, symbols = drawn(power())
    hole = find_hole(play, symbols, on)
    assert hole is not None and hole.lanes
    apart = sorted([0.0, *hole.lanes.values()])
    least = (on.weight("carry") + on.weight("block")) / 2
    assert all(b - a >= least for a, b in itertools.pairwise(apart) if 0.0 in (a, b))


@pytest.mark.parametrize("name", RUNS)
def test_the_mirrored_hole_has_mirrored_lanes(name: str) -> None:
    here, there = (find_hole(*_order(drawn(p))) for p in (RUNS[name], mirrored(RUNS[name])))
    assert (here is None) == (there is None)
    if here is not None and there is not None:
        assert {m: round(-x, 6) for m, x in there.lanes.items()} == {
            m: round(x, 6) for m, x in here.lanes.items()
        }


def _order(
    parts: tuple[Play, Board, dict[str, Symbol]],
) -> tuple[Play, dict[str, Symbol], Board]:
    play, on, symbols = parts
    return play, symbols, on


def test_a_man_who_follows_the_carrier_ends_where_he_joins_him() -> None:
    play, on, symbols = drawn(power())
    hole = find_hole(play, symbols, on)
    assert hole is not None
    after = Path(hole.path.start + Point(2.0, -1.0), hole.path.legs)
    ended = followed(after, hole, on, ())
    assert ended.end.y < after.end.y - 2.0 and ended.ending is Ending.RUN
    aside = Path(Point(6.0, -5.0), (Leg(Point(9.0, 4.0)),))
    assert followed(aside, hole, on, ()) == aside


def under_centre() -> tuple[Board, dict[str, Symbol]]:
    _, on, symbols = drawn(power())
    q = symbols["Q"]
    man = replace(q.man, snap=Point(0.0, -1.2))
    return on, {**symbols, "Q": replace(q, man=man, at=Point(0.0, -1.2))}


def test_a_back_passes_behind_a_quarterback_under_centre() -> None:
    on, symbols = under_centre()
    path = Path(Point(-2.0, -6.0), (Leg(Point(-0.5, -0.2)), Leg(Point(4.0, -1.8))))
    ways = [p for p in behind_passer(path, symbols, "R", on).corners if abs(p.x) < 0.6]
    floor = symbols["Q"].at.y - symbols["Q"].edge
    assert ways and all(p.y < floor for p in ways)


def test_a_dive_on_his_own_side_is_left_alone() -> None:
    on, symbols = under_centre()
    path = Path(Point(-2.0, -6.0), (Leg(Point(-0.6, -0.2)), Leg(Point(-0.6, 5.0))))
    assert behind_passer(path, symbols, "R", on) == path


@pytest.mark.parametrize(
    ("end", "expected"),
    [
        (Point(5.0, 3.0), Point(5.0, 3.0)),
        (Point(0.9, 3.0), Point(1.2, 3.0)),
        (Point(0.0, 3.0), Point(0.0, 1.8)),
    ],
)
def test_an_end_stands_clear_of_a_man(end: Point, expected: Point) -> None:
    """Beside him it moves away; in his middle the path stops short of him."""
    path = Path(Point(0.0, -5.0), (Leg(end),))
    kept = ends_clear(path, (Round(Point(0.0, 3.0), 1.5, 1.0),), 0.2)
    assert kept.end.distance(expected) < 1e-6

"""Where lines cross, and what is left of one with pieces cut out: against shapely's geometry."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, MultiPoint
from shapely import Point as Spot

from stemline.geometry.curves import split
from stemline.geometry.cutting import crossings, measure, part, parts
from stemline.geometry.paths import Curve, Leg, Line, Path, Point, Segment, segments

FINE = 200
"""Straight pieces for a turn: far finer than what is tested."""
NEAR = 0.02
"""Yards by which a turn in sixteen steps may miss the turn itself."""

spots = st.builds(
    Point,
    st.integers(-120, 120).map(lambda n: n / 8),
    st.integers(-40, 160).map(lambda n: n / 8),
)
reaches = st.sampled_from((0.0, 0.5, 2.0))


@st.composite
def lines(draw: st.DrawFn, bent: bool = True) -> tuple[Segment, ...]:
    """A path as it is drawn, its corners a yard or more apart."""
    points = draw(st.lists(spots, min_size=2, max_size=5))
    for a, b in pairwise(points):
        assume(a.distance(b) > 1.0)
    legs = tuple(Leg(p, draw(reaches) if bent else 0.0) for p in points[1:])
    made = segments(Path(points[0], legs))
    assume(made)
    return made


def fine(pieces: tuple[Segment, ...]) -> LineString:
    points = [pieces[0].start]
    for piece in pieces:
        if isinstance(piece, Curve):
            points += (piece.at(i / FINE) for i in range(1, FINE))
        points.append(piece.end)
    return LineString([(p.x, p.y) for p in points])


@given(lines())
def test_a_measured_line_is_as_long_as_the_line(pieces: tuple[Segment, ...]) -> None:
    assert measure(pieces).length == pytest.approx(fine(pieces).length, rel=0.002)


@given(lines(bent=False), lines(bent=False))
def test_straight_lines_cross_where_shapely_says(
    one: tuple[Segment, ...], other: tuple[Segment, ...]
) -> None:
    shared = fine(one) & fine(other)
    assume(shared.is_empty or isinstance(shared, (Spot, MultiPoint)))
    ends = [p for line in (one, other) for p in (line[0].start, line[-1].end)]
    theirs = [
        Point(p.x, p.y)
        for p in getattr(shared, "geoms", [] if shared.is_empty else [shared])
        if all(Point(p.x, p.y).distance(end) > 1e-4 for end in ends)
    ]
    ours = [c.at for c in crossings(measure(one), measure(other))]
    for at in ours:
        assert Spot(at.x, at.y).distance(shared) < 1e-6
    for at in theirs:
        assert min((at.distance(p) for p in ours), default=9.0) < 1e-4 or _flat(one, other, at)


def _flat(one: tuple[Segment, ...], other: tuple[Segment, ...], at: Point) -> bool:
    """Whether pieces of the two through a place run along each other."""
    ways = [
        [p.end - p.start for p in line if fine((p,)).distance(Spot(at.x, at.y)) < 1e-6]
        for line in (one, other)
    ]
    return any(
        abs(a.x * b.y - a.y * b.x) <= 0.021 * a.distance(Point(0, 0)) * b.distance(Point(0, 0))
        for a in ways[0]
        for b in ways[1]
    )


@given(lines(), lines())
def test_turns_cross_near_where_shapely_says(
    one: tuple[Segment, ...], other: tuple[Segment, ...]
) -> None:
    shapes = fine(one), fine(other)
    a, b = measure(one), measure(other)
    for c in crossings(a, b):
        for shape, line, far in zip(shapes, (a, b), (c.along_a, c.along_b), strict=True):
            assert shape.distance(Spot(c.at.x, c.at.y)) < NEAR
            piece, t = line.at(far)
            here = split(line.pieces[piece], t)[0].end
            assert here.distance(c.at) < NEAR


@given(lines(), st.lists(st.tuples(st.floats(0, 1), st.floats(0, 1)), max_size=4))
def test_what_is_left_and_what_is_cut_are_the_whole(
    pieces: tuple[Segment, ...], shares: list[tuple[float, float]]
) -> None:
    line = measure(pieces)
    gaps = [(min(s) * line.length, max(s) * line.length) for s in shares]
    left = parts(line, gaps)
    cut = _together(gaps)
    assert sum(b - a for a, b in left) + sum(b - a for a, b in cut) == pytest.approx(line.length)
    for span in left:
        kept = [piece for piece, _ in part(line, span)]
        ends = [far for _, far in part(line, span)]
        if span[1] - span[0] < 1e-4:
            continue
        assert fine(tuple(kept)).length == pytest.approx(span[1] - span[0], abs=NEAR)
        assert all(a.end.distance(b.start) < 1e-9 for a, b in pairwise(kept))
        assert ends == sorted(ends) and ends[-1] == pytest.approx(span[1])


def _together(gaps: list[tuple[float, float]]) -> list[tuple[float, float]]:
    made: list[tuple[float, float]] = []
    for low, high in sorted(gaps):
        if made and low <= made[-1][1]:
            made[-1] = (made[-1][0], max(high, made[-1][1]))
        else:
            made.append((low, high))
    return made


ACROSS = (Line(Point(-5, 0), Point(5, 0)),)


def test_a_line_that_ends_on_another_does_not_cross_it() -> None:
    onto = measure((Line(Point(0, 5), Point(0, 0)),))
    assert crossings(measure(ACROSS), onto) == ()
    past = measure((Line(Point(0, 5), Point(0, -0.1)),))
    assert [c.at for c in crossings(measure(ACROSS), past)] == [Point(0, 0)]


def test_lines_on_each_other_do_not_cross() -> None:
    assert crossings(measure(ACROSS), measure((Line(Point(-3, 0), Point(9, 0)),))) == ()


def test_a_crossing_at_a_corner_is_one() -> None:
    bent = (Line(Point(-2, -3), Point(0, 0)), Line(Point(0, 0), Point(2, 3)))
    (found,) = crossings(measure(ACROSS), measure(bent))
    assert found.along_a == pytest.approx(5.0)


def test_a_line_crosses_itself_once() -> None:
    corners = (Point(0, 0), Point(0, 4), Point(3, 4), Point(3, 2), Point(-3, 2))
    loop = tuple(Line(a, b) for a, b in pairwise(corners))
    line = measure(loop)
    (found,) = crossings(line, line)
    assert found.at == Point(0, 2)
    assert (found.along_a, found.along_b) == (2.0, 12.0)

"""The route library: every route runs the same from both sides, at any depth, in bounds.

The depths are common practice for high schools, with no published source.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from together import together

from stemline.football.field import BallSpot, Field, Side
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import Break, Depth, Lateral, Route, RunTo, Settle, Up
from stemline.football.offence.tracing import SIDELINE_ROOM, Runner, called_depth, trace
from stemline.football.rulebook.codes import CODES, Code
from stemline.geometry.paths import Ending, Path, Point, polyline

NAMES = sorted(LIBRARY)
CODE = CODES["canadian amateur"]


def field(code: Code = CODE, spot: BallSpot = BallSpot.MIDDLE) -> Field:
    return Field(code, spot, code.numbers_from_sideline.value)


def run(name: str, x: float, y: float = 0.0, depth: float | None = None) -> Path:
    route = LIBRARY[name]
    out = Side.RIGHT if x > 0 else Side.LEFT
    runner = Runner(Point(x, y), out, field())
    return trace(route.strokes, called_depth(route, depth), runner)


def test_the_library_is_a_library() -> None:
    assert len(LIBRARY) >= 30
    assert all(route.name == name for name, route in LIBRARY.items())
    assert all(route.strokes and route.source for route in LIBRARY.values())


@together("name", NAMES)
@together(("x", "y"), [(20, 0), (8, -1), (2, -5)], ids=["wide", "slot", "back"])
def test_from_both_sides_a_route_is_its_own_mirror(name: str, x: float, y: float) -> None:
    right, left = run(name, x, y), run(name, -x, y)
    assert right.legs
    assert [round(p.x, 9) for p in left.corners] == [round(-p.x, 9) for p in right.corners]
    assert [p.y for p in left.corners] == [p.y for p in right.corners]
    assert [leg.reach for leg in left.legs] == pytest.approx([leg.reach for leg in right.legs])
    assert left.ending is right.ending


def follows(route: Route) -> bool:
    """Whether the called depth moves any stroke of a route."""
    depths = [
        stroke.to if isinstance(stroke, Up) else stroke.depth
        for stroke in route.strokes
        if isinstance(stroke, Up | RunTo)
    ]
    return any(depth is not None and depth.called for depth in depths)


@together("name", [n for n in NAMES if follows(LIBRARY[n])])
def test_a_called_depth_is_honoured(name: str) -> None:
    """Two yards more called is two yards more at the turn that is taught there."""
    route = LIBRARY[name]
    before = {round(p.y, 6) for p in run(name, 12, -1).corners[1:]}
    after = {round(p.y, 6) for p in run(name, 12, -1, depth=route.depth + 2).corners[1:]}
    moved = {round(y + 2, 6) for y in before}
    assert after != before
    assert after & moved
    assert run(name, 12, -1, depth=route.depth) == run(name, 12, -1)


@pytest.mark.parametrize("name", [n for n in NAMES if not follows(LIBRARY[n])])
def test_the_few_routes_that_have_one_depth_only(name: str) -> None:
    assert name in {"now", "swing", "angle", "slow screen"}, (
        f"no stroke of {name} follows its depth: say CALLED in one of them, as `Up(CALLED)`, or "
        "name it here"
    )
    assert not LIBRARY[name].taught, f"{name} has one depth: say taught=False"


@together("name", [n for n in NAMES if LIBRARY[n].taught])
def test_a_depth_that_is_printed_is_on_the_path(name: str) -> None:
    route = LIBRARY[name]
    turns = run(name, 12, -1).corners[1:]
    assert any(abs(p.y - route.depth) < 0.01 for p in turns)


@together(
    ("name", "depth"),
    [
        ("hitch", 6),
        ("slant", 4),
        ("quick out", 5),
        ("stick", 6),
        ("cross", 5),
        ("high cross", 6),
        ("sit", 8),
        ("curl", 12),
        ("out", 10),
        ("dig", 12),
        ("comeback", 14),
        ("corner", 10),
        ("post", 12),
        ("skinny post", 8),
        ("over", 16),
    ],
)
def test_default_depths(name: str, depth: float) -> None:
    """Common practice, no published source."""
    assert LIBRARY[name].depth == depth


@together(
    ("number", "name"),
    [("0", "hitch"), ("2", "slant"), ("3", "comeback"), ("4", "curl"), ("5", "out"), ("6", "dig"),
     ("7", "corner"), ("9", "go")],
)  # fmt: skip
def test_the_numbered_tree_is_the_named_routes(number: str, name: str) -> None:
    assert run(number, 15) == run(name, 15)


def test_even_numbers_break_in_and_odd_numbers_break_out() -> None:
    """Common practice, no published source; a tree numbered otherwise is written as routes."""
    for number in range(1, 9):
        at = run(str(number), 15).corners
        turn = at[-1].x - at[0].x
        assert (turn < 0) == (number % 2 == 0), number


INSIDE = ["slant", "dig", "in", "post", "skinny post", "bender", "curl", "cross", "over", "sit"]
OUTSIDE = ["out", "quick out", "speed out", "corner", "comeback", "flat", "arrow", "sail", "fade"]


@together("name", INSIDE)
def test_routes_that_end_inside_of_where_they_start(name: str) -> None:
    assert run(name, 15).end.x < 15


@together("name", OUTSIDE)
def test_routes_that_end_outside_of_where_they_start(name: str) -> None:
    assert run(name, 15).end.x > 15


@together(
    ("name", "settles"),
    [("hitch", True), ("curl", True), ("sit", True), ("stick", True), ("cross and sit", True),
     ("dig", False), ("go", False), ("cross", False), ("return", False), ("shoot", False)],
)  # fmt: skip
def test_who_settles_and_who_runs_on(name: str, settles: bool) -> None:
    assert (run(name, 12, -1).ending is Ending.SETTLE) is settles


@pytest.mark.parametrize("x", [5, 8, 12, 20])
def test_a_cross_goes_over_to_the_far_tackle_and_on(x: float) -> None:
    """Common practice, no published source: a shallow crosser aims past the far tackle."""
    for name, depth in (("cross", 5), ("high cross", 6)):
        path = run(name, x)
        assert path.end == Point(-(2.6 + 6), depth)
        climbing = [p.y for p in path.corners]
        assert climbing == sorted(climbing)


@pytest.mark.parametrize("x", [5, 8, 12])
def test_a_return_goes_in_toward_the_ball_and_comes_back(x: float) -> None:
    path = run("return", x)
    assert 0 < min(p.x for p in path.corners) < 2.6
    assert path.end.x == pytest.approx(2.6 + 5)


def test_a_settle_over_the_ball_ends_straight_over_it() -> None:
    for x in (5.0, 8.0, 12.0, 20.0, -6.0):
        assert run("sit", x).end == Point(0, 8)


def test_a_wheel_turns_up_the_sideline_after_it_has_gone_flat() -> None:
    path = run("wheel", 2, -5)
    assert path.corners[-1].x == path.corners[-2].x > path.start.x
    assert path.end.y == 18


def test_routes_out_of_the_backfield_start_there() -> None:
    for name in ("shoot", "swing", "wheel", "angle", "check", "leak"):
        path = run(name, 2, -5)
        assert path.start == Point(2, -5)
        assert path.legs


def test_screens_are_caught_behind_the_line() -> None:
    """A pass that does not cross the line frees the men in front: caught behind it."""
    for name in ("bubble", "tunnel", "slow screen"):
        assert run(name, 10, -1).end.y < 0


names = st.sampled_from(NAMES)
xs = st.floats(-15, 15).filter(lambda x: abs(x) > 0.5)


@settings(max_examples=50, deadline=None)
@given(
    names,
    st.sampled_from(list(CODES.values())),
    st.sampled_from(list(BallSpot)),
    st.floats(0.9, 60),
    st.floats(-8, 0),
    st.one_of(st.none(), st.floats(2, 25)),
    st.sampled_from(list(Side)),
)
def test_every_route_starts_at_its_man_and_stays_in_bounds(
    name: str, code: Code, spot: BallSpot, across: float, y: float, depth: float | None, out: Side
) -> None:
    here = field(code, spot)
    left, right = here.sideline(Side.LEFT), here.sideline(Side.RIGHT)
    start = Point(left + min(across, right - left - 0.9), y)
    route = LIBRARY[name]
    path = trace(route.strokes, called_depth(route, depth), Runner(start, out, here))
    assert path.start == start
    room = SIDELINE_ROOM - 1e-9
    assert all(left + room <= p.x <= right - room for p in polyline(path)[1:])
    assert (path.ending is Ending.SETTLE) == any(isinstance(s, Settle) for s in route.strokes)


@settings(max_examples=50, deadline=None)
@given(names, xs, st.floats(-8, 0), st.floats(2, 25))
def test_no_leg_goes_nowhere_and_no_turn_is_sharper_than_it_can_be(
    name: str, x: float, y: float, depth: float
) -> None:
    path = run(name, x, y, depth)
    corners = path.corners
    assert all(a.distance(b) >= 0.05 for a, b in pairwise(corners))
    assert all(leg.reach in (0.0, 0.5, 2.0) for leg in path.legs)


def test_breaks_are_said_from_the_runners_own_side() -> None:
    for lateral in Lateral:
        way = -1 if lateral is Lateral.IN else 1
        for side in Side:
            runner = Runner(Point(side.value * 10, 0), side, field())
            path = trace((Up(Depth(8)), Break(lateral, 5)), 0, runner)
            assert (path.end.x - path.start.x) * side.value == pytest.approx(5 * way)

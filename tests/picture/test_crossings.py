"""Who breaks whom where two lines cross, and what a gap never takes."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from stemline.geometry.box import Box
from stemline.picture.lines.crossings import break_lines
from stemline.picture.lines.paces import Pace
from stemline.picture.lines.route_lines import arrowed
from stemline.picture.paper.surface import Board
from stemline.picture.scene.scene import Disc, Item, Layer, Line, Point, Stroke
from stemline.source import NOWHERE
from stemline.theme import Size, load_theme

THEME = load_theme()
SCALE = 10.0
BOARD = Board(Box(-20, -20, 20, 20), SCALE, Size.FULL, THEME)
WHITE = BOARD.mark("cross")
HEAD = BOARD.mark("head")
STUB, LONGEST, SHARE, STRETCH = 1.5 * HEAD, 1.7 * HEAD, 0.3, 1.75
HALF = BOARD.weight("route") / 2
EARLY, LATE = Pace("A", 0.0, 1.0), Pace("B", 2.0, 3.0)


def line(*points: tuple[float, float], style: str = "route", name: str = "") -> Stroke:
    ends = [Point(x, y) for x, y in points]
    pieces = tuple(Line(a, b) for a, b in pairwise(ends))
    return Stroke(pieces, style, (), NOWHERE, name)


def arrow(*points: tuple[float, float], name: str = "") -> Stroke:
    stroke = line(*points, name=name)
    pieces, head = arrowed(stroke.segments, BOARD)
    return replace(stroke, segments=pieces, head=head)


def broken(*items: Item, paces: dict[str, Pace] | None = None) -> list[Stroke]:
    """The strokes of one layer of routes, their lines broken."""
    moments = {"a": EARLY, "b": LATE} if paces is None else paces
    (layer,) = break_lines((Layer("routes", items),), moments, BOARD)
    return [item for item in layer.items if isinstance(item, Stroke)]


def gaps(stroke: Stroke) -> list[tuple[Point, Point]]:
    pairs = zip(stroke.segments, stroke.segments[1:], strict=False)
    return [(a.end, b.start) for a, b in pairs if a.end.distance(b.start) > 1e-9]


ACROSS = line((-5, 0), (5, 0), name="a")
UP = line((0, -5), (0, 5), name="b")


def test_the_man_who_is_there_later_is_whole() -> None:
    first, then = broken(ACROSS, UP)
    assert len(gaps(first)) == 1 and not gaps(then)
    first, then = broken(ACROSS, UP, paces={"a": LATE, "b": EARLY})
    assert not gaps(first) and len(gaps(then)) == 1


def test_a_gap_is_as_wide_as_the_other_line_and_white_on_both_sides() -> None:
    ((low, high),) = gaps(broken(ACROSS, UP)[0])
    assert (low.x, high.x) == pytest.approx((-HALF - WHITE, HALF + WHITE))


def slanted(degrees: float, x: float = 0.0, far: float = 5.0, name: str = "a") -> Stroke:
    """A line through (x, 0), ``far`` yards to both sides."""
    way = Point(math.cos(math.radians(degrees)), math.sin(math.radians(degrees))).scaled(far)
    return line((x - way.x, -way.y), (x + way.x, way.y), name=name)


@given(st.floats(22, 158), st.floats(-2, 2))
def test_a_gap_is_centred_and_leaves_its_white_at_any_angle(degrees: float, at: float) -> None:
    over = line((-9, 0), (9, 0), name="b")
    first, then = broken(slanted(degrees, at), over)
    ((low, high),) = gaps(first)
    assert not gaps(then)
    crossing = Point(at, 0)
    assert low.distance(crossing) == pytest.approx(high.distance(crossing))
    most = 2 * STRETCH * (2 * HALF + WHITE)
    assert low.distance(high) <= most + 1e-9
    corner = abs(high.y) - HALF * abs(math.cos(math.radians(degrees)))
    if low.distance(high) < most - 1e-9:
        assert corner == pytest.approx(HALF + WHITE)
    assert corner > HALF + WHITE / 5


@given(st.floats(2, 19.9), st.sampled_from((1, -1)))
def test_lines_that_run_nearly_along_each_other_just_cross(degrees: float, side: int) -> None:
    found = broken(slanted(side * degrees), line((-9, 0), (9, 0), name="b"))
    assert not any(gaps(s) for s in found)


def test_at_the_same_moment_the_line_drawn_later_is_whole() -> None:
    same = {"a": EARLY, "b": replace(EARLY, start=0.004, end=1.004)}
    assert [len(gaps(s)) for s in broken(UP, ACROSS, paces=same)] == [1, 0]
    assert [len(gaps(s)) for s in broken(ACROSS, UP, paces=same)] == [1, 0]


@pytest.mark.parametrize("style", ["carry", "bar"])
def test_the_carrier_and_bars_are_whole_though_they_are_first(style: str) -> None:
    first, then = broken(replace(ACROSS, style=style), UP)
    assert not gaps(first) and len(gaps(then)) == 1


def test_a_bar_on_the_carrier_breaks_nothing() -> None:
    found = broken(replace(ACROSS, style="carry"), replace(UP, style="bar"))
    assert not any(gaps(s) for s in found)


def test_what_is_before_the_snap_and_a_defenders_line_give_way() -> None:
    (duties, routes, motions) = break_lines(
        (
            Layer("duties", (line((-3, -5), (-3, 5), style="drop"),)),
            Layer("routes", (ACROSS,)),
            Layer("motions", (line((3, -5), (3, 5), style="motion", name="b"),)),
        ),
        {"a": EARLY, "b": LATE},
        BOARD,
    )
    counts = [len(gaps(i)) for x in (duties, routes, motions) for i in x.items
              if isinstance(i, Stroke)]  # fmt: skip
    assert counts == [1, 0, 1]


def test_no_path_is_broken_for_an_arrow_of_a_defender_or_of_a_play_that_was() -> None:
    head = arrow((-5, 0), (0.3, 0))
    for name, style in (("duties", "drop"), ("before", "before")):
        layers = Layer(name, (replace(head, style=style),)), Layer("routes", (UP,))
        found = break_lines(layers, {"b": LATE}, BOARD)[1].items
        assert [gaps(i) for i in found if isinstance(i, Stroke)] == [[]]


def test_the_one_man_shown_is_whole() -> None:
    first, then = broken(ACROSS, replace(UP, style="route-pale"))
    assert not gaps(first) and len(gaps(then)) == 1


def test_a_mans_own_path_is_whole_where_a_branch_of_his_crosses_it() -> None:
    paces = {"a": EARLY, "b": Pace("A", 2.0, 3.0, base=False)}
    first, then = broken(ACROSS, replace(UP, style="branch"), paces=paces)
    assert not gaps(first) and len(gaps(then)) == 1
    paces = {"a": EARLY, "b": Pace("B", 2.0, 3.0, base=False)}
    first, then = broken(ACROSS, replace(UP, style="branch"), paces=paces)
    assert len(gaps(first)) == 1 and not gaps(then)


@given(st.floats(0.02, 0.99))
def test_an_arrowhead_is_never_broken_but_breaks_as_wide_as_it_is_there(share: float) -> None:
    """It is of the man who is there first, and still the other has the gap."""
    head = arrow((-5, 0), (share * HEAD, 0), name="a")
    first, then = broken(head, UP)
    assert first.segments == head.segments
    ((low, high),) = gaps(then)
    wide = head.head[1].distance(head.head[3]) / 2 * share
    assert high.distance(low) == pytest.approx(2 * (max(wide, HALF) + WHITE))


@given(st.floats(40, 140), st.floats(0.1, 0.9))
def test_a_gap_at_an_arrowhead_is_clear_of_it_at_any_angle(degrees: float, share: float) -> None:
    head = arrow((-5, 0), (share * HEAD, 0), name="b")
    under, _ = broken(slanted(degrees), head)
    shape = Polygon([(p.x, p.y) for p in head.head])
    for piece in under.segments:
        ends = [(p.x, p.y) for p in (piece.start, piece.end)]
        drawn = LineString(ends).buffer(HALF, cap_style="flat")
        assert drawn.distance(shape) >= WHITE / 5
    ((low, high),) = gaps(under)
    assert low.distance(high) <= LONGEST + 1e-9


@given(st.floats(21, 159), st.floats(-0.9, 0.9))
def test_a_dot_is_never_broken_and_has_its_white_round_it(degrees: float, off: float) -> None:
    radius = BOARD.mark("dot")
    x = off * radius
    dot, settles = Disc(Point(0, 0), radius, "dot", NOWHERE), line((-5, 0), (0, 0), name="a")
    first, then = broken(settles, dot, slanted(degrees, x, name="b"))
    ((low, high),) = gaps(then)
    assert not gaps(first)
    for end in (low, high):
        assert end.distance(Point(0, 0)) == pytest.approx(radius + WHITE)


def test_an_arrow_that_only_touches_a_line_lies_on_it() -> None:
    touching = arrow((-5, 0), (-HALF, 0), name="a")
    assert [len(gaps(s)) for s in broken(touching, UP)] == [0, 1]
    short = arrow((-5, 0), (-4 * HALF, 0), name="a")
    assert [len(gaps(s)) for s in broken(short, UP)] == [0, 0]


def test_a_turn_is_never_broken() -> None:
    bent = line((-5, -5), (0, 0), (5, -5), name="a")
    over = line((0.1, -9), (0.1, 9), name="b")
    assert [len(gaps(s)) for s in broken(bent, over)] == [0, 1]
    straight = line((-5, 0.1), (0, 0), (5, 0.1), name="a")
    assert [len(gaps(s)) for s in broken(straight, over)] == [1, 0]


@pytest.mark.parametrize("end", [-1, 1])
def test_no_stub_is_left_at_an_end(end: int) -> None:
    """Where there is no room for a gap the two just cross."""
    room = HALF + WHITE + STUB
    for far, counts in ((room + 0.01, [1, 0]), (room - 0.01, [0, 0])):
        first = line((-5 if end > 0 else -far, 0), (far if end > 0 else 5, 0), name="a")
        assert [len(gaps(s)) for s in broken(first, UP)] == counts


@given(st.floats(0.2, 3))
def test_gaps_with_no_room_between_them_are_one_that_is_not_long(apart: float) -> None:
    others = [line((x, -5), (x, 5), name="b") for x in (-apart / 2, apart / 2)]
    found = gaps(broken(ACROSS, *others)[0])
    alone = 2 * (HALF + WHITE)
    assert len(found) == (2 if apart - alone >= STUB else 1)
    long = apart + alone
    expected = long if long <= LONGEST else alone
    assert expected <= LONGEST
    assert all(low.distance(high) == pytest.approx(expected) for low, high in found)


def test_no_gap_ends_on_a_line_that_just_crosses() -> None:
    """Two that are too near for two gaps and too far apart for one: neither has any."""
    for x, count in ((0.3, 1), (0.52, 0), (0.8, 1), (3, 2)):
        others = [slanted(60, sign * x / 2, 9, "b") for sign in (-1, 1)]
        assert len(gaps(broken(ACROSS, *others)[0])) == count


@given(
    st.floats(0.5, 10),
    st.lists(st.tuples(st.floats(0, 1), st.floats(5, 175)), min_size=1, max_size=6),
)
def test_a_broken_line_is_read_as_one(far: float, others: list[tuple[float, float]]) -> None:
    way = line((0, 0), (far, 0), name="a")
    over = [slanted(degrees, share * far, name="b") for share, degrees in others]
    first = broken(way, *over)[0]
    found = [low.distance(high) for low, high in gaps(first)]
    assert all(gap <= LONGEST + 1e-9 for gap in found)
    assert sum(found) <= SHARE * far + 1e-9
    if found:
        assert all(s.start.distance(s.end) >= STUB - 1e-9 for s in first.segments)


def test_a_line_that_is_itself_broken_there_breaks_nothing() -> None:
    """Three through one place: the last breaks the two, and they do not break each other."""
    paces = {"a": EARLY, "b": LATE, "c": Pace("C", 4.0, 5.0)}
    last = line((-4, -4), (4, 4), name="c")
    first, then, whole = broken(ACROSS, UP, last, paces=paces)
    assert not gaps(whole)
    alone = broken(ACROSS, last, paces=paces)[0]
    assert gaps(first) == gaps(alone) and len(gaps(then)) == 1


def test_a_line_breaks_itself_where_it_passes_first() -> None:
    loop = line((0, 0), (0, 4), (3, 4), (3, 2), (-3, 2), name="a")
    ((low, high),) = gaps(broken(loop)[0])
    assert low.x == high.x == 0 and (low.y + high.y) / 2 == pytest.approx(2)


def test_the_last_dash_before_a_gap_is_no_dot() -> None:
    dash, white = (d / SCALE for d in THEME.look(Size.FULL).pens["branch"].dash)
    low = -HALF - WHITE
    for step in range(40):
        start = -5 - step * (dash + white) / 40
        dashed = line((start, 0), (5, 0), style="branch", name="a")
        drawn = broken(dashed, UP)[0].segments[0]
        rest = drawn.start.distance(drawn.end) % (dash + white)
        assert rest >= dash / 2 - 1e-6 or rest < 1e-6 or rest > dash + white - 1e-6
        assert abs(drawn.end.x - low) <= dash / 4 + 1e-6


def test_a_broken_line_has_a_moment_for_each_of_its_ends() -> None:
    first = broken(ACROSS, UP)[0]
    half = (HALF + WHITE) / 10
    assert first.times == pytest.approx((0.0, 0.5 - half, 0.5 + half, 1.0))
    assert broken(line((0, 0), (1, 0), (4, 0), name="a"))[0].times == pytest.approx((0, 0.25, 1))


def test_a_line_that_is_nobodys_way_has_no_name() -> None:
    (stroke,) = broken(replace(ACROSS, name="nobody"))
    assert (stroke.name, stroke.times) == ("", ())


def test_other_strokes_are_left_as_they_are() -> None:
    items = (line((-5, 0), (5, 0), style="leader"), line((0, -5), (0, 5), style="mesh"))
    layer = Layer("notes", items)
    assert break_lines((layer,), {}, BOARD) == (layer,)

"""Room between men: who runs into whom, who stands in whose window, and what is claimed."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from football.timed import clocked, family, line, plays
from stemline.football.play import Claim, Play
from stemline.football.timing.clock import ReadClock, Verdict
from stemline.football.timing.running import Timeline
from stemline.football.timing.space import (
    BRUSH,
    COLLIDE,
    CROWD,
    HIGH_LOW,
    SPAN,
    STRETCH,
    TRIANGLE,
    Measured,
    Meeting,
    MenCross,
    crossings,
    crowds,
    measured,
    meeting,
)
from stemline.geometry.paths import Point
from stemline.source import NOWHERE


def crossers(apart: float, later: float = 0.0) -> dict[str, Timeline]:
    """Two men who cross over the ball on level paths, ``later`` seconds after each other."""
    return {
        "H": line((8, 5), (-8, 5)),
        "W": line((-8, 5 - apart), (8, 5 - apart), start=0.1 + later),
    }


def only(men: dict[str, Timeline]) -> MenCross:
    (found,) = crossings(men)
    return found


# Crossing men.


def test_crossers_at_one_depth_and_one_time_collide() -> None:
    found = only(crossers(0))
    assert found.meeting is Meeting.COLLIDE
    assert found.apart == pytest.approx(0, abs=0.15)
    assert found.at.distance(Point(0, 5)) < 0.15


def test_a_yard_between_them_is_a_brush() -> None:
    found = only(crossers(1))
    assert found.meeting is Meeting.BRUSH
    assert found.apart == pytest.approx(1, abs=0.02)
    assert (found.over, found.under) == ("H", "W")


def test_crossers_who_are_far_apart_are_loose_and_then_not_said_to_cross() -> None:
    assert only(crossers(3)).meeting is Meeting.LOOSE
    assert crossings(crossers(4)) == ()


def test_the_one_who_comes_later_makes_room() -> None:
    def men(later: float) -> dict[str, Timeline]:
        return {"H": line((8, 2), (-8, 8)), "W": line((-8, 2), (8, 8), start=0.1 + later)}

    together, after = only(men(0)), only(men(0.4))
    assert together.meeting is Meeting.COLLIDE
    assert after.apart > together.apart + 0.5
    assert after.time > together.time


@pytest.mark.parametrize(
    ("apart", "kind"),
    [
        (COLLIDE - 0.01, Meeting.COLLIDE),
        (COLLIDE, Meeting.BRUSH),
        (BRUSH, Meeting.BRUSH),
        (BRUSH + 0.01, Meeting.LOOSE),
    ],
)
def test_the_limits_of_a_meeting(apart: float, kind: Meeting) -> None:
    assert meeting(apart) is kind


def test_men_in_a_stack_who_part_to_either_side_do_not_meet() -> None:
    def men(behind: float) -> dict[str, Timeline]:
        return {
            "H": line((5, 0), (5, 3), (12, 5)),
            "S": line((5 + behind, -2), (3, 3), (-3, 6)),
        }

    assert crossings(men(1)) == ()
    assert crossings(men(2)) != ()


def test_men_who_run_side_by_side_do_not_cross() -> None:
    assert crossings({"H": line((5, 0), (5, 15)), "S": line((8, 0), (8, 15))}) == ()


@given(
    st.floats(4, 12), st.floats(4, 12), st.floats(2, 12), st.floats(2, 12), st.floats(0, 0.5)
)  # fmt: skip
def test_a_mirror_changes_no_meeting(
    left: float, right: float, one: float, two: float, later: float
) -> None:
    def men(side: int) -> dict[str, Timeline]:
        return {
            "H": line((right * side, 0), (-left * side, one)),
            "W": line((-left * side, 0), (right * side, two), start=0.1 + later),
        }

    here, there = crossings(men(1)), crossings(men(-1))
    assume(here)
    assert [(c.over, c.under, c.meeting) for c in here] == [
        (c.over, c.under, c.meeting) for c in there
    ]
    for a, b in zip(here, there, strict=True):
        assert a.apart == pytest.approx(b.apart, abs=1e-6)
        assert a.at.x == pytest.approx(-b.at.x, abs=1e-6)


def test_the_bundled_crossers_brush_and_never_collide() -> None:
    """He runs off his heels: common practice, no published source."""
    for made in plays(family()):
        run = {made.assignment(c.over).role: c for c in crossings(clocked(made).men)}
        assert all(c.meeting is not Meeting.COLLIDE for c in run.values()), made.call.spoken
    plain = clocked(next(p for p in plays(family()) if p.call.spoken == "Three Two Right Crossers"))
    (met,) = (c for c in crossings(plain.men) if {c.over, c.under} == {"H", "W"})
    assert met.meeting is Meeting.BRUSH and met.over == "H"


# Two men in one window.


def sitting(*places: tuple[float, float]) -> dict[str, Timeline]:
    """Men who sit: the first where the first read of the family is thrown."""
    labels = ("R", "A", "B")
    return {
        label: line((x, y - 6), (x, y), settle=True)
        for label, (x, y) in zip(labels, places, strict=False)
    }


def thrown_at(x: float, y: float, partner: str = "") -> ReadClock:
    """A clock with one read, caught at a place."""
    clock = clocked(plays(family())[0])
    first = clock.reads[0]
    look = replace(
        first, at=Point(x, y), arrives=4.0, read=replace(first.read, partner_man=partner)
    )
    return replace(clock, reads=(look,))


def test_a_man_beside_the_man_who_is_thrown_to_makes_a_crowd() -> None:
    men = sitting((0, 8), (1.5, 8), (6, 8))
    (crowd,) = crowds(replace(thrown_at(0, 8), men=men))
    assert crowd.other == "A"
    assert crowd.apart == pytest.approx(1.5)


def test_two_yards_are_room_enough() -> None:
    assert crowds(replace(thrown_at(0, 8), men=sitting((0, 8), (CROWD, 8)))) == ()


def test_a_man_looked_at_in_the_same_glance_is_no_crowd() -> None:
    men = sitting((0, 8), (1.5, 8))
    assert crowds(replace(thrown_at(0, 8, partner="A"), men=men)) == ()


def test_a_throw_out_of_reach_has_no_crowd() -> None:
    clock = replace(thrown_at(0, 8), men=sitting((0, 8), (1.5, 8)))
    far = replace(clock.reads[0], verdict=Verdict.TOO_FAR)
    assert crowds(replace(clock, reads=(far,))) == ()


# Claims.


def claimed(kind: str, *points: tuple[float, float]) -> Measured:
    """A claim of places that nobody reads: measured as it is drawn."""
    made = plays(family())[0]
    names = tuple(f"place {n}" for n in range(len(points)))
    claim = Claim(kind, names, tuple(Point(x, y) for x, y in points), "", NOWHERE)
    play: Play = replace(made, claims=(claim,))
    (found,) = measured(play, clocked(play))
    return found


@pytest.mark.parametrize(
    ("points", "least"),
    [
        # The corner over the longest side: twice the area, 24, over 6.
        (((0, 0), (6, 0), (3, 4)), 4.0),
        # Legs 3 and 4: twice the area, 12, over the hypotenuse 5.
        (((0, 0), (3, 0), (0, 4)), 2.4),
        (((0, 0), (5, 5), (10, 10)), 0.0),
        (((3, 4), (3, 4), (3, 4)), 0.0),
    ],
)
def test_a_triangle_is_as_good_as_its_flattest_corner(
    points: tuple[tuple[float, float], ...], least: float
) -> None:
    found = claimed("triangle", *points)
    assert found.least == pytest.approx(least)
    assert found.holds == (least >= TRIANGLE)
    assert f"{least:.1f} yards" in found.words


@pytest.mark.parametrize(("wide", "holds"), [(SPAN, True), (SPAN + 0.5, False), (40.0, False)])
def test_a_triangle_across_the_field_is_none(wide: float, holds: bool) -> None:
    """A quarterback sees three men in one glance: common practice, no published source."""
    found = claimed("triangle", (0, 0), (wide, 0), (wide / 2, 8))
    assert found.holds is holds
    assert found.wish == ("1.8" if holds else "at most 20")


@pytest.mark.parametrize(("high", "holds"), [(3 + HIGH_LOW, True), (2.9 + HIGH_LOW, False)])
def test_a_high_low_is_the_yards_between_them(high: float, holds: bool) -> None:
    found = claimed("high-low", (10, high), (4, 3))
    assert found.least == pytest.approx(high - 3)
    assert found.holds is holds


def test_a_high_man_who_is_under_the_low_one_is_no_high_low() -> None:
    found = claimed("high-low", (0, 4), (0, 9))
    assert found.least == pytest.approx(-5) and not found.holds


def test_a_stretch_is_its_narrowest_gap_in_any_order() -> None:
    found = claimed("stretch", (9, 5), (-2, 6), (3, 2))
    assert found.least == pytest.approx(5)
    assert found.holds and found.wanted == STRETCH
    assert not claimed("stretch", (9, 5), (4.5, 6)).holds


def test_the_claim_of_the_family_holds_in_every_dress() -> None:
    for made in plays(family()):
        (shape,) = measured(made, clocked(made))
        assert shape.claim.kind == "triangle"
        assert shape.holds, (made.call.spoken, shape.words)


def test_a_stretch_of_men_is_measured_when_the_first_ball_comes() -> None:
    """The flat and the over man, measured where they are then and not where their paths end."""
    made = next(p for p in plays(family()) if p.call.spoken == "Three Two Right Crossers")
    clock = clocked(made)
    flat = clock.reads[0]
    claim = Claim("stretch", ("flat", "over"), (Point(-30, 2), Point(30, 6)), "", NOWHERE)
    (found,) = measured(replace(made, claims=(claim,)), clock)
    over = made.runs("over")
    assert over is not None and flat.window is not None
    apart = clock.men[over.man].at(flat.arrives).x - clock.men[flat.window.man].at(flat.arrives).x
    assert found.least == pytest.approx(abs(apart))
    assert found.least < 20

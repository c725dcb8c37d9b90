"""The read clock: one quarterback's job, whoever runs the routes.

What a coach would say of the crossing family is common practice, no published source.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from resolve.compact import mirrored
from resolve.texts import (
    CROSSERS,
    ELEVEN,
    EMPTY,
    QUADS,
    THREE_TWO,
    TREY,
    TRIPS,
    TWELVE,
    compiled,
    dress,
    play,
)

from football.timed import against, clocked, family, line, plays, texts
from stemline.football.conditions import LookWord as Shown
from stemline.football.field import BallSpot, Side
from stemline.football.play import Play, Read, Spot, Step
from stemline.football.timing.clock import (
    TimedRead,
    Verdict,
    Window,
    _thrown_to,
    catch,
    window,
)
from stemline.football.timing.levels import GAP, HIGH_SCHOOL, PROFESSIONAL, WAIT, Splits
from stemline.football.timing.men import timelines
from stemline.football.timing.space import crossings
from stemline.football.timing.throwing import Foot, clock, flight
from stemline.geometry.paths import Point
from stemline.session import Session
from stemline.source import NOWHERE

SHOTGUN, UNDER_CENTRE = Point(0.0, -5.0), Point(0.0, -1.0)
SETS = {
    "Three Two": (TWELVE, THREE_TWO, "Three Two"),
    "Quads": (TWELVE, QUADS, "Quads motion Tuck"),
    "Empty": (ELEVEN, EMPTY, "Empty"),
    "Trips": (ELEVEN, TRIPS, "Trips"),
    "Trey": (ELEVEN, TREY, "Trey"),
}
every_set = pytest.mark.parametrize("name", SETS)
every_side = pytest.mark.parametrize("side", ["Right", "Left"])
every_spot = pytest.mark.parametrize("spot", BallSpot, ids=lambda s: s.value)
_BOOKS: dict[str, Session] = {}


def book(name: str) -> Session:
    if name not in _BOOKS:
        code, formation, called = SETS[name]
        tags = "with plain, Wheel, Return, Wheel + Return"
        _BOOKS[name] = compiled(code, formation, CROSSERS, dress(called, tags))
    return _BOOKS[name]


def call(name: str, side: str, tag: str = "") -> str:
    formation, _, motion = SETS[name][2].partition(" motion ")
    return " ".join(word for word in (formation, side, motion, "Crossers", tag) if word)


def look(made: Play, target: str) -> TimedRead:
    return next(one for one in clocked(made).reads if one.read.target == target)


def steps(*names: str) -> tuple[Step, ...]:
    return tuple(Step(name, "") for name in names)


# The feet.


def times(*names: str, at: Point = SHOTGUN) -> list[float]:
    return [foot.time for foot in clock(steps(*names), at, Side.RIGHT, HIGH_SCHOOL)]


def test_drops_are_timed_from_the_snap_and_hitches_from_the_step_before() -> None:
    assert times("quick", "3", "reset") == pytest.approx([1.0, 1.6, 2.0])
    assert times("5", "hitch", "hitch") == pytest.approx([2.15, 2.55, 2.95])
    assert times("quick", "3") == times("quick", "3", "reset")[:2]


def test_under_centre_every_drop_is_down_sooner() -> None:
    """By what a catch in the gun costs; five and seven steps are out no sooner than guides say."""
    sooner = {"1": 0.45, "3": 0.45, "5": 0.15, "7": 0.1, "fake": 0.45}
    for foot, seconds in sooner.items():
        assert times(foot)[0] - times(foot, at=UNDER_CENTRE)[0] == pytest.approx(seconds)


def test_a_drop_goes_back_and_a_sprint_goes_to_its_side() -> None:
    deep = [clock(steps(n), SHOTGUN, Side.RIGHT, HIGH_SCHOOL)[0].at.y for n in ("1", "3", "5", "7")]
    assert deep == sorted(deep, reverse=True) and len(set(deep)) == 4
    right = clock(steps("sprint"), SHOTGUN, Side.RIGHT, HIGH_SCHOOL)[0].at
    left = clock(steps("sprint"), SHOTGUN, Side.LEFT, HIGH_SCHOOL)[0].at
    assert right.x > 3 and left == right.mirrored()


# Windows and catches.


def test_a_man_who_settles_is_open_once_he_has_turned_and_for_as_long_as_he_waits() -> None:
    sits = line((0, 0), (0, 8), settle=True)
    assert window("S", sits, None) == Window("S", sits.ready, sits.ready + WAIT)


LAST_LOOK = """
concept Last Look
    dig is strong #1
    dig runs dig 14
    outlet is back
    outlet runs {}
    feet 5, hitch, reset
    read dig on hitch > outlet on reset > outlet on reset
"""


@pytest.mark.parametrize(("route", "late"), [("check", False), ("hook 4", False), ("shoot", True)])
def test_who_sits_is_there_for_the_last_look_and_who_runs_on_is_gone(
    route: str, late: bool
) -> None:
    """A checkdown waits over the ball: by himself he is never late, at any arm or however long."""
    made = texts(
        TWELVE, THREE_TWO, LAST_LOOK.format(route), dress("Three Two", concept="Last Look")
    )
    last = clocked(play(made, "Three Two Right Last Look"), HIGH_SCHOOL).reads[-1]
    assert (last.verdict is Verdict.LATE) is late
    assert last.window is not None and (last.arrives > last.window.closes + GAP) is late


def test_a_spot_is_open_from_the_moment_its_man_comes_in() -> None:
    runs = line((8, 5), (-8, 5))
    spot = Spot("near", Point(-4, 5), 3, 2, ("H",), NOWHERE)
    found = window("H", runs, spot)
    assert found is not None
    assert runs.at(found.opens).x == pytest.approx(-1, abs=0.15)
    assert window("H", runs, replace(spot, at=Point(-4, 9))) is None


def test_a_ball_to_a_man_who_sits_is_in_the_air_for_its_flight() -> None:
    sits = line((0, 0), (0, 8), settle=True)
    open_ = Window("S", sits.ready, sits.ready + WAIT)
    thrown = sits.ready + 0.5
    caught = catch(sits, Point(0, -7), thrown, HIGH_SCHOOL, open_)
    assert caught is not None
    assert caught[0] == pytest.approx(thrown + (flight(15, HIGH_SCHOOL.ball.value) or 0), abs=0.01)
    assert caught[1] == Point(0, 8)


def test_a_ball_to_a_man_on_the_run_meets_him_where_he_will_be() -> None:
    runs = line((0, 0), (0, 6), (15, 6))
    open_ = Window("S", runs.left, runs.arrives + 1)
    passer = Point(0, -7)
    caught = catch(runs, passer, 1.4, HIGH_SCHOOL, open_)
    assert caught is not None
    arrives, at = caught
    assert at.distance(runs.at(arrives)) < 0.2
    driven = flight(at.distance(passer), HIGH_SCHOOL.ball.value)
    assert driven is not None and driven - 0.05 <= arrives - 1.4 <= driven * 1.25 + 0.05


@pytest.mark.parametrize(
    ("before", "verdict"),
    [
        (-0.05, Verdict.ON_TIME),
        (GAP - 0.02, Verdict.ON_TIME),
        (GAP + 0.02, Verdict.EARLY),
    ],
)
def test_a_ball_is_early_only_by_more_than_anybody_can_see(before: float, verdict: Verdict) -> None:
    """So short a throw cannot be held back by a lob: it is there ``before`` the window opens."""
    runs, passer, thrown = line((3, -5), (3, 9)), Point(2.5, -4), 0.1
    always_ = Window("R", 0.0, 9.0)
    soonest = catch(runs, passer, thrown, HIGH_SCHOOL, always_)
    assert soonest is not None
    read = Read(1, "flat", Point(3, 9), ("R",), "quick", "", "", NOWHERE)
    open_ = Window("R", soonest[0] + before, 9.0)
    found = _thrown_to(read, Foot("quick", 0.0, passer), thrown, open_, runs, HIGH_SCHOOL)
    assert found.verdict is verdict
    assert (found.off == 0) == (verdict is Verdict.ON_TIME)


# The same job in every dress: the seconds of the second read.


@every_set
@every_side
@every_spot
def test_the_second_read_of_return_is_another_man_at_the_same_place_and_time(
    name: str, side: str, spot: BallSpot
) -> None:
    made = play(book(name), call(name, side), spot)
    other = play(book(name), call(name, side, "Return"), spot)
    assert [s.at for s in made.spots] == [s.at for s in other.spots]
    plain, tagged = look(made, "near"), look(other, "near")
    assert plain.window is not None and tagged.window is not None
    assert plain.window.man != tagged.window.man
    assert plain.foot == tagged.foot == "3"
    assert plain.thrown == tagged.thrown
    assert abs(plain.arrives - tagged.arrives) <= GAP
    (near,) = (s for s in made.spots if s.name == "near")
    for caught in (plain, tagged):
        if caught.verdict is Verdict.ON_TIME:
            assert abs(caught.at.x - near.at.x) <= near.half_width + 0.2
    assert tagged.verdict is Verdict.ON_TIME
    # From the tight end's side a slot who lines up wide has a long way, and the check says so.
    assert plain.verdict is Verdict.ON_TIME or (plain.verdict, name) == (Verdict.EARLY, "Trey")


def test_every_read_of_the_bundled_family_is_on_time() -> None:
    on_time = [(target, Verdict.ON_TIME) for target in ("flat", "near", "top", "far")]
    for made in plays(family()):
        reads = [(r.read.target, r.verdict) for r in clocked(made).reads]
        assert reads == on_time, made.call.spoken


def test_the_rhythm_of_the_bundled_family_is_one() -> None:
    assert len(plays(family())) == 20
    rhythms = {tuple(round(r.thrown, 9) for r in clocked(p).reads) for p in plays(family())}
    assert len(rhythms) == 1


def test_an_off_corner_sends_the_outside_man_out_and_press_sends_him_across() -> None:
    """In the picture, on the clock and in the space between men."""
    off = against("Three Two Right Crossers", "Over Three")
    press = against("Three Two Right Crossers", "Even Two Man")
    ends = {}
    for made, shown in ((off, "off"), (press, "press")):
        assert shown in made.against
        task = made.runs("clear")
        assert task is not None and task.path is not None
        ends[shown] = task.path.end
        at = clocked(made).men[task.man].at(3.0)
        outside = at.x - task.path.start.x
        assert (outside > 3) if shown == "off" else (outside < -1)
        inside = {c.over for c in crossings(timelines(made, HIGH_SCHOOL)) if c.at.x > 12}
        assert task.man not in inside
    assert ends["off"] == Point(28.5, 10) and ends["press"] == Point(13.5, 12)


def test_the_dig_comes_nearer_to_the_settle_than_the_out() -> None:
    apart = {}
    for look_name in ("Over Three", "Even Two Man"):
        made = against("Three Two Right Crossers", look_name)
        men = clocked(made).men
        apart[look_name] = men["Z"].at(3.3).distance(men["S"].at(3.3))
    assert apart["Even Two Man"] < apart["Over Three"] - 5


# Far throws.

WIDE_OUT = """
concept Wide Out
    out is strong #1
    out runs out 10
    feet 3, hitch
    read out on 3
"""


@pytest.fixture(scope="module")
def wide_out() -> Session:
    return texts(TWELVE, THREE_TWO, WIDE_OUT, dress("Three Two", concept="Wide Out"))


@every_side
def test_the_out_to_the_wide_side_of_the_far_hash_is_late_for_a_high_school_arm(
    wide_out: Session, side: str
) -> None:
    far = BallSpot.LEFT_HASH if side == "Right" else BallSpot.RIGHT_HASH
    thrown = look(play(wide_out, f"Three Two {side} Wide Out", far), "out")
    assert thrown.verdict is Verdict.LATE and thrown.off > GAP
    assert 42 < thrown.distance < 46
    assert flight(thrown.distance, HIGH_SCHOOL.ball.value) is None  # with all that he has
    made = play(wide_out, f"Three Two {side} Wide Out", far)
    strong_arm = clocked(made, PROFESSIONAL).reads[0]
    assert strong_arm.air < thrown.air
    assert strong_arm.distance == pytest.approx(thrown.distance, abs=1)


@every_side
def test_the_same_out_into_the_boundary_is_on_time(wide_out: Session, side: str) -> None:
    near = BallSpot.RIGHT_HASH if side == "Right" else BallSpot.LEFT_HASH
    thrown = look(play(wide_out, f"Three Two {side} Wide Out", near), "out")
    assert thrown.verdict is Verdict.ON_TIME
    assert thrown.distance < 30


def test_of_two_men_in_a_spot_the_one_in_reach_is_thrown_to() -> None:
    """Early is worth more than out of reach."""
    made = play(book("Three Two"), "Three Two Right Crossers")
    weak = replace(HIGH_SCHOOL.ball, value=30.0)
    arm = replace(HIGH_SCHOOL, ball=weak, deep=weak)
    verdicts = {}
    for men in (("Z",), ("S",), ("Z", "S")):
        read = replace(made.reads[1], target="either", men=men, foot="3")
        (found,) = clocked(replace(made, reads=(read,), spots=()), arm).reads
        assert found.window is not None
        verdicts[men] = found.window.man, found.verdict
    assert verdicts[("Z",)] == ("Z", Verdict.TOO_FAR)
    assert verdicts[("S",)] == verdicts[("Z", "S")] == ("S", Verdict.EARLY)


# Properties of the whole clock.


def same(one: TimedRead, two: TimedRead) -> None:
    assert (one.foot, one.verdict) == (two.foot, two.verdict)
    for name in ("ready", "thrown", "arrives", "distance", "off"):
        assert getattr(one, name) == pytest.approx(getattr(two, name), abs=1e-6), name
    assert (one.window is None) == (two.window is None)
    if one.window is not None and two.window is not None:
        assert one.window.man == two.window.man
        assert one.window.opens == pytest.approx(two.window.opens, abs=1e-6)
        assert one.window.closes == pytest.approx(two.window.closes, abs=1e-6)
    assert one.at.x == pytest.approx(-two.at.x, abs=1e-6)
    assert one.at.y == pytest.approx(two.at.y, abs=1e-6)


@every_set
@every_spot
@pytest.mark.parametrize("tag", ["", "Wheel", "Return"])
def test_a_play_in_a_mirror_keeps_its_times(name: str, spot: BallSpot, tag: str) -> None:
    made = play(book(name), call(name, "Right", tag), spot)
    here, there = clocked(made), clocked(mirrored(made))
    assert here.men.keys() == there.men.keys()
    for label, man in here.men.items():
        assert there.men[label].ready == pytest.approx(man.ready, abs=1e-9)
    assert len(here.reads) == len(there.reads) >= 3
    for one, two in zip(
        (*here.reads, *here.pressure), (*there.reads, *there.pressure), strict=True
    ):
        same(one, two)
    assert here.rusher == there.rusher


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 19), st.floats(1.01, 1.4))
def test_slower_men_are_nowhere_earlier(call: int, slower: float) -> None:
    made = plays(family())[call]
    slow = replace(
        HIGH_SCHOOL,
        splits={
            group: replace(
                known, value=Splits(known.value.ten * slower, known.value.forty * slower)
            )
            for group, known in HIGH_SCHOOL.splits.items()
        },
    )
    fast_clock, slow_clock = clocked(made), clocked(made, slow)
    moments = np.linspace(0, 6, 61)
    for label, man in fast_clock.men.items():
        late = slow_clock.men[label]
        assert late.ready > man.ready
        if not made.assignment(label).motion:
            assert (late.run(moments) <= man.run(moments) + 1e-6).all()
    for one, two in zip(fast_clock.reads, slow_clock.reads, strict=True):
        assert two.thrown == one.thrown  # the passer's feet do not wait
        if one.window is not None and two.window is not None:
            assert two.window.opens >= one.window.opens - 0.021  # a step of the search


@pytest.mark.parametrize("route", ["out", "dig", "corner", "comeback", "curl", "post", "hitch"])
def test_a_yard_more_of_stem_is_never_faster(route: str) -> None:
    opens = []
    for depth in range(6, 17, 2):
        text = WIDE_OUT.replace("out 10", f"{route} {depth}")
        made = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Wide Out"))
        found = look(play(made, "Three Two Right Wide Out"), "out").window
        assert found is not None
        opens.append(found.opens)
    assert opens == sorted(opens) and len(set(opens)) == len(opens)


def test_press_costs_the_outside_man_and_nobody_else() -> None:
    free = clocked(play(book("Three Two"), "Three Two Right Crossers"))
    made = play(book("Three Two"), "Three Two Right Crossers", against=(Shown.PRESS,))
    held = clocked(made)
    late = {label for label, man in held.men.items() if man.start > free.men[label].start}
    assert late == {"X", "Z"}
    # With a tight end on the line beside him, and the outside man off it.
    trey = play(book("Trey"), "Trey Right Crossers")
    held = clocked(play(book("Trey"), "Trey Right Crossers", against=(Shown.PRESS,)))
    free = clocked(trey)
    assert trey.man("Y").on_line and not trey.man("Z").on_line
    assert {k for k, man in held.men.items() if man.start > free.men[k].start} == {"X"}


def test_a_man_with_his_own_forty_runs_by_it() -> None:
    made = play(book("Three Two"), "Three Two Right Crossers")
    men = tuple(replace(m, forty=4.6) if m.label == "Z" else m for m in made.men)
    quick = clocked(replace(made, men=men)).men
    assert quick["Z"].ready < clocked(made).men["Z"].ready - 0.1
    assert quick["X"].ready == clocked(made).men["X"].ready

"""Reads against looks: where defenders are when the ball comes.

What a defender can and cannot do is common practice, no published source.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from picture.mirror import mirrored
from together import together

from football.timed import SKILL, against, clocked, line
from stemline.football.defenders import Defence, Defender, Duty, DutyKind, Level
from stemline.football.field import Side
from stemline.football.offence.quarterback import step
from stemline.football.play import Play
from stemline.football.timing.breaking import TRAILS, beside, broken
from stemline.football.timing.chances import Chances
from stemline.football.timing.clock import ReadClock, TimedRead
from stemline.football.timing.coverage import OPEN, TIGHT, Against, Cover, _before_the_throw
from stemline.football.timing.coverage import against as covered
from stemline.football.timing.levels import GAP, HIGH_SCHOOL, READS
from stemline.football.timing.man_coverage import BACKPEDAL, CUSHION, SHUFFLE
from stemline.football.timing.running import Array, Timeline
from stemline.football.timing.squatting import squatting
from stemline.football.timing.zone_coverage import (
    DEEP_DROP,
    DROP,
    LEAN,
)
from stemline.geometry.paths import Point
from stemline.source import NOWHERE

LOOKS = (
    *("Over Three", "Under Quarters", "Odd Two", "Tite Quarters", "Stack Three"),
    *("Bear One", "Even Two Man", "Fire Three", "Zero", "Goal Line"),
)
IN_MAN = ("Bear One", "Even Two Man", "Zero", "Goal Line")
CALLS = (
    "Three Two Right Crossers",
    "Quads Right Tuck Crossers Return",
    "Trey Right Crossers Wheel",
)
DEEP = (DutyKind.THIRD, DutyKind.HALF, DutyKind.QUARTER)
UNDERNEATH = (DutyKind.FLAT, DutyKind.CURL, DutyKind.HOOK, DutyKind.HOLE, DutyKind.ROBBER)
TIMES = np.arange(0.0, 5.0, 0.05)
every_look = together("look", LOOKS)
every_call = together("call", CALLS)


def runs(men: dict[str, Timeline]) -> dict[str, Array]:
    return {label: man.where(TIMES) for label, man in men.items()}


def moved(made: Play, places: dict[str, Array] | None = None) -> dict[str, Array]:
    """Where the defenders of a play are at each of the times."""
    assert made.defence is not None
    if places is None:
        places = runs(dict(clocked(made).men))
    them = made.defence.defenders
    where, _ = _before_the_throw(made, them, places, TIMES, HIGH_SCHOOL, math.inf)
    return {d.label: place for d, place in zip(them, where, strict=True)}


def duties(made: Play, *kinds: DutyKind) -> list[Defender]:
    assert made.defence is not None
    return [d for d in made.defence.defenders if d.duty is not None and d.duty.kind in kinds]


def one(kind: DutyKind, at: Point, to: Point | None = None, man: str = "") -> Defender:
    return Defender("D", at, Level.SECOND, "", Duty(kind, "", man, to), NOWHERE)


def still(at: Point) -> Defender:
    """Somebody without a duty: he stands where he is until the ball is thrown."""
    return Defender("D", at, Level.SECOND, "", None, NOWHERE)


def alone(made: Play, *defenders: Defender) -> Play:
    assert made.defence is not None
    return replace(made, defence=replace(made.defence, defenders=defenders))


def only(look: TimedRead, at: Point, arrives: float) -> TimedRead:
    """A read that offers one throw: to a place, by a time."""
    assert look.window is not None
    shut = replace(look.window, closes=0.0)
    return replace(look, window=shut, at=at, arrives=arrives)


def separations(made: Play, clock: ReadClock | None = None) -> Against:
    return covered(made, clock or clocked(made), HIGH_SCHOOL)


# In zone.


@every_look
@every_call
def test_an_underneath_defender_stays_within_two_steps_of_his_landmark(
    look: str, call: str
) -> None:
    made = against(call, look)
    where, straight = moved(made), moved(made, {})
    for defender in duties(made, *UNDERNEATH):
        if squatting(defender, made):
            continue  # he meets whoever is short
        assert defender.duty is not None and defender.duty.to is not None
        place = where[defender.label]
        goal = np.array([defender.duty.to.x, defender.duty.to.y])
        assert (place[TIMES <= READS] == place[0]).all()
        # With nobody to mind he drops straight, and stands on it.
        far = np.hypot(*(straight[defender.label] - goal).T)
        assert (np.diff(far) <= 1e-9).all()
        there = far < 1e-9
        assert there.any() or far[-1] < far[0] - 12, defender.label
        assert (np.hypot(*(place - goal).T)[there] <= LEAN + 0.5).all()


@every_look
@every_call
def test_a_deep_defender_stays_deeper_than_whoever_comes_into_his_part(
    look: str, call: str
) -> None:
    made = against(call, look)
    men, where = runs(dict(clocked(made).men)), moved(made)
    for defender in duties(made, *DEEP):
        assert defender.duty is not None and defender.duty.to is not None
        for place in men.values():
            mine = np.abs(place[:, 0] - defender.duty.to.x) < 8
            if defender.duty.kind is DutyKind.QUARTER and not mine[place[:, 1] < 12].all():
                continue  # in quarters he has his own man: who comes in later is his neighbour's
            assert (where[defender.label][mine, 1] > place[mine, 1]).all(), defender.label


@every_look
@every_call
def test_nobody_is_faster_than_his_legs(look: str, call: str) -> None:
    """Nor is he ever somewhere else all at once."""
    made = against(call, look)
    most = {kind: max(DEEP_DROP, SKILL.top) if kind in DEEP else DROP for kind in DutyKind}
    most[DutyKind.MAN] = SKILL.top
    for defender in duties(made, *DutyKind):
        assert defender.duty is not None
        steps = np.hypot(*np.diff(moved(made)[defender.label], axis=0).T)
        assert (steps <= most[defender.duty.kind] * 0.05 + 1e-9).all(), defender.label


def test_a_zone_defender_breaks_on_the_ball_for_as_long_as_it_is_in_the_air() -> None:
    made = alone(against(CALLS[0], "Over Three"), still(Point(9, 9)))
    clock = clocked(made)
    look = clock.reads[0]

    def left(air: float) -> float:
        thrown = only(look, Point(0, 9), look.thrown + air)
        (found,) = separations(made, replace(clock, reads=(thrown,))).reads
        return found.yards

    react = HIGH_SCHOOL.choose.value
    assert left(react) == pytest.approx(9.0)
    assert left(react + 0.5) == pytest.approx(9 - SKILL.distance(0.5) - 0.5)
    assert left(react) > left(0.6) > left(1.0) > left(2.2) == 0


def test_a_throw_over_his_head_is_farther_than_one_in_front_of_him() -> None:
    """He is on his way up the field, faces the ball, and has to turn for what goes over him."""
    made = alone(against(CALLS[0], "Over Three"), one(DutyKind.HOOK, Point(0, 3), Point(0, 14)))
    clock = clocked(made)
    look = clock.reads[0]
    there = moved(made)["D"][round((look.thrown + HIGH_SCHOOL.choose.value) / 0.05)]
    x, y = map(float, there)

    def left(dx: float, dy: float) -> float:
        thrown = only(look, Point(x + dx, y + dy), look.thrown + 1.4)
        (found,) = separations(made, replace(clock, reads=(thrown,))).reads
        return found.yards

    passer = np.array([look.passer.x, look.passer.y])
    away = (np.array([x, y]) - passer) / np.hypot(*(np.array([x, y]) - passer))
    over, beside = left(*(away * 8)), left(away[1] * 8, -away[0] * 8)
    assert over > beside + 0.5  # nothing of his drop helps him, and he turns


# In man.


@together("look", IN_MAN)
@every_call
def test_a_man_defender_never_outruns_his_curve(look: str, call: str) -> None:
    made = against(call, look)
    where = moved(made)
    for defender in duties(made, DutyKind.MAN):
        run = np.cumsum(np.hypot(*np.diff(where[defender.label], axis=0).T))
        most = np.array([SKILL.distance(t) for t in TIMES[1:]])
        assert (run <= most + 0.05).all(), defender.label


def throws(at: Point, thrown: float, arrives: float) -> Chances:
    """One throw of a read."""
    return Chances(
        np.array([[0.0, -7.0]]),
        np.array([thrown]),
        np.array([arrives]),
        np.array([arrives]),
        *(np.array([[at.x, at.y]]),) * 2,
        np.array([[1.0, 0.0]]),
    )


def chased(man: Timeline, at: Point, **others: Timeline) -> Array:
    """Where a man defender is who lines up at a place and has the man X."""
    made = alone(against(CALLS[0], "Even Two Man"), one(DutyKind.MAN, at, man="X"))
    return moved(made, runs({"X": man, **others}))["D"]


def gap(man: Timeline, defender: Array, time: float) -> float:
    i = round(time / 0.05)
    return float(np.hypot(*(man.where(TIMES[i : i + 1])[0] - defender[i])))


def test_a_man_defender_does_not_run_past_a_man_who_runs_at_him() -> None:
    """He gives ground and turns with him, and is beside him far downfield."""
    go = line((10, 0), (10, 40))
    for depth in (2, 3, 5, 8):
        defender = chased(go, Point(9, depth))
        assert (np.diff(defender[:, 1]) >= -1e-9).all()
        assert gap(go, defender, 3.5) < 2.0


@pytest.mark.parametrize(("depth", "most", "part"), [(9, BACKPEDAL, 1.0), (6, SHUFFLE, 0.7)])
def test_a_defender_gives_ground_no_faster_than_he_can_while_he_has_his_cushion(
    depth: float, most: float, part: float
) -> None:
    go = line((10, 0), (10, 40))
    defender = chased(go, Point(10, depth))
    cushion = defender[:, 1] - go.where(TIMES)[:, 1]
    has_it = cushion[:-1] > CUSHION + 0.3
    pace = np.diff(defender[:, 1])[has_it] / 0.05
    assert most * part - 1e-9 < pace.max() <= most + 1e-9
    assert np.diff(defender[:, 1]).max() / 0.05 > BACKPEDAL + 3  # then he turns and runs


@given(st.floats(4, 14), st.floats(45, 110), st.sampled_from([-1, 1]))
def test_a_break_makes_room_and_no_more_than_a_few_yards(
    depth: float, degrees: float, side: int
) -> None:
    way = np.radians(degrees)
    end = (10 + side * 30 * float(np.sin(way)), depth + 30 * float(np.cos(way)))
    out = line((10, 0), (10, depth), end)
    defender = chased(out, Point(9.2, 6))
    cut = out.turns[0].time
    after = [gap(out, defender, t) for t in np.arange(cut, 4.9, 0.1)]
    assert max(after) > after[0] or after[0] > 1
    # Late by a choice and a turn, and not left standing: 4.5 yards in a second, when a man breaks
    # back from some nine yards deep, and hardly more in the half after it.
    assert max(after[:11]) - after[0] < 4.6
    assert max(after[:16]) - after[0] < 5.2


def test_a_rub_opens_a_crosser_in_man() -> None:
    """Somebody who stands in the way of his defender, who cannot run through a body."""
    crosser = line((-8, 0), (-6, 2), (12, 5))
    free = chased(crosser, Point(-8, 5))
    x, y = map(float, free[36])
    in_his_way = line((x, y - 5), (x, y), settle=True)
    assert in_his_way.arrives < TIMES[36]
    rubbed = chased(crosser, Point(-8, 5), H=in_his_way)
    assert gap(crosser, rubbed, 2.4) > gap(crosser, free, 2.4) + 2.0
    # Half a second, not two: what he loses is what he runs in so long.
    lost = gap(crosser, rubbed, 3.4) - gap(crosser, free, 3.4)
    assert 3.0 < lost < 0.5 * SKILL.top
    assert np.hypot(*(rubbed[30:] - [x, y]).T).min() > 0.5


def test_a_man_defender_plays_his_man_and_not_the_ball() -> None:
    """A ball behind him is no concern of his: he runs on with his own man."""
    running = np.stack([(TIMES * 8, np.full(len(TIMES), 5.0))], axis=0).transpose(0, 2, 1)
    thrown = throws(Point(6, 5), 1.0, 2.5)
    (played,) = beside(thrown, running, 0.05)
    assert played == pytest.approx([8 * 2.5 - 6 - TRAILS])
    (dropped,) = broken(thrown, running, np.array([False]), HIGH_SCHOOL, 0.05)
    assert dropped[0] < played[0] - 4


def test_a_man_defender_slows_down_with_his_man() -> None:
    """For a ball that falls short he is where his man stops, and not where he would have run to."""
    running = np.stack([(np.full(len(TIMES), 8.0), TIMES * 8)], axis=0).transpose(0, 2, 1)
    thrown = throws(Point(8, 16), 1.0, 3.0)
    (late,), (with_him,) = (
        beside(t, running, 0.05) for t in (thrown, replace(thrown, met=np.array([2.0])))
    )
    assert (with_him[0], late[0]) == (0, pytest.approx(8 - TRAILS))


@pytest.mark.parametrize("side", [-1, 1])
def test_on_a_man_who_runs_across_he_trails(side: int) -> None:
    """Wherever he lined up: he does not run in front of him."""
    crosser = line((side * -10, 0), (side * -9, 5), (side * 25, 5))
    for x in (-12, -10, -8):
        defender = chased(crosser, Point(side * x, 5))
        behind = (crosser.where(TIMES)[:, 0] - defender[:, 0]) * side
        assert 4.0 < behind[round(3.5 / 0.05)] < 6.0


# The table.


@every_look
def test_a_mirrored_look_has_mirrored_separations(look: str) -> None:
    made = against(CALLS[0], look)
    turned = mirrored(made)
    here, there = separations(made), separations(turned)
    assert here.rusher == there.rusher
    for a, b in zip(here.reads, there.reads, strict=True):
        assert (a.nearest, a.cover) == (b.nearest, b.cover)
        assert a.yards == pytest.approx(b.yards, abs=1e-6)


@pytest.mark.parametrize(("later", "opened"), [(0.01, True), (-0.01, False)])
def test_a_man_has_opened_where_nobody_can_see_that_he_has_not(later: float, opened: bool) -> None:
    """As with a ball that is early: by no more than the gap, he is open when it leaves the hand."""
    for read in separations(against(CALLS[0], "Over Three")).reads:
        assert read.read.window is not None
        thrown = read.read.window.opens - GAP + later
        assert replace(read, thrown=thrown).opened is opened


@every_look
def test_a_mirrored_launch_takes_the_zones_to_the_other_side(look: str) -> None:
    made = against(CALLS[0], look)
    right, left = (
        replace(made, feet=(step("sprint", side, True), *made.feet[1:])) for side in Side
    )
    here, there = moved(right), moved(mirrored(left))
    for label, place in here.items():
        assert place * [-1, 1] == pytest.approx(there[label], abs=1e-6), label


def test_a_receiver_with_nobody_near_is_open() -> None:
    far = Point(0, 45)
    made = alone(against(CALLS[0], "Over Three"), one(DutyKind.HOOK, far, far))
    found = separations(made)
    assert [r.cover for r in found.reads] == [Cover.OPEN] * 4
    assert min(r.yards for r in found.reads) > 20
    assert found.best is not None and found.best.read.read.target == "flat"


def test_a_receiver_with_a_defender_on_him_is_covered() -> None:
    made = against(CALLS[0], "Over Three")
    top = separations(made).reads[2]
    found = separations(alone(made, still(top.read.at))).reads[2]
    assert (found.cover, found.nearest) == (Cover.COVERED, "D")


def test_a_rusher_covers_nobody() -> None:
    made = against(CALLS[0], "Over Three")
    far = one(DutyKind.HOOK, Point(0, 45), Point(0, 45))
    top = separations(made).reads[2].read.at
    rusher = replace(one(DutyKind.RUSH, top, Point(0, 0)), label="E")
    assert separations(alone(made, far, rusher)).reads[2].nearest == "D"
    assert separations(alone(made, far, rusher)).reads[2].cover is Cover.OPEN


def test_a_free_rusher_is_told_where_nobody_blocks_him() -> None:
    made = against(CALLS[0], "Zero")
    assert made.defence is not None
    free = replace(made, unblocked=(made.defence.rushers[0].label,))
    assert separations(replace(made, unblocked=())).rusher is None
    there = separations(free).rusher
    assert there is not None and 1.8 < there < 2.1


def test_the_limits_of_open() -> None:
    """A yard and two and a half from the catch to the nearest man, on the table's own words."""
    made = against(CALLS[0], "Over Three")
    clock = clocked(made)
    thrown = only(clock.reads[0], Point(0, 9), clock.reads[0].thrown)

    def cover(yards: float) -> Cover:
        play = alone(made, still(Point(yards, 9)))
        (found,) = separations(play, replace(clock, reads=(thrown,))).reads
        return found.cover

    assert [cover(y) for y in (0.5, 1.5, OPEN + 0.1)] == [Cover.COVERED, Cover.TIGHT, Cover.OPEN]


def test_a_read_without_a_man_is_not_there() -> None:
    made = against(CALLS[0], "Over Three")
    clock = clocked(made)
    gone: TimedRead = replace(clock.reads[0], window=None)
    (found,) = separations(made, replace(clock, reads=(gone,))).reads
    assert found.cover is Cover.NEVER


def test_man_coverage_is_beaten_by_crossers_and_not_by_a_settle() -> None:
    """Who runs away from his man across the field is open; who stops is not."""
    for look in IN_MAN:
        rows = {r.read.read.target: r for r in separations(against(CALLS[0], look)).reads}
        late = separations(against(CALLS[0], look)).rusher is not None
        assert rows["far"].cover is (Cover.LATE if late else Cover.OPEN), look
        assert rows["far"].yards >= OPEN, look
        assert rows["top"].yards < TIGHT, look


def test_strong_is_right_in_these_calls() -> None:
    made = against(CALLS[0], "Over Three")
    assert made.strong is Side.RIGHT
    assert isinstance(made.defence, Defence)

"""Reads against looks: where defenders are when the ball comes.

What a defender can and cannot do is common practice, no published source.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from draw.mirror import mirrored
from hypothesis import given
from hypothesis import strategies as st

from football.timed import SKILL, against, clocked, line
from stemline.football.defence import Defence, Defender, Duty, DutyKind, Level
from stemline.football.field import Side
from stemline.football.play import Play
from stemline.football.timing.clock import Look, ReadClock
from stemline.football.timing.coverage import (
    BACKPEDAL,
    CUSHION,
    DEEP_DROP,
    DROP,
    OPEN,
    READS,
    SHUFFLE,
    Against,
    Cover,
    defenders_at,
)
from stemline.football.timing.coverage import against as covered
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.running import Array, Timeline
from stemline.paths import Point
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
TIMES = np.arange(0.0, 5.0, 0.05)
every_look = pytest.mark.parametrize("look", LOOKS)
every_call = pytest.mark.parametrize("call", CALLS)


def runs(men: dict[str, Timeline]) -> dict[str, Array]:
    return {label: man.where(TIMES) for label, man in men.items()}


def moved(made: Play, places: dict[str, Array] | None = None) -> dict[str, Array]:
    """Where the defenders of a play are at each of the times."""
    assert made.defence is not None
    if places is None:
        places = runs(dict(clocked(made).men))
    return defenders_at(made, made.defence, places, TIMES, HIGH_SCHOOL)


def duties(made: Play, *kinds: DutyKind) -> list[Defender]:
    assert made.defence is not None
    return [d for d in made.defence.defenders if d.duty is not None and d.duty.kind in kinds]


def one(kind: DutyKind, at: Point, to: Point | None = None, man: str = "") -> Defender:
    return Defender("D", at, Level.SECOND, "", Duty(kind, "", man, to), NOWHERE)


def alone(made: Play, *defenders: Defender) -> Play:
    assert made.defence is not None
    return replace(made, defence=replace(made.defence, defenders=defenders))


def separations(made: Play, clock: ReadClock | None = None) -> Against:
    return covered(made, clock or clocked(made), HIGH_SCHOOL)


# In zone.


@every_look
@every_call
def test_a_zone_defender_drops_straight_and_stays_on_his_landmark(look: str, call: str) -> None:
    made = against(call, look)
    where = moved(made)
    under = duties(made, DutyKind.FLAT, DutyKind.CURL, DutyKind.HOOK, DutyKind.HOLE,
                   DutyKind.ROBBER)  # fmt: skip
    for defender in under:
        assert defender.duty is not None and defender.duty.to is not None
        place = where[defender.label]
        goal = np.array([defender.duty.to.x, defender.duty.to.y])
        far = np.hypot(*(place - goal).T)
        assert (np.diff(far) <= 1e-9).all()
        there = READS + far[0] / DROP + 0.1
        assert far[there <= TIMES] == pytest.approx(0, abs=1e-9)
        assert (place[TIMES <= READS] == place[0]).all()


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
    made = alone(against(CALLS[0], "Over Three"), one(DutyKind.HOOK, Point(9, 9), Point(9, 9)))
    clock = clocked(made)
    look = clock.reads[0]

    def left(air: float) -> float:
        thrown = replace(look, at=Point(0, 9), arrives=look.thrown + air)
        (found,) = separations(made, replace(clock, reads=(thrown,))).reads
        return found.yards

    react = HIGH_SCHOOL.react.value
    assert left(react) == pytest.approx(9.0)
    assert left(react + 0.5) == pytest.approx(9 - SKILL.distance(0.5) - 0.5)
    assert left(react) > left(0.6) > left(1.0) > left(2.2) == 0


def test_a_throw_over_his_head_is_farther_than_one_in_front_of_him() -> None:
    """He is on his way up the field, faces the ball, and has to turn for what goes over him."""
    made = alone(against(CALLS[0], "Over Three"), one(DutyKind.HOOK, Point(0, 3), Point(0, 14)))
    clock = clocked(made)
    look = clock.reads[0]
    there = moved(made)["D"][round((look.thrown + HIGH_SCHOOL.react.value) / 0.05)]

    def left(dx: float, dy: float) -> float:
        at = Point(float(there[0]) + dx, float(there[1]) + dy)
        thrown = replace(look, at=at, arrives=look.thrown + 0.8)
        (found,) = separations(made, replace(clock, reads=(thrown,))).reads
        return found.yards

    assert left(0, 7) == pytest.approx(left(7, 0), abs=0.2)  # nothing of his drop helps him


# In man.


@pytest.mark.parametrize("look", IN_MAN)
@every_call
def test_a_man_defender_never_outruns_his_curve(look: str, call: str) -> None:
    made = against(call, look)
    where = moved(made)
    for defender in duties(made, DutyKind.MAN):
        run = np.cumsum(np.hypot(*np.diff(where[defender.label], axis=0).T))
        most = np.array([SKILL.distance(t) for t in TIMES[1:]])
        assert (run <= most + 0.05).all(), defender.label


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
        assert gap(go, defender, 3.5) < 4.5


@pytest.mark.parametrize(("depth", "most"), [(9, BACKPEDAL), (6, SHUFFLE)])
def test_a_defender_gives_ground_no_faster_than_he_can_while_he_has_his_cushion(
    depth: float, most: float
) -> None:
    go = line((10, 0), (10, 40))
    defender = chased(go, Point(10, depth))
    cushion = defender[:, 1] - go.where(TIMES)[:, 1]
    has_it = cushion[:-1] > CUSHION + 0.3
    pace = np.diff(defender[:, 1])[has_it] / 0.05
    assert most * 0.8 < pace.max() <= most + 1e-9
    assert np.diff(defender[:, 1]).max() / 0.05 > BACKPEDAL + 1  # then he turns and runs


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
    assert max(after) < 7.5  # he is late, and not left standing


def test_a_rub_opens_a_crosser_in_man() -> None:
    """Somebody who stands in the way of his defender, who cannot run through a body."""
    crosser = line((-8, 0), (-6, 2), (12, 5))
    free = chased(crosser, Point(-8, 5))
    x, y = map(float, free[36])
    in_his_way = line((x, y - 5), (x, y), settle=True)
    assert in_his_way.arrives < TIMES[36]
    rubbed = chased(crosser, Point(-8, 5), H=in_his_way)
    assert gap(crosser, rubbed, 2.4) > gap(crosser, free, 2.4) + 0.5
    assert np.hypot(*(rubbed[30:] - [x, y]).T).min() > 0.5


def test_a_man_defender_plays_his_man_and_not_the_ball() -> None:
    """A ball behind him is no concern of his: he runs on with his own man."""
    made = alone(against(CALLS[0], "Even Two Man"), one(DutyKind.MAN, Point(-7.6, 5), man="W"))
    clock = clocked(made)
    flat = clock.reads[0]
    assert flat.window is not None and flat.window.man != "W"
    place = moved(made)["D"]
    x, y = map(float, place[round(flat.thrown / 0.05)])
    thrown = replace(flat, at=Point(x - 4, y), arrives=flat.thrown + 1.0)
    (found,) = separations(made, replace(clock, reads=(thrown,))).reads
    there = place[round((flat.thrown + 1.0) / 0.05)]
    assert found.yards == pytest.approx(np.hypot(there[0] - (x - 4), there[1] - y) - 1)
    assert found.yards > 4  # a zone defender would be there
    dropped = one(DutyKind.HOOK, Point(x, y), Point(x, y))
    (found,) = separations(alone(made, dropped), replace(clock, reads=(thrown,))).reads
    assert found.cover is Cover.COVERED


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
    there = one(DutyKind.HOLE, top.read.at, top.read.at)
    found = separations(alone(made, there)).reads[2]
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
    assert separations(free).rusher == clocked(made).rusher


def test_the_limits_of_open() -> None:
    """A yard and two and a half from the catch to the nearest man, on the table's own words."""
    made = against(CALLS[0], "Over Three")
    clock = clocked(made)
    still = replace(clock.reads[0], at=Point(0, 9), arrives=clock.reads[0].thrown)

    def cover(yards: float) -> Cover:
        stands = Point(yards, 9)
        play = alone(made, one(DutyKind.HOOK, stands, stands))
        (found,) = separations(play, replace(clock, reads=(still,))).reads
        return found.cover

    assert [cover(y) for y in (0.5, 1.5, OPEN + 0.1)] == [Cover.COVERED, Cover.TIGHT, Cover.OPEN]


def test_a_read_without_a_man_is_not_there() -> None:
    made = against(CALLS[0], "Over Three")
    clock = clocked(made)
    gone: Look = replace(clock.reads[0], window=None)
    (found,) = separations(made, replace(clock, reads=(gone,))).reads
    assert found.cover is Cover.NEVER


def test_man_coverage_is_beaten_by_crossers_and_not_by_a_settle() -> None:
    """Who runs away from his man across the field is open; who stops is not."""
    for look in IN_MAN:
        rows = {r.read.read.target: r for r in separations(against(CALLS[0], look)).reads}
        assert rows["far"].cover is Cover.OPEN, look
        assert rows["top"].cover is Cover.COVERED, look


def test_strong_is_right_in_these_calls() -> None:
    made = against(CALLS[0], "Over Three")
    assert made.strong is Side.RIGHT
    assert isinstance(made.defence, Defence)

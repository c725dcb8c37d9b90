"""When each man is where on his line."""

from __future__ import annotations

from dataclasses import replace

import pytest
from together import together

from picture.sample_plays import ALL
from picture.sample_runs import RUNS
from picture.sample_scenes import PLAYS, drawn, drawn_mirrored
from stemline.football.play import Motion
from stemline.football.timing.levels import HIGH_SCHOOL, PACE, STILL, YOUTH
from stemline.football.timing.men import timelines
from stemline.geometry.paths import Leg, Path, Point
from stemline.picture.lines.paces import paces
from stemline.picture.lines.route_lines import CLIMB, SET, LineRun
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Scene, Stroke
from stemline.theme import Size, load_theme

THEME = load_theme()


def strokes(scene: Scene) -> dict[str, Stroke]:
    return {i.name: i for i in scene.items if isinstance(i, Stroke) and i.name}


@together("call", PLAYS)
def test_moments_rise_along_each_line(call: str) -> None:
    for size in Size:
        _rise(call, strokes(drawn(call, size)))


def _rise(call: str, found: dict[str, Stroke]) -> None:
    assert found or not any(task.path for task in PLAYS[call].assignments)
    for name, stroke in found.items():
        pairs = zip(stroke.segments, stroke.segments[1:], strict=False)
        breaks = sum(a.end.distance(b.start) > 1e-6 for a, b in pairs)
        assert len(stroke.times) == len(stroke.segments) + 1 + breaks
        assert list(stroke.times) == sorted(stroke.times)
        assert stroke.times[0] < stroke.times[-1] or "-mesh-" in name


def test_the_carrier_is_at_the_mesh_at_its_moment() -> None:
    found = strokes(drawn("power", Size.FULL))
    first, second = (found[f"R-mesh-{n}"] for n in (1, 2))
    (moment,) = {*first.times, *second.times}
    carry = found["R-carry"]
    assert len(first.times) == 2 and carry.times[0] < moment < carry.times[-1]
    at = Point(*(sum(getattr(p, axis) for s in (first, second) for p in (s.segments[0].start,
               s.segments[0].end)) / 4 for axis in ("x", "y")))  # fmt: skip
    ends = [carry.segments[0].start, *(s.end for s in carry.segments)]
    timed = zip(ends, carry.times, strict=True)
    nearest = min(timed, key=lambda each: each[0].distance(at))
    assert abs(nearest[1] - moment) < 0.4


def test_a_pitch_flies_from_the_end_of_his_line_to_its_man() -> None:
    found = strokes(drawn("veer", Size.FULL))
    pitch = found["A-pitch"]
    assert pitch.times[0] == pytest.approx(found["Q-fake"].times[-1])
    (flight,) = pitch.segments
    assert pitch.times[1] - pitch.times[0] >= flight.start.distance(flight.end) / 12 - 1e-9
    assert pitch.times[1] < found["A-route"].times[-1]


def test_a_quarterback_with_the_ball_pitches_it_behind_the_line() -> None:
    veer = RUNS["veer"]
    keeps = Path(Point(0, -1.2), (Leg(Point(3.4, -2), 0.8), Leg(Point(5, 0.8)), Leg(Point(5.4, 7))))
    tasks = tuple(replace(a, path=keeps) if a.man == "Q" else a for a in veer.assignments)
    option = replace(veer, carrier="Q", assignments=tasks)
    (flight,) = strokes(picture(option, Size.FULL, THEME))["A-pitch"].segments
    assert 2.5 < flight.start.x < 5
    assert flight.end.y < flight.start.y < -0.5


@together("name", ALL)
def test_a_line_takes_as_long_as_its_man(name: str) -> None:
    play = ALL[name]
    found = strokes(picture(play, Size.FULL, THEME, level=YOUTH))
    for man, line in timelines(play, YOUTH).items():
        times = found[f"{man}-route"].times
        assert (times[0], times[-1]) == pytest.approx((line.start, line.arrives))


def test_a_slower_level_is_later() -> None:
    play = next(iter(ALL.values()))
    fast = strokes(picture(play, Size.FULL, THEME, level=HIGH_SCHOOL))
    slow = strokes(picture(play, Size.FULL, THEME, level=YOUTH))
    assert all(slow[n].times[-1] > fast[n].times[-1] for n in fast if n.endswith("-route"))


@together("call", PLAYS)
def test_a_mirrored_play_has_the_same_moments(call: str) -> None:
    here = strokes(drawn(call, Size.FULL))
    there = strokes(drawn_mirrored(call))
    assert here.keys() == there.keys()
    for name, stroke in here.items():
        assert there[name].times == pytest.approx(stroke.times, abs=0.006)


def test_a_branch_begins_when_its_man_is_where_it_leaves() -> None:
    call = next(n for n, p in ALL.items() if any(t.branches for t in p.assignments))
    found = strokes(drawn(call, Size.FULL))
    branches = [n for n in found if "-branch-" in n]
    assert branches
    for name in branches:
        own = found[f"{name.split('-')[0]}-route"].times
        assert own[0] < found[name].times[0] < own[-1]


MOVED = Path(Point(12, -1), (Leg(Point(6, -1)),))


def moving(**said: object) -> tuple[float, float]:
    motion = Motion("Tuck", MOVED, running=False, speed=0.0, words="")
    play = next(iter(ALL.values()))
    task = replace(play.assignments[0], motion=replace(motion, **said))  # type: ignore[arg-type]
    pace = paces(replace(play, assignments=(task,)), (), HIGH_SCHOOL)[f"{task.man}-motion"]
    assert pace.at(0.5) == pytest.approx((pace.start + pace.end) / 2)
    return pace.start, pace.end


def test_a_motion_is_before_the_snap() -> None:
    assert moving() == (-STILL - 6 / PACE, -STILL)
    assert moving(starts=3.0, set_for=1.5) == (-3.0, -1.5)
    assert moving(running=True, speed=4.0) == (-1.5, 0.0)
    assert moving(running=True, speed=4.0, starts=1.2) == (-1.2, 0.0)


def test_a_man_who_goes_on_to_a_second_block_gets_there_after_the_first() -> None:
    for call in RUNS:
        found = strokes(drawn(call, Size.FULL))
        for name in (n for n in found if n.endswith("-climb")):
            first = found[name.replace("climb", "block")].times
            assert found[name].times[0] == pytest.approx(first[-1])
            return
    pytest.fail("no run has a second block")


def test_a_line_without_a_path_of_its_own_does_not_fail() -> None:
    play = next(iter(ALL.values()))
    still = next(t for t in play.assignments if t.path is None or not t.path.legs)
    for man in (still.man, "nobody"):
        for pen in (SET, CLIMB):
            run = LineRun(man, MOVED, None, still.span, pen, name=f"{man}-{pen}")
            pace = paces(play, (run,), HIGH_SCHOOL)[run.name]
            assert pace.start <= pace.at(0.3) <= pace.end

"""What the clock remembers: a path that was run before is not timed again, and nothing else of a
call hangs on what was asked before it."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from football.timed import against, clocked
from stemline.football.play import Play
from stemline.football.timing import chances, clock, coverage, man_coverage, men, space
from stemline.football.timing.coverage import Against
from stemline.football.timing.coverage import against as covered
from stemline.football.timing.levels import HIGH_SCHOOL, YOUTH, PlayingLevel
from stemline.football.timing.running import Plane

LOOKS = ("Over Three", "Zero")
CALLS = ("Three Two Right Crossers", "Three Two Left Crossers")
STORES = (
    men._timed,
    clock.window,
    clock.catch,
    chances.chances,
    coverage._sampled,
    man_coverage._alone,
    space._crossing,
    space._watched,
)


def forget() -> None:
    for store in STORES:
        store.cache_clear()


def worked(play: Play, level: PlayingLevel) -> tuple[clock.ReadClock, Against, object]:
    timed = clock.read_clock(play, level)
    return timed, covered(play, timed, level), space.crossings(timed.men)


def test_a_call_is_as_it_would_be_alone() -> None:
    plays = [
        (against(call, look), level)
        for call in CALLS
        for look in LOOKS
        for level in (YOUTH, HIGH_SCHOOL)
    ]
    alone = []
    for play, level in plays:
        forget()
        alone.append(worked(play, level))
    together = [worked(play, level) for play, level in (*plays, *plays)]
    for one, (timed, stood, met) in zip((*alone, *alone), together, strict=True):
        assert (timed.reads, timed.pressure, stood, met) == (
            one[0].reads,
            one[0].pressure,
            *one[1:],
        )


def test_who_has_nobody_in_his_way_runs_as_among_all(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is remembered of a man defender is his run alone: against the run past every body."""
    rubbed: list[bool] = []
    run = man_coverage._ran

    def both(chase: man_coverage._Chase, others: Plane) -> Sequence[complex]:
        curve = man_coverage._curve(chase.level)
        past = man_coverage._followed(chase.here, chase.seen, curve, others.T.tolist())
        assert run(chase, others) == past
        rubbed.append(past != man_coverage._alone(chase))
        return past

    monkeypatch.setattr(man_coverage, "_ran", both)
    for call in CALLS:
        play = against(call, "Zero")
        covered(play, clock.read_clock(play, HIGH_SCHOOL), HIGH_SCHOOL)
    assert set(rubbed) == {True, False}


def test_a_path_is_timed_once_for_a_level_and_anew_for_another() -> None:
    play = against(CALLS[0], "Over Three")
    first, again = clocked(play), clocked(play)
    other = clock.read_clock(play, YOUTH)
    assert first.men and first.men.keys() == other.men.keys()
    for label, line in first.men.items():
        assert again.men[label] is line
        assert other.men[label].arrives > line.arrives

"""The Herons' two seasons: what a coordinator says of them to his staff, and what is true of it."""

from __future__ import annotations

from compare.both_seasons import seasons
from syrupy.assertion import SnapshotAssertion

from stemline.compare.teaching import teaching
from stemline.compare.told import told


def _lines(only: str = "", man: str = "") -> list[str]:
    return [line.text for line in told(seasons()[2], only, man)]


def test_the_seasons_are_told_as_to_a_staff(snapshot: SnapshotAssertion) -> None:
    assert "\n".join(_lines()) == snapshot


def test_a_call_that_came_or_went_is_told_once_and_with_its_concept() -> None:
    found = seasons()[2]
    for play in (*found.added, *found.dropped):
        heads = [line for line in _lines() if f"{play.call.concept}" in line and line[0] != " "]
        heads = [line for line in heads if not line.startswith("Protection ")]
        assert len(heads) == 1, (play.call.spoken, heads)
    assert sum("instead of Breakout" in line for line in _lines()) == 0
    assert sum("Ferry" in line for line in _lines()) == 1


def test_what_a_man_must_learn_he_did_in_no_call_of_the_season_before() -> None:
    """Against every call of the old season, made anew: no job of his is called new that he had."""
    old, new, found = seasons()
    for side, other in (("new", old), ("gone", new)):
        had = {
            (task.man, play.call.concept, task.job.rstrip("."))
            for _, order in other.calls.orders
            if (play := other.drawn(order)[0]) is not None
            for task in play.assignments
        }
        rows = {(row.man, *job) for row in teaching(found) for job in getattr(row, side)}
        assert rows and not rows & had


def test_a_lineman_learns_a_protection_once() -> None:
    (row,) = (row for row in teaching(seasons()[2]) if row.man == "C")
    jobs = [job for _, job in row.new if not job.startswith("protected")]
    assert jobs and len(jobs) == len(set(jobs)), "both concepts that have it teach it once"
    assert ("Flood", "protected by Ferry") in row.new
    (guard,) = (row for row in teaching(seasons()[2]) if row.man == "LG")
    assert not any("Scoop" in job for _, job in guard.new), "the boot's run is as it was"


def test_one_concept_alone_says_nothing_of_the_others() -> None:
    said = "\n".join(_lines(only="Smash"))
    assert "the corner at 10" in said and "Dagger" not in said and "To teach" not in said
    assert not any("Smash" in line for line in _lines(man="C"))

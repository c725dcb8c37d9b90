"""What is different between two versions of a call."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from picture.sample_plays import ALL, path, quads, quads_return, three_two
from picture.sample_runs import power
from shifting import shifted

from stemline.describe.changes import TOLERANCE, changed, changes, same_path
from stemline.football.play import Play
from stemline.geometry.paths import Ending, Point


def with_path(play: Play, label: str, *corners: tuple[float, ...], job: str = "") -> Play:
    """The play with another path for one man."""
    tasks = tuple(
        replace(t, path=path(*corners), job=job or t.job, branches=()) if t.man == label else t
        for t in play.assignments
    )
    return replace(play, assignments=tasks)


def moved(play: Play, label: str, by: float) -> Play:
    """The play with one man so many yards farther right, his path with him."""
    aside = Point(by, 0.0)
    men = tuple(
        replace(m, at=m.at + aside, snap=m.snap + aside) if m.label == label else m
        for m in play.men
    )
    tasks = tuple(
        replace(t, path=shifted(t.path, aside)) if t.man == label and t.path else t
        for t in play.assignments
    )
    return replace(play, men=men, assignments=tasks)


@pytest.mark.parametrize("play", ALL.values(), ids=ALL.keys())
def test_a_play_is_as_it_was(play: Play) -> None:
    assert changes(play, play) == ()
    assert changed(play, play) == "Nothing in it has changed."


def test_another_path_is_a_change_of_one_man() -> None:
    before = with_path(quads(), "S", (27, -1), (27, 9), (20, 9), job="In at 9")
    now = with_path(quads(), "S", (27, -1), (27, 12), (20, 12), job="In at 12")
    (change,) = changes(now, before)
    assert (change.label, change.path, change.moved, change.motion) == ("S", True, False, False)
    assert changed(now, before) == "S was: in at 9; is: in at 12."


def test_a_man_who_moved_says_where_he_was() -> None:
    now = moved(quads(), "S", -2.0)
    (change,) = changes(now, quads())
    assert (change.label, change.moved) == ("S", True)
    said = changed(now, quads())
    assert said.startswith("S lined up number 2 right, to the field, 27 yards from the ball")
    assert "now number 2 right, to the field, 25 yards from the ball" in said


def test_less_than_the_tolerance_is_none() -> None:
    assert changes(moved(quads(), "S", 0.9 * TOLERANCE), quads()) == ()
    assert changes(moved(quads(), "S", 1.1 * TOLERANCE), quads()) != ()


def test_who_is_new_and_who_is_gone() -> None:
    play = quads()
    fewer = replace(
        play,
        men=tuple(m for m in play.men if m.label != "Z"),
        assignments=tuple(t for t in play.assignments if t.man != "Z"),
    )
    (gone,), (new,) = changes(fewer, play), changes(play, fewer)
    assert (gone.now, new.was) == (None, None)
    assert changed(fewer, play).startswith("Z is no longer in it; he was: ")
    assert changed(play, fewer).startswith("Z is new: ")


def test_a_motion_that_is_no_more() -> None:
    tasks = tuple(replace(t, motion=None) for t in quads().assignments)
    now = replace(quads(), assignments=tasks)
    (change,) = changes(now, quads())
    assert (change.label, change.motion, change.path) == ("X", True, False)
    assert "X before the snap was: Tuck, set 1 s, to number 1 left" in changed(now, quads())
    assert "is: no motion" in changed(now, quads())


def test_a_branch_that_is_no_more() -> None:
    tasks = tuple(replace(t, branches=()) for t in quads().assignments)
    found = changes(replace(quads(), assignments=tasks), quads())
    assert [c.label for c in found] == [t.man for t in quads().assignments if t.branches]
    assert all(c.path for c in found)


def test_the_quarterbacks_orders_are_compared_too() -> None:
    play = quads()
    turned = tuple(replace(r, foot="hitch") if r.number == 2 else r for r in play.reads)
    now = replace(play, reads=turned, feet=play.feet[:1], protection="Slide")
    said = changed(now, play)
    assert "Feet were: quick, 3; now: quick." in said
    assert "Reads were: 1 flat (R)" in said
    assert "Protection was: Fan Five; now: Slide." in said


def test_another_name_is_said_first() -> None:
    assert changed(quads_return(), quads()).startswith(f"It was called {quads().call.spoken}. ")


def test_a_run_compares_whom_each_man_blocks() -> None:
    play = power()
    first = next(t for t in play.assignments if len(t.hits) > 1)
    other = replace(first, hits=first.hits[:1], climb=None)
    tasks = tuple(other if t is first else t for t in play.assignments)
    (change,) = changes(replace(play, assignments=tasks), play)
    assert (change.label, change.path, change.moved) == (first.man, True, False)


def test_other_words_for_the_same_path_are_told_too() -> None:
    play = quads()
    first = next(t for t in play.assignments if t.job)
    other = replace(first, job="Another job")
    tasks = tuple(other if t is first else t for t in play.assignments)
    (change,) = changes(replace(play, assignments=tasks), play)
    assert (change.label, change.words, change.path) == (first.man, True, False)


@given(st.floats(-0.45, 0.45), st.floats(-0.2, 0.2))
def test_a_path_beside_itself_is_the_same(x: float, y: float) -> None:
    line = path((5, 0), (5, 10, 1.5), (12, 10))
    assert same_path(line, shifted(line, Point(x, y)))
    assert same_path(shifted(line, Point(x, y)), line)


@given(st.floats(0.6, 20.0))
def test_a_longer_stem_is_another_path(more: float) -> None:
    assert not same_path(path((5, 0), (5, 10), (12, 10)), path((5, 0), (5, 10 + more), (12, 10)))


def test_the_ending_counts() -> None:
    line = path((5, 0), (5, 10))
    assert not same_path(line, replace(line, ending=Ending.SETTLE))
    assert same_path(None, None)
    assert not same_path(line, None)


def test_two_formations_tell_every_man() -> None:
    found = {c.label for c in changes(three_two(), quads())}
    assert {"X", "H", "S"} <= found

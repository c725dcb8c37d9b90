"""What a close picture shows, and how empty field is taken out of it."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from picture.mirror import mirrored
from picture.sample_plays import path, quads, task
from picture.sample_runs import RUNS, counter_two, look_page, pass_against, power, slide
from stemline.football.play import about_blocks
from stemline.picture.frame.closeup import ahead, closed_up
from stemline.picture.paper.fold import ClosedUp, Fold
from stemline.theme import Size

FOLD = Fold((ClosedUp(-1, 8, 14, 2.4), ClosedUp(1, 17, 25, 2.4), ClosedUp(1, 7, 13, 2.4)))


def test_runs_and_protections_are_close_and_routes_and_looks_are_not() -> None:
    assert about_blocks(power()) and about_blocks(slide())
    assert (
        not about_blocks(quads())
        and not about_blocks(pass_against())
        and not about_blocks(look_page())
    )


@given(st.floats(-40, 40), st.floats(-40, 40))
def test_a_fold_keeps_the_order_of_men_and_never_makes_field(a: float, b: float) -> None:
    low, high = sorted((a, b))
    assert FOLD.x(low) <= FOLD.x(high) + 1e-9
    assert FOLD.x(high) - FOLD.x(low) <= high - low + 1e-9


def test_a_fold_leaves_the_box_alone_and_draws_a_gap_as_wide_as_it_says() -> None:
    assert FOLD.x(6.9) == 6.9 and FOLD.x(-8) == -8
    assert FOLD.x(13) - FOLD.x(7) == pytest.approx(2.4)
    assert FOLD.x(27) == pytest.approx(27 - 3.6 - 5.6)
    assert FOLD.breaks == tuple(sorted(FOLD.breaks)) and len(FOLD.breaks) == 3
    assert FOLD.hides(10) and not FOLD.hides(-7) and not FOLD.hides(15)


@pytest.mark.parametrize("size", list(Size))
def test_men_near_each_other_stay_as_far_apart_as_they_are(size: Size) -> None:
    play = counter_two()
    drawn, fold = closed_up(play, size)
    assert fold.gaps
    for man in play.men:
        if abs(man.snap.x) < 6:
            assert drawn.man(man.label).snap == man.snap
    order = sorted(play.men, key=lambda m: m.snap.x)
    for a, b in pairwise(order):
        assert drawn.man(a.label).snap.x <= drawn.man(b.label).snap.x


@pytest.mark.parametrize("name", RUNS)
def test_the_mirrored_play_is_closed_up_alike(name: str) -> None:
    here = closed_up(RUNS[name], Size.THUMB)[1]
    there = closed_up(mirrored(RUNS[name]), Size.THUMB)[1]
    assert here.breaks == tuple(-x for x in reversed(there.breaks))


def test_paths_that_run_on_end_at_the_pictures_edge() -> None:
    drawn, _ = closed_up(power(), Size.THUMB)
    path = drawn.assignment("R").path
    assert path is not None and path.end.y == ahead(power(), Size.THUMB)


def test_a_route_that_goes_with_a_run_is_shown_past_its_break() -> None:
    glance = task("Z", "", "Glance at 8", path((18, -1), (18, 8, 1), (12, 12)), marks=((18, 8, 8),))
    with_glance = replace(power(), assignments=(*power().assignments[:-4], glance))
    top = ahead(with_glance, Size.FULL)
    assert top == 10.5
    drawn, _ = closed_up(with_glance, Size.FULL)
    runs = drawn.assignment("Z").path
    assert runs is not None and len(runs.legs) == 2 and runs.end.y == pytest.approx(top)

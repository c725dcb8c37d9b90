"""Goal line and end line, in yards of the picture, where a call is made near them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from picture.sample_plays import path, quads, task
from picture.sample_runs import power
from stemline.football.play import Play
from stemline.football.rulebook.codes import CODES
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Scene, Stroke
from stemline.theme import Size, load_theme

THEME = load_theme()
END_ZONES = {"canadian amateur": 20, "high school": 10}
"""Yards from goal line to end line: the field as both codes' rule books draw it."""


def near(play: Play, league: str, goal: int | None) -> Play:
    field = replace(play.field, code=CODES[league], goal=goal)
    return replace(play, field=field)


def across(scene: Scene, style: str) -> set[float]:
    """The depths at which lines of a style run across the field."""
    pieces = [
        s for i in scene.items if isinstance(i, Stroke) and i.style == style for s in i.segments
    ]
    return {s.start.y for s in pieces if s.start.y == s.end.y and s.start.x != s.end.x}


@pytest.mark.parametrize("league", END_ZONES)
@pytest.mark.parametrize("goal", [1, 5, 8])
def test_goal_line_and_end_line_stand_at_their_yards(league: str, goal: int) -> None:
    end = goal + END_ZONES[league]
    up = task("Z", "", "Go", path((18, -1), (18, end + 4)))
    deep = replace(quads(), assignments=(*quads().assignments[:-1], up))
    scene = picture(near(deep, league, goal), Size.FULL, THEME)
    assert across(scene, "goal-line") == {goal}
    assert across(scene, "sideline") == {end}
    assert not any(end < y < scene.frame.top for y in across(scene, "yard-line"))
    routes = [i for i in scene.items if isinstance(i, Stroke) and i.style == "route"]
    assert max(s.end.y for r in routes for s in r.segments) < end


def test_a_call_from_anywhere_has_neither() -> None:
    scene = picture(near(quads(), "high school", None), Size.FULL, THEME)
    assert not across(scene, "goal-line") and not across(scene, "sideline")


@pytest.mark.parametrize("size", list(Size))
def test_the_goal_line_makes_way_for_letters_of_the_defence(size: Size) -> None:
    run = near(power(), "canadian amateur", 1)
    assert run.defence is not None
    scene = picture(run, size, THEME)
    lines = [i for i in scene.items if isinstance(i, Stroke) and i.style == "goal-line"]
    pieces = [s for line in lines for s in line.segments]
    assert len(lines) == 1 and len(pieces) > 1
    for man in run.defence.defenders:
        if abs(man.at.y - 1) < 0.2 and abs(man.at.x) < 5:
            assert not any(s.start.x < man.at.x < s.end.x for s in pieces), man.label

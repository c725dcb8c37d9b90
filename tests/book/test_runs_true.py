"""The picture of a run says of each man what his play says: every run of both bundled books.

Men who stand far out are drawn nearer; that move is the drawing's own and is taken from `shot`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from bundled import BUNDLED, season_of

from stemline.football.play import Assignment, Kind, Play
from stemline.picture.frame.board import shot
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Point, Scene, Stroke
from stemline.theme import Size, load_theme

THEME = load_theme()
AT_HIM = 0.9
"""Yards from a defender within which a blocker's bar stands at him: he is drawn as a letter."""
EDGE = 8.3
"""Yards past the line of the picture's upper edge, where men who stand deeper are drawn."""
NEAR = 1.0
"""Yards by which the end of a carrier's line may be moved to keep a picture readable."""


@pytest.fixture(scope="module", params=BUNDLED)
def runs(request: pytest.FixtureRequest) -> tuple[Play, ...]:
    return tuple(play for play in season_of(request.param).plays if play.kind is Kind.RUN)


def test_a_run_is_drawn_as_its_play_says(runs: tuple[Play, ...]) -> None:
    assert sum(len(task.hits) for play in runs for task in play.assignments) > 100
    wrong = [line for play in runs for line in off(play, picture(play, Size.FULL, THEME))]
    assert "\n".join(wrong) == ""


def test_a_man_who_is_drawn_elsewhere_is_told(runs: tuple[Play, ...]) -> None:
    play = runs[0]
    scene = picture(play, Size.FULL, THEME)
    blocker = next(t for t in play.assignments if t.climb is not None)
    carrier = play.assignment(play.carrier)
    hit = blocker.hits[0]
    aside = replace(hit, at=Point(hit.at.x + 1.5, hit.at.y))
    for task in (
        replace(blocker, hits=(aside, *blocker.hits[1:])),
        replace(blocker, climb=None),
        replace(carrier, hits=(hit,)),
        replace(play.assignment("X"), hits=(replace(hit, at=Point(13.0, 8.0)),)),
    ):
        men = tuple(task if t.man == task.man else t for t in play.assignments)
        wrong = list(off(replace(play, assignments=men), scene))
        assert wrong
        assert all(f": {task.man} " in line for line in wrong)


def off(play: Play, scene: Scene) -> Iterator[str]:
    """Each man whose line is not of the kind, or does not end at the place, that his play says."""
    lines = _lines(scene)
    for task in shot(play, Size.FULL).play.assignments:
        mine = lines.get(task.man, {})
        wrong = _block(task, mine, play) if task.hits else _way(task, mine)
        yield from (f"{play.call.spoken}: {task.man} {task.job} {line}" for line in wrong)
        if "carry" in mine and task.man != play.carrier:
            yield f"{play.call.spoken}: {task.man} is drawn with the ball of {play.carrier}"


def _lines(scene: Scene) -> dict[str, dict[str, Stroke]]:
    """The lines of each man after the snap, by what they are ("block", "climb", "carry")."""
    found: dict[str, dict[str, Stroke]] = {}
    for item in scene.items:
        if isinstance(item, Stroke) and item.name and item.segments:
            man, _, what = item.name.partition("-")
            found.setdefault(man, {})[what] = item
    return found


def _end(line: Stroke) -> Point:
    return line.head[0] if line.head else line.segments[-1].end


def _block(task: Assignment, mine: dict[str, Stroke], play: Play) -> Iterator[str]:
    kinds = ("block", "climb")
    if "block" not in mine:
        yield f"has no block but {sorted(mine)}"
    if (task.climb is not None) != ("climb" in mine):
        yield "climbs in the play or in the picture alone"
    for kind, hit in zip(kinds, task.hits, strict=False):
        stands = Point(hit.at.x, min(hit.at.y, EDGE))
        if kind in mine and _end(mine[kind]).distance(stands) > AT_HIM + _stalks(hit.how):
            yield f"{kind} of {hit.defender} at {hit.at} is drawn to {_end(mine[kind])}"


def _stalks(how: str) -> float:
    """A stalk breaks down a yard before its man."""
    return 1.0 if how in ("stalk", "crack") else 0.0


def _way(task: Assignment, mine: dict[str, Stroke]) -> Iterator[str]:
    """A fake through a line that is full of men may be drawn up to the line, on its side."""
    if task.path is None or not task.path.legs:
        return
    end = task.path.end
    ways = [line for kind, line in mine.items() if kind in ("carry", "fake", "route", "block")]
    ways = ways or [line for kind, line in mine.items() if "mesh" not in kind]
    if not ways:
        yield "has no line"
    for line in ways:
        tip = _end(line)
        short = "as if with the ball" in task.job and -1.5 < tip.y < 0
        if (tip.distance(end) > NEAR and not short) or (abs(end.x) > NEAR and tip.x * end.x < 0):
            yield f"runs to {end}, drawn to {tip}"

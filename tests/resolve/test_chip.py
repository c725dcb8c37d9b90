"""A man who chips is drawn at the edge with his bar, and on from there: he gets out."""

from __future__ import annotations

import pytest

from resolve.shipped_books import played, shipped
from stemline.football.play import Play
from stemline.geometry.paths import Ending
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Scene, Stroke
from stemline.theme import Size, load_theme


def chipped(look: str = "") -> Play:
    order = shipped("saltmarsh-herons").calls.by_name["Trey Right Deep Over Chip"]
    return played("saltmarsh-herons", order, look)


def line(scene: Scene, name: str) -> Stroke | None:
    found = (i for i in scene.items if isinstance(i, Stroke) and i.name == name)
    return next(found, None)


@pytest.mark.parametrize("look", ["", "over three"])
@pytest.mark.parametrize("size", Size)
def test_he_gets_out_where_the_chip_ends(look: str, size: Size) -> None:
    play = chipped(look)
    (task,) = (a for a in play.assignments if a.job.startswith("Chip"))
    assert task.path is not None and task.climb is not None
    assert task.path.ending is Ending.BLOCK and task.climb.ending is Ending.RUN
    assert task.climb.start == task.path.end
    out = abs(task.climb.end.x) - abs(task.path.end.x)
    assert out > 2.0 and task.climb.end.y > 0.0
    assert task.climb.end.x * task.path.end.x > 0.0
    drawn = line(picture(play, size, load_theme()), f"{task.man}-climb")
    assert drawn is not None and drawn.head


def test_nobody_else_of_a_pass_goes_on_from_his_block() -> None:
    for play in (chipped(), chipped("over three")):
        others = [a for a in play.assignments if not a.job.startswith("Chip")]
        assert not any(a.climb for a in others)

"""The way of a quarterback who throws on the run."""

from __future__ import annotations

from dataclasses import replace

from picture.sample_plays import quads
from stemline.football.field import Side
from stemline.football.offence.quarterback import step
from stemline.football.play import Play
from stemline.geometry.paths import Point
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Stroke
from stemline.picture.ways.launch import launch_path
from stemline.theme import Size, load_theme

THEME = load_theme()
STANDS = Point(0.0, -5.0)


def sprinting(side: Side = Side.RIGHT) -> Play:
    return replace(quads(), feet=(step("sprint", side, right_handed=True),))


def test_he_runs_to_the_side_of_the_launch_and_comes_downhill() -> None:
    for side in Side:
        found = launch_path(sprinting(side), STANDS, -9.0)
        assert found is not None
        label, path = found
        assert label == "Q" and path.end.x * side.value > 4
        assert min(p.y for p in path.corners) < path.end.y


def test_no_way_is_deeper_than_the_picture() -> None:
    found = launch_path(sprinting(), STANDS, -6.0)
    assert found is not None and min(p.y for p in found[1].corners) >= -6.0


def test_a_drop_has_no_way_and_the_small_picture_leaves_it_out() -> None:
    assert launch_path(quads(), STANDS, -9.0) is None
    styles = {
        size: {i.style for i in picture(sprinting(), size, THEME).items if isinstance(i, Stroke)}
        for size in Size
    }
    assert "fake" in styles[Size.FULL] and "fake" not in styles[Size.THUMB]

"""A trimmed picture has lost field and nothing else."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "book"))

from sample_season import sample_season

from stemline.emit.svg import to_svg
from stemline.football.play import Play
from stemline.picture.picture import frame_of, picture
from stemline.picture.scene.scene import Scene, Stroke
from stemline.picture.trimmed import _cut, trimmed
from stemline.theme import Size, load_theme

THEME = load_theme()
PLAYS = sample_season().plays[::6]
FRAME = frame_of(PLAYS)


def _unlike(scene: Scene, one: Scene) -> list[str]:
    pairs = zip(scene.layers, one.layers, strict=True)
    return [a.name for a, b in pairs if a != b]


@pytest.mark.parametrize("play", PLAYS, ids=lambda play: play.call.spoken)
def test_only_the_field_is_cut(play: Play) -> None:
    whole = picture(play, Size.THUMB, THEME, FRAME)
    cut = trimmed(whole, THEME)
    assert cut.scale == whole.scale
    assert (cut.frame.left, cut.frame.right) == (whole.frame.left, whole.frame.right)
    assert _unlike(whole, cut) in ([], ["field"])
    assert whole.frame.holds(cut.frame)
    field = next(layer for layer in cut.layers if layer.name == "field")
    ends = [
        y
        for item in field.items
        if isinstance(item, Stroke)
        for each in item.segments
        for y in (each.start.y, each.end.y)
    ]
    assert ends and all(cut.frame.bottom <= y <= cut.frame.top for y in ends)
    for man in play.men:
        assert cut.frame.bottom < man.at.y < cut.frame.top
    assert to_svg(cut, THEME)


def test_some_field_is_cut() -> None:
    heights = [(picture(play, Size.THUMB, THEME, FRAME)) for play in PLAYS]
    assert any(trimmed(one, THEME).height < one.height - 5 for one in heights)


def test_a_hash_is_whole_or_not_there() -> None:
    whole = picture(PLAYS[0], Size.THUMB, THEME, FRAME)
    field = next(layer for layer in whole.layers if layer.name == "field")
    marks = [i for i in field.items if isinstance(i, Stroke) and i.style == "hash"]
    low, high = sorted(point.y for point in (marks[0].segments[0].start, marks[0].segments[0].end))
    frame = replace(whole.frame, top=low + (high - low) / 4)
    left = [i for i in _cut(field.items, frame) if isinstance(i, Stroke) and i.style == "hash"]
    assert all(i in marks for i in left) and marks[0] not in left

"""A call drawn alone says under its picture what it is killed to: no page shows that beside it."""

from __future__ import annotations

import re

import pytest
from resolve.test_kills import made

from stemline.one_picture import call_play, drawn
from stemline.picture.captions import captioned
from stemline.picture.picture import picture
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import TextRun
from stemline.theme import Size, load_theme

THEME = load_theme()


@pytest.mark.parametrize("against", ["", "Pressed", "man"])
def test_a_drawn_call_has_room_for_what_it_is_killed_to(against: str) -> None:
    play, _ = call_play(made("to Slants when press"), "Three Two Right Dive", None, against)
    plain, _ = call_play(made(), "Three Two Right Dive", None, against)
    assert play is not None and plain is not None
    heights = [
        float(re.findall(rb'height="([0-9.]+)', drawn(each, THEME))[0]) for each in (play, plain)
    ]
    assert heights[0] > heights[1] + 5


@pytest.mark.parametrize("size", Size)
def test_captions_stand_whole_under_the_picture_and_move_nothing(size: Size) -> None:
    play, _ = call_play(made("to Slants when press"), "Three Two Right Dive", None, "")
    assert play is not None
    scene = picture(play, size, THEME)
    words = " ".join(["Kill: Slants when press, 8 or more in box"] * 4)
    under = captioned(scene, (words,), THEME)
    assert under.layers[:-1] == scene.layers and captioned(scene, (), THEME) is scene
    runs = [item for item in under.layers[-1].items if isinstance(item, TextRun)]
    assert " ".join(run.text for run in runs) == words
    kind = THEME.look(size).types["corner"]
    for run in runs:
        room = extent(run.text, kind, THEME)
        assert (
            under.frame.bottom < run.at.y < run.at.y + room.rise / scene.scale < scene.frame.bottom
        )
        assert run.at.x + room.width / scene.scale < under.frame.right

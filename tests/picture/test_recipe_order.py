"""A picture walks through the rooms in one line: no step calls back into an earlier one."""

from __future__ import annotations

import pytest
from gate.pictures import BUNDLED, bundled_season
from walk import ROOMS, TOOLS, returns, steps, walked

from stemline.geometry.box import square
from stemline.geometry.paths import Point
from stemline.picture import picture as recipe
from stemline.theme import Size, load_theme

MOST = 2
"""The recipe's own function for what moves before the snap, and the lines after it."""
MOST_BEFORE = 6
"""Besides: what is left of old lines is known when the new ones lie, new motions keep off it, old
ones off them, and only then it is known which line breaks which."""
OF_ITS_OWN = {"cards"}
"""Rooms of another picture than a play's: no step of its recipe."""
CALLS = ("Pro Right Power", "Trey Right Stick")


@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize("call", CALLS)
def test_a_picture_goes_through_the_rooms_in_one_line(call: str, size: Size) -> None:
    play = next(p for p in bundled_season(BUNDLED[0], CALLS).plays if p.call.spoken == call)
    theme = load_theme()
    met = steps(walked(lambda: recipe.picture(play, size, theme)))
    assert [room for room in dict.fromkeys(met) if room != "picture"] == [
        "frame", "men", "lines", "labels", "overlay",
    ]  # fmt: skip
    assert returns(met) <= MOST, " → ".join(met)


@pytest.mark.parametrize("size", Size)
def test_the_play_as_it_was_adds_few_ways_back(size: Size) -> None:
    play, before = bundled_season(BUNDLED[0], CALLS).plays
    theme = load_theme()
    met = steps(walked(lambda: recipe.picture(play, size, theme, before=before)))
    assert returns(met) <= MOST_BEFORE, " → ".join(met)


def test_every_room_is_a_step_or_a_tool() -> None:
    rooms = {path.name for path in ROOMS.iterdir() if (path / "__init__.py").exists()}
    assert rooms - TOOLS - OF_ITS_OWN == {"frame", "men", "lines", "labels", "overlay", "legend"}


def test_a_way_back_is_seen() -> None:
    met = ("frame", "men", "paper", "men", "geometry/", "lines", "ways", "men", "lines")
    assert steps(met) == ("frame", "men", "lines", "men", "lines")
    assert returns(steps(met)) == 2
    assert walked(lambda: square(Point(0, 0), 1)) == ("geometry/",)

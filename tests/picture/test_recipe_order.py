"""The recipe of a picture goes through the rooms in one direction, with few steps back."""

from __future__ import annotations

import sys
from collections.abc import Callable
from itertools import groupby
from pathlib import Path
from types import FrameType

import pytest
from gate.pictures import BUNDLED, bundled_season

from stemline.picture import picture as recipe
from stemline.theme import Size, load_theme

ROOMS = Path(recipe.__file__).parent
MOST = 4
"""Back to the field after the men, to the letters and to the lines of duties when routes lie, and
to the lines when all is there that may break one."""


def rooms_met(drawing: Callable[[], object]) -> list[str]:
    """The rooms whose functions the recipe itself calls, in order; the paper is no step, and a
    method of a value that was handed on is no visit."""
    met: list[str] = []

    def look(frame: FrameType, event: str, _: object) -> None:
        code, back = frame.f_code, frame.f_back
        while back is not None and back.f_code.co_name.startswith("<"):
            back = back.f_back
        place = Path(code.co_filename)
        if event != "call" or back is None or back.f_code.co_filename != recipe.__file__:
            return
        room = place.parent.name if place.parent.parent == ROOMS else ""
        plain = not code.co_name.startswith("<") and code.co_varnames[:1] != ("self",)
        if plain and room not in ("", "scene"):
            met.append(room)

    before = sys.getprofile()
    sys.setprofile(look)
    try:
        drawing()
    finally:
        sys.setprofile(before)
    return [room for room, _ in groupby(met)]


@pytest.mark.parametrize("call", ["Pro Right Power", "Trey Right Stick"])
@pytest.mark.parametrize("size", Size)
def test_a_picture_goes_back_to_few_rooms(call: str, size: Size) -> None:
    (play,) = bundled_season(BUNDLED[0], (call,)).plays
    theme = load_theme()
    met = rooms_met(lambda: recipe.picture(play, size, theme))
    assert {"frame", "men", "lines", "labels"} <= set(met)
    assert len(met) - len(set(met)) <= MOST, " → ".join(met)

"""The rooms of `picture/` in the order in which one picture walks through them.

    python -m tests.walk "Trey Right Stick" --playbook saltmarsh-herons --before "Trey Right Dagger"

Every function that is called while a play becomes a scene, however deep, is written down by the
room it stands in, and repeats are drawn together. A **step** is a room that the recipe goes through
(and the recipe itself, `picture.py`, where its own functions are called again). A **tool** is a
room below the steps: its functions are told everything they need and keep nothing, so calling one
is no way back. Tools are `TOOLS`, and every other package of the compiler. They are counted apart:
that number says how fine-grained the work is, not how tangled.

A **return** is a step met again after another step was met: rooms met in all, less rooms there are.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Sequence
from functools import cache, partial
from itertools import groupby
from pathlib import Path
from types import FrameType

from stemline.picture import picture as recipe
from stemline.theme import Size, load_theme

ROOMS = Path(recipe.__file__).parent
COMPILER = ROOMS.parent
TOOLS = frozenset({"scene", "paper", "ways"})
"""The display list and its ink; the board, symbols and letters; how a path is bent."""


def walked(drawing: Callable[[], object]) -> tuple[str, ...]:
    """The room of every function of the compiler that ``drawing`` calls, in order."""
    met: list[str] = []

    def look(frame: FrameType, event: str, _: object) -> None:
        code = frame.f_code
        if event == "call" and not code.co_name.startswith("<"):
            met.append(_room(code.co_filename))  # a comprehension is a part of its function

    before = sys.getprofile()
    sys.setprofile(look)
    try:
        drawing()
    finally:
        sys.setprofile(before)
    return tuple(filter(None, met))


@cache
def _room(file: str) -> str:
    """The room of `picture/`, or the other package of the compiler with a stroke behind it."""
    place = Path(file)
    if place.is_relative_to(ROOMS):
        return place.relative_to(ROOMS).parts[0].removesuffix(".py")
    if place.is_relative_to(COMPILER):
        return f"{place.relative_to(COMPILER).parts[0].removesuffix('.py')}/"
    return ""


def drawn_together(rooms: Sequence[str]) -> tuple[str, ...]:
    return tuple(room for room, _ in groupby(rooms))


def steps(rooms: Sequence[str]) -> tuple[str, ...]:
    """The steps alone, without the tools and what lies outside `picture/`."""
    return drawn_together([r for r in rooms if r not in TOOLS and not r.endswith("/")])


def returns(rooms: Sequence[str]) -> int:
    """How often a room is met that was left before."""
    met = drawn_together(rooms)
    return len(met) - len(set(met))


def main() -> None:
    from .gate.pictures import BUNDLED, bundled_season

    parser = argparse.ArgumentParser(prog="python -m tests.walk", description=__doc__)
    parser.add_argument("call")
    parser.add_argument("--playbook", default=BUNDLED[0])
    parser.add_argument("--before", help="the call that lies under it as the play as it was")
    asked = parser.parse_args()
    wanted = tuple(call for call in (asked.call, asked.before) if call)
    plays = {play.call.spoken: play for play in bundled_season(asked.playbook, wanted).plays}
    play, before, theme = plays[asked.call], plays.get(asked.before), load_theme()
    for size in Size:
        met = walked(partial(recipe.picture, play, size, theme, before=before))
        print(f"{size.name.lower()}: {' → '.join(steps(met))}")
        print(f"  {returns(steps(met))} returns; with the tools {returns(met)}")


if __name__ == "__main__":
    main()

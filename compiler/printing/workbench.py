"""What a process beside this one can do for a week: it draws, and it measures and sets pages.

One for all of it: a process takes a second to load what draws and what sets.
"""

from __future__ import annotations

import gc
from collections.abc import Callable, Sequence
from functools import cached_property
from typing import Any

from stemline.emit.fragments import Fragment
from stemline.emit.gallery import Art
from stemline.emit.parts import Part, Press
from stemline.emit.side_by_side import SideBySide
from stemline.football.timing.levels import PlayingLevel
from stemline.printing.drawings import Drawings
from stemline.theme import Theme


class Workbench:
    """The work of `Drawings` and of a `Press`, in one theme for men of one level."""

    def __init__(self, theme: Theme, level: PlayingLevel) -> None:
        self._theme = theme
        self._drawings = Drawings(theme, level)

    @cached_property
    def _press(self) -> Press:
        return Press(self._theme)

    def all_drawn(self, jobs: Sequence[Any]) -> list[Art]:
        return self._drawings.all_drawn(jobs)

    def measure(self, part: Part) -> dict[str, float]:
        return self._press.measure(part)

    def set(self, part: Part) -> Fragment:
        return self._press.set(part)

    def paper(self, job: tuple[Callable[..., bytes], tuple[Any, ...]]) -> bytes:
        """A whole document, by the function of a module that makes it."""
        make, values = job
        made = make(*values)
        gc.collect(0)  # its boxes hold each other, and nothing is collected here
        return made


def workbenches(theme: Theme, level: PlayingLevel) -> SideBySide:
    """As many of them as there are processors, started when there is work for them; whoever asks
    ends them."""
    return SideBySide(Workbench, theme, level)

"""The pictures of the sample plays, each drawn once for all tests of a process, and none before a
test asks for it."""

from __future__ import annotations

from functools import cache

from picture.mirror import mirrored
from picture.sample_plays import ALL
from picture.sample_runs import RUNS
from stemline.football.play import Play
from stemline.picture.legend.legend import legend_entries
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Scene
from stemline.theme import Size, load_theme

PLAYS: dict[str, Play] = {**ALL, **RUNS}


@cache
def drawn(name: str, size: Size, theme: str = "plain", duties: bool = False) -> Scene:
    return picture(PLAYS[name], size, load_theme(theme), duties=duties)


@cache
def legend() -> tuple[Scene, ...]:
    """The small pictures that explain the marks."""
    return tuple(scene for _, scene in legend_entries(load_theme()))


@cache
def drawn_mirrored(name: str) -> Scene:
    return picture(mirrored(PLAYS[name]), Size.FULL, load_theme())
